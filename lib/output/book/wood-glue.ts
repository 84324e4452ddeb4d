/** How much wood glue a dish takes: faces that lie on each other, and the walls of slots and grooves. */
import { bounds, contourFromPoints, convexHull, flatten, perimeter, signedArea } from '../../geometry/index.js';
import type { Part } from '../../part/index.js';
import type { BookInput } from './input.js';
import { partArea } from './sheet-picture.js';

/** Chords of curved edges, mm. */
const chord = 0.1;
/** An outline this much longer than its hull has slots, mm. */
const slotted = 1;

/** Walls of the slots of a board, and walls and floors of its grooves. */
function inBoard({ openings, pockets, thickness }: Part): number {
  const walls = openings.reduce((sum, ring) => sum + perimeter(ring) * thickness, 0);
  return pockets.reduce((sum, { ring, depth }) => sum + perimeter(ring) * depth + Math.abs(signedArea(ring)), walls);
}

/** Walls and ends of the slots of a hub's plate for the ribs: what its outline is longer than its hull, and the slots' mouths. */
function inHub({ outline, thickness }: Part, ribs: number, ribThickness: number): number {
  const ring = flatten(outline, chord, 'on');
  const [own, hull] = [ring, convexHull(ring)].map((points) => perimeter(contourFromPoints(points))) as [
    number,
    number,
  ];
  const longer = own - hull;
  return longer < slotted ? 0 : (longer + ribs * ribThickness) * thickness;
}

/** The face of a cleat that lies against its rib. */
function againstRib({ outline, thickness }: Part): number {
  const { minX, maxX } = bounds(outline);
  return (maxX - minX) * thickness;
}

/** mm² of wood that is glued. */
export function woodGlueArea({ dish, parts }: BookInput): number {
  const ribs = dish.layout.ribs.length;
  return parts.reduce((sum, part) => {
    switch (part.kind) {
      case 'hub':
        return sum + part.quantity * (partArea(part) + inHub(part, ribs, dish.ribThickness));
      case 'cleat':
        return sum + part.quantity * (partArea(part) + againstRib(part));
      case 'splice':
        return sum + part.quantity * partArea(part);
      case 'board':
        return sum + part.quantity * inBoard(part);
      default:
        return sum;
    }
  }, 0);
}
