/**
 * How far apart two placed outlines are, or how far they reach into each other. Plain arithmetic on the corners as
 * placed, of its own: nothing here is shared with the nest that it checks.
 */
import { element } from '../../lib/geometry/index.js';

export type PlainRing = readonly (readonly [number, number])[];

/** A solid: its outer ring and its openings, in any sense of travel. */
export interface PlainSolid {
  readonly outer: PlainRing;
  readonly openings: readonly PlainRing[];
}

/** Points looked at on each stretch of an edge between two crossings. */
const LOOKS = 8;

/** The ring turned about its origin (mirrored first, x to -x), then moved. */
export function placedSolid(ring: PlainRing, x: number, y: number, rotationDeg: number, mirrored = false): PlainRing {
  const exact: Readonly<Record<number, readonly [number, number]>> = {
    0: [1, 0],
    90: [0, 1],
    180: [-1, 0],
    270: [0, -1],
  };
  const angle = (rotationDeg * Math.PI) / 180;
  const [cos, sin] = exact[((rotationDeg % 360) + 360) % 360] ?? [Math.cos(angle), Math.sin(angle)];
  const sign = mirrored ? -1 : 1;
  return ring.map(([u, v]) => [x + sign * u * cos - v * sin, y + sign * u * sin + v * cos]);
}

function toSegment(px: number, py: number, ax: number, ay: number, bx: number, by: number): number {
  const dx = bx - ax;
  const dy = by - ay;
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((px - ax) * dx + (py - ay) * dy) / square));
  return Math.hypot(px - ax - t * dx, py - ay - t * dy);
}

/** Distance to the boundary, negative within the material. */
function signedDistance(px: number, py: number, solid: PlainSolid): number {
  let min = Infinity;
  let inside = false;
  for (const ring of [solid.outer, ...solid.openings]) {
    for (const [i, [ax, ay]] of ring.entries()) {
      const [bx, by] = element(ring, (i + 1) % ring.length);
      min = Math.min(min, toSegment(px, py, ax, ay, bx, by));
      if (ay > py !== by > py && px < ax + ((py - ay) / (by - ay)) * (bx - ax)) inside = !inside;
    }
  }
  return inside ? -min : min;
}

/** Shares along an edge at which the boundary of the solid crosses it, with both ends. */
function crossings(ax: number, ay: number, bx: number, by: number, solid: PlainSolid): number[] {
  const at = [0, 1];
  for (const ring of [solid.outer, ...solid.openings]) {
    ring.forEach(([cx, cy], i) => {
      const [dx, dy] = element(ring, (i + 1) % ring.length);
      const cross = (bx - ax) * (dy - cy) - (by - ay) * (dx - cx);
      if (cross === 0) return;
      const t = ((cx - ax) * (dy - cy) - (cy - ay) * (dx - cx)) / cross;
      const u = ((cx - ax) * (by - ay) - (cy - ay) * (bx - ax)) / cross;
      if (t > 0 && t < 1 && u >= -1e-12 && u <= 1 + 1e-12) at.push(t);
    });
  }
  return at.sort((p, q) => p - q);
}

/** Least signed distance from the boundary of one to the other: negative by the depth of the deepest point looked at. */
function minAlong(one: PlainSolid, other: PlainSolid): number {
  let min = Infinity;
  for (const ring of [one.outer, ...one.openings]) {
    ring.forEach(([ax, ay], i) => {
      const [bx, by] = element(ring, (i + 1) % ring.length);
      const at = crossings(ax, ay, bx, by, other);
      for (let k = 0; k + 1 < at.length; k++) {
        for (let look = 0; look <= LOOKS; look++) {
          const t = element(at, k) + ((element(at, k + 1) - element(at, k)) * look) / LOOKS;
          min = Math.min(min, signedDistance(ax + t * (bx - ax), ay + t * (by - ay), other));
        }
      }
    });
  }
  return min;
}

/** A point well within the material: the deepest of a lattice over its box. */
function innerPoint(solid: PlainSolid): readonly [number, number] {
  const xs = solid.outer.map(([x]) => x);
  const ys = solid.outer.map(([, y]) => y);
  const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  let best: readonly [number, number] = [x0, y0];
  let depth = Infinity;
  for (let i = 1; i < 16; i++) {
    for (let j = 1; j < 16; j++) {
      const point = [x0 + ((x1 - x0) * i) / 16, y0 + ((y1 - y0) * j) / 16] as const;
      const d = signedDistance(point[0], point[1], solid);
      if (d < depth) [best, depth] = [point, d];
    }
  }
  return best;
}

function boxGap(a: PlainSolid, b: PlainSolid): number {
  const span = (solid: PlainSolid, axis: 0 | 1): [number, number] => {
    const values = solid.outer.map((p) => p[axis]);
    return [Math.min(...values), Math.max(...values)];
  };
  const gap = (axis: 0 | 1): number => {
    const [a0, a1] = span(a, axis);
    const [b0, b1] = span(b, axis);
    return Math.max(b0 - a1, a0 - b1);
  };
  return Math.max(gap(0), gap(1));
}

/**
 * Distance between two solids, or minus the depth to which the one's boundary reaches into the other. Solids whose boxes
 * are `far` apart are not looked at; the answer is then the boxes' distance.
 */
export function gapBetween(a: PlainSolid, b: PlainSolid, far = 0): number {
  const apart = boxGap(a, b);
  if (apart >= far && apart > 0) return apart;
  const edges = Math.min(minAlong(a, b), minAlong(b, a));
  // equal outlines, one upon the other, have boundary edges that nowhere reach inside
  const inner = Math.min(signedDistance(...innerPoint(a), b), signedDistance(...innerPoint(b), a));
  return Math.min(edges, inner < -1e-6 ? inner : edges);
}
