/** A part cut across its length, with joints that put it together again at its true length. */
import {
  bounds,
  bulgeOfSweep,
  contourFromPoints,
  cyclic,
  edgesOf,
  element,
  pathLength,
  type Point,
  strokeTextWidth,
  type Vertex,
} from '../geometry/index.js';
import { ringFits } from './bed.js';
import { type Crossing, crossings } from './crossing.js';
import type { EdgeRun, Part } from '../part/index.js';

export type EdgeJointKind = 'dovetail' | 'finger';

/** Play on each flank of the joint, mm: common practice, no source. The shoulders meet without any. */
const flankFit = 0.05;
/** A part shallower than this takes no joint (mm). */
const minDepth = 24;
/** From the joint to a hole or lettering, mm. */
const clearOfJoint = 12;
/** From the joint's shoulders to a corner or joint of arcs of the outline (mm). */
const clearOfCorner = 3;
/** Steps of the search for a place (mm). */
const step = 10;
const dovetailSlope = Math.tan((12 * Math.PI) / 180);

/** How far the tongues reach and how they are spaced, for a joint of a given depth. */
function tongues(depth: number, kind: EdgeJointKind) {
  const count = Math.max(1, Math.floor((0.6 * depth) / 40));
  const pitch = (0.6 * depth) / count;
  const reach = Math.min(15, 0.6 * pitch);
  const neck = 0.45 * pitch;
  return { count, pitch, reach, neck, head: kind === 'dovetail' ? neck + 2 * reach * dovetailSlope : neck };
}

/** Corners of the joint from its foot at (x, low) up to its head at (x, high), both ends left out. */
function jointCorners(x: number, low: number, high: number, kind: EdgeJointKind, fit: number): Point[] {
  const { count, pitch, reach, neck, head } = tongues(high - low, kind);
  return Array.from({ length: count }, (_, i) => (low + high) / 2 + (i - (count - 1) / 2) * pitch).flatMap((middle) => [
    { x, y: middle - neck / 2 - fit },
    { x: x + reach + fit, y: middle - head / 2 - fit },
    { x: x + reach + fit, y: middle + head / 2 + fit },
    { x, y: middle + neck / 2 + fit },
  ]);
}

/** A vertex of a piece, the edge of the whole that goes on from it (-1: the joint's), and what corner it was. */
interface Traced {
  readonly vertex: Vertex;
  readonly source: number;
  /** Number of the vertex of the whole, `joint` for a corner of the new joint, `end` where the joint begins or ends. */
  readonly corner: number | 'joint' | 'end';
}

/** The ring from one crossing on to the next, anticlockwise, with both as its first and last vertex. */
function runBetween(ring: readonly Vertex[], from: Crossing, to: Crossing): Traced[] {
  const edges = edgesOf(ring);
  const part = (edge: number, a: number, b: number): number => {
    const { kind, ...rest } = element(edges, edge);
    return kind === 'arc' && 'sweep' in rest ? bulgeOfSweep(rest.sweep * (b - a)) : 0;
  };
  const run: Traced[] = [
    { vertex: { ...from.at, bulge: part(from.edge, from.fraction, 1) }, source: from.edge, corner: 'end' },
  ];
  for (let i = (from.edge + 1) % ring.length; ; i = (i + 1) % ring.length) {
    const vertex = element(ring, i);
    run.push({
      vertex: { ...vertex, bulge: i === to.edge ? part(i, 0, to.fraction) : vertex.bulge },
      source: i,
      corner: i,
    });
    if (i === to.edge) break;
  }
  run.push({ vertex: { ...to.at, bulge: 0 }, source: -1, corner: 'end' });
  return run;
}

/** Runs of edges with a role, carried over to the new ring. */
function carryEdges(edges: readonly EdgeRun[], traced: readonly Traced[]): EdgeRun[] {
  return edges.flatMap((run): EdgeRun[] => {
    if (run.ring !== 0) return [];
    const mine = traced.flatMap(({ source }, i) => (source >= run.from && source <= run.to ? [i] : []));
    const [first] = mine;
    return first === undefined ? [] : [{ ...run, from: first, to: cyclic(mine, -1) }];
  });
}

function piece(part: Part, traced: readonly Traced[], keeps: (x: number) => boolean): Part {
  const before = new Set(part.seatCorners.filter(({ ring }) => ring === 0).map(({ vertex }) => vertex));
  const seats = traced.flatMap(({ corner }, vertex) =>
    corner === 'joint' || (corner !== 'end' && before.has(corner)) ? [{ ring: 0, vertex }] : [],
  );
  const keepsRing = (vertices: readonly Vertex[]): boolean => {
    const box = bounds(vertices);
    return keeps((box.minX + box.maxX) / 2);
  };
  return {
    ...part,
    outline: traced.map(({ vertex }) => vertex),
    openings: part.openings.filter(keepsRing),
    holes: part.holes.filter(({ x }) => keeps(x)),
    marks: part.marks.filter((mark) => (mark.kind === 'line' ? keepsRing(mark.vertices) : keeps(mark.x))),
    edges: carryEdges(part.edges, traced),
    seatCorners: seats,
  };
}

/** The part as two pieces with the joint's shoulders at `x`; null when the outline does not cross there just twice. */
function splitAt(part: Part, x: number, kind: EdgeJointKind): readonly [Part, Part] | null {
  const { outline } = part;
  const pair = crossings(outline, x);
  if (pair === null) return null;
  const [low, high] = pair;
  const joint = (fit: number): Traced[] =>
    contourFromPoints(jointCorners(x, low.at.y, high.at.y, kind, fit)).map((vertex) => ({
      vertex,
      source: -1,
      corner: 'joint',
    }));
  // the tongues belong to the piece on the left, the sockets to that on the right
  const left = [...runBetween(outline, high, low), ...joint(0)];
  const right = [...runBetween(outline, low, high), ...joint(flankFit).reverse()];
  return [piece(part, left, (at) => at < x), piece(part, right, (at) => at >= x)];
}

/** Whether a joint at `x` keeps off holes, openings and lettering, and finds enough depth. */
function jointFits(part: Part, x: number, kind: EdgeJointKind): boolean {
  const pair = crossings(part.outline, x);
  if (pair === null) return false;
  const depth = pair[1].at.y - pair[0].at.y;
  if (depth < minDepth) return false;
  // a corner of the outline where the joint's shoulder ends would leave a sliver
  if (part.outline.some((vertex) => Math.abs(vertex.x - x) < clearOfCorner)) return false;
  const [from, to] = [x - clearOfJoint, x + tongues(depth, kind).reach + clearOfJoint];
  const free = (low: number, high: number): boolean => high < from || low > to;
  const freeRing = (vertices: readonly Vertex[]): boolean => {
    if (pathLength(vertices) === 0) return true;
    const box = bounds(vertices);
    return free(box.minX, box.maxX);
  };
  return (
    part.holes.every(({ x: at, diameter }) => free(at - diameter / 2, at + diameter / 2)) &&
    part.openings.every(freeRing) &&
    part.marks.every((mark) => {
      if (mark.kind === 'line') return freeRing(mark.vertices);
      const end = mark.x + strokeTextWidth(mark.text, mark.height) * Math.cos(mark.angle);
      return free(Math.min(mark.x, end), Math.max(mark.x, end));
    })
  );
}

/** Pieces that fit the bed, as few as do; null when `most` are not enough or no place has room for a joint. */
function divide(part: Part, bed: Bed, kind: EdgeJointKind, max: number): Part[] | null {
  const { outline } = part;
  if (ringFits(outline, [bed])) return [part];
  const { minX, maxX } = bounds(outline);
  // nothing longer than the bed's diagonal fits it
  const longest = Math.hypot(bed.width, bed.height);
  for (let count = Math.max(2, Math.ceil((maxX - minX) / longest)); count <= max; count++) {
    const ideal = minX + (maxX - minX) / count;
    for (let off = 0; off < (maxX - minX) / count; off += step)
      for (const x of off === 0 ? [ideal] : [ideal - off, ideal + off]) {
        if (x - minX > longest || maxX - x > (count - 1) * longest || !jointFits(part, x, kind)) continue;
        const pair = splitAt(part, x, kind);
        if (pair === null || !ringFits(pair[0].outline, [bed])) continue;
        const rest = divide(pair[1], bed, kind, count - 1);
        if (rest !== null) return [pair[0], ...rest];
      }
  }
  return null;
}

interface Bed {
  readonly width: number;
  readonly height: number;
}

/**
 * The part, in pieces (`template-1`, ...) when it is larger than the bed.
 * @param most greatest number of pieces
 * @returns null when no places across it give pieces that fit, or none has room for a joint
 */
export function fitToBed(part: Part, bed: Bed | undefined, kind: EdgeJointKind, max: number): readonly Part[] | null {
  if (bed === undefined) return [part];
  const pieces = divide(part, bed, kind, max);
  if (pieces === null || pieces.length === 1) return pieces;
  return pieces.map((one, i) => ({
    ...one,
    id: `${part.id}-${i + 1}`,
    name: `${part.name}, piece ${i + 1} of ${pieces.length}`,
    notes: [
      ...part.notes,
      `Made in ${pieces.length} pieces for the bed of the machine: glue the joints on a flat board along a straight edge, scribed faces up.`,
    ],
  }));
}
