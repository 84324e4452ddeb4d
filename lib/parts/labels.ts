/** Lettering that stays on its part. */
import { bounds, type Path, type Point, sideOfContour } from '../geometry/index.js';
import { type Part, ringsOf, type TextMark, textStrokes } from '../part/index.js';

/** Lettering keeps this far off every edge and hole (mm): a scribed line has a width of its own. */
const clearance = 1;
/** Sizes that are tried, as shares of what was asked; smaller is not legible. */
const sizes = [1, 0.75, 0.5];
const minHeight = 3;
/** How far lettering is moved towards the middle of its part, in letter heights. */
const moves = [0, 1, 2, 4, 8];

/** The text with the widest number that a copy may have. */
function widest(text: string, quantity: number): string {
  return text.replaceAll('{n}', '0'.repeat(String(quantity).length));
}

/** Corners of strokes, and places between them that a straight stroke passes. */
function pointsOf(strokes: readonly Path[]): Point[] {
  return strokes.flatMap((stroke) =>
    stroke.flatMap((a, i) => {
      const b = stroke[i + 1];
      return b ? [a, { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }] : [a];
    }),
  );
}

function fits(part: Part, label: TextMark): boolean {
  const strokes = textStrokes({ ...label, text: widest(label.text, part.quantity) });
  const rings = ringsOf(part);
  return pointsOf(strokes).every(
    (point) =>
      rings.every((ring, i) => sideOfContour(ring, point, clearance) === (i === 0 ? 'inside' : 'outside')) &&
      part.holes.every(({ x, y, diameter }) => Math.hypot(point.x - x, point.y - y) > diameter / 2 + clearance),
  );
}

/** The label moved by so many letter heights towards a place. */
function moved(label: TextMark, to: Point, heights: number): TextMark {
  const away = Math.hypot(to.x - label.x, to.y - label.y);
  const share = away === 0 ? 0 : Math.min(1, (heights * label.height) / away);
  return { ...label, x: label.x + share * (to.x - label.x), y: label.y + share * (to.y - label.y) };
}

/**
 * The part with the lettering that fits on it: moved towards the middle, then smaller, where that helps; left out
 * where nothing does.
 */
export function withFittingLabels(part: Part): Part {
  const box = bounds(part.outline);
  const marks = part.marks.flatMap((label) => {
    if (label.kind === 'line') return label;
    // a part may be so short that its label was given no height
    if (!(label.height > 0)) return [];
    // seen from behind, x runs the other way
    const x = ((label.face === 'front' ? 1 : -1) * (box.minX + box.maxX)) / 2;
    const middle = { x, y: (box.minY + box.maxY) / 2 };
    const tried = sizes.flatMap((size) => {
      const sized = { ...label, height: label.height * size };
      return size < 1 && sized.height < minHeight ? [] : moves.map((heights) => moved(sized, middle, heights));
    });
    return tried.find((one) => fits(part, one)) ?? [];
  });
  return { ...part, marks };
}
