/** What aiming off the sun costs. */
import type { Forecast } from '../../optics/index.js';
import { writeCsv } from '../csv.js';
import { colours, curve, dotMark, frame, label, limit, picture, usualSize } from './chart.js';
import type { ForecastPlot } from './plot.js';

/** The plot, or null when the vessel catches nothing anyway. */
export function aimPlot({ pointing }: Forecast): ForecastPlot | null {
  if (pointing.curve.length === 0) return null;
  const points = pointing.curve.map(({ angleDeg, share }) => [angleDeg, 100 * share] as const);
  const angle = pointing.toleranceDeg.value;
  const title = 'Aim off the sun';
  const reported = `90 % at ${angle.toFixed(2)}°, ${pointing.sunMinutes.value.toFixed(0)} min of the sun’s path`;
  const description = `Light on the vessel when the dish is aimed off the sun, as a share of that when aimed true: ${reported}.`;
  const plot = frame(
    usualSize,
    { label: 'angle off the sun (°)', domain: [0, points.at(-1)?.[0] ?? angle], nice: true },
    { label: 'share of the best (%)', domain: [0, 100] },
  );
  const svg = picture('aim', title, description, usualSize, [
    plot.axes,
    limit(plot, 'x', angle),
    curve(plot, points, colours.blue, true),
    dotMark(plot, [angle, 90], colours.blue),
    label(plot, [angle, 90], reported, { dx: 10, dy: -12 }),
  ]);
  const csv = writeCsv([
    ['angle off the sun deg', 'share of the best'],
    ...pointing.curve.map(({ angleDeg, share }) => [
      { value: angleDeg, digits: 4 },
      { value: share, digits: 6 },
    ]),
  ]);
  return { name: 'aim', title, description, svg, csv };
}
