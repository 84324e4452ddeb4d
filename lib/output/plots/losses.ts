/** Where the sunlight on the aperture goes. */
import * as Plot from '@observablehq/plot';
import type { Forecast } from '../../optics/index.js';
import { writeCsv } from '../csv.js';
import { colours, draw, type ForecastFigure } from './draw.js';

interface Bar {
  readonly label: string;
  readonly watts: number;
  readonly error: number;
  readonly kept: boolean;
}

export function lossesFigure({ power }: Forecast): ForecastFigure {
  const bar = (label: string, figure: { value: number; standardError: number }, kept: boolean): Bar => ({
    label,
    watts: figure.value,
    error: figure.standardError,
    kept,
  });
  const bars = [
    ...power.losses.map(({ label, watts }) => bar(label, watts, false)),
    bar('taken up by the receiver', power.takenUpW, true),
  ];
  const title = 'Where the sunlight goes';
  const description = `Of ${power.incomingW.toFixed(0)} W on the aperture the receiver takes up ${power.takenUpW.value.toFixed(0)} W; the losses: ${power.losses.map(({ label, watts }) => `${label} ${watts.value.toFixed(1)} W`).join('; ')}.`;
  const svg = draw('losses', title, description, {
    width: 740,
    height: 80 + 30 * bars.length,
    marginLeft: 310,
    marginRight: 70,
    marginBottom: 48,
    x: { label: 'power (W)', grid: true, nice: true },
    y: { label: null, domain: bars.map(({ label }) => label), tickSize: 0 },
    marks: [
      Plot.barX(bars, { x: 'watts', y: 'label', fill: ({ kept }: Bar) => (kept ? colours.green : colours.vermilion) }),
      Plot.text(bars, {
        x: ({ watts }: Bar) => Math.max(0, watts),
        y: 'label',
        text: ({ watts }: Bar) => (Math.abs(watts) < 0.05 ? '0' : watts.toFixed(1)),
        dx: 6,
        textAnchor: 'start',
      }),
      Plot.ruleX([0], { stroke: 'currentColor' }),
    ],
  });
  const csv = writeCsv([
    ['what', 'watts', 'standard error'],
    ['falls on the aperture', { value: power.incomingW, digits: 3 }, { value: 0, digits: 4 }],
    ...bars.map(({ label, watts, error }) => [label, { value: watts, digits: 3 }, { value: error, digits: 4 }]),
  ]);
  return { name: 'losses', title, description, svg, csv };
}
