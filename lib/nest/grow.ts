/** Rings of straight edges grown or shrunk by a distance, never by less than asked. */
import { cyclic, type Point, type Polygon } from '../geometry/index.js';
import { unionByFillRule } from './clipping.js';

/** Rounded corners stand out by at most this (mm) beyond the true arc; straight edges are exact. */
const CORNER_EXCESS = 0.05;

/** The raw parallel curve on the right of the ring; it crosses itself at corners that close. */
function parallelCurve(ring: Polygon, distance: number): Point[] {
  const curve: Point[] = [];
  const radius = Math.abs(distance);
  const widest = radius > CORNER_EXCESS ? 2 * Math.acos(1 / (1 + CORNER_EXCESS / radius)) : Math.PI / 2;
  for (let i = 0; i < ring.length; i++) {
    const before = cyclic(ring, i - 1);
    const at = cyclic(ring, i);
    const after = cyclic(ring, i + 1);
    const inAngle = Math.atan2(at.y - before.y, at.x - before.x);
    let turn = Math.atan2(after.y - at.y, after.x - at.x) - inAngle;
    if (turn > Math.PI) turn -= 2 * Math.PI;
    if (turn < -Math.PI) turn += 2 * Math.PI;
    const off = (angle: number, reach: number): void => {
      curve.push({ x: at.x + Math.sin(angle) * reach, y: at.y - Math.cos(angle) * reach });
    };
    if (turn * distance >= 0) {
      // an opening corner: tangents to the arc, whose corners stand just outside it
      const pieces = Math.max(1, Math.ceil(Math.abs(turn) / Math.min(widest, Math.PI / 2)));
      const reach = distance / Math.cos(turn / pieces / 2);
      for (let k = 0; k < pieces; k++) off(inAngle + (turn * (k + 0.5)) / pieces, reach);
    } else {
      off(inAngle, distance);
      curve.push(at);
      off(inAngle + turn, distance);
    }
  }
  return curve;
}

/** An anticlockwise outer ring grown by `distance` mm (negative: shrunk), with the holes that growing may close in. */
export function growOuter(ring: Polygon, distance: number): Polygon[] {
  return distance === 0 ? [ring] : unionByFillRule([parallelCurve(ring, distance)], 'positive');
}

/** A clockwise opening with its surroundings grown by `distance` mm (0 or more): the clockwise rings that remain. */
export function shrinkOpening(ring: Polygon, distance: number): Polygon[] {
  if (distance === 0) return [ring];
  return unionByFillRule([parallelCurve(ring, distance)], 'negative').map((left) => [...left].reverse());
}
