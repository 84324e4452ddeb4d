/** The forecast's pictures. */
import type { Forecast } from '../../optics/index.js';
import type { LengthUnit } from '../../units/index.js';
import { aimPlot } from './aim.js';
import { dayPlots } from './day.js';
import type { ForecastPlot } from './plot.js';
import { fluxPlot } from './flux.js';
import { heatUpPlot } from './heat-up.js';
import { interceptPlot } from './intercept.js';
import { lossesPlot } from './losses.js';

/**
 * Every picture of a forecast with its numbers as CSV (lengths there in mm): intercept, brightness, warming when there
 * is a load, losses, aim, the day and the year at a site. Same forecast, same bytes.
 * @param unit of the lengths in the pictures
 */
export function forecastPlots(forecast: Forecast, unit: LengthUnit = 'mm'): ForecastPlot[] {
  const plots = [
    interceptPlot(forecast, unit),
    fluxPlot(forecast, unit),
    heatUpPlot(forecast),
    lossesPlot(forecast),
    aimPlot(forecast),
    ...dayPlots(forecast),
  ];
  return plots.filter((plot) => plot !== null);
}
