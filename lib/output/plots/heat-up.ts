/** The load's temperature over time. */
import * as Plot from '@observablehq/plot';
import type { Forecast } from '../../optics/index.js';
import { writeCsv } from '../csv.js';
import { colours, draw, type ForecastFigure, halo } from './draw.js';

/** The figure, or null without a load or when it does not warm at all. */
export function heatUpFigure({ heat, irradianceWPerM2 }: Forecast): ForecastFigure | null {
  const { warming } = heat;
  if (warming.kind === 'no-load' || warming.curve.length === 0) return null;
  const { curve } = warming;
  const start = curve[0]!;
  const end = curve.at(-1)!;
  const title = 'Warming of the load';
  const told =
    warming.kind === 'reached'
      ? `${end.temperatureC.toFixed(0)} °C after ${warming.minutes.value.toFixed(0)} min`
      : `no more than ${warming.reachableC.value.toFixed(0)} °C`;
  const description = `Temperature of the load over time at ${irradianceWPerM2.toFixed(0)} W/m²: from ${start.temperatureC.toFixed(0)} °C, ${told}.`;
  const line = warming.kind === 'reached' ? end.temperatureC : warming.reachableC.value;
  const svg = draw('heat-up', title, description, {
    marginLeft: 56,
    marginBottom: 48,
    x: { label: 'time (min)', grid: true, nice: true },
    y: { label: 'temperature (°C)', grid: true, nice: true },
    marks: [
      Plot.ruleY([line], { stroke: colours.vermilion, strokeWidth: 2, strokeDasharray: '6 4' }),
      Plot.lineY(curve, { x: 'minutes', y: 'temperatureC', stroke: colours.blue, strokeWidth: 2.5 }),
      Plot.text([line], {
        x: start.minutes,
        y: (y: number) => y,
        text: () => told,
        dx: 10,
        dy: 14,
        textAnchor: 'start',
        ...halo,
      }),
    ],
  });
  const csv = writeCsv([
    ['minutes', 'temperature °C'],
    ...curve.map(({ minutes, temperatureC }) => [
      { value: minutes, digits: 3 },
      { value: temperatureC, digits: 3 },
    ]),
  ]);
  return { name: 'heat-up', title, description, svg, csv };
}
