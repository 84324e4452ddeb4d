/** The order of the cuts of one tool, and where each closed one is entered. */
import { distance, type Point } from '../../geometry/index.js';
import { shortWay, type Stop } from '../travel.js';

/** A cut to be visited: the places where it may be entered; the tool comes up near there, or at `exit`. */
export interface Visit {
  readonly entries: readonly Point[];
  readonly exit?: Point;
}

export interface Visited {
  readonly visit: number;
  readonly entry: number;
  /** Whether an open cut is run from its exit. */
  readonly reversed: boolean;
}

/** Rounds of choosing entries and ordering anew. */
const rounds = 6;

function lengthOf(stops: readonly Stop[], order: readonly Visited[], start: Point): number {
  let at = start;
  let sum = 0;
  for (const { visit, reversed } of order) {
    const stop = stops[visit]!;
    sum += distance(at, reversed ? stop.to : stop.from);
    at = reversed ? stop.from : stop.to;
  }
  return sum;
}

/**
 * A short way through all visits from `start`: ordered by `shortWay` (2-opt and relocation), each closed cut entered
 * where the way passes, and ordered again until it gets no shorter.
 */
export function tour(visits: readonly Visit[], start: Point): Visited[] {
  const entry = visits.map(() => 0);
  const stops = (): Stop[] =>
    visits.map(({ entries, exit }, i) => ({ from: entries[entry[i]!]!, to: exit ?? entries[entry[i]!]! }));
  let best: Visited[] = [];
  let least = Infinity;
  for (let round = 0; round < rounds; round += 1) {
    const legs = shortWay(stops(), start);
    for (let sweep = 0; sweep < 3; sweep += 1) {
      legs.forEach(({ stop }, i) => {
        const { entries, exit } = visits[stop]!;
        if (exit !== undefined || entries.length === 1) return;
        const current = stops();
        const before = legs[i - 1];
        const after = legs[i + 1];
        const out =
          before === undefined ? start : before.reversed ? current[before.stop]!.from : current[before.stop]!.to;
        const next = after === undefined ? null : after.reversed ? current[after.stop]!.to : current[after.stop]!.from;
        let shortest = Infinity;
        entries.forEach((place, k) => {
          const way = distance(out, place) + (next === null ? 0 : distance(place, next));
          if (way >= shortest - 1e-9) return;
          shortest = way;
          entry[stop] = k;
        });
      });
    }
    const order = legs.map(({ stop, reversed }) => ({ visit: stop, entry: entry[stop]!, reversed }));
    const length = lengthOf(stops(), order, start);
    if (length >= least - 1e-6) break;
    least = length;
    best = order;
  }
  return best;
}
