/** The forecast as rows for the terminal and the book. */
import type { Advice } from './advice.js';
import { careLevels, type CareValues } from './care.js';
import { clockText } from './clock.js';
import { byHourRows } from './day-rows.js';
import { scaled } from './estimate.js';
import type { Forecast } from './forecast.js';
import type { Heat } from './heat-forecast.js';
import type { Surface } from './solid.js';
import type { Estimate } from './types.js';
import { effectOf } from './workmanship.js';

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

function dayRows({ day, irradianceWPerM2, sunElevationDeg }: Forecast): SummaryRow[] {
  if (day === null)
    return [
      row('sun', sunElevationDeg, '°', 0, 'height above the horizon, from the design; add a site to forecast a day'),
      row('direct irradiance', irradianceWPerM2, 'W/m²', 0, 'from the design; add a site to use its clear sky'),
    ];
  const { aiming } = day;
  const hours =
    aiming.kind === 'from-to' ? `${aiming.from} to ${aiming.to}` : aiming.kind === 'all-day' ? 'all day' : 'never';
  return [
    row('sun at noon', day.noonElevationDeg, '°', 1, `height above the horizon, at ${clockText(day.noonHour)}`),
    text('sun high enough', hours, aiming.kind === 'from-to' ? `${aiming.hours.toFixed(1)} hours` : undefined),
    row(
      'direct irradiance',
      irradianceWPerM2,
      'W/m²',
      0,
      `at noon, for which the values below hold; mean of those hours ${day.meanDirectWPerM2.toFixed(0)}`,
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

function spotRows({ spot, map, vessel }: Forecast, length: LengthText): SummaryRow[] {
  const off = spot.bestPlane.value - spot.planeHeight;
  const where = vessel === null ? 'focus' : 'vessel’s base';
  return [
    row('radius of half the light', spot.radius50, 'mm', 1, `across the axis, at the ${where}`),
    row(
      'radius of 90 % of the light',
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
        ? `where the ${where} is`
        : `${length(Math.abs(off))} ${off > 0 ? 'above' : 'below'} the ${where}; 90 % radius ${length(spot.bestRadius90.value)} there`,
    ),
    row(
      'peak across the axis',
      map.peak,
      'suns',
      0,
      `brightest place, over ${length((2 * map.halfSide) / map.cells)}; burns and blinds instantly`,
    ),
  ];
}

const surfaceNames: Readonly<Record<Surface, string>> = {
  base: 'the base',
  side: 'the side',
  lid: 'the lid',
  mouth: 'the mouth',
};

function vesselRows({ vessel, power }: Forecast, length: LengthText): SummaryRow[] {
  if (vessel === null)
    return [
      row('light at the focus', power.takenUpW, 'W', 0, `of ${power.incomingW.toFixed(0)} W that reach the aperture`),
    ];
  const { hanging, map } = vessel;
  return [
    row('hits the vessel', percent(vessel.intercept), '%', 1, 'of the light that the mirror reflects'),
    row('power absorbed', power.takenUpW, 'W', 0, `of ${power.incomingW.toFixed(0)} W that reach the aperture`),
    ...power.surfaces.map(({ surface, takenUpW }) => row(`by ${surfaceNames[surface]}`, takenUpW, 'W', 0)),
    row('mean on the base', vessel.meanOnBase, 'suns', 1),
    row('peak on the vessel', map.peak, 'suns', 0, `on ${surfaceNames[map.peakOn]}`),
    ...(hanging === null
      ? []
      : [
          row(
            'best height of the base',
            hanging.bestOffset,
            'mm',
            0,
            `above the focus (vessel.offset): ${hanging.bestW.toFixed(0)} W there; ${length(hanging.from)} to ${length(hanging.to)} keep 95 % of it`,
          ),
        ]),
    row('ribs needed for a disc this wide', vessel.minRibs, '', 0, 'so that the flat width of the panels falls on it'),
  ];
}

function warmingRows({ warming }: Heat): SummaryRow[] {
  if (warming.kind === 'no-load') return [];
  if (warming.kind === 'out-of-reach')
    return [row('reachable temperature', warming.reachableC, '°C', 0, 'the target is out of reach')];
  const steam = warming.steamKgPerHour;
  return [
    row(
      warming.boils ? 'time to the boil' : 'time to target',
      warming.minutes,
      'min',
      0,
      `steady sun, to ${warming.endC.toFixed(0)} °C, including the vessel`,
    ),
    row('lost at the end', warming.lossAtEndW, 'W', 0, 'to wind and surroundings'),
    ...(warming.boils ? [row('steam at the boil', steam, 'kg/h', 2)] : []),
  ];
}

function hotSpotRows({ hotSpot }: Heat, length: LengthText): SummaryRow[] {
  const { fluxWPerM2, limitWPerM2, insideC, outsideC, defocus } = hotSpot;
  return [
    row(
      'hottest spot of the wall',
      scaled(fluxWPerM2, 1e-3),
      'kW/m²',
      0,
      limitWPerM2 === null
        ? 'absorbed there'
        : `the load tolerates ${(limitWPerM2 / 1000).toFixed(0)} before it scorches, stirred from time to time`,
    ),
    ...(insideC === null || outsideC === null
      ? []
      : [row('wall temperature there', insideC, '°C', 0, `inside; ${outsideC.toFixed(0)} °C outside`)]),
    ...(defocus === null
      ? []
      : [
          row(
            'height that avoids scorching',
            defocus.offset,
            'mm',
            0,
            `${length(Math.abs(defocus.offset))} ${defocus.offset < 0 ? 'below' : 'above'} the focus; absorbs ${defocus.takenUpW.toFixed(0)} W there`,
          ),
        ]),
  ];
}

function heatRows(heat: Heat, length: LengthText): SummaryRow[] {
  const { cooking } = heat;
  return [
    ...warmingRows(heat),
    row('stagnation temperature', heat.stagnationC, '°C', 0, 'of the empty vessel when no heat is drawn from it'),
    row('brightest spot', heat.brightSpotC, '°C', 0, 'what a small dark plate can reach there'),
    ...hotSpotRows(heat, length),
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

/** The sun moves by 15° an hour at most: 4 minutes a degree. */
const MINUTES_A_DEGREE = 4;

function aimRows({ vessel }: Forecast): SummaryRow[] {
  if (vessel === null) return [];
  const { low, high, aside } = vessel.aim.toleranceDeg;
  // set ahead of the sun to one side, it may stand until the sun is as far off on the other
  const minutes = scaled(aside, 2 * MINUTES_A_DEGREE);
  return [
    row('aim tolerance, sideways', aside, '°', 2, 'keeps 90 % of the power'),
    row('aim tolerance, too low', low, '°', 2, 'the dish points below the sun'),
    row('aim tolerance, too high', high, '°', 2, 'the dish points above the sun'),
    row('turn every', minutes, 'min', 0, `when set ${(minutes.value / 2).toFixed(0)} min ahead of the sun`),
  ];
}

/** The vessel at other heights of the sun. */
function sunHeightRows({ vessel }: Forecast, length: LengthText): SummaryRow[] {
  return (vessel?.bySunHeight ?? []).map(({ elevationDeg, takenUpW, toleranceDeg, best }) => {
    const { low, high, aside } = toleranceDeg;
    const hung = best === null ? '' : `; best height ${length(best.bestOffset)}, ${best.bestW.toFixed(0)} W there`;
    return row(
      `sun ${elevationDeg}° high`,
      takenUpW,
      'W',
      0,
      `aim tolerance ${aside.toFixed(1)}° sideways, ${low.toFixed(1)}° too low, ${high.toFixed(1)}° too high${hung}`,
    );
  });
}

/** Every value of the forecast, then the losses. */
export function summaryRows(forecast: Forecast, length: LengthText = inMm): SummaryRow[] {
  const { power, heat, workmanship } = forecast;
  const said = finite(length);
  return [
    ...dayRows(forecast),
    ...spotRows(forecast, said),
    ...vesselRows(forecast, said),
    ...(heat === null ? [] : heatRows(heat, said)),
    ...aimRows(forecast),
    ...sunHeightRows(forecast, said),
    ...(forecast.byHour === null ? [] : byHourRows(forecast.byHour)),
    ...workmanship.map(effectOf).map(({ label, watts, note }) => row(label, watts, 'W', 1, note)),
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
    line('hits the vessel', '%', 1, ({ intercept }) => intercept && percent(intercept)),
    line('radius of 90 % of the light', 'mm', 1, ({ radius90 }) => radius90),
    line('peak across the axis', 'suns', 0, ({ peakSuns }) => peakSuns),
    line('power absorbed', 'W', 0, ({ takenUpW }) => takenUpW),
    line('time to target', 'min', 0, ({ minutesToTarget }) => minutesToTarget),
    line('stagnation temperature', '°C', 0, ({ stagnationC }) => stagnationC),
    line('standardised cooking power', 'W', 0, ({ cookingPowerW }) => cookingPowerW),
    line('aim tolerance, sideways', '°', 2, ({ toleranceDeg }) => toleranceDeg),
    line('aim tolerance, too low', '°', 2, ({ lowToleranceDeg }) => lowToleranceDeg),
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
      'minimum ribs',
      ribs.best,
      '',
      0,
      `for all but 1 % of the power: ${ribs.alternatives.map((one) => `${one.ribs} ribs ${watts(one.takenUpW)}`).join(', ')}`,
    ),
    vesselRow(vessel, length),
    row(
      'best focal length',
      focalLength.bestFocalLength,
      'mm',
      0,
      `for this vessel: ${focalLength.alternatives.map((one) => `f ${length(one.focalLength)} ${watts(one.takenUpW)}`).join(', ')}`,
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
