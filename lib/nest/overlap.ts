/**
 * A last look at a packing before it counts as valid, on the outlines themselves and not on the no-fit regions, so
 * that a wrong region costs a try and never a sheet.
 */
import { cyclic, element, type Polygon } from '../geometry/index.js';
import type { Packing } from './packing.js';
import type { NestShape } from './shape.js';
import { f64, i32 } from '../geometry/typed-arrays.js';

/** Deeper overlaps than this (mm) count. */
const DEEP = 5e-7;

interface Solid {
  readonly rings: readonly Polygon[];
  readonly x: number;
  readonly y: number;
}

/** Depth of a point within a solid's rings; 0 outside. */
function depthIn({ rings, x, y }: Solid, px: number, py: number): number {
  let inside = false;
  let min = Infinity;
  for (const ring of rings) {
    let p = cyclic(ring, -1);
    for (const q of ring) {
      const [ax, ay, bx, by] = [p.x + x, p.y + y, q.x + x, q.y + y];
      if (ay > py !== by > py && px < ax + ((py - ay) * (bx - ax)) / (by - ay)) inside = !inside;
      const square = (bx - ax) ** 2 + (by - ay) ** 2;
      const t = Math.max(0, Math.min(1, ((px - ax) * (bx - ax) + (py - ay) * (by - ay)) / square));
      min = Math.min(min, (px - ax - t * (bx - ax)) ** 2 + (py - ay - t * (by - ay)) ** 2);
      p = q;
    }
  }
  return inside ? Math.sqrt(min) : 0;
}

/** Whether the boundary of one reaches into the other: looked at midway between crossings. */
function reaches(one: Solid, other: Solid): boolean {
  for (const ring of one.rings) {
    for (const [i, p] of ring.entries()) {
      const q = cyclic(ring, i + 1);
      const [ax, ay, ex, ey] = [p.x + one.x, p.y + one.y, q.x - p.x, q.y - p.y];
      const at = [0, 1];
      for (const boundary of other.rings) {
        let c = cyclic(boundary, -1);
        for (const d of boundary) {
          const [fx, fy] = [d.x - c.x, d.y - c.y];
          const [ux, uy] = [c.x + other.x - ax, c.y + other.y - ay];
          const turn = ex * fy - ey * fx;
          const t = (ux * fy - uy * fx) / turn;
          const u = (ux * ey - uy * ex) / turn;
          if (t > 0 && t < 1 && u >= 0 && u <= 1) at.push(t);
          c = d;
        }
      }
      at.sort((a, b) => a - b);
      for (let k = 0; k + 1 < at.length; k++) {
        const t = (element(at, k) + element(at, k + 1)) / 2;
        if (depthIn(other, ax + t * ex, ay + t * ey) > DEEP) return true;
      }
    }
  }
  return false;
}

const ringsOf = ({ solid, openings }: NestShape): Polygon[] => [...solid, ...openings];

/** Whether any two pieces of a packing, grown by half the spacing each, overlap. */
export function hasOverlap(packing: Packing): boolean {
  const n = packing.pieces.length;
  const solids = packing.pieces.map((_, i): Solid => {
    return { rings: ringsOf(packing.orientation(i).shape), x: f64(packing.x, i), y: f64(packing.y, i) };
  });
  const boxes = solids.map(({ rings, x, y }) => {
    const xs = element(rings, 0).map((p) => p.x + x);
    const ys = element(rings, 0).map((p) => p.y + y);
    return { x0: Math.min(...xs), x1: Math.max(...xs), y0: Math.min(...ys), y1: Math.max(...ys) };
  });
  for (let i = 0; i < n; i++) {
    const a = element(boxes, i);
    for (let j = 0; j < i; j++) {
      const b = element(boxes, j);
      if (packing.sheet[i] !== packing.sheet[j] || i32(packing.sheet, i) < 0) continue;
      if (a.x0 >= b.x1 - DEEP || b.x0 >= a.x1 - DEEP || a.y0 >= b.y1 - DEEP || b.y0 >= a.y1 - DEEP) continue;
      if (reaches(element(solids, i), element(solids, j)) || reaches(element(solids, j), element(solids, i)))
        return true;
    }
  }
  return false;
}
