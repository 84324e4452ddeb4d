/** What aiming off the sun costs. */
import * as Plot from '@observablehq/plot';
import type { Forecast } from '../../optics/index.js';
import { writeCsv } from '../csv.js';
import { colours, draw, type ForecastFigure, halo } from './draw.js';

/** The figure, or null when the receiver catches nothing anyway. */
export function aimFigure({ pointing }: Forecast): ForecastFigure | null {
  if (pointing.curve.length === 0) return null;
  const points = pointing.curve.map(({ angleDeg, share }) => ({ angleDeg, percent: 100 * share }));
  const angle = pointing.toleranceDeg.value;
  const title = 'Aim off the sun';
  const told = `90 % at ${angle.toFixed(2)}°, ${pointing.sunMinutes.value.toFixed(0)} min of the sun’s way`;
  const description = `Light on the receiver when the dish is aimed off the sun, as a share of that when aimed true: ${told}.`;
  const svg = draw('aim', title, description, {
    marginLeft: 56,
    marginBottom: 48,
    x: { label: 'angle off the sun (°)', grid: true, nice: true },
    y: { label: 'share of the best (%)', grid: true, domain: [0, 100] },
    marks: [
      Plot.lineY(points, { x: 'angleDeg', y: 'percent', stroke: colours.blue, strokeWidth: 2.5, curve: 'monotone-x' }),
      Plot.ruleX([angle], { stroke: colours.vermilion, strokeWidth: 2, strokeDasharray: '6 4' }),
      Plot.dot([[angle, 90]], { r: 5, fill: colours.blue }),
      Plot.text([[angle, 90]], { text: () => told, dx: 10, dy: -10, textAnchor: 'start', ...halo }),
    ],
  });
  const csv = writeCsv([
    ['angle off the sun deg', 'share of the best'],
    ...pointing.curve.map(({ angleDeg, share }) => [
      { value: angleDeg, digits: 4 },
      { value: share, digits: 6 },
    ]),
  ]);
  return { name: 'aim', title, description, svg, csv };
}
