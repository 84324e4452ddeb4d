export { type BurnPlot, burnPlots } from './burn.js';
export type { ForecastPlot } from './plot.js';
export { comparisonPlot } from './comparison.js';
export { forecastPlots } from './forecast-plots.js';
