/** A comparison as rows for the terminal. */
import { row, type SummaryRow, text } from '../summary.js';
import type { Comparison } from './compare.js';
import { MAX_SLOPE_MRAD, type SlopeFinding } from './inverse.js';

function slopeRow(label: string, finding: SlopeFinding, note: string): SummaryRow {
  switch (finding.kind) {
    case 'found':
      return row(
        label,
        finding.slopeErrorMrad,
        'mrad',
        1,
        `${finding.fromMrad.toFixed(1)} to ${finding.toMrad === MAX_SLOPE_MRAD ? `${MAX_SLOPE_MRAD} and more` : finding.toMrad.toFixed(1)} within one standard error; ${note}`,
      );
    case 'too-good':
      return text(label, 'none', `better than with no waviness at all: check reflectance, losses and instruments`);
    case 'too-poor':
      return text(label, 'none', `worse than with ${MAX_SLOPE_MRAD} mrad: check aim, shade and height of the vessel`);
  }
}

function gainRows(gain: NonNullable<Comparison['gain']>, slopeErrorMrad: number): SummaryRow[] {
  const { value, standardError } = gain.reflectance;
  const no = value > 1 ? '; no mirror reflects that much: check losses and instruments' : '';
  return [
    row('gain as forecast', gain.forecastM2, 'm²', 3, 'absorbed for each W/m² of direct sun'),
    row('gain as measured', gain.measuredM2, 'm²', 3, `${gain.intervals} intervals, losses added back`),
    slopeRow('waviness that would explain it', gain.slope, `designed ${slopeErrorMrad} mrad, the rest as designed`),
    row('or reflectance that would', { value, standardError }, '', 3, `the rest as designed${no}`),
  ];
}

/** @param slopeErrorMrad of the design */
export function comparisonRows({ cooking, cooling, gain, spot }: Comparison, slopeErrorMrad: number): SummaryRow[] {
  const { fit } = cooking;
  return [
    fit === null
      ? text('standardised cooking power', 'none', 'fewer than three intervals that count')
      : row(
          'standardised cooking power',
          fit.powerW,
          'W',
          0,
          `as in ASAE S580.1, at 700 W/m² and 50 K, from ${fit.count} intervals, r² ${fit.r2.toFixed(2)}`,
        ),
    ...cooking.against.map((reason) => text('  of the standard not met', '', reason)),
    ...(cooling === null
      ? [text('loss coefficient', 'none', 'no run under cover; the forecast’s losses are used, uncertain by a quarter')]
      : [
          row('loss coefficient', cooling.lossWPerK, 'W/K', 2, `from ${cooling.intervals} intervals under cover`),
          row('losses over forecast', cooling.ofForecast, '', 2, 'at the same temperatures and wind'),
        ]),
    ...(gain === null
      ? [text('gain as measured', 'none', 'no interval in the sun and well below boiling')]
      : gainRows(gain, slopeErrorMrad)),
    ...spot.flatMap(({ share, width, forecastWidth, finding }) => [
      row(`spot at ${(100 * share).toFixed(0)} %`, width, 'mm', 1, `the forecast has ${forecastWidth.toFixed(1)} mm`),
      slopeRow('waviness that would explain it', finding, 'a width read to 5 %'),
    ]),
  ];
}
