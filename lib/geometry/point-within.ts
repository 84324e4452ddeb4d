import { element } from './element.js';
import { flatten } from './flatten.js';
import { sideOfContour } from './inside.js';
import type { Contour, Point } from './types.js';

/** A point well within an anticlockwise ring: its centre of area, or, where that falls outside, a point beside its widest level cut. */
export function pointWithin(ring: Contour): Point {
  const polygon = flatten(ring, 0.01, 'on');
  const origin = element(polygon, 0);
  let twice = 0;
  let x = 0;
  let y = 0;
  polygon.forEach((p, i) => {
    const q = element(polygon, (i + 1) % polygon.length);
    const part = (p.x - origin.x) * (q.y - origin.y) - (q.x - origin.x) * (p.y - origin.y);
    twice += part;
    x += part * (p.x + q.x - 2 * origin.x);
    y += part * (p.y + q.y - 2 * origin.y);
  });
  const centre = { x: origin.x + x / (3 * twice), y: origin.y + y / (3 * twice) };
  if (twice > 0 && sideOfContour(ring, centre, 0) === 'inside') return centre;

  let best = { width: -1, point: { x: origin.x, y: origin.y } };
  for (const level of polygon.map((p, i) => (p.y + element(polygon, (i + 1) % polygon.length).y) / 2)) {
    const at = polygon
      .flatMap((p, i) => {
        const q = element(polygon, (i + 1) % polygon.length);
        return p.y <= level !== q.y <= level ? [p.x + ((level - p.y) / (q.y - p.y)) * (q.x - p.x)] : [];
      })
      .sort((a, b) => a - b);
    for (let i = 0; i + 1 < at.length; i += 2) {
      const width = element(at, i + 1) - element(at, i);
      if (width > best.width) best = { width, point: { x: (element(at, i) + element(at, i + 1)) / 2, y: level } };
    }
  }
  return best.point;
}
