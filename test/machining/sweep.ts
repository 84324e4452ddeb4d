/** What a tool takes away, found by clipper2 alone: an outside check of the paths. */
import { Clipper, EndType, FillRule, JoinType, type PathsD } from 'clipper2-ts';
import { circle, flatten, type Contour, type Polygon } from '../../lib/geometry/index.js';
import type { CutOperation } from '../../lib/machining/index.js';

/** Flattening and rounding within this of the truth (mm), a fiftieth of what is allowed. */
const FINE = 0.0004;

const toPaths = (polygons: readonly Polygon[]): PathsD => polygons.map((ring) => ring.map(({ x, y }) => ({ x, y })));

export function flat(rings: readonly Contour[]): PathsD {
  return toPaths(rings.map((ring) => flatten(ring, FINE, 'on')));
}

/** The region that a round tool passes whose centre runs along closed rings. */
function along(rings: readonly Contour[], radius: number): PathsD {
  return Clipper.inflatePathsD(flat(rings), radius, JoinType.Round, EndType.Joined, 2, 6, FINE);
}

/** Everything that the operations take away right through, as polygons. */
export function swept(operations: readonly CutOperation[], toolDiameter: number): PathsD {
  const rings = operations.flatMap((one) =>
    one.operation === 'outline' || one.operation === 'opening'
      ? [one.vertices]
      : one.bore === undefined
        ? []
        : [one.bore],
  );
  const discs = operations
    .filter((one) => one.operation === 'drill' && one.bore === undefined)
    .map((one) => circle(one.vertices[0]!, one.diameter! / 2));
  return Clipper.unionD([...along(rings, toolDiameter / 2), ...flat(discs)], [], FillRule.NonZero, 6);
}

export function grown(paths: PathsD, distance: number): PathsD {
  return Clipper.inflatePathsD(paths, distance, JoinType.Round, EndType.Polygon, 2, 6, FINE);
}

export function less(a: PathsD, b: PathsD): PathsD {
  return Clipper.differenceD(a, b, FillRule.NonZero, 6);
}

export function common(a: PathsD, b: PathsD): PathsD {
  return Clipper.intersectD(a, b, FillRule.NonZero, 6);
}

export function area(paths: PathsD): number {
  return Clipper.areaPathsD(paths);
}

/**
 * Area of what the cut leaves standing or takes wrongly, beyond 0.02 mm: `overcut` within the part, `left` beside it
 * where a round tool of this size can get to.
 */
export function faults(
  part: readonly Contour[],
  operations: readonly CutOperation[],
  toolDiameter: number,
): { overcut: number; left: number } {
  const allowed = 0.02;
  const radius = toolDiameter / 2;
  const truth = flat(part);
  const gone = swept(operations, toolDiameter);
  const core = grown(truth, -allowed);
  // closing: what no disc of this radius can enter without touching the part
  const cannotReach = grown(grown(truth, radius), -radius);
  const mustGo = less(grown(truth, radius), grown(cannotReach, allowed));
  return { overcut: area(common(core, gone)), left: area(less(mustGo, gone)) };
}
