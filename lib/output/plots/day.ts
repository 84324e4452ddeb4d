/** The day at the site by the clock, and the months of the year. */
import type { Forecast } from '../../optics/index.js';
import { element } from '../../geometry/index.js';
import { writeCsv } from '../csv.js';
import {
  colours,
  curve,
  dotMark,
  frame,
  label,
  levelBar,
  limit,
  picture,
  type PlotArea,
  swatch,
  usualSize,
} from './chart.js';
import type { ForecastPlot } from './plot.js';

type DayForecast = NonNullable<Forecast['byHour']>;
type HourRow = DayForecast['hours'][number];

const clock = (hour: number): string => {
  const minutes = Math.round(hour * 60);
  return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`;
};

/** A line with a dot at each of its points. */
const dotted = (plot: PlotArea, points: readonly (readonly [number, number])[], colour: string) => [
  curve(plot, points, colour, true),
  ...points.map((point) => dotMark(plot, point, colour)),
];

/** What falls on the aperture and what the vessel takes up, by the hour; null on a day without sun. */
function powerPlot(hours: readonly HourRow[]): ForecastPlot | null {
  if (hours.length < 2) return null;
  const [first, last] = [element(hours, 0), element(hours, hours.length - 1)];
  const best = hours.reduce((a, b) => (b.light.takenUp > a.light.takenUp ? b : a));
  const title = 'Power through the day';
  const description = `Power by the clock, the dish aimed true: the vessel takes up ${first.light.takenUp.toFixed(0)} W at ${clock(first.hour)}, most at ${clock(best.hour)} with ${best.light.takenUp.toFixed(0)} W of ${best.light.incoming.toFixed(0)} W on the aperture, and ${last.light.takenUp.toFixed(0)} W at ${clock(last.hour)}.`;
  const plot = frame(
    usualSize,
    { label: 'time of day (h)', domain: [first.hour, last.hour] },
    { label: 'power (W)', domain: [0, Math.max(...hours.map(({ light }) => light.incoming))], nice: true },
  );
  const series = [
    ['falls on the aperture', colours.vermilion, ({ light }: HourRow) => light.incoming],
    ['absorbed by the vessel', colours.blue, ({ light }: HourRow) => light.takenUp],
  ] as const;
  const svg = picture('day-power', title, description, usualSize, [
    plot.axes,
    ...series.flatMap(([name, colour, of], i) => [
      ...dotted(
        plot,
        hours.map((one) => [one.hour, of(one)] as const),
        colour,
      ),
      label(plot, [first.hour, 0], name, { dx: 34, dy: -38 + 22 * i }),
      swatch(plot, [first.hour, 0], colour, { dx: 10, dy: -38 + 22 * i }),
    ]),
  ]);
  const csv = writeCsv([
    ['hour', 'azimuth deg', 'elevation deg', 'direct W/m2', 'on the aperture W', 'absorbed W', 'turn every min'],
    ...hours.map(({ hour, azimuthDeg, elevationDeg, irradianceWPerM2, light, turn }) => [
      { value: hour, digits: 2 },
      { value: azimuthDeg, digits: 2 },
      { value: elevationDeg, digits: 2 },
      { value: irradianceWPerM2, digits: 1 },
      { value: light.incoming, digits: 2 },
      { value: light.takenUp, digits: 2 },
      { value: turn.minutes, digits: 1 },
    ]),
  ]);
  return { name: 'day-power', title, description, svg, csv };
}

/** The load's temperature by the clock from the start of heating; null without a load. */
function heatPlot({ heating }: DayForecast): ForecastPlot | null {
  if (heating === null) return null;
  const { curve: points, startHour, reachedHour } = heating;
  const end = element(points, points.length - 1);
  const title = 'Warming through the day';
  const reached = reachedHour === null ? 'the target is not reached' : `hot at ${clock(reachedHour)}`;
  const description = `Temperature of the load by the clock, heated from ${clock(startHour)} on and left in the sun: ${reached}, ${end.temperatureC.toFixed(0)} °C at ${clock(end.hour)}.`;
  const degrees = points.map(({ temperatureC }) => temperatureC);
  const plot = frame(
    usualSize,
    { label: 'time of day (h)', domain: [startHour, end.hour] },
    { label: 'temperature (°C)', domain: [Math.min(...degrees), Math.max(...degrees)], nice: true },
  );
  const svg = picture('day-heat', title, description, usualSize, [
    plot.axes,
    ...(reachedHour === null ? [] : [limit(plot, 'x', reachedHour)]),
    curve(
      plot,
      points.map(({ hour, temperatureC }) => [hour, temperatureC] as const),
      colours.blue,
    ),
    label(plot, [reachedHour ?? startHour, Math.min(...degrees)], reached, { dx: 10, dy: -14 }),
  ]);
  const csv = writeCsv([
    ['hour', 'temperature °C'],
    ...points.map(({ hour, temperatureC }) => [
      { value: hour, digits: 3 },
      { value: temperatureC, digits: 2 },
    ]),
  ]);
  return { name: 'day-heat', title, description, svg, csv };
}

const monthNames = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const;

/** Heat of a clear day in each month, as bars. */
function monthsPlot({ months }: DayForecast): ForecastPlot | null {
  const max = Math.max(0, ...months.map(({ takenUpKWh }) => takenUpKWh));
  if (max === 0) return null;
  const title = 'Heat of a clear day by the month';
  const description = `Taken up on a clear day in the middle of each month: ${months.map(({ month, takenUpKWh, hours }) => `${monthNames[month - 1] ?? ''} ${takenUpKWh.toFixed(1)} kWh in ${hours.toFixed(1)} h`).join('; ')}.`;
  const [left, top, rowHeight] = [50, 6, 21];
  const size = { width: 480, height: top + rowHeight * months.length + 58, left, right: 200, top, bottom: 58 };
  const plot = frame(size, { label: 'absorbed (kWh)', domain: [0, max], nice: true }, null);
  const svg = picture('months', title, description, size, [
    plot.axes,
    ...months.map(({ month, takenUpKWh, hours }, i) =>
      levelBar(plot, {
        value: takenUpKWh,
        name: monthNames[month - 1] ?? '',
        text: `${takenUpKWh.toFixed(1)} kWh in ${hours.toFixed(1)} h`,
        colour: colours.green,
        middle: top + (i + 0.5) * rowHeight,
        height: 15,
      }),
    ),
  ]);
  const csv = writeCsv([
    ['month', 'noon elevation deg', 'hours', 'absorbed kWh', 'litres'],
    ...months.map(({ month, noonElevationDeg, hours, takenUpKWh, litres }) => [
      { value: month, digits: 0 },
      { value: noonElevationDeg, digits: 2 },
      { value: hours, digits: 2 },
      { value: takenUpKWh, digits: 3 },
      litres === null ? '' : { value: litres, digits: 1 },
    ]),
  ]);
  return { name: 'months', title, description, svg, csv };
}

/** The pictures of the day and the year, those that have something to show; none without a site and a vessel. */
export function dayPlots({ byHour }: Forecast): ForecastPlot[] {
  if (byHour === null) return [];
  return [powerPlot(byHour.hours), heatPlot(byHour), monthsPlot(byHour)].filter((plot) => plot !== null);
}
