/** Holes in the board for its stand: between the ribs, clear of all that stands on the board. */
import { nearestOnContour, type Point, polar, sideOfContour } from '../geometry/index.js';
import type { Dish } from '../dish/index.js';
import type { Design } from '../design/index.js';
import { type Diagnostic, diagnostic } from '../diagnostic/index.js';
import { inUnits } from './blank.js';
import { type PlanItem } from './plan.js';

/** Half the width of a washer over the bolt's diameter, and room round it (mm): common practice, no source. */
const washer = 1.1;
const washerRoom = 1;

/** Positions tried across a bay, and steps of the radius (mm). */
const bayTrials = 41;
const radiusStep = 5;

export interface Mounting {
  readonly radius: number;
  readonly holes: readonly Point[];
  readonly problems: readonly Diagnostic[];
}

/** Distance from a place to the nearest thing on the board, 0 within one. */
function roomAt(place: Point, items: readonly PlanItem[]): number {
  return items.reduce((least, { outline }) => {
    if (sideOfContour(outline, place, 0) !== 'outside') return 0;
    return Math.min(least, nearestOnContour(outline, place).distance);
  }, Infinity);
}

/**
 * Places the mounting holes. Every bay between two ribs is like every other, so one direction within the bay, that
 * with the most room, serves all; the bays are as evenly spread as their number allows.
 * @param blocked further places to keep off, such as joints of the board: distance from the place, mm
 */
export function placeMounting(
  design: Design,
  dish: Dish,
  items: readonly PlanItem[],
  blocked: (place: Point) => number,
): Mounting {
  const { mountingHoles: count, mountingDiameter: diameter, mountingRadius, size } = design.board;
  const say = (mm: number) => inUnits(design, mm);
  const needed = washer * diameter + washerRoom;
  const outermost = size / 2 - needed;
  const innermost = dish.innerRadius + needed;
  if (count === 0) return { radius: mountingRadius ?? (innermost + outermost) / 2, holes: [], problems: [] };

  const bay = 2 * dish.layout.halfAngle;
  const near = items.filter((item) => item.kind === 'hub' || item.rib === 1 || item.rib === 2);
  const bestIn = (radius: number): { readonly angle: number; readonly room: number } => {
    let best = { angle: bay / 2, room: -1 };
    for (let i = 1; i < bayTrials; i++) {
      // from the middle outward, so that the middle wins when all are alike
      const off = (i % 2 === 0 ? 1 : -1) * Math.floor(i / 2);
      const angle = bay * (0.5 + off / bayTrials);
      const room = roomAt(polar(radius, angle), near);
      if (room > best.room + 1e-9) best = { angle, room };
    }
    return best;
  };
  // the whole set may move round by a few bays to keep off what is blocked
  const phases = Math.max(1, Math.floor(dish.layout.ribs.length / count));
  const holesAt = (radius: number, angle: number, phase: number): Point[] =>
    Array.from({ length: count }, (_, i) =>
      polar(radius, bay * (phase + Math.floor((i * dish.layout.ribs.length) / count)) + angle),
    );
  const roomiestPhase = (radius: number): { readonly holes: readonly Point[]; readonly room: number } => {
    const { angle, room: inBay } = bestIn(radius);
    let best = { holes: holesAt(radius, angle, 0), room: -1 };
    for (let phase = 0; phase < phases && best.room < needed; phase++) {
      const holes = holesAt(radius, angle, phase);
      const room = Math.min(inBay, ...holes.map(blocked));
      if (room > best.room) best = { holes, room };
    }
    return best;
  };
  const fits = (radius: number): boolean => roomiestPhase(radius).room >= needed;

  const half = radiusStep * Math.round((innermost + outermost) / 2 / radiusStep);
  const steps = Math.max(0, Math.floor((outermost - innermost) / radiusStep));
  const tries = Array.from(
    { length: 2 * steps + 1 },
    (_, i) => half + (i % 2 === 0 ? 1 : -1) * radiusStep * Math.ceil(i / 2),
  );
  const within = tries.filter((radius) => radius >= innermost && radius <= outermost);
  const doing = within.find(fits);
  const radius = mountingRadius ?? doing ?? half;
  const problems: Diagnostic[] = [];
  const advice = doing === undefined ? 'use smaller or fewer holes' : `${say(doing)} would do`;
  if (count > dish.layout.ribs.length)
    problems.push(
      diagnostic(
        'mounting-holes',
        ['board', 'mountingHoles'],
        `board.mountingHoles of ${count} is more than the ${dish.layout.ribs.length} bays between ribs`,
        `use ${dish.layout.ribs.length} at most`,
      ),
    );
  else if (mountingRadius !== undefined && (radius < innermost || radius > outermost))
    problems.push(
      diagnostic(
        'mounting-holes',
        ['board', 'mountingRadius'],
        `board.mountingRadius of ${say(radius)} must lie between the hub and the edge of the board, ${say(innermost)} to ${say(outermost)}`,
        advice,
      ),
    );
  else if (mountingRadius !== undefined && !fits(radius))
    problems.push(
      diagnostic(
        'mounting-holes',
        ['board', 'mountingRadius'],
        `mounting holes of ${say(diameter)} at a radius of ${say(radius)} have less than the ${say(needed)} that a washer needs to ribs, cleats, hub or joints`,
        advice,
      ),
    );
  else if (doing === undefined && mountingRadius === undefined)
    problems.push(
      diagnostic(
        'mounting-holes',
        ['board', 'mountingDiameter'],
        `mounting holes of ${say(diameter)} find no place with the ${say(needed)} that a washer needs to ribs, cleats, hub and joints, and are left out`,
        advice,
        'warning',
      ),
    );
  const holes = mountingRadius === undefined && doing === undefined ? [] : roomiestPhase(radius).holes;
  return { radius, holes, problems };
}
