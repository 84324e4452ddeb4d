/** Lettering that stays on its part. */
import { bounds, type Path, type Point, sideOfContour, strokeText } from '../geometry/index.js';
import type { Label, Part } from './types.js';

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

function fits(part: Part, label: Label): boolean {
  const strokes = strokeText(widest(label.text, part.quantity), label, label.height, label.angle);
  return pointsOf(strokes).every(
    (point) =>
      part.contours.every(({ operation, vertices }) => {
        if (operation === 'scribe') return true;
        return sideOfContour(vertices, point, clearance) === (operation === 'outline' ? 'inside' : 'outside');
      }) && part.drills.every(({ x, y, diameter }) => Math.hypot(point.x - x, point.y - y) > diameter / 2 + clearance),
  );
}

/** The label moved by so many letter heights towards a place. */
function moved(label: Label, to: Point, heights: number): Label {
  const away = Math.hypot(to.x - label.x, to.y - label.y);
  const share = away === 0 ? 0 : Math.min(1, (heights * label.height) / away);
  return { ...label, x: label.x + share * (to.x - label.x), y: label.y + share * (to.y - label.y) };
}

/**
 * The part with the lettering that fits on it: moved towards the middle, then smaller, where that helps; left out
 * where nothing does.
 */
export function withFittingLabels(part: Part): Part {
  const box = bounds(part.contours[0]?.vertices ?? []);
  const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  const labels = part.labels.flatMap((label) => {
    const tried = sizes.flatMap((size) => {
      const sized = { ...label, height: label.height * size };
      return size < 1 && sized.height < minHeight ? [] : moves.map((heights) => moved(sized, middle, heights));
    });
    return tried.find((one) => fits(part, one)) ?? [];
  });
  return { ...part, labels };
}
