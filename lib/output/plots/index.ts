export { type ForecastPlot } from './chart.js';
export { forecastPlots } from './forecast-plots.js';
