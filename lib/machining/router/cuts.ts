/** The operations of a sheet as cuts that can be entered in several places. */
import {
  bounds,
  type Contour,
  cyclic,
  edgesOf,
  element,
  offsetContour,
  type Point,
  reversed,
  signedArea,
  turnBetween,
} from '../../geometry/index.js';
import type { CutOperation } from '../types.js';
import { closedCut, levelsTo } from './closed-cut.js';
import type { Cutting } from './feeds.js';
import { countersinkCut, drillCut, markCut } from './holes.js';
import { riseBefore } from './lead.js';
import { liftsAlike, liftsOn, liftStep, widened } from './lifts.js';
import { pointAt, type RingPath, ringOf, withoutSpurs } from './ring.js';
import type { Tab } from './tabs.js';
import type { Visit } from './tour.js';
import type { Cut, RouterData } from './types.js';
import { clearOfLifts } from './walk.js';

/** A cut with the places where it may be entered; made when the order is known. */
export interface Entered extends Visit {
  readonly make: (entry: number, back: boolean) => readonly Cut[];
}

/** Turn of a path (radians) from which it is a corner. */
const sharpTurn = 0.02;
/** Least material that is worth a finishing pass, mm. */
const minAllowance = 0.05;
/** Places at which a ring may be entered, at most. */
const maxEntries = 24;
/** Step between the rings that clear an opening, in tool radii: less than 1, so that nothing stays between them. */
const clearStep = 0.9;
/** Radius of the largest circle within the innermost of them, in tool radii. */
const innermost = 0.5;
/** Openings narrower than this many tool diameters are cleared, as their core would be too small to hold. */
const clearBelow = 2;

export interface CutSettings {
  readonly cutting: Cutting;
  readonly data: RouterData;
  readonly tabs: readonly Tab[];
  readonly tabTop: number;
}

function title({ operation, part, copy }: CutOperation): string {
  return `${operation} ${part} ${copy}`;
}

/** A bored hole that the tool clears in one helix, having no core to speak of. */
export function isHelix({ bore }: CutOperation, toolDiameter: number): boolean {
  return bore !== undefined && 2 * Math.sqrt(Math.abs(signedArea(bore)) / Math.PI) < 0.95 * toolDiameter;
}

/** Most of the radius of a hollow that the finishing pass takes: more would bury the tool in it over its whole depth. */
const tightShare = 0.1;

/** Least radius of the path's arcs that bend with the waste inside; without end where there are none. */
function tightest(path: Contour): number {
  const hollow = edgesOf(path).map((edge) => (edge.kind === 'arc' && edge.sweep < 0 ? edge.radius : Infinity));
  return Math.min(...hollow);
}

/** Whether the path turns sharply into a corner of the part, where the finishing pass meets a wall across its way. */
function hasInsideCorner(path: Contour): boolean {
  const edges = edgesOf(path);
  return edges.some((edge, i) => turnBetween(cyclic(edges, i - 1), edge) < -sharpTurn);
}

/** The one ring that leaves `allowance` to the finished edge; null where there is none, or more than one. */
export function roughed(path: Contour, allowance: number): RingPath | null {
  if (allowance < minAllowance) return null;
  const rings = offsetContour(path, allowance);
  return rings.length === 1 ? ringOf(element(rings, 0)) : null;
}

function turned(ring: Contour, data: RouterData): Contour {
  // material lies left of every ring: as they stand, a spindle that turns clockwise cuts conventionally
  return data.direction === 'climb' ? reversed(ring) : ring;
}

function entriesOf(ring: RingPath, clear: (s: number) => number): number[] {
  const count = Math.min(maxEntries, Math.max(1, Math.floor(ring.length / 15)));
  return Array.from({ length: count }, (_, i) => clear(((i + 0.5) * ring.length) / count));
}

interface Closed {
  readonly name: string;
  readonly path: Contour;
  readonly depth: number;
  readonly helix: boolean;
  readonly allowance: number;
}

function enteredRing({ name, path, depth, helix, allowance }: Closed, settings: CutSettings): Entered {
  const { cutting, data, tabs, tabTop } = settings;
  const radius = cutting.tool.diameter / 2;
  const { ring: plain, spurs } = withoutSpurs(path);
  const left = Math.min(allowance, tightShare * tightest(plain));
  const rough = roughed(plain, left);
  const roughRing = rough === null ? null : direct(rough, data);
  const finish = ringOf(turned(path, data));
  const near = depth > -tabTop ? tabs : [];
  const early = rough === null ? 0 : riseBefore({ left, toolRadius: radius }) + liftStep;
  const finishLifts = widened(liftsOn(finish, near, radius), early);
  const roughLifts = roughRing === null ? [] : liftsOn(roughRing, near, radius);
  // a tab that roughing touches and the finished edge does not leaves a wall of its height for the finishing pass
  const alike =
    roughRing === null || liftsAlike({ ring: finish, lifts: finishLifts }, { ring: roughRing, lifts: roughLifts });
  const ring = roughRing ?? finish;
  const tangent = Math.tan((data.rampAngleDeg * Math.PI) / 180);
  const space = Math.max(0, tabTop + depth) + 1;
  const places = entriesOf(ring, (s) => clearOfLifts(ring, roughRing === null ? finishLifts : roughLifts, s, space));
  return {
    entries: places.map((s) => pointAt(ring, s)),
    make: (entry) => [
      closedCut(
        {
          title: name,
          finish,
          finishLifts,
          rough: roughRing,
          roughLifts,
          allowance: left,
          toolRadius: radius,
          finishEach: spurs || hasInsideCorner(plain) || !alike,
          levels: helix ? [-depth] : levelsTo(depth, cutting.passDepth),
          // one turn of a helix goes no deeper than one pass
          slope: helix ? Math.min(tangent, cutting.passDepth / ring.length) : tangent,
          tabTop,
          safeHeight: data.safeHeight,
          feeds: { along: cutting.feed, down: cutting.plunge, z: data.machine.maxFeed.z },
        },
        element(places, entry),
      ),
    ],
  };
}

function direct(ring: RingPath, data: RouterData): RingPath {
  if (data.direction === 'conventional') return ring;
  const vertices = ring.edges.map((edge) => ({
    x: edge.from.x,
    y: edge.from.y,
    bulge: edge.kind === 'arc' ? Math.tan(edge.sweep / 4) : 0,
  }));
  return ringOf(reversed(vertices));
}

/** Radius of the largest circle within a ring; the search ends once it is known to a hair of the bit. */
function innerRadius(ring: Contour, max: number): number {
  let [low, high] = [0, max];
  while (high - low > max / 2000) {
    const middle = (low + high) / 2;
    if (offsetContour(ring, middle).some((one) => signedArea(one) < 0)) low = middle;
    else high = middle;
  }
  return low;
}

/**
 * Rings within an opening's path that clear its core, the innermost first; none where the core is held instead. They
 * are spread evenly, so that the innermost is not a dot around which the tool would ramp for ever.
 */
export function clearingRings(path: Contour, toolDiameter: number): Contour[] {
  const plain = withoutSpurs(path).ring;
  const max = clearBelow * toolDiameter;
  if (signedArea(plain) > 0 || offsetContour(plain, max).length > 0) return [];
  const radius = toolDiameter / 2;
  return ringsWithin(plain, radius, max);
}

/** Rings of that spacing within a path, the innermost first; none where the path itself clears what the bit reaches. */
function ringsWithin(plain: Contour, radius: number, max: number): Contour[] {
  const inner = innerRadius(plain, max);
  if (inner <= clearStep * radius) return [];
  const count = Math.ceil((inner - innermost * radius) / (clearStep * radius));
  const step = (inner - innermost * radius) / count;
  const rings: Contour[] = [];
  for (let k = 1; k <= count; k += 1)
    rings.unshift(...offsetContour(plain, k * step).filter((one) => signedArea(one) < 0));
  return rings;
}

/** Rings that clear a pocket within the path along its edge, the innermost first. */
function pocketRings(path: Contour, toolDiameter: number): Contour[] {
  const { minX, maxX, minY, maxY } = bounds(path);
  return ringsWithin(path, toolDiameter / 2, Math.min(maxX - minX, maxY - minY) / 2);
}

/** Several cuts that are made one after the other, each entered near where the one before ended. */
export function inTurn(cuts: readonly Entered[]): Entered {
  return {
    entries: element(cuts, 0).entries,
    make: (first) => {
      const made: Cut[] = [...element(cuts, 0).make(first, false)];
      for (const { entries, make } of cuts.slice(1)) {
        const { x, y } = made.at(-1)!.moves.at(-1)!.to;
        const away = entries.map((place) => Math.hypot(place.x - x, place.y - y));
        made.push(...make(away.indexOf(Math.min(...away)), false));
      }
      return made;
    },
  };
}

/** The cut of an outline, an opening, a pocket or a bored hole with the end mill; a core too small to hold is cleared first. */
export function ringCut(operation: CutOperation, depth: number, allowance: number, settings: CutSettings): Entered {
  const path = operation.bore ?? operation.vertices;
  const name = title(operation);
  const { diameter } = settings.cutting.tool;
  if (isHelix(operation, diameter)) return enteredRing({ name, path, depth, helix: true, allowance }, settings);
  const inner =
    operation.operation === 'outline'
      ? []
      : operation.operation === 'pocket'
        ? pocketRings(path, diameter)
        : clearingRings(path, diameter);
  const cleared = inner.map((ring) =>
    enteredRing({ name: `${name} core`, path: ring, depth, helix: false, allowance: 0 }, settings),
  );
  return inTurn([...cleared, enteredRing({ name, path, depth, helix: false, allowance }, settings)]);
}

/** A hole straight down: drilled, or countersunk. */
export function pointCut(operation: CutOperation, depth: number, cutting: Cutting, data: RouterData): Entered {
  const at: Point = element(operation.vertices, 0);
  const make = operation.operation === 'countersink' ? countersinkCut : drillCut;
  return { entries: [at], make: () => [make(title(operation), at, depth, cutting, data.safeHeight)] };
}

/** A scribed line or a stroke of lettering. */
export function lineCut(
  name: string,
  vertices: CutOperation['vertices'],
  closed: boolean,
  cutting: Cutting,
  data: RouterData,
): Entered {
  const end = closed ? element(vertices, 0) : vertices.at(-1)!;
  return {
    entries: [element(vertices, 0)],
    exit: end,
    make: (_, back) => [
      markCut(name, back && !closed ? reversed(vertices) : vertices, closed, data.markDepth, cutting, data.safeHeight),
    ],
  };
}
