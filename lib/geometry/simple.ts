import { edgeLength } from './arc.js';
import { indexBoxes } from './box-index.js';
import { edgeBounds, edgesOf } from './contour.js';
import { element } from './element.js';
import { intersectEdges } from './intersect.js';
import { TOUCH } from './precision.js';
import type { Contour, Point } from './types.js';

export type Simplicity =
  | { readonly kind: 'simple' }
  /** Edges `first` and `second` intersect at `place`, where they should not. */
  | { readonly kind: 'intersects-itself'; readonly first: number; readonly second: number; readonly place: Point };

/** True at the end of edge a and the start of edge b, by the fractions of both. */
function isJoint(onA: number, lengthA: number, onB: number, lengthB: number, samePoint: number): boolean {
  return (1 - onA) * lengthA <= samePoint && onB * lengthB <= samePoint;
}

/**
 * Whether a closed ring neither crosses nor touches itself; if not, where. Neighbouring edges may meet only at their
 * common vertex, within `samePoint` mm.
 */
export function simplicity(contour: Contour, samePoint: number): Simplicity {
  const edges = edgesOf(contour).map((edge) => ({ edge, length: edgeLength(edge), box: edgeBounds(edge) }));
  const index = indexBoxes(edges.map(({ box }) => box));
  for (const [first, a] of edges.entries()) {
    if (a.length === 0) continue;
    for (const second of index.overlapping(a.box, TOUCH)) {
      const b = element(edges, second);
      if (second <= first || b.length === 0) continue;
      const contact = intersectEdges(a.edge, b.edge);
      if (contact.kind === 'none') continue;
      const wrong = contact.points.find(({ onA, onB }) => {
        if (second === first + 1 && isJoint(onA, a.length, onB, b.length, samePoint)) return false;
        return !(first === 0 && second === edges.length - 1 && isJoint(onB, b.length, onA, a.length, samePoint));
      });
      if (wrong !== undefined) {
        return { kind: 'intersects-itself', first, second, place: { x: wrong.x, y: wrong.y } };
      }
    }
  }
  return { kind: 'simple' };
}
