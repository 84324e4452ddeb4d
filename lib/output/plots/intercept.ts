/** The share of the light within each radius. */
import type { Forecast } from '../../optics/index.js';
import { formatLength, type LengthUnit, mmPer } from '../../units/index.js';
import { writeCsv } from '../csv.js';
import { band, colours, curve, dotMark, frame, label, limit, picture, usualSize } from './chart.js';
import type { ForecastPlot } from './plot.js';

export function interceptPlot({ spot, vessel }: Forecast, unit: LengthUnit): ForecastPlot {
  const points = spot.curve.map(({ radius, intercept }) => ({
    radius: radius / mmPer[unit],
    percent: 100 * intercept.value,
    low: 100 * (intercept.value - 2 * intercept.standardError),
    high: 100 * (intercept.value + 2 * intercept.standardError),
  }));
  const edge = vessel === null ? null : vessel.radius / mmPer[unit];
  const marks = [spot.radius50, spot.radius90].map(({ value }, i) => ({
    radius: value / mmPer[unit],
    percent: i === 0 ? 50 : 90,
  }));
  const seen = marks.filter(({ radius }) => Number.isFinite(radius));
  const reported = seen.map(({ radius, percent }) => `${percent} % within ${formatLength(radius * mmPer[unit], unit)}`);
  const title = 'Light within a radius';
  const where = vessel === null ? 'the focus' : 'the vessel’s base';
  const description = `Share of the light that the mirror gives back within each radius of a plane square to the axis at ${where}: ${reported.join(', ') || 'less than half arrives'}.`;
  const furthest = points.at(-1)?.radius ?? 1;
  const plot = frame(
    usualSize,
    { label: `radius (${unit})`, domain: [0, furthest], nice: true },
    { label: 'share of the light (%)', domain: [0, 100] },
  );
  const svg = picture('intercept', title, description, usualSize, [
    plot.axes,
    band(
      plot,
      points.map(({ radius, low, high }) => [radius, low, high] as const),
      colours.blue,
    ),
    ...(edge === null
      ? []
      : [limit(plot, 'x', edge), label(plot, [edge, 12], 'edge of the vessel', { dx: -8, anchor: 'end' })]),
    curve(
      plot,
      points.map(({ radius, percent }) => [radius, percent] as const),
      colours.blue,
    ),
    ...seen.flatMap(({ radius, percent }) => [
      dotMark(plot, [radius, percent], colours.blue),
      label(
        plot,
        [radius, percent],
        `${percent} %: ${formatLength(radius * mmPer[unit], unit)}`,
        // beside the rising curve: below it, or above it where there is no room to the right
        radius < 0.6 * furthest ? { dx: 10, dy: 14 } : { dx: -10, dy: -8, anchor: 'end' },
      ),
    ]),
  ]);
  const csv = writeCsv([
    ['radius mm', 'intercept', 'standard error', 'suns', 'standard error of suns'],
    ...spot.curve.map(({ radius, intercept, suns }) => [
      { value: radius, digits: 3 },
      { value: intercept.value, digits: 6 },
      { value: intercept.standardError, digits: 7 },
      { value: suns.value, digits: 2 },
      { value: suns.standardError, digits: 3 },
    ]),
  ]);
  return { name: 'intercept', title, description, svg, csv };
}
