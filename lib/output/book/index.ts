export type { BookBurn, BookForecast, BookSheet, BookStand, CutPicture, ForecastRow } from './input.js';
export { buildBook } from './page.js';
export { bookStyle } from './style.js';
