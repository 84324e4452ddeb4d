import type { Contour } from '../geometry/index.js';
import type { Part } from './types.js';

/** The outline of a part. @throws RangeError for a part without one, which none is */
export function outlineOf(part: Pick<Part, 'id' | 'contours'>): Contour {
  const [outline] = part.contours;
  if (outline?.operation !== 'outline') throw new RangeError(`part ${part.id} has no outline`);
  return outline.vertices;
}
