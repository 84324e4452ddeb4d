/** The order of the cuts of one tool, and where each closed one is entered. */
import { distance, element, type Point } from '../../geometry/index.js';
import { shortRoute, type RouteStop } from '../travel.js';

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

/** Rounds of choosing entries and ordering again. */
const rounds = 4;
/** Times that the entries are gone through in a round. */
const sweeps = 3;

function lengthOf(stops: readonly RouteStop[], order: readonly Visited[], start: Point): number {
  let at = start;
  let sum = 0;
  for (const { visit, reversed } of order) {
    const stop = element(stops, visit);
    sum += distance(at, reversed ? stop.to : stop.from);
    at = reversed ? stop.from : stop.to;
  }
  return sum;
}

/**
 * A short route through all visits from `start`: ordered by `shortRoute` (2-opt and relocation), each closed cut entered
 * where the route passes, and ordered again until it gets no shorter.
 */
export function tour(visits: readonly Visit[], start: Point): Visited[] {
  const entry = visits.map(() => 0);
  const stops: RouteStop[] = visits.map(({ entries, exit }) => ({
    from: element(entries, 0),
    to: exit ?? element(entries, 0),
  }));
  const choosable = visits.some(({ entries }) => entries.length > 1);
  let best: Visited[] = [];
  let min = Infinity;
  for (let round = 0; round < (choosable ? rounds : 1); round += 1) {
    const legs = shortRoute(stops, start);
    const endOf = (i: number): Point => {
      const leg = legs[i];
      if (leg === undefined) return start;
      return leg.reversed ? element(stops, leg.stop).from : element(stops, leg.stop).to;
    };
    for (let sweep = 0; choosable && sweep < sweeps; sweep += 1) {
      legs.forEach(({ stop }, i) => {
        const { entries, exit } = element(visits, stop);
        if (exit !== undefined || entries.length === 1) return;
        const after = legs[i + 1];
        const out = endOf(i - 1);
        const next =
          after === undefined ? null : after.reversed ? element(stops, after.stop).to : element(stops, after.stop).from;
        let shortest = Infinity;
        entries.forEach((place, k) => {
          const away = distance(out, place) + (next === null ? 0 : distance(place, next));
          if (away >= shortest - 1e-9) return;
          shortest = away;
          entry[stop] = k;
        });
        const place = element(entries, element(entry, stop));
        stops[stop] = { from: place, to: place };
      });
    }
    const order = legs.map(({ stop, reversed }) => ({ visit: stop, entry: element(entry, stop), reversed }));
    const length = lengthOf(stops, order, start);
    if (length >= min - 1e-6) break;
    min = length;
    best = order;
  }
  return best;
}
