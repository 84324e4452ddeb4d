/** Holes in the board for its stand: between the ribs, clear of all that stands on the board. */
import { type Point, polar } from '../geometry/index.js';
import type { Dish } from '../dish/index.js';
import type { Design } from '../design/index.js';
import { type Diagnostic, diagnostic } from '../diagnostic/index.js';
import { washerSpace } from '../hardware/index.js';
import { inUnits } from './blank.js';
import { hubReach } from './hub-build.js';
import { clearanceAt, type PlanItem } from './plan.js';

/** Positions tried across a bay, and steps of the radius (mm). */
const bayTrials = 41;
const radiusStep = 5;

export interface Mounting {
  readonly radius: number;
  readonly holes: readonly Point[];
  readonly problems: readonly Diagnostic[];
}

/** The set of holes at a radius that keeps furthest off everything, and how far that is. */
interface Ring {
  readonly holes: readonly Point[];
  readonly clearance: number;
}

/**
 * The ring of holes with the largest clearance at a radius. Every bay between two ribs is like every other, so one direction within the
 * bay, that with the largest clearance, serves all; the bays are as evenly spread as their number allows, and the whole set
 * may move round by a few bays to keep off what is blocked.
 */
function ringOfHoles(
  { count, needed }: { readonly count: number; readonly needed: number },
  dish: Dish,
  items: readonly PlanItem[],
  blocked: (place: Point) => number,
): (radius: number) => Ring {
  const bay = 2 * dish.layout.halfAngle;
  const bays = dish.layout.bays.length;
  const near = items.filter((item) => item.kind === 'hub' || item.rib === 1 || item.rib === 2);
  const bestIn = (radius: number): { readonly angle: number; readonly clearance: number } => {
    let best = { angle: bay / 2, clearance: -1 };
    for (let i = 1; i < bayTrials; i++) {
      // from the middle outward, so that the middle wins when all are alike
      const off = (i % 2 === 0 ? 1 : -1) * Math.floor(i / 2);
      const angle = bay * (0.5 + off / bayTrials);
      const clearance = clearanceAt(polar(radius, angle), near);
      if (clearance > best.clearance + 1e-9) best = { angle, clearance };
    }
    return best;
  };
  const phases = Math.max(1, Math.floor(bays / count));
  const holesAt = (radius: number, angle: number, phase: number): Point[] =>
    Array.from({ length: count }, (_, i) => polar(radius, bay * (phase + Math.floor((i * bays) / count)) + angle));
  return (radius) => {
    const { angle, clearance: inBay } = bestIn(radius);
    let best = { holes: holesAt(radius, angle, 0), clearance: -1 };
    for (let phase = 0; phase < phases && best.clearance < needed; phase++) {
      const holes = holesAt(radius, angle, phase);
      const clearance = Math.min(inBay, ...holes.map(blocked));
      if (clearance > best.clearance) best = { holes, clearance };
    }
    return best;
  };
}

/** Radii that are tried: from the middle between the two limits outward and inward by turns. */
function triedRadii(half: number, innermost: number, outermost: number): number[] {
  const steps = Math.max(0, Math.floor((outermost - innermost) / radiusStep));
  return Array.from(
    { length: 2 * steps + 1 },
    (_, i) => half + (i % 2 === 0 ? 1 : -1) * radiusStep * Math.ceil(i / 2),
  ).filter((radius) => radius >= innermost && radius <= outermost);
}

/** What is known of the holes' place once it was looked for. */
interface Search {
  readonly needed: number;
  readonly innermost: number;
  readonly outermost: number;
  readonly radius: number;
  /** A radius that would do, if there is one. */
  readonly suitable: number | undefined;
  /** Whether the holes have room at the radius that the design asks for. */
  readonly fits: boolean;
}

/** What is wrong with the holes, if anything is. */
function mountingProblem(design: Design, bays: number, search: Search): Diagnostic | null {
  const { mountingHoles: count, mountingDiameter: diameter, mountingRadius } = design.board;
  const { needed, innermost, outermost, radius, suitable, fits } = search;
  const show = (mm: number) => inUnits(design, mm);
  const advice = suitable === undefined ? 'use smaller or fewer holes' : `${show(suitable)} would fit`;
  if (count > bays)
    return diagnostic(
      'mounting-holes',
      ['board', 'mountingHoles'],
      `board.mountingHoles of ${count} is more than the ${bays} bays between ribs`,
      `use at most ${bays}`,
    );
  if (mountingRadius !== undefined && (radius < innermost || radius > outermost))
    return diagnostic(
      'mounting-holes',
      ['board', 'mountingRadius'],
      `board.mountingRadius of ${show(radius)} must be between the hub and the edge of the board, ${show(innermost)} to ${show(outermost)}`,
      advice,
    );
  if (mountingRadius !== undefined && !fits)
    return diagnostic(
      'mounting-holes',
      ['board', 'mountingRadius'],
      `mounting holes of ${show(diameter)} at a radius of ${show(radius)} are closer to ribs, cleats, hub or joints than the ${show(needed)} that a washer needs`,
      advice,
    );
  if (suitable === undefined && mountingRadius === undefined)
    return diagnostic(
      'mounting-holes',
      ['board', 'mountingDiameter'],
      `there is no room for mounting holes of ${show(diameter)} with the ${show(needed)} that a washer needs to ribs, cleats, hub and joints, so they are left out`,
      advice,
      'warning',
    );
  return null;
}

/**
 * Places the mounting holes.
 * @param blocked further places to keep off, such as joints of the board: distance from the place, mm
 */
export function placeMounting(
  design: Design,
  dish: Dish,
  items: readonly PlanItem[],
  blocked: (place: Point) => number,
): Mounting {
  const { mountingHoles: count, mountingDiameter: diameter, mountingRadius, size } = design.board;
  const needed = washerSpace(diameter);
  const outermost = size / 2 - needed;
  const innermost = hubReach(design, dish) + needed;
  if (count === 0) return { radius: mountingRadius ?? (innermost + outermost) / 2, holes: [], problems: [] };
  const ringAt = ringOfHoles({ count, needed }, dish, items, blocked);
  const half = radiusStep * Math.round((innermost + outermost) / 2 / radiusStep);
  const suitable = triedRadii(half, innermost, outermost).find((radius) => ringAt(radius).clearance >= needed);
  const radius = mountingRadius ?? suitable ?? half;
  const ring = ringAt(radius);
  const search = { needed, innermost, outermost, radius, suitable, fits: ring.clearance >= needed };
  const problem = mountingProblem(design, dish.layout.bays.length, search);
  return {
    radius,
    holes: mountingRadius === undefined && suitable === undefined ? [] : ring.holes,
    problems: problem === null ? [] : [problem],
  };
}
