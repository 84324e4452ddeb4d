export type { ForecastPlot } from './plot.js';
export { forecastPlots } from './forecast-plots.js';
