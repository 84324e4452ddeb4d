/** Stock items: one shape each, and something left within the margin. */
import { type Diagnostic, diagnostic } from '../diagnostic/index.js';
import type { StockItem } from './design.js';
import type { DesignFile } from './schema.js';
import { formatLength } from '../units/index.js';

/** What is wrong with the stock as it is written. */
export function checkStock(file: DesignFile, stock: readonly StockItem[]): Diagnostic[] {
  return stock.flatMap(({ size, outline, rollWidth, margin }, index) => {
    const found: Diagnostic[] = [];
    const shapes = [size, outline, rollWidth].filter((shape) => shape !== undefined).length;
    if (shapes !== 1) {
      const message = `stock[${index + 1}] must have exactly one of size, outline and rollWidth, but has ${shapes}`;
      const remedy = shapes === 0 ? 'add a size, such as 2440x1220' : 'keep only one of them';
      found.push(diagnostic('stock-shape', ['stock', index], message, remedy));
    }
    const narrow = size ? Math.min(size.width, size.height) : rollWidth;
    if (narrow !== undefined && 2 * margin >= narrow) {
      const message = `stock[${index + 1}]: a margin of ${formatLength(margin, file.units, 3)} leaves nothing of the ${size ? 'sheet' : 'roll'}`;
      const remedy = `use less than ${formatLength(narrow / 2, file.units, 3)}`;
      found.push(diagnostic('margin', ['stock', index, 'margin'], message, remedy));
    }
    return found;
  });
}
