import { element } from './element.js';
import { edgeLength } from './arc.js';
import { indexBoxes } from './box-index.js';
import { edgeBounds, edgesOf } from './contour.js';
import { intersectEdges, type Intersection } from './intersect.js';
import { TOUCH } from './precision.js';
import type { Contour, Point } from './types.js';

export type Simplicity =
  | { readonly kind: 'simple' }
  /** Edges `first` and `second` meet at `place`, where they should not. */
  | { readonly kind: 'meets-itself'; readonly first: number; readonly second: number; readonly place: Point };

/** True for an intersection at the end of edge a and the start of edge b. */
function isJoint(at: Intersection, lengthA: number, lengthB: number, samePoint: number): boolean {
  return (1 - at.onA) * lengthA <= samePoint && at.onB * lengthB <= samePoint;
}

/**
 * Whether a closed ring neither crosses nor touches itself; if not, where. Neighbouring edges may meet only at their
 * common vertex, within `samePoint` mm.
 */
export function simplicity(contour: Contour, samePoint: number): Simplicity {
  const edges = edgesOf(contour);
  const lengths = edges.map(edgeLength);
  const boxes = edges.map(edgeBounds);
  const index = indexBoxes(boxes);
  const n = edges.length;
  for (let first = 0; first < n; first++) {
    if (lengths[first] === 0) continue;
    for (const second of index.touching(element(boxes, first), TOUCH)) {
      if (second <= first || lengths[second] === 0) continue;
      const contact = intersectEdges(element(edges, first), element(edges, second));
      if (contact.kind === 'none') continue;
      const wrong = contact.points.find((m) => {
        if (second === first + 1 && isJoint(m, element(lengths, first), element(lengths, second), samePoint))
          return false;
        const turned = { ...m, onA: m.onB, onB: m.onA };
        return !(
          first === 0 &&
          second === n - 1 &&
          isJoint(turned, element(lengths, second), element(lengths, first), samePoint)
        );
      });
      if (wrong !== undefined) {
        return { kind: 'meets-itself', first, second, place: { x: wrong.x, y: wrong.y } };
      }
    }
  }
  return { kind: 'simple' };
}
