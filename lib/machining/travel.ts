/** Short ways through a list of cuts. */
import { distance, type Point } from '../geometry/index.js';

/** Something to be cut: where the tool goes down and where it comes up. A closed ring comes up where it went down. */
export interface Stop {
  readonly from: Point;
  readonly to: Point;
}

/** A stop on the way, `reversed` when it is run from its other end. */
export interface Leg {
  readonly stop: number;
  readonly reversed: boolean;
}

/** Rounds of improvement over all pairs, at most; each costs n² looks. */
const MOST_ROUNDS = 30;
/** Looks at pairs in all, so that thousands of holes do not take minutes. */
const MOST_LOOKS = 3e7;
/** Longest run of stops that is moved elsewhere as it is. */
const MOST_MOVED = 3;
/** A gain below this (mm) is none. */
const LEAST_GAIN = 1e-6;

function nearestNeighbour(stops: readonly Stop[], start: Point): Leg[] {
  const left = new Set(stops.keys());
  const legs: Leg[] = [];
  let at = start;
  while (left.size > 0) {
    let best: Leg | null = null;
    let least = Infinity;
    for (const stop of left) {
      const { from, to } = stops[stop]!;
      for (const [end, isReversed] of [
        [from, false],
        [to, true],
      ] as const) {
        const way = distance(at, end);
        if (way < least) {
          least = way;
          best = { stop, reversed: isReversed };
        }
      }
    }
    legs.push(best!);
    left.delete(best!.stop);
    at = exit(stops, best!);
  }
  return legs;
}

function entry(stops: readonly Stop[], leg: Leg): Point {
  return leg.reversed ? stops[leg.stop]!.to : stops[leg.stop]!.from;
}

function exit(stops: readonly Stop[], leg: Leg): Point {
  return leg.reversed ? stops[leg.stop]!.from : stops[leg.stop]!.to;
}

function turned(legs: readonly Leg[]): Leg[] {
  return legs.map((leg) => ({ stop: leg.stop, reversed: !leg.reversed })).reverse();
}

/**
 * Runs the part of the way from i to k backwards wherever that shortens it (2-opt: Croes, A method for solving
 * traveling-salesman problems, Operations Research 6, 1958, from memory). Returns whether it did.
 */
function uncross(stops: readonly Stop[], legs: Leg[], start: Point): boolean {
  let better = false;
  for (let i = 0; i < legs.length; i++) {
    for (let k = i + 1; k < legs.length; k++) {
      const before = i === 0 ? start : exit(stops, legs[i - 1]!);
      const next = legs[k + 1];
      const first = entry(stops, legs[i]!);
      const last = exit(stops, legs[k]!);
      const now = distance(before, first) + (next === undefined ? 0 : distance(last, entry(stops, next)));
      const then = distance(before, last) + (next === undefined ? 0 : distance(first, entry(stops, next)));
      if (then < now - LEAST_GAIN) {
        legs.splice(i, k - i + 1, ...turned(legs.slice(i, k + 1)));
        better = true;
      }
    }
  }
  return better;
}

/**
 * Moves runs of up to three stops to where they lie on the way (Or-opt: Or, Traveling salesman-type combinatorial
 * problems, thesis, Northwestern University 1976, from memory). Returns whether it did.
 */
function relocate(stops: readonly Stop[], legs: Leg[], start: Point): boolean {
  let better = false;
  const way = (a: Point | undefined, b: Point | undefined): number =>
    a === undefined || b === undefined ? 0 : distance(a, b);
  for (let size = 1; size <= MOST_MOVED; size++) {
    for (let i = 0; i + size <= legs.length; i++) {
      const run = legs.slice(i, i + size);
      const rest = [...legs.slice(0, i), ...legs.slice(i + size)];
      const out = (at: number): Point => (at === 0 ? start : exit(stops, rest[at - 1]!));
      const into = (at: number): Point | undefined => (at < rest.length ? entry(stops, rest[at]!) : undefined);
      const first = entry(stops, run[0]!);
      const last = exit(stops, run[size - 1]!);
      const saved = way(out(i), first) + way(last, into(i)) - way(out(i), into(i));
      let best = LEAST_GAIN;
      let place: { at: number; run: Leg[] } | null = null;
      for (let at = 0; at <= rest.length; at++) {
        if (at === i) continue;
        const base = saved + way(out(at), into(at));
        const straight = base - way(out(at), first) - way(last, into(at));
        const back = base - way(out(at), last) - way(first, into(at));
        if (straight > best) {
          best = straight;
          place = { at, run };
        }
        if (back > best) {
          best = back;
          place = { at, run: turned(run) };
        }
      }
      if (place !== null) {
        rest.splice(place.at, 0, ...place.run);
        legs.splice(0, legs.length, ...rest);
        better = true;
      }
    }
  }
  return better;
}

/** Length of the way between cuts (mm), from `start` to the last stop. */
export function travelLength(stops: readonly Stop[], legs: readonly Leg[], start: Point): number {
  let sum = 0;
  let at = start;
  for (const leg of legs) {
    sum += distance(at, entry(stops, leg));
    at = exit(stops, leg);
  }
  return sum;
}

/**
 * A short way through all stops from `start`, not returning: nearest neighbour first, then uncrossed and relocated
 * until nothing gains or the limit of effort is reached. The same stops give the same way. Cost n² a round.
 */
export function shortWay(stops: readonly Stop[], start: Point): Leg[] {
  const legs = nearestNeighbour(stops, start);
  const rounds = Math.min(MOST_ROUNDS, Math.ceil(MOST_LOOKS / (4 * stops.length * stops.length + 1)));
  for (let round = 0; round < rounds; round++) {
    const uncrossed = uncross(stops, legs, start);
    const moved = relocate(stops, legs, start);
    if (!uncrossed && !moved) break;
  }
  return legs;
}
