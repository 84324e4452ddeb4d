/** How the command line runs the nest. */
import { nest, type Nester } from '../lib/index.js';

/** @param seconds limit of the search for each material process; the design's own effort when left out */
export function nesterFor(seconds: number | undefined): Nester {
  return (parts, stock, options) => {
    if (seconds === undefined) return nest(parts, stock, options);
    const start = performance.now();
    const elapsed = () => (performance.now() - start) / 1000 / seconds;
    return nest(parts, stock, { ...options, effort: seconds > 0 ? Infinity : 0, elapsed });
  };
}
