/** From parts to the dish as it stands. */
import { placeFasteners } from './fasteners.js';
import { type AssemblySource, placeParts } from './places.js';
import type { Assembly } from './types.js';

/** Every part and every fastener at its place. */
export function assemble(source: AssemblySource): Assembly {
  const placed = placeParts(source);
  return { placed, fasteners: placeFasteners(source, placed) };
}
