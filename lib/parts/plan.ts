/** Everything that stands on the board, seen from above: x along rib 1, ribs numbered anticlockwise, mm. */
import {
  bounds,
  boxDistance,
  closestOfContours,
  type Contour,
  element,
  nearestOnContour,
  placePoint,
  type Placement,
  placeVertices,
  type Point,
  rectangle,
  sideOfContour,
} from '../geometry/index.js';
import {
  bestStart,
  type CleatBase,
  type Dish,
  endOfBase,
  jointPasses,
  maxStart,
  planClearance,
  ribNumbers,
  startFrom,
} from '../dish/index.js';
import type { Design } from '../design/index.js';
import { type Diagnostic, diagnostic } from '../diagnostic/index.js';
import { inUnits } from './blank.js';
import { cleatScrews } from './cleat.js';
import { hubOutline } from './hub-build.js';

/** Radius of the cleats' inner ends, mm; null where the ribs are held without cleats. */
export type CleatStart = number | null;

/** A thing on the board. Ribs count from 1. */
export type PlanItem =
  | { readonly kind: 'hub'; readonly outline: Contour }
  | { readonly kind: 'rib'; readonly rib: number; readonly outline: Contour }
  | { readonly kind: 'cleat'; readonly rib: number; readonly outline: Contour };

/** Direction of a rib's centre line, degrees anticlockwise from x. */
export function ribDirectionDeg(dish: Dish, rib: number): number {
  const frame = dish.layout.ribs[rib - 1];
  if (frame === undefined) throw new RangeError(`there is no rib ${rib} among ${dish.layout.ribs.length}`);
  return frame.rotationDeg;
}

function turned(outline: Contour, dish: Dish, rib: number): Contour {
  return placeVertices(outline, { x: 0, y: 0, rotationDeg: ribDirectionDeg(dish, rib), mirrored: false });
}

function ribPlan(dish: Dish, rib: number): PlanItem {
  const half = dish.ribThickness / 2;
  return {
    kind: 'rib',
    rib,
    outline: turned(rectangle(dish.innerRadius, -half, dish.apertureRadius, half), dish, rib),
  };
}

/**
 * Where a rib's cleats lie beside it, in the rib's own plan (x outward from the axis, y to its left as seen from the
 * hub). The first stands on the right: that is the face of a rib that lies up when it is cut, so the line scribed for
 * the cleat is on the side on which the cleat goes. The second is the same block turned half round, on the left.
 */
export function cleatPlaces(design: Design, dish: Dish, start: CleatStart): Placement[] {
  if (start === null) return [];
  const half = dish.ribThickness / 2;
  return rowStarts(design, dish, start).flatMap((from) => {
    const right = { x: from + design.cleat.length, y: -half, rotationDeg: 180, mirrored: false };
    const left = { x: from, y: half, rotationDeg: 0, mirrored: false };
    return design.cleat.perRib === 2 ? [right, left] : [right];
  });
}

/** What the cleats stand on. */
function baseOf(design: Design, dish: Dish): CleatBase {
  const { board, rib } = design;
  return {
    ribThickness: dish.ribThickness,
    innerRadius: dish.innerRadius,
    toeRadius: rib.toeRadius,
    boardSize: board.size,
    roundBoard: board.shape === 'round',
  };
}

/** Inner ends of the rows of cleats: the outer of two stands at the end of the rib's base. */
function rowStarts(design: Design, dish: Dish, start: number): number[] {
  return design.cleat.rows === 2 ? [start, endOfBase(baseOf(design, dish), design.cleat)] : [start];
}

/** Radii at which the cleats' screws enter their rib, in order outward. */
export function ribScrewRadii(design: Design, dish: Dish, start: CleatStart): number[] {
  const own = cleatScrews(design).rib;
  return cleatPlaces(design, dish, start)
    .flatMap((place) => own.map((x) => placePoint({ x, y: 0 }, place).x))
    .sort((a, b) => a - b);
}

/** Outlines of a rib's cleats in the rib's own plan. */
export function cleatOutlines(design: Design, dish: Dish, start: CleatStart): Contour[] {
  const { length, width } = design.cleat;
  const block = rectangle(0, 0, length, width);
  return cleatPlaces(design, dish, start).map((place) => placeVertices(block, place));
}

function cleatPlans(design: Design, dish: Dish, start: CleatStart, rib: number): PlanItem[] {
  return cleatOutlines(design, dish, start).map((outline) => ({
    kind: 'cleat',
    rib,
    outline: turned(outline, dish, rib),
  }));
}

/** Everything on the board, with the cleats starting at radius `start`. */
export function planItems(design: Design, dish: Dish, start: CleatStart): PlanItem[] {
  const ribs = ribNumbers(dish.layout);
  return [
    { kind: 'hub', outline: hubOutline(design, dish) },
    ...ribs.map((rib) => ribPlan(dish, rib)),
    ...ribs.flatMap((rib) => cleatPlans(design, dish, start, rib)),
  ];
}

/** Where the screws of a rib's cleats enter the board, in the rib's own plan. */
export function downScrewPoints(design: Design, dish: Dish, start: CleatStart): Point[] {
  const y = design.cleat.width / 2;
  const own = cleatScrews(design).down;
  return cleatPlaces(design, dish, start).flatMap((place) => own.map((x) => placePoint({ x, y }, place)));
}

/** Where the cleats' down-screws enter the board, each with its rib. */
export function boardScrews(
  design: Design,
  dish: Dish,
  start: CleatStart,
): { readonly rib: number; readonly at: Point }[] {
  const own = downScrewPoints(design, dish, start);
  return ribNumbers(dish.layout).flatMap((rib) =>
    own.map((at) => ({
      rib,
      at: placePoint(at, { x: 0, y: 0, rotationDeg: ribDirectionDeg(dish, rib), mirrored: false }),
    })),
  );
}

/** Whether two things are made to touch: a rib its own cleats and the hub. */
function joined(a: PlanItem, b: PlanItem): boolean {
  if (a.kind === 'hub' || b.kind === 'hub') return a.kind === 'rib' || b.kind === 'rib';
  return a.rib === b.rib;
}

/** Clearance between two outlines, mm; 0 when they touch, cross or lie in one another. */
function clearanceBetween(a: Contour, b: Contour): number {
  const within = (inner: Contour, outer: Contour): boolean => sideOfContour(outer, element(inner, 0), 0) !== 'outside';
  return within(a, b) || within(b, a) ? 0 : closestOfContours(a, b).distance;
}

const nameOf = (item: PlanItem): string => (item.kind === 'hub' ? 'the hub' : `${item.kind} ${item.rib}`);

/**
 * The tightest pair of things that are not joined. The ribs are all alike, so those of rib 1 stand for all.
 * @param within only pairs closer than this (mm) are looked for; without any, it is what is returned
 */
function tightest(
  items: readonly PlanItem[],
  within = Infinity,
): { readonly clearance: number; readonly between: string } {
  let found = { clearance: within, between: '' };
  const boxed = items.map((item) => ({ item, box: bounds(item.outline) }));
  const first = boxed.filter(({ item }) => item.kind !== 'hub' && item.rib === 1);
  for (const a of first)
    for (const b of boxed) {
      if (a === b || joined(a.item, b.item) || boxDistance(a.box, b.box) >= found.clearance) continue;
      const clearance = clearanceBetween(a.item.outline, b.item.outline);
      if (clearance < found.clearance) found = { clearance, between: `${nameOf(a.item)} and ${nameOf(b.item)}` };
    }
  return found;
}

/** What can stand in the way of a cleat of rib 1: the hub, and the two ribs on either side with their cleats. */
function cleatClearance(
  design: Design,
  dish: Dish,
  start: number,
  within = Infinity,
): { readonly clearance: number; readonly between: string } {
  const n = dish.layout.ribs.length;
  const near = [...new Set([2, 3, n - 1, n])].filter((rib) => rib > 1 && rib <= n);
  const others: PlanItem[] = [
    { kind: 'hub', outline: hubOutline(design, dish) },
    ...near.flatMap((rib) => [ribPlan(dish, rib), ...cleatPlans(design, dish, start, rib)]),
  ];
  return tightest([...cleatPlans(design, dish, start, 1), ...others], within);
}

/** Whether cleats that start at a radius off the hub clear all else; if they do, they also do further out. */
function isClear(design: Design, dish: Dish, start: number): boolean {
  return (
    start > dish.innerRadius &&
    (design.board.splice !== 'bolted' ||
      jointPasses(baseOf(design, dish), design.cleat, dish.layout.halfAngle, start)) &&
    cleatClearance(design, dish, start, planClearance).clearance >= planClearance
  );
}

/** Least radius at which a cleat clears all else, or null when none does before `max`. */
function minStart(design: Design, dish: Dish, max: number): number | null {
  if (!isClear(design, dish, max)) return null;
  let [low, high] = [dish.innerRadius, max];
  while (high - low > 1e-6) {
    const middle = (low + high) / 2;
    if (isClear(design, dish, middle)) high = middle;
    else low = middle;
  }
  return high;
}

/** Where cleats hold best, or as near to it as they clear all else, which they do at the greatest radius. */
function usualStart(design: Design, dish: Dish): number {
  const base = baseOf(design, dish);
  const best = bestStart(base, design.cleat);
  if (isClear(design, dish, best)) return best;
  const max = maxStart(base, design.cleat);
  return startFrom(minStart(design, dish, max) ?? max, base, design.cleat);
}

/** Whether the ribs are held by cleats. */
export function hasCleats({ rib }: Design): boolean {
  return rib.joint === 'screwed-cleat' || rib.joint === 'glued-cleat';
}

/** Where the cleats stand, and what is in their way. */
export interface CleatPlace {
  readonly start: CleatStart;
  readonly problems: readonly Diagnostic[];
}

/**
 * Places the cleats: at `cleat.start`, or else with their middle two thirds of the way along the rib's base, where
 * they hold the rib best against a pull at its rim (an inner row at one third); further out when they would not clear each other there.
 */
export function placeCleats(design: Design, dish: Dish): CleatPlace {
  const { cleat } = design;
  if (!hasCleats(design)) return { start: null, problems: [] };
  const show = (mm: number) => inUnits(design, mm);
  const max = maxStart(baseOf(design, dish), cleat);
  const problems: Diagnostic[] = [];
  if (!isClear(design, dish, max)) {
    const start = cleat.start ?? Math.max(dish.innerRadius, max);
    const { between, clearance } = cleatClearance(design, dish, start);
    const why =
      max <= dish.innerRadius
        ? `a cleat of ${show(cleat.length)} is longer than the rib's base`
        : `even at ${show(Math.round(10 * start) / 10)} there is no room between ${between} (${show(Math.max(0, Math.round(10 * clearance) / 10))})`;
    // the radius at which it would fit, were base and board to reach it
    const further = minStart(design, dish, dish.apertureRadius - cleat.length);
    const advice =
      further === null
        ? 'use smaller cleats or fewer ribs'
        : `they fit from ${show(Math.ceil(further))} on, which needs a board and a rib.toeRadius that reach ${show(Math.ceil(further + cleat.length))}; or use smaller cleats or fewer ribs`;
    problems.push(
      diagnostic(
        'cleat-does-not-fit',
        ['cleat', cleat.start === undefined ? 'width' : 'start'],
        `a cleat of ${show(cleat.length)} x ${show(cleat.width)} does not fit anywhere on the board: ${why}`,
        advice,
      ),
    );
    return { start, problems };
  }
  const start = cleat.start ?? usualStart(design, dish);
  const min = isClear(design, dish, start) ? start : (minStart(design, dish, max) ?? start);
  if (start < min - 1e-6) {
    const { between } = cleatClearance(design, dish, start);
    problems.push(
      diagnostic(
        'cleat-does-not-fit',
        ['cleat', 'start'],
        `cleat.start of ${show(start)} leaves less than ${show(planClearance)} between ${between}`,
        `the cleats fit from ${show(Math.ceil(10 * min) / 10)} on`,
      ),
    );
  }
  if (start > max + 1e-6)
    problems.push(
      diagnostic(
        'cleat-does-not-fit',
        ['cleat', 'start'],
        `cleat.start of ${show(start)} puts the outer end of the cleats beyond the rib's base or the board`,
        `use at most ${show(Math.floor(10 * max) / 10)}`,
      ),
    );
  return { start, problems };
}

/** Distance from a place to the nearest thing on the board, 0 within one. */
export function clearanceAt(place: Point, items: readonly PlanItem[]): number {
  return items.reduce((min, { outline }) => {
    if (sideOfContour(outline, place, 0) !== 'outside') return 0;
    return Math.min(min, nearestOnContour(outline, place).distance);
  }, Infinity);
}
