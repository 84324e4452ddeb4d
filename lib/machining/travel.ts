/** Short routes through a list of cuts. */
import { i32 } from '../geometry/typed-arrays.js';
import { distance, element, indexBoxes, type Point } from '../geometry/index.js';

/** Something to be cut: where the tool goes down and where it comes up. A closed ring comes up where it went down. */
export interface RouteStop {
  readonly from: Point;
  readonly to: Point;
}

/** A stop on the route, `reversed` when it is run from its other end. */
export interface Leg {
  readonly stop: number;
  readonly reversed: boolean;
}

/** Rounds of improvement over all stops, at most. */
const MAX_ROUNDS = 50;
/** Neighbours of a stop that are looked at for a better connection. */
const NEIGHBOURS = 12;
/** Longest run of stops that is moved elsewhere as it is. */
const MAX_MOVED = 3;
/** A gain below this (mm) is none. */
const MIN_GAIN = 1e-6;

/** Length of the travel from a to b; none where the route ends. */
function span(a: Point, b: Point | undefined): number {
  return b === undefined ? 0 : distance(a, b);
}

function entry(stops: readonly RouteStop[], leg: Leg): Point {
  return leg.reversed ? element(stops, leg.stop).to : element(stops, leg.stop).from;
}

function exit(stops: readonly RouteStop[], leg: Leg): Point {
  return leg.reversed ? element(stops, leg.stop).from : element(stops, leg.stop).to;
}

function turned(legs: readonly Leg[]): Leg[] {
  return legs.map((leg) => ({ stop: leg.stop, reversed: !leg.reversed })).reverse();
}

/** The stops in an order being improved, with the place of each and the stops that lie near it. */
class Route {
  readonly legs: Leg[];
  private readonly place: Int32Array;

  constructor(
    private readonly stops: readonly RouteStop[],
    private readonly start: Point,
    private readonly near: readonly (readonly number[])[],
  ) {
    this.legs = nearestNeighbour(stops, start);
    this.place = new Int32Array(stops.length);
    this.number(0, stops.length);
  }

  private number(from: number, to: number): void {
    for (let i = from; i < to; i++) this.place[element(this.legs, i).stop] = i;
  }

  /** Where the tool comes from before the leg at i. */
  private out(i: number): Point {
    return i === 0 ? this.start : exit(this.stops, element(this.legs, i - 1));
  }

  /** Where it goes down at i; nowhere past the last. */
  private into(i: number): Point | undefined {
    const leg = this.legs[i];
    return leg === undefined ? undefined : entry(this.stops, leg);
  }

  /**
   * Runs a part of the route backwards wherever that shortens it (2-opt: Croes, A method for solving
   * traveling-salesman problems, Operations Research 6, 1958, from memory). Returns whether it did.
   */
  uncross(): boolean {
    let better = false;
    for (let i = 0; i < this.legs.length; i++) {
      const before =
        i === 0 ? [] : element(this.near, element(this.legs, i - 1).stop).map((stop) => i32(this.place, stop));
      const after = element(this.near, element(this.legs, i).stop).map((stop) => i32(this.place, stop) - 1);
      for (const k of [...before, ...after, this.legs.length - 1]) {
        if (k <= i) continue;
        const first = this.into(i)!;
        const last = exit(this.stops, element(this.legs, k));
        const now = span(this.out(i), first) + span(last, this.into(k + 1));
        const then = span(this.out(i), last) + span(first, this.into(k + 1));
        if (then >= now - MIN_GAIN) continue;
        this.legs.splice(i, k - i + 1, ...turned(this.legs.slice(i, k + 1)));
        this.number(i, k + 1);
        better = true;
      }
    }
    return better;
  }

  /**
   * Moves runs of up to three stops to where they lie on the route (Or-opt: Or, Traveling salesman-type combinatorial
   * problems, thesis, Northwestern University 1976, from memory). Returns whether it did.
   */
  relocate(): boolean {
    let better = false;
    for (let size = 1; size <= MAX_MOVED; size++) {
      for (let i = 0; i + size <= this.legs.length; i++) if (this.relocateRun(i, size)) better = true;
    }
    return better;
  }

  private relocateRun(i: number, size: number): boolean {
    const run = this.legs.slice(i, i + size);
    const first = entry(this.stops, element(run, 0));
    const last = exit(this.stops, element(run, size - 1));
    const saved = span(this.out(i), first) + span(last, this.into(i + size)) - span(this.out(i), this.into(i + size));
    let best = MIN_GAIN;
    // wherever the run goes, the travel there is no shorter than the one it is put into
    if (saved <= best) return false;
    let slot = -1;
    let back = false;
    for (const stop of [
      ...element(this.near, element(run, 0).stop),
      ...element(this.near, element(run, size - 1).stop),
    ]) {
      for (const at of [i32(this.place, stop), i32(this.place, stop) + 1]) {
        if (at >= i && at <= i + size) continue;
        const base = saved + span(this.out(at), this.into(at));
        const straight = base - span(this.out(at), first) - span(last, this.into(at));
        const turnedRound = base - span(this.out(at), last) - span(first, this.into(at));
        if (Math.max(straight, turnedRound) <= best) continue;
        best = Math.max(straight, turnedRound);
        slot = at;
        back = turnedRound > straight;
      }
    }
    if (slot < 0) return false;
    this.legs.splice(i, size);
    this.legs.splice(slot > i ? slot - size : slot, 0, ...(back ? turned(run) : run));
    this.number(Math.min(i, slot), Math.max(i + size, slot));
    return true;
  }
}

/** Length of the travel between cuts (mm), from `start` to the last stop. */
export function travelLength(stops: readonly RouteStop[], legs: readonly Leg[], start: Point): number {
  let sum = 0;
  let at = start;
  for (const leg of legs) {
    sum += distance(at, entry(stops, leg));
    at = exit(stops, leg);
  }
  return sum;
}

/** For each stop, those whose ends lie nearest to its own ends. */
function neighbourhoods(stops: readonly RouteStop[]): number[][] {
  const ends = stops.flatMap(({ from, to }) => [from, to]);
  const index = indexBoxes(ends.map(({ x, y }) => ({ minX: x, minY: y, maxX: x, maxY: y })));
  return stops.map((stop, i) => {
    const near = [stop.from, stop.to].flatMap((end) => index.nearest(end, 2 * NEIGHBOURS + 2));
    return [...new Set(near.map((end) => end >> 1))].filter((other) => other !== i);
  });
}

function nearestNeighbour(stops: readonly RouteStop[], start: Point): Leg[] {
  const left = new Set(stops.keys());
  const legs: Leg[] = [];
  let at = start;
  while (left.size > 0) {
    let best: Leg | null = null;
    let min = Infinity;
    for (const stop of left) {
      const { from, to } = element(stops, stop);
      for (const [end, isReversed] of [
        [from, false],
        [to, true],
      ] as const) {
        const away = distance(at, end);
        if (away < min) {
          min = away;
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

/**
 * A short route through all stops from `start`, not returning: nearest neighbour first, then uncrossed and relocated
 * until nothing gains or the limit of effort is reached. The same stops give the same route. Cost n² at the start.
 */
export function shortRoute(stops: readonly RouteStop[], start: Point): Leg[] {
  const route = new Route(stops, start, neighbourhoods(stops));
  for (let round = 0; round < MAX_ROUNDS; round++) {
    const uncrossed = route.uncross();
    const moved = route.relocate();
    if (!uncrossed && !moved) break;
  }
  return route.legs;
}
