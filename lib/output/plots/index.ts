export { type ForecastFigure } from './draw.js';
export { forecastPlots } from './forecast-plots.js';
