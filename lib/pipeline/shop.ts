/** The shop drawings of a job, for the book and for print. */
import { partDrawings, type ShopDrawing } from '../output/shop/index.js';
import type { Prepared } from './types.js';

/** One of every part and aid. */
export const shopDrawings = ({ design, parts, aids }: Pick<Prepared, 'design' | 'parts' | 'aids'>): ShopDrawing[] =>
  partDrawings(design, [...parts, ...aids]);
