/** The load's temperature over time. */
import { element } from '../../geometry/index.js';
import type { Forecast } from '../../optics/index.js';
import { writeCsv } from '../csv.js';
import { colours, curve as drawCurve, frame, label, limit, picture, usualSize } from './chart.js';
import type { ForecastPlot } from './plot.js';

/** The plot, or null without a load or when it does not warm at all. */
export function heatUpPlot({ heat, irradianceWPerM2 }: Forecast): ForecastPlot | null {
  const warming = heat?.warming;
  if (warming === undefined || warming.kind === 'no-load' || warming.curve.length === 0) return null;
  const { curve } = warming;
  const start = element(curve, 0);
  const end = curve.at(-1)!;
  const title = 'Warming of the load';
  const reported =
    warming.kind === 'reached'
      ? `${end.temperatureC.toFixed(0)} °C after ${warming.minutes.value.toFixed(0)} min`
      : `no more than ${warming.reachableC.value.toFixed(0)} °C`;
  const description = `Temperature of the load over time at ${irradianceWPerM2.toFixed(0)} W/m²: from ${start.temperatureC.toFixed(0)} °C, ${reported}.`;
  const limitC = warming.kind === 'reached' ? end.temperatureC : warming.reachableC.value;
  const temperatures = curve.map(({ temperatureC }) => temperatureC);
  const plot = frame(
    usualSize,
    { label: 'time (min)', domain: [start.minutes, end.minutes], nice: true },
    {
      label: 'temperature (°C)',
      domain: [Math.min(...temperatures, limitC), Math.max(...temperatures, limitC)],
      nice: true,
    },
  );
  const svg = picture('heat-up', title, description, usualSize, [
    plot.axes,
    limit(plot, 'y', limitC),
    drawCurve(
      plot,
      curve.map(({ minutes, temperatureC }) => [minutes, temperatureC] as const),
      colours.blue,
    ),
    label(plot, [start.minutes, limitC], reported, { dx: 10, dy: 16 }),
  ]);
  const csv = writeCsv([
    ['minutes', 'temperature °C'],
    ...curve.map(({ minutes, temperatureC }) => [
      { value: minutes, digits: 3 },
      { value: temperatureC, digits: 3 },
    ]),
  ]);
  return { name: 'heat-up', title, description, svg, csv };
}
