/**
 * How long a machine takes for its moves: it gathers speed and slows down evenly along the path (a trapezoid of speed
 * over time), and never goes faster than a corner or an arc allows.
 */
import { distance, element } from '../geometry/index.js';
import { lengthOf, type Move, type Point3 } from './moves.js';
import type { RouterMachine } from './router/machine.js';

export interface Driving {
  /** mm/min */
  readonly travelSpeed: number;
  /** Along the path and towards the middle of an arc, mm/s²; infinite for none. */
  readonly acceleration: number;
  /** How corners are run: to a stop at each move's end, exactly, or rounded by up to a tolerance (mm). */
  readonly corners: 'stop' | 'exact' | { readonly tolerance: number };
}

/** How a machine drives by its keys: exactly round corners, to a stop in each, or rounded by up to the tolerance. */
export function drivingOf({
  travelSpeed,
  acceleration,
  pathMode,
  pathTolerance,
}: Pick<RouterMachine, 'travelSpeed' | 'acceleration' | 'pathMode' | 'pathTolerance'>): Driving {
  const corners =
    pathMode === 'continuous' ? { tolerance: pathTolerance } : pathMode === 'exact' ? pathMode : ('stop' as const);
  return { travelSpeed, acceleration, corners };
}

/** What turns by less than this (rad) is run without slowing down, as a corner of no more than rounding; from memory. */
const straight = Math.PI / 180;

type Direction = readonly [number, number, number];

interface Leg {
  /** mm */
  readonly length: number;
  /** mm/s */
  readonly speed: number;
  readonly into: Direction;
  readonly out: Direction;
}

function directions(from: Point3, move: Move, length: number): readonly [Direction, Direction] {
  const { to } = move;
  const rise = (to.z - from.z) / length;
  if (move.kind !== 'arc') {
    const along: Direction = [(to.x - from.x) / length, (to.y - from.y) / length, rise];
    return [along, along];
  }
  const { centre, clockwise } = move;
  const level = Math.sqrt(Math.max(0, 1 - rise * rise)) * (clockwise ? 1 : -1);
  const radius = distance(centre, to);
  const tangent = ({ x, y }: Point3): Direction => [
    (level * (y - centre.y)) / radius,
    (-level * (x - centre.x)) / radius,
    rise,
  ];
  return [tangent(from), tangent(to)];
}

function legOf(from: Point3, move: Move, { travelSpeed, acceleration }: Driving): Leg | null {
  const length = lengthOf(from, move);
  if (length < 1e-9) return null;
  const wanted = (move.kind === 'rapid' ? travelSpeed : move.feed) / 60;
  // towards the middle: v²/r
  const round = move.kind === 'arc' ? Math.sqrt(acceleration * distance(move.centre, move.to)) : Infinity;
  const [into, out] = directions(from, move, length);
  return { length, speed: Math.min(wanted, round), into, out };
}

/**
 * Fastest that a corner is run (mm/s). A circle that touches both legs and stays within d of the corner has the radius
 * d·cos(w/2)/(1 − cos(w/2)) where the path turns by w, and is run with v² = a·r.
 */
function cornerSpeed(before: Leg, after: Leg, { acceleration, corners }: Driving): number {
  if (corners === 'stop') return 0;
  const dot = before.out.reduce((sum, one, i) => sum + one * element(after.into, i), 0);
  const turn = Math.acos(Math.max(-1, Math.min(1, dot)));
  if (turn <= straight) return Infinity;
  if (corners === 'exact') return 0;
  const cos = Math.cos(turn / 2);
  return Math.sqrt((acceleration * corners.tolerance * cos) / (1 - cos));
}

function timeOf(length: number, from: number, to: number, speed: number, acceleration: number): number {
  if (acceleration === Infinity) return length / speed;
  const top = Math.min(speed, Math.sqrt(acceleration * length + (from * from + to * to) / 2));
  const ramps = (2 * top * top - from * from - to * to) / (2 * acceleration);
  return (2 * top - from - to) / acceleration + Math.max(0, length - ramps) / top;
}

/** Time of moves from standstill to standstill (s). */
export function secondsOf(start: Point3, moves: readonly Move[], driving: Driving): number {
  const { acceleration } = driving;
  const legs: Leg[] = [];
  let at = start;
  for (const move of moves) {
    const leg = legOf(at, move, driving);
    if (leg !== null) legs.push(leg);
    at = move.to;
  }
  const reached = (from: number, length: number): number => Math.sqrt(from * from + 2 * acceleration * length);
  const speeds = [0];
  for (const [i, leg] of legs.entries()) {
    const next = legs[i + 1];
    const corner = next === undefined ? 0 : Math.min(cornerSpeed(leg, next, driving), next.speed);
    speeds.push(Math.min(corner, leg.speed, reached(element(speeds, i), leg.length)));
  }
  for (let i = legs.length - 1; i >= 0; i -= 1)
    speeds[i] = Math.min(element(speeds, i), reached(element(speeds, i + 1), element(legs, i).length));
  return legs.reduce(
    (sum, { length, speed }, i) =>
      sum + timeOf(length, element(speeds, i), element(speeds, i + 1), speed, acceleration),
    0,
  );
}
