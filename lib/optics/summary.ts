/** The forecast as rows for the terminal and the book. */
import type { Advice } from './advice.js';
import type { Forecast } from './forecast.js';
import { careLevels, type CareValues } from './care.js';
import type { Estimate } from './types.js';

/** One line: a number in its unit, or a text. Lengths are in mm, to be shown in the user's unit. */
export interface SummaryRow {
  readonly label: string;
  readonly value: number | string;
  /** `mm`, `W`, `°C`, …; empty for texts and bare numbers. */
  readonly unit: string;
  /** Decimals worth printing. */
  readonly digits: number;
  readonly standardError?: number;
  readonly note?: string;
}

export function row(
  label: string,
  estimate: Estimate | number,
  unit: string,
  digits: number,
  note?: string,
): SummaryRow {
  const { value, standardError } = typeof estimate === 'number' ? { value: estimate, standardError: 0 } : estimate;
  return {
    label,
    // an infinite radius or time is said in words: no number would be true
    value: Number.isFinite(value) ? unsignedZero(value, digits) : 'never',
    unit: Number.isFinite(value) ? unit : '',
    digits,
    // an error that would print as 0 tells nothing
    ...(standardError > 0.05 * 10 ** -digits && Number.isFinite(standardError) ? { standardError } : {}),
    ...(note === undefined ? {} : { note }),
  };
}

/** The value, or 0 where it would print as "-0". */
function unsignedZero(value: number, digits: number): number {
  return Math.abs(value) < 0.5 * 10 ** -digits ? 0 : value;
}

export function text(label: string, value: string, note?: string): SummaryRow {
  return { label, value, unit: '', digits: 0, ...(note === undefined ? {} : { note }) };
}

const percent = (estimate: Estimate): Estimate => ({
  value: 100 * estimate.value,
  standardError: 100 * estimate.standardError,
});
const time = (utc: string) => utc.slice(11, 16);

function dayRows({ day, irradianceWPerM2 }: Forecast): SummaryRow[] {
  if (day === null)
    return [
      row('direct irradiance', irradianceWPerM2, 'W/m²', 0, 'the value of the design; name a site for a clear sky'),
    ];
  const { aiming } = day;
  const hours =
    aiming.kind === 'from-to'
      ? `${time(aiming.fromUtc)} to ${time(aiming.toUtc)} UTC`
      : aiming.kind === 'all-day'
        ? 'all day'
        : 'never';
  return [
    row('sun at noon', day.noonElevationDeg, '°', 1, `height above the horizon, at ${time(day.noonUtc)} UTC`),
    text('sun high enough', hours, aiming.kind === 'from-to' ? `${aiming.hours.toFixed(1)} hours` : undefined),
    row(
      'direct irradiance',
      irradianceWPerM2,
      'W/m²',
      0,
      `clear sky, mean of those hours; ${day.noonDirectWPerM2.toFixed(0)} at noon`,
    ),
  ];
}

/** Writes a length of so many mm in the user's unit. */
export type LengthText = (mm: number) => string;

/** A radius that is never reached has no length. */
function finite(length: LengthText): LengthText {
  return (mm) => (Number.isFinite(mm) ? length(mm) : 'none');
}

const inMm: LengthText = (mm) => `${mm.toFixed(1)} mm`;

function spotRows({ spot, vessel, concentration, minRibs, map }: Forecast, length: LengthText): SummaryRow[] {
  const off = spot.bestPlane.value - vessel.height;
  return [
    row('caught by the vessel', percent(spot.intercept), '%', 1, 'of the light that the mirror gives back'),
    row('radius of half the light', spot.radius50, 'mm', 1, 'in the vessel’s plane'),
    row(
      'radius of 90 % of it',
      spot.radius90,
      'mm',
      1,
      `flat panels alone spread the light to ${length(spot.halfChordAtRim)}`,
    ),
    row(
      'best plane above vertex',
      spot.bestPlane,
      'mm',
      1,
      Math.abs(off) < 3 * spot.bestPlane.standardError + 1
        ? 'where the vessel stands'
        : `${length(Math.abs(off))} ${off > 0 ? 'above' : 'below'} the vessel; 90 % radius ${length(spot.bestRadius90.value)} there`,
    ),
    row('mean concentration', concentration.mean, 'suns', 1, 'over the vessel'),
    row(
      'peak concentration',
      concentration.peak,
      'suns',
      0,
      `brightest place, over ${length((2 * map.halfSide) / map.cells)}; burns and blinds at once`,
    ),
    row('ribs that the vessel asks for', minRibs, '', 0, 'so that the panels’ flat width falls on it'),
  ];
}

function heatRows({ heat, power }: Forecast): SummaryRow[] {
  const { warming, cooking } = heat;
  const warm: SummaryRow[] =
    warming.kind === 'reached'
      ? [
          row('time to target', warming.minutes, 'min', 0, 'steady sun, lid on'),
          row('lost at the target', warming.lossAtTargetW, 'W', 0, 'to wind and surroundings'),
        ]
      : warming.kind === 'out-of-reach'
        ? [row('reachable temperature', warming.reachableC, '°C', 0, 'the target is out of reach')]
        : [];
  return [
    row('power taken up', power.takenUpW, 'W', 0, `of ${power.incomingW.toFixed(0)} W that fall on the aperture`),
    ...warm,
    row('stagnation temperature', heat.stagnationC, '°C', 0, 'of the vessel when nothing takes the heat away'),
    row('brightest spot', heat.brightSpotC, '°C', 0, 'what a small dark plate can come to there'),
    ...(cooking.kind === 'fitted'
      ? [
          row(
            'standardised cooking power',
            cooking.powerW,
            'W',
            0,
            `as in ASAE S580.1, at 700 W/m² and 50 K, ${cooking.loadKg.toFixed(1)} kg of water`,
          ),
        ]
      : []),
  ];
}

/** Every value of the forecast, then the losses. */
export function summaryRows(forecast: Forecast, length: LengthText = inMm): SummaryRow[] {
  const { pointing, sensitivity, power } = forecast;
  return [
    ...dayRows(forecast),
    ...spotRows(forecast, finite(length)),
    ...heatRows(forecast),
    row('aim within', pointing.toleranceDeg, '°', 2, 'keeps 90 % of the light on the vessel'),
    row(
      'turn every',
      { value: 2 * pointing.sunMinutes.value, standardError: 2 * pointing.sunMinutes.standardError },
      'min',
      0,
      `when set ${pointing.sunMinutes.value.toFixed(0)} min ahead of the sun`,
    ),
    row('one mm of rib error costs', sensitivity.ribMillimetreW, 'W', 1),
    row('one more mrad of waviness costs', sensitivity.wavinessMradW, 'W', 1),
    ...power.losses.map(({ key, label, watts }) =>
      row(label.startsWith('misses') || key === 'vessel' ? label : `lost: ${label}`, watts, 'W', 1),
    ),
  ];
}

/** One quantity with good, usual and poor care. */
export interface CareRow {
  readonly label: string;
  readonly cells: readonly SummaryRow[];
}

/** What good, usual and poor care make of the quantities that it moves. */
export function careRows({ care }: Forecast): CareRow[] {
  const line = (label: string, unit: string, digits: number, of: (one: CareValues) => Estimate | number | null) => ({
    label,
    cells: careLevels.map((level): SummaryRow => {
      const value = of(care[level]);
      return value === null ? text(level, 'none') : row(level, value, unit, digits);
    }),
  });
  const lines = [
    line('waviness of the mirror', 'mrad', 1, ({ slopeErrorMrad }) => slopeErrorMrad),
    line('caught by the vessel', '%', 1, ({ intercept }) => percent(intercept)),
    line('radius of 90 % of the light', 'mm', 1, ({ radius90 }) => radius90),
    line('peak concentration', 'suns', 0, ({ peakSuns }) => peakSuns),
    line('power taken up', 'W', 0, ({ takenUpW }) => takenUpW),
    line('time to target', 'min', 0, ({ minutesToTarget }) => minutesToTarget),
    line('stagnation temperature', '°C', 0, ({ stagnationC }) => stagnationC),
    line('standardised cooking power', 'W', 0, ({ cookingPowerW }) => cookingPowerW),
    line('aim within', '°', 2, ({ toleranceDeg }) => toleranceDeg),
  ];
  // a line that says nothing at any care is left out
  return lines.filter(({ cells }) => cells.some(({ value }) => value !== 'none'));
}

/** The advice, with the values of the alternatives in the notes. */
export function adviceRows(advice: Advice, lengthText: LengthText = inMm): SummaryRow[] {
  const length = finite(lengthText);
  const { ribs, vessel, focalLength, figure } = advice;
  const watts = ({ value }: Estimate) => `${value.toFixed(0)} W`;
  return [
    row(
      'fewest ribs',
      ribs.best,
      '',
      0,
      `all but 1 % of the power: ${ribs.alternatives.map((one) => `${one.ribs} ribs ${watts(one.takenUpW)}`).join(', ')}`,
    ),
    vesselRow(vessel, length),
    row(
      'focal length of the smallest spot',
      focalLength.bestFocalLength,
      'mm',
      0,
      `90 % radius in its best plane: ${focalLength.alternatives.map((one) => `f ${length(one.focalLength)} ${length(one.radius90.value)}`).join(', ')}`,
    ),
    row(
      'figure panel gains over rib',
      figure.gainW,
      'W',
      1,
      figure.alternatives
        .map(
          (one) =>
            `${one.figure}: ${watts(one.takenUpW)} here, ${watts(one.takenUpInBestPlaneW)} at its best height of ${length(one.bestHeight.value)}`,
        )
        .join('; '),
    ),
  ];
}

/** A vessel that loses more than it catches keeps nothing. */
function vesselRow({ bestDiameter, atC, alternatives }: Advice['vessel'], length: LengthText): SummaryRow {
  const label = 'best vessel diameter';
  const kept = ({ value }: Estimate) => (value < 0.5 ? 'nothing' : `${value.toFixed(0)} W`);
  if (alternatives.every(({ keptW }) => keptW.value < 0.5))
    return text(label, 'none', `at ${atC} °C every vessel loses more than it catches`);
  const each = alternatives.map((one) => `${length(one.diameter)} ${kept(one.keptW)}`).join(', ');
  return row(label, bestDiameter, 'mm', 0, `most heat kept at ${atC} °C: ${each}`);
}
