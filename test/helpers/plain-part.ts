/** A part of a given outline, for tests that need no more than its shape. */
import type { Contour } from '../../lib/geometry/index.js';
import { blank, type Part } from '../../lib/part/index.js';

export function plainPart(id: string, outline: Contour, more: Partial<Part> = {}): Part {
  return blank({ id, kind: 'extra', name: id, material: 'ply', thickness: 12, quantity: 1, outline, ...more });
}
