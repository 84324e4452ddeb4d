export type { BookForecast, BookInput, BookSheet, CutPicture, ForecastRow } from './input.js';
export { buildBook } from './page.js';
export { bookStyle } from './style.js';
