/** The load's temperature as measured, as forecast, and as the measured gain and losses would have it. */
import type { ComparedPoint, Comparison } from '../../optics/index.js';
import { writeCsv } from '../csv.js';
import { decimal } from '../decimal.js';
import { markup } from '../markup.js';
import { colours, curve, frame, label, picture, usualSize } from './chart.js';
import type { ForecastPlot } from './plot.js';

/** More dots than this are not told apart. */
const MAX_DOTS = 240;

export function comparisonPlot({ points }: Comparison): ForecastPlot {
  const title = 'Forecast and measurement';
  const temperatures = points.flatMap(({ measuredC, forecastC, fittedC }) => [measuredC, forecastC, fittedC]);
  const last = points.at(-1);
  const description = `Temperature of the load over ${(last?.minutes ?? 0).toFixed(0)} minutes: as measured (dots), as forecast under the sun, air and wind that were read, and with the gain and losses that were measured.`;
  const plot = frame(
    usualSize,
    { label: 'time (min)', domain: [points[0]?.minutes ?? 0, last?.minutes ?? 1], nice: true },
    {
      label: 'load (°C): dots measured, blue forecast, green fitted',
      domain: [Math.min(...temperatures), Math.max(...temperatures)],
      nice: true,
    },
  );
  const runs = [...new Set(points.map(({ run }) => run))].map((run) => points.filter((point) => point.run === run));
  const lines = (of: (point: ComparedPoint) => number, colour: string) =>
    runs.map((run) =>
      curve(
        plot,
        run.map((point) => [point.minutes, of(point)] as const),
        colour,
      ),
    );
  const every = Math.ceil(points.length / MAX_DOTS);
  const svg = picture('comparison', title, description, usualSize, [
    plot.axes,
    ...lines(({ fittedC }) => fittedC, colours.green),
    ...lines(({ forecastC }) => forecastC, colours.blue),
    ...points
      .filter((_, i) => i % every === 0)
      .map(
        ({ minutes, measuredC }) =>
          markup`<circle cx="${decimal(plot.x(minutes), 2)}" cy="${decimal(plot.y(measuredC), 2)}" r="2.5" fill="currentColor"/>`,
      ),
    ...(last === undefined
      ? []
      : [label(plot, [last.minutes, last.forecastC], 'forecast', { anchor: 'end', dx: -6, dy: -12, fontSize: 12 })]),
  ]);
  const csv = writeCsv([
    ['minutes', 'measured °C', 'forecast °C', 'fitted °C'],
    ...points.map(({ minutes, measuredC, forecastC, fittedC }) =>
      [minutes, measuredC, forecastC, fittedC].map((value) => ({ value, digits: 3 })),
    ),
  ]);
  return { name: 'comparison', title, description, svg, csv };
}
