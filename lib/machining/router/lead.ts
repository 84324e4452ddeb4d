/**
 * Lead-in: the slanted move by which a finishing pass goes from the roughed wall onto the finished edge, over the whole
 * depth. Anywhere on it the bit cuts, across its travel, at most a fifth of its radius more than the allowance that
 * roughing has left. A finishing pass may cut that much over its whole depth, and no pass more.
 */
import { type ArcEdge, distance, edgeLength, element, nearestOnEdge, type Point } from '../../geometry/index.js';
import { directionAt, edgeAt, pointAt, type RingPath } from './ring.js';
import type { Process } from '../types.js';
import type { RouterData } from './types.js';
import { clearOfLifts, type Lift } from './walk.js';

/** How far a finishing pass goes on beyond its start, mm. */
export const overlap = 1;
/** How much wider than the allowance a lead-in may cut, as a share of the bit's radius. */
const leadShare = 0.2;
/** Lengths of a lead-in that are tried where they are slanted little enough, the longest first; the shortest that is one, mm. */
const usualLeads = [3, 1.5];
const minLead = 0.7;
/** Step between places that are tried for the path onto the finished edge, mm. */
const tryStep = 2;

/** What a finishing pass takes, and with what. */
export interface Allowance {
  /** What roughing has left on the edge, mm. */
  readonly left: number;
  readonly toolRadius: number;
}

/** What roughing leaves on an edge, mm: its wall must not come nearer to a neighbour than half of what stands between two cuts. */
export function allowanceOf(data: Pick<RouterData, 'finishing'>, process: Pick<Process, 'web'>): number {
  return Math.min(data.finishing, process.web / 2);
}

/** Length along a ring that is nearest to a point. */
export function nearestLength(ring: RingPath, point: Point): number {
  let best = Infinity;
  let at = 0;
  ring.edges.forEach((edge, i) => {
    const near = nearestOnEdge(edge, point);
    if (near.distance >= best) return;
    best = near.distance;
    const next = ring.starts[i + 1] ?? ring.length;
    at = element(ring.starts, i) + near.fraction * (next - element(ring.starts, i));
  });
  return at;
}

/**
 * Greatest slant of a lead-in, radians. A bit of radius r that takes a off a wall meets it over the angle acos(1 - a/r);
 * the slant adds to that angle, and the width across the travel is r (1 - cos) of the sum. On the inside of an arc the
 * wall bends towards the bit, as if the allowance were larger.
 * @param hollow radius of the path within an arc; without end on a straight or bulging edge
 */
function maxSlant({ left, toolRadius }: Allowance, hollow: number): number {
  const met = Math.acos(Math.max(-1, 1 - left / toolRadius - left / hollow));
  const allowed = Math.acos(Math.max(-1, 1 - left / toolRadius - leadShare));
  return Math.max(0, allowed - met);
}

/**
 * How far before the place where roughing rises over a tab a finishing pass has to rise, mm: the front of its bit, which
 * stands nearer to the edge, would else meet the tab over its whole height, where that is not the flank any more.
 */
export function riseBefore({ left, toolRadius }: Allowance): number {
  const across = Math.max(0, (1 - leadShare) * toolRadius - left);
  const roughed = Math.min(toolRadius, across + left);
  return Math.sqrt(toolRadius ** 2 - across ** 2) - Math.sqrt(toolRadius ** 2 - roughed ** 2);
}

/** Whether the path turns with the waste outside of its arc, so that the wall lies within it. */
const hollowOf = (edge: ArcEdge, wall: number): number => (wall < edge.radius ? edge.radius : Infinity);

/** Whether a lead of this length reaches the finished path at `start + lead`, and leaves it an overlap later. */
function leadFits(finish: RingPath, rough: RingPath, start: number, lead: number, allowance: Allowance): boolean {
  const { index, fraction } = edgeAt(finish, start);
  const edge = element(finish.edges, index);
  const from = pointAt(rough, nearestLength(rough, pointAt(finish, start)));
  let hollow = Infinity;
  if (edge.kind === 'straight') {
    if ((1 - fraction) * edgeLength(edge) < 2 * lead + overlap) return false;
  } else {
    const last = element(finish.edges, edgeAt(finish, start + 2 * lead + overlap).index);
    if (lead > edge.radius / 2 || last.kind !== 'arc' || distance(last.centre, edge.centre) > 1e-6) return false;
    const wall = distance(edge.centre, from);
    hollow = hollowOf(edge, wall);
    // the chord of an arc lies within its circle: on the side of the waste, or not deeper than the allowance
    if (hollow === Infinity && lead * lead >= 0.7 * 2 * (wall - edge.radius) * edge.radius) return false;
  }
  const touch = pointAt(finish, start + lead);
  const along = directionAt(finish, start + lead);
  const [dx, dy] = [touch.x - from.x, touch.y - from.y];
  const slant = Math.abs(Math.atan2(along.x * dy - along.y * dx, along.x * dx + along.y * dy));
  return slant <= maxSlant(allowance, hollow);
}

export interface Lead {
  /** Length along the finished path where the way onto it begins. */
  readonly start: number;
  /** Length of the way; 0 where there is no room for any that is slanted little enough. */
  readonly lead: number;
}

/**
 * Where a finishing pass begins: near a place of the roughed wall, clear of tabs, with room for the lead-in.
 * @param drop height that the tool has to come down behind a tab
 */
export function finishLead(
  finish: RingPath,
  rough: RingPath,
  from: Point,
  lifts: readonly Lift[],
  drop: number,
  allowance: Allowance,
): Lead {
  // the pass comes back to its start, goes on by the overlap and slants out; behind a tab it has to come down first
  const spaceFor = (lead: number): number => Math.max(2 * lead + overlap, drop) + 1;
  const near = nearestLength(finish, from);
  // a hair more than on a straight wall, for the rounding of the rings
  const minimum = Math.max(minLead, (1.02 * allowance.left) / Math.tan(maxSlant(allowance, Infinity)));
  for (const lead of [...usualLeads.filter((one) => one > minimum), minimum]) {
    for (let on = 0; on < finish.length; on += tryStep) {
      const start = clearOfLifts(finish, lifts, near + on, spaceFor(lead));
      if (leadFits(finish, rough, start, lead, allowance)) return { start, lead };
    }
  }
  return { start: clearOfLifts(finish, lifts, near, spaceFor(0)), lead: 0 };
}
