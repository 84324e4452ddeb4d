/** The forecast's pictures. */
import type { Forecast } from '../../optics/index.js';
import type { LengthUnit } from '../../units/index.js';
import { aimFigure } from './aim.js';
import type { ForecastFigure } from './draw.js';
import { fluxFigure } from './flux.js';
import { heatUpFigure } from './heat-up.js';
import { interceptFigure } from './intercept.js';
import { lossesFigure } from './losses.js';

/**
 * Every picture of a forecast with its numbers as CSV (lengths there in mm): intercept, brightness, warming when there
 * is a load, losses, aim. Same forecast, same bytes.
 * @param unit of the lengths in the pictures
 */
export function forecastPlots(forecast: Forecast, unit: LengthUnit = 'mm'): ForecastFigure[] {
  const figures = [
    interceptFigure(forecast, unit),
    fluxFigure(forecast, unit),
    heatUpFigure(forecast),
    lossesFigure(forecast),
    aimFigure(forecast),
  ];
  return figures.filter((figure) => figure !== null);
}
