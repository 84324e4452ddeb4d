/** What aiming off the sun costs. */
import type { Forecast } from '../../optics/index.js';
import { writeCsv } from '../csv.js';
import { colours, curve, dotMark, frame, label, limit, picture, swatch, usualSize } from './chart.js';
import type { ForecastPlot } from './plot.js';

const names = { aside: 'sideways', low: 'too low', high: 'too high' } as const;
const lines = [
  ['aside', colours.blue],
  ['low', colours.green],
  ['high', colours.vermilion],
] as const;

/** The plot, or null without a vessel or when it catches nothing anyway. */
export function aimPlot({ vessel }: Forecast): ForecastPlot | null {
  if (vessel === null || vessel.aim.curve.length === 0) return null;
  const { curve: points, toleranceDeg } = vessel.aim;
  const title = 'Aim off the sun';
  const reported = lines.map(
    ([direction]) => `90 % at ${toleranceDeg[direction].value.toFixed(2)}° ${names[direction]}`,
  );
  const description = `Power of the vessel when the dish is aimed off the sun, as a share of that when aimed true: ${reported.join(', ')}.`;
  const highest = Math.max(...points.map((point) => Math.max(point.low, point.high, point.aside)));
  const plot = frame(
    usualSize,
    { label: 'angle off the sun (°)', domain: [0, points.at(-1)?.angleDeg ?? 1], nice: true },
    { label: 'share of the power when aimed true (%)', domain: [0, Math.max(100, 100 * highest)], nice: highest > 1 },
  );
  const svg = picture('aim', title, description, usualSize, [
    plot.axes,
    limit(plot, 'y', 90),
    ...lines.flatMap(([direction, colour], i) => [
      curve(
        plot,
        points.map((point) => [point.angleDeg, 100 * point[direction]] as const),
        colour,
        true,
      ),
      dotMark(plot, [toleranceDeg[direction].value, 90], colour),
      label(plot, [0, 0], names[direction], { dx: 34, dy: -60 + 22 * i }),
      swatch(plot, [0, 0], colour, { dx: 10, dy: -60 + 22 * i }),
    ]),
  ]);
  const csv = writeCsv([
    ['angle off the sun deg', 'aside', 'low', 'high'],
    ...points.map((point) => [
      { value: point.angleDeg, digits: 4 },
      { value: point.aside, digits: 6 },
      { value: point.low, digits: 6 },
      { value: point.high, digits: 6 },
    ]),
  ]);
  return { name: 'aim', title, description, svg, csv };
}
