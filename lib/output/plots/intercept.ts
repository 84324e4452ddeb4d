/** The share of the light within each radius. */
import * as Plot from '@observablehq/plot';
import type { Forecast } from '../../optics/index.js';
import { formatLength, type LengthUnit, mmPer } from '../../units/index.js';
import { writeCsv } from '../csv.js';
import { colours, draw, type ForecastFigure, halo } from './draw.js';

export function interceptFigure({ spot, receiver }: Forecast, unit: LengthUnit): ForecastFigure {
  const points = spot.curve.map(({ radius, intercept }) => ({
    radius: radius / mmPer[unit],
    percent: 100 * intercept.value,
    low: 100 * (intercept.value - 2 * intercept.standardError),
    high: 100 * (intercept.value + 2 * intercept.standardError),
  }));
  const edge = receiver.radius / mmPer[unit];
  const caught = `${(100 * spot.intercept.value).toFixed(1)} %`;
  const marks = [spot.radius50, spot.radius90].map(({ value }, i) => ({
    radius: value / mmPer[unit],
    percent: i === 0 ? 50 : 90,
  }));
  const seen = marks.filter(({ radius }) => Number.isFinite(radius));
  const told = seen.map(({ radius, percent }) => `${percent} % within ${formatLength(radius * mmPer[unit], unit)}`);
  const title = 'Light caught within a radius';
  const description = `Share of the light that the mirror gives back within each radius of the receiver’s plane: ${[...told, `${caught} within the receiver’s edge at ${formatLength(receiver.radius, unit)}`].join(', ')}.`;
  const svg = draw('intercept', title, description, {
    marginLeft: 56,
    marginBottom: 48,
    x: { label: `radius (${unit})`, grid: true, nice: true },
    y: { label: 'share of the light (%)', grid: true, domain: [0, 100] },
    marks: [
      Plot.areaY(points, { x: 'radius', y1: 'low', y2: 'high', fill: colours.blue, fillOpacity: 0.25 }),
      Plot.lineY(points, { x: 'radius', y: 'percent', stroke: colours.blue, strokeWidth: 2.5 }),
      Plot.ruleX([edge], { stroke: colours.vermilion, strokeWidth: 2, strokeDasharray: '6 4' }),
      Plot.text([{ x: edge }], {
        x: 'x',
        y: 12,
        text: () => `receiver: ${caught}`,
        dx: -8,
        textAnchor: 'end',
        ...halo,
      }),
      Plot.dot(seen, { x: 'radius', y: 'percent', r: 5, fill: colours.blue }),
      Plot.text(seen, {
        x: 'radius',
        y: 'percent',
        text: ({ radius, percent }: { radius: number; percent: number }) =>
          `${percent} %: ${formatLength(radius * mmPer[unit], unit)}`,
        dx: 10,
        dy: 14,
        textAnchor: 'start',
        ...halo,
      }),
    ],
  });
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
