export type { BookBurn, BookForecast, BookSheet, BookStand, CutPicture, CutTool, ForecastRow } from './input.js';
export { buildBook } from './page.js';
export { bookStyle } from './style.js';
