/** Entities of a DXF file as runs of edges (Autodesk, DXF Reference, edition of 2012, chapter 6). */
import { element } from '../../geometry/index.js';
import type { FittedPath, Point, Vertex } from '../../geometry/index.js';
import { followEllipse, followSpline } from './curves.js';
import { type DrawnRun, ExtraFault } from './drawing.js';
import { type DxfRecord, real, realAt, realOr, type Tag, integerValue, integerValueOr } from './dxf-tags.js';

/** An entity with what belongs to it: the vertices of an old-style polyline. */
export interface Entity extends DxfRecord {
  readonly vertices: readonly DxfRecord[];
}

const radians = Math.PI / 180;
const fullTurn = 2 * Math.PI;
/** Heights that differ by less (drawing units) are one height. */
const sameHeight = 1e-6;

/** 1 for entities seen from above, -1 for those seen from below, whose own x runs the other way. */
function facing(tags: readonly Tag[]): 1 | -1 {
  const [x, y, z] = [realOr(tags, 210, 0), realOr(tags, 220, 0), realOr(tags, 230, 1)];
  const length = Math.hypot(x, y, z);
  if (!(length > 0) || Math.abs(z) / length < 1 - 1e-9)
    throw new ExtraFault(
      'extra-not-flat',
      'it does not lie in the plane of the drawing',
      'draw it flat, as seen from above',
    );
  return z > 0 ? 1 : -1;
}

function mustBeLevel(heights: readonly number[]): void {
  if (heights.some((z) => Math.abs(z - element(heights, 0)) > sameHeight))
    throw new ExtraFault('extra-not-flat', 'its points differ in height (z)', 'flatten the drawing');
}

/** The size of a circle. */
function radiusOf(tags: readonly Tag[], scale: number): number {
  const radius = realAt(tags, 40) * scale;
  if (!(radius > 0)) throw new ExtraFault('extra-no-size', 'its radius is not above 0');
  return radius;
}

function line({ tags }: Entity, scale: number): DrawnRun {
  mustBeLevel([realOr(tags, 30, 0), realOr(tags, 31, 0)]);
  const path = [
    { x: realAt(tags, 10) * scale, y: realAt(tags, 20) * scale, bulge: 0 },
    { x: realAt(tags, 11) * scale, y: realAt(tags, 21) * scale, bulge: 0 },
  ];
  return { path, deviation: 0, closed: false };
}

function round({ tags }: Entity, scale: number, tolerance: number, from: number, to: number): DrawnRun {
  const side = facing(tags);
  const radius = radiusOf(tags, scale);
  const centre = { x: side * realAt(tags, 10) * scale, y: realAt(tags, 20) * scale };
  const arc = { centre, u: { x: side * radius, y: 0 }, v: { x: 0, y: radius }, from, to };
  return ringed(followEllipse(arc, tolerance), to - from);
}

/** A full turn as a ring. */
function ringed(fitted: FittedPath, sweep: number): DrawnRun {
  const closed = Math.abs(sweep) >= fullTurn - 1e-9;
  return closed ? { ...fitted, path: fitted.path.slice(0, -1), closed } : { ...fitted, closed };
}

function arc(entity: Entity, scale: number, tolerance: number): DrawnRun {
  const from = realAt(entity.tags, 50) * radians;
  let sweep = (realAt(entity.tags, 51) * radians - from) % fullTurn;
  if (sweep <= 0) sweep += fullTurn;
  return round(entity, scale, tolerance, from, from + sweep);
}

function ellipse({ tags }: Entity, scale: number, tolerance: number): DrawnRun {
  const side = facing(tags);
  const u = { x: realAt(tags, 11) * scale, y: realAt(tags, 21) * scale };
  mustBeLevel([0, realOr(tags, 31, 0)]);
  const ratio = realAt(tags, 40);
  if (!(Math.hypot(u.x, u.y) > 0 && ratio > 0)) throw new ExtraFault('extra-no-size', 'its axes are not above 0');
  const v = { x: -u.y * ratio * side, y: u.x * ratio * side };
  const from = realOr(tags, 41, 0);
  let sweep = (realOr(tags, 42, fullTurn) - from) % fullTurn;
  if (sweep <= 1e-12) sweep += fullTurn;
  const centre = { x: realAt(tags, 10) * scale, y: realAt(tags, 20) * scale };
  return ringed(followEllipse({ centre, u, v, from, to: from + sweep }, tolerance), sweep);
}

function mirrored(vertices: readonly Vertex[], side: 1 | -1): Vertex[] {
  return vertices.map(({ x, y, bulge }) => ({ x: side * x, y, bulge: side * bulge }));
}

function lightPolyline({ tags }: Entity, scale: number): DrawnRun {
  const vertices: { x: number; y: number; bulge: number }[] = [];
  for (const tag of tags) {
    const last = vertices.at(-1);
    if (tag.code === 10) vertices.push({ x: real(tag) * scale, y: NaN, bulge: 0 });
    else if (tag.code === 20 && last) last.y = real(tag) * scale;
    else if (tag.code === 42 && last) last.bulge = real(tag);
  }
  const stated = integerValueOr(tags, 90, vertices.length);
  if (stated !== vertices.length)
    throw new ExtraFault('extra-broken', `it states ${stated} vertices but has ${vertices.length}`, 'export it again');
  if (vertices.some(({ y }) => Number.isNaN(y))) throw new ExtraFault('extra-broken', 'it has a vertex without y');
  return { path: mirrored(vertices, facing(tags)), deviation: 0, closed: (integerValueOr(tags, 70, 0) & 1) === 1 };
}

function oldPolyline({ tags, vertices }: Entity, scale: number): DrawnRun {
  const flags = integerValueOr(tags, 70, 0);
  if ((flags & (16 | 64)) !== 0)
    throw new ExtraFault('extra-not-flat', 'it is a mesh, but only flat outlines are cut', 'draw its outline');
  // 16: a control point of the curve, which the curve itself does not pass
  const own = vertices.filter((vertex) => (integerValueOr(vertex.tags, 70, 0) & 16) === 0);
  mustBeLevel(own.map((vertex) => realOr(vertex.tags, 30, 0)));
  const path = own.map((vertex) => ({
    x: realAt(vertex.tags, 10) * scale,
    y: realAt(vertex.tags, 20) * scale,
    bulge: realOr(vertex.tags, 42, 0),
  }));
  return { path: mirrored(path, facing(tags)), deviation: 0, closed: (flags & 1) === 1 };
}

function spline({ tags }: Entity, scale: number, tolerance: number): DrawnRun {
  const points: { x: number; y: number }[] = [];
  const knots: number[] = [];
  const weights: number[] = [];
  const heights: number[] = [];
  let fitPoints = 0;
  for (const tag of tags) {
    const last = points.at(-1);
    if (tag.code === 10) points.push({ x: real(tag) * scale, y: NaN });
    else if (tag.code === 20 && last) last.y = real(tag) * scale;
    else if (tag.code === 30) heights.push(real(tag));
    else if (tag.code === 40) knots.push(real(tag));
    else if (tag.code === 41) weights.push(real(tag));
    else if (tag.code === 11) fitPoints += 1;
  }
  mustBeLevel(heights);
  if (points.length === 0 && fitPoints > 0)
    throw new ExtraFault(
      'extra-spline',
      'it is given only by the points that it passes through',
      'export splines with their control points, or as polylines',
    );
  if (points.some(({ y }) => Number.isNaN(y))) throw new ExtraFault('extra-broken', 'it has a point without y');
  const degree = integerValue(tags.find(({ code }) => code === 71) ?? { code: 71, value: '3', line: 0 });
  const fitted = followSpline(
    { degree, knots, points, weights: weights.length === 0 ? points.map(() => 1) : weights },
    tolerance,
  );
  return { ...fitted, closed: false };
}

/**
 * The run of an entity.
 * @param scale mm a drawing unit
 * @returns null for an entity that is no line
 * @throws ExtraFault for one that cannot be taken
 */
export function runOf(entity: Entity, scale: number, tolerance: number): DrawnRun | null {
  switch (entity.type.value) {
    case 'LINE':
      return line(entity, scale);
    case 'CIRCLE':
      return round(entity, scale, tolerance, 0, fullTurn);
    case 'ARC':
      return arc(entity, scale, tolerance);
    case 'ELLIPSE':
      return ellipse(entity, scale, tolerance);
    case 'LWPOLYLINE':
      return lightPolyline(entity, scale);
    case 'POLYLINE':
      return oldPolyline(entity, scale);
    case 'SPLINE':
      return spline(entity, scale, tolerance);
    default:
      return null;
  }
}

/** The scaled place of an entity, for messages; null when it has none. */
export function entityPlace({ tags }: DxfRecord): Point | null {
  const [x, y] = [tags.find(({ code }) => code === 10), tags.find(({ code }) => code === 20)];
  const [atX, atY] = [Number(x?.value), Number(y?.value)];
  return Number.isFinite(atX) && Number.isFinite(atY) ? { x: atX, y: atY } : null;
}
