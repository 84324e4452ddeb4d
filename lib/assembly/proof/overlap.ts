/**
 * No two parts in one place, and parts that are made to meet do. Plates lie level or stand upright, so the test of two
 * solids comes down to plan: what both cover of the plan, at heights that both have, is the overlap. Its depth is taken
 * as twice the area over the circumference, which is the width of a long sliver.
 */
import {
  bounds,
  boxDistance,
  dot,
  type Bounds,
  flatten,
  intersectPolygons,
  type Point,
  polygonArea,
} from '../../geometry/index.js';
import { ringsOf } from '../../part/index.js';
import type { Design } from '../../design/index.js';
import type { Dish } from '../../dish/index.js';
import { frontOf, toSpace } from '../frame.js';
import { isPlate, isSheet, nameOf } from '../copies.js';
import { sheetPoint, sheetShape } from '../sheet-shape.js';
import type { Assembly, AssembledPlate, AssembledSheet } from '../types.js';
import type { AssemblyFault } from './fault.js';

/** Parts may run into each other by this much, mm. */
const overlapTolerance = 0.01;
/** Chords of curved edges, mm: well under the tolerance. */
const chord = 0.001;

interface Flat {
  readonly placed: AssembledPlate;
  readonly upright: boolean;
  readonly low: number;
  readonly high: number;
  /** Rings in the part's own axes: outline anticlockwise, openings clockwise. */
  readonly rings: readonly Point[][];
  /** Clockwise rings of its pockets, between which heights of space each is cleared. */
  readonly pockets: readonly { readonly ring: readonly Point[]; readonly low: number; readonly high: number }[];
  /** Corners of what it covers of the plan at any height, openings filled. */
  readonly shadow: readonly Point[];
  readonly box: Bounds;
}

type Rings = Flat['rings'];

const circumference = (ring: readonly Point[]): number =>
  ring.reduce((sum, p, i) => {
    const q = ring[(i + 1) % ring.length] ?? p;
    return sum + Math.hypot(q.x - p.x, q.y - p.y);
  }, 0);

const flatRings = (part: AssembledPlate['part']): Rings =>
  ringsOf(part).map((ring) => flatten(ring, chord, 'on').map(({ x, y }) => ({ x, y })));

function flatOf(placed: AssembledPlate, rings: Rings): Flat {
  const { part, frame } = placed;
  const upright = Math.abs(frontOf(frame)[2]) < 0.5;
  const [outline = []] = rings;
  const { minX, maxX, minY, maxY } = bounds(outline.map((p) => ({ ...p, bulge: 0 })));
  const thick = part.thickness;
  const inPlan = (x: number, y: number, h: number): Point => {
    const [px, py] = toSpace(frame, x, y, h);
    return { x: px, y: py };
  };
  // an upright plate stands with its own y upward
  const shadow = upright
    ? [inPlan(minX, 0, 0), inPlan(maxX, 0, 0), inPlan(maxX, 0, thick), inPlan(minX, 0, thick)]
    : outline.map(({ x, y }) => inPlan(x, y, 0));
  const heights = [toSpace(frame, 0, minY, 0), toSpace(frame, 0, maxY, thick)].map(([, , z]) => z);
  return {
    placed,
    upright,
    low: Math.min(...heights),
    high: Math.max(...heights),
    rings,
    pockets: part.pockets.map(({ ring, depth, from }) => {
      const [face, floor] = from === 'front' ? [thick, thick - depth] : [0, depth];
      const [one, other] = [face, floor].map((h) => toSpace(frame, 0, 0, h)[2]) as [number, number];
      return {
        ring: flatten(ring, chord, 'on').map(({ x, y }) => ({ x, y })),
        low: Math.min(one, other),
        high: Math.max(one, other),
      };
    }),
    shadow,
    box: bounds(shadow.map((p) => ({ ...p, bulge: 0 }))),
  };
}

/**
 * How far what two plates cover overlaps along a direction of the plan (a unit vector), mm; negative where a line square
 * to it parts them. What they have in common is no wider than this.
 */
function overlapAlong(a: Flat, b: Flat, direction: Point): number {
  const span = ({ shadow }: Flat): readonly [number, number] => {
    let [from, to] = [Infinity, -Infinity];
    for (const p of shadow) {
      const at = dot(p, direction);
      if (at < from) from = at;
      if (at > to) to = at;
    }
    return [from, to];
  };
  const [[fromA, toA], [fromB, toB]] = [span(a), span(b)];
  return Math.min(toA - fromB, toB - fromA);
}

/** Whether a line along an axis of either plate parts them: cheap, and the rule for parts that lie face to face. */
function standApart(a: Flat, b: Flat): boolean {
  return [a, b].some(({ placed: { frame } }) => {
    const along = { x: frame.x[0], y: frame.x[1] };
    return [along, { x: -along.y, y: along.x }].some((axis) => overlapAlong(a, b, axis) <= overlapTolerance);
  });
}

/** What a plate covers of the plan between two heights. */
function planBetween({ placed, upright, rings, pockets }: Flat, low: number, high: number): Point[][] {
  const { frame, part } = placed;
  const inPlan = (x: number, y: number, h: number): Point => {
    const [px, py] = toSpace(frame, x, y, h);
    return { x: px, y: py };
  };
  if (!upright) {
    const open = pockets.filter((pocket) => pocket.low <= low && pocket.high >= high).map(({ ring }) => ring);
    const placedRings = [...rings, ...open].map((ring) => ring.map(({ x, y }) => inPlan(x, y, 0)));
    return frontOf(frame)[2] > 0 ? placedRings : placedRings.map((ring) => ring.toReversed());
  }
  // an upright plate stands with its own y upward
  const [from, to] = [low - frame.origin[2], high - frame.origin[2]];
  const span = 1e6;
  const slab = [
    { x: -span, y: from },
    { x: span, y: from },
    { x: span, y: to },
    { x: -span, y: to },
  ];
  return intersectPolygons(rings, [slab])
    .filter((piece) => polygonArea(piece) > 0)
    .map((piece) => {
      const { minX, maxX } = bounds(piece.map(({ x, y }) => ({ x, y, bulge: 0 })));
      const ring = [
        inPlan(minX, 0, 0),
        inPlan(maxX, 0, 0),
        inPlan(maxX, 0, part.thickness),
        inPlan(minX, 0, part.thickness),
      ];
      return polygonArea(ring) > 0 ? ring : ring.toReversed();
    });
}

function depthOf(a: Flat, b: Flat): number {
  const [low, high] = [Math.max(a.low, b.low), Math.min(a.high, b.high)];
  if (high - low <= overlapTolerance) return 0;
  if (boxDistance(a.box, b.box) > 0 || standApart(a, b)) return 0;
  const depth = depthBetween(a, b, low, high);
  if (depth <= overlapTolerance) return depth;
  // what two plates cover changes with the height where both stand upright and pass through each other's slots, or
  // where one has pockets
  const changes = [...(a.upright && b.upright ? [a, b].flatMap(cornerHeights) : []), ...[a, b].flatMap(floors)];
  if (changes.length === 0) return depth;
  const heights = [low, ...new Set(changes.filter((z) => z > low && z < high)), high].sort((p, q) => p - q);
  return Math.max(0, ...heights.slice(1).map((to, i) => depthBetween(a, b, heights[i] ?? to, to)));
}

/** Heights of a plate's corners. */
function cornerHeights({ placed: { frame }, rings }: Flat): number[] {
  return rings.flatMap((ring) => ring.map(({ y }) => frame.origin[2] + y));
}

const floors = ({ pockets }: Flat): number[] => pockets.flatMap(({ low, high }) => [low, high]);

/** How deep two plates are in each other between two heights. */
function depthBetween(a: Flat, b: Flat, low: number, high: number): number {
  if (high - low <= overlapTolerance) return 0;
  // a hair off both ends, where plates only touch
  const margin = overlapTolerance / 2;
  const common = intersectPolygons(
    planBetween(a, low + margin, high - margin),
    planBetween(b, low + margin, high - margin),
  );
  const sliver = Math.max(0, ...common.map((piece) => (2 * polygonArea(piece)) / circumference(piece)));
  return Math.min(sliver, high - low);
}

const stations = 13;

/** Heights of a rib's top edge by its own x, read off its outline as it is cut. */
function topOf({ rings }: Flat): (x: number) => number {
  const ring = rings[0] ?? [];
  return (x) => {
    let top = -Infinity;
    ring.forEach((p, i) => {
      const q = ring[(i + 1) % ring.length] ?? p;
      if (Math.min(p.x, q.x) > x || Math.max(p.x, q.x) < x) return;
      const share = q.x === p.x ? 1 : (x - p.x) / (q.x - p.x);
      top = Math.max(top, p.y + share * (q.y - p.y), q.x === p.x ? Math.max(p.y, q.y) : -Infinity);
    });
    return top;
  };
}

/** Half the width of a sheet's outline, as points along it, at a length from its inner end, on one side. */
function edgeAt(ring: readonly Point[], x: number, sign: 1 | -1): number | null {
  let edge: number | null = null;
  ring.forEach((p, i) => {
    const q = ring[(i + 1) % ring.length] ?? p;
    if (Math.min(p.x, q.x) > x || Math.max(p.x, q.x) < x || q.x === p.x) return;
    const y = sign * (p.y + ((x - p.x) / (q.x - p.x)) * (q.y - p.y));
    if (y > (edge ?? 0)) edge = y;
  });
  return edge;
}

/** One panel against the two ribs that it lies on and, across their middles, against its neighbours. */
function panelFaults(design: Design, dish: Dish, panel: AssembledSheet, ribs: readonly Flat[]): AssemblyFault[] {
  const shape = sheetShape(design, dish, panel);
  const outline = flatten(panel.part.outline, chord, 'on');
  const faults: AssemblyFault[] = [];
  for (const side of [0, 1] as const) {
    const rib = ribs[((panel.rib ?? 1) - 1 + side) % ribs.length];
    if (rib === undefined) continue;
    const top = topOf(rib);
    const { frame, part } = rib.placed;
    const middle = toSpace(frame, 0, 0, part.thickness / 2);
    const left = [-frontOf(frame)[0], -frontOf(frame)[1]] as const;
    let [deepest, nearest, past] = [0, Infinity, 0];
    for (let i = 0; i <= stations; i++) {
      const x = (shape.length * (0.02 + i)) / (stations + 0.04);
      const half = edgeAt(outline, x, side === 0 ? -1 : 1);
      if (half === null) continue;
      const at = sheetPoint(shape, panel.bay, shape.at(x), side === 0 ? -half : half, panel.part.thickness);
      const [dx, dy] = [at[0] - middle[0], at[1] - middle[1]];
      // off the rib's middle plane, positive on the panel's own side
      const off = (dx * left[0] + dy * left[1]) * (side === 0 ? 1 : -1);
      const along = dx * frame.x[0] + dy * frame.x[1];
      past = Math.max(past, -off);
      const space = at[2] - top(along);
      deepest = Math.max(deepest, -space);
      nearest = Math.min(nearest, space);
    }
    const names = [nameOf(panel), nameOf(rib.placed)] as const;
    if (past > overlapTolerance / 2)
      faults.push({ kind: 'overlap', between: [nameOf(panel), 'the next panel'], depth: 2 * past });
    if (deepest > contactTolerance(part.fitDeviation)) faults.push({ kind: 'overlap', between: names, depth: deepest });
    if (nearest > contactTolerance(part.fitDeviation)) faults.push({ kind: 'gap', between: names, gap: nearest });
  }
  return faults;
}

/** A rib's curve is fitted by arcs, a panel's edge too. */
const contactTolerance = (fitDeviation: number): number => overlapTolerance + 2 * fitDeviation;

/** Parts that run into each other, or stay apart where they are made to meet. */
export function overlapFaults(design: Design, dish: Dish, { placed }: Assembly): AssemblyFault[] {
  const plates = placed.filter(isPlate);
  const ringsOfPart = new Map([...new Set(plates.map(({ part }) => part))].map((part) => [part, flatRings(part)]));
  const flats = plates.map((plate) => flatOf(plate, ringsOfPart.get(plate.part) ?? []));
  const faults: AssemblyFault[] = [];
  flats.forEach((a, i) => {
    for (const b of flats.slice(i + 1)) {
      const depth = depthOf(a, b);
      if (depth > overlapTolerance)
        faults.push({ kind: 'overlap', between: [nameOf(a.placed), nameOf(b.placed)], depth });
    }
  });
  const ribs = flats.filter(({ placed: one }) => one.part.kind === 'rib');
  const panels = placed.filter(isSheet).filter(({ part }) => part.kind === 'panel');
  // all panels are copies of one part, each a turn of the first about the axis, and so are the ribs
  return [...faults, ...panels.slice(0, 1).flatMap((panel) => panelFaults(design, dish, panel, ribs))];
}
