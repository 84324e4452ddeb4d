import type { ProofPoint } from '../types.js';
import type { ArcTurn } from './types.js';

/** By how much the ends of an arc may differ in their distance from its centre, mm: NISTIR 6556, from memory. */
const radiusTolerance = 0.002;
const turnAround = 2 * Math.PI;

/** Why an arc cannot be: the id of its message, and what it takes. */
export interface Wrong {
  readonly id: 'arc-no-radius' | 'arc-ends' | 'arc-no-chord' | 'arc-span';
  readonly values: Readonly<Record<'off' | 'radius' | 'chord', string>>;
}

export type ReadTurn = { readonly kind: 'turn'; readonly turn: ArcTurn } | ({ readonly kind: 'wrong' } & Wrong);

function sweepOf(a: number, b: number, clockwise: boolean): number {
  const raw = (clockwise ? a - b : b - a) % turnAround;
  const turned = raw <= 1e-12 ? raw + turnAround : raw;
  return clockwise ? -turned : turned;
}

function wrong(id: Wrong['id'], values: Partial<Wrong['values']> = {}): ReadTurn {
  return { kind: 'wrong', id, values: { off: '', radius: '', chord: '', ...values } };
}

/** An arc in centre form: I and J from its start. Ends that are the same mean a full turn. */
export function turnByCentre(from: ProofPoint, to: ProofPoint, i: number, j: number, clockwise: boolean): ReadTurn {
  const cx = from.x + i;
  const cy = from.y + j;
  const radius = Math.hypot(i, j);
  if (radius === 0) return wrong('arc-no-radius');
  const off = Math.abs(Math.hypot(to.x - cx, to.y - cy) - radius);
  if (off > radiusTolerance) return wrong('arc-ends', { off: `${off.toFixed(4)} mm` });
  const sweep = sweepOf(Math.atan2(-j, -i), Math.atan2(to.y - cy, to.x - cx), clockwise);
  return { kind: 'turn', turn: { cx, cy, radius, sweep } };
}

/** An arc in radius form: the shorter arc for a positive radius, the longer for a negative one. */
export function turnByRadius(from: ProofPoint, to: ProofPoint, r: number, clockwise: boolean): ReadTurn {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const chord = Math.hypot(dx, dy);
  const radius = Math.abs(r);
  if (chord === 0) return wrong('arc-no-chord');
  if (chord > 2 * radius + 2 * radiusTolerance)
    return wrong('arc-span', { radius: `${radius} mm`, chord: `${chord.toFixed(4)} mm` });
  const height = Math.sqrt(Math.max(0, radius * radius - (chord * chord) / 4));
  // the centre of the shorter arc lies right of the chord for a clockwise arc
  const side = clockwise === r > 0 ? -1 : 1;
  const cx = (from.x + to.x) / 2 - (side * height * dy) / chord;
  const cy = (from.y + to.y) / 2 + (side * height * dx) / chord;
  const sweep = sweepOf(Math.atan2(from.y - cy, from.x - cx), Math.atan2(to.y - cy, to.x - cx), clockwise);
  return { kind: 'turn', turn: { cx, cy, radius, sweep } };
}
