/** Outlines as they are laid: turned, mirrored, grown by half the spacing, and each different one kept once. */
import { cyclic, distance, element, type Placement, placePoint, type Point, type Polygon } from '../geometry/index.js';
import { ringArea } from './clipping.js';
import { growOuter, shrinkOpening } from './grow.js';

/** Corners nearer than this (mm) are one, and a corner this near to the line past it is none. */
const SAME = 1e-9;

/** A solid with its openings. The reference point is the lower left corner of the true outline's box. */
export interface NestShape {
  readonly index: number;
  /** Of the true outline's box. */
  readonly width: number;
  readonly height: number;
  /** The true outline, anticlockwise. */
  readonly outline: Polygon;
  /** Grown rings: outer ones anticlockwise, openings clockwise. */
  readonly solid: readonly Polygon[];
  readonly openings: readonly Polygon[];
  /** Of the true outline less its openings (mm²). */
  readonly area: number;
}

/** An orientation in which a part may be placed. */
export interface Orientation {
  readonly rotationDeg: number;
  readonly mirrored: boolean;
  readonly shape: NestShape;
  /** From the shape's reference point to the part's origin. */
  readonly originX: number;
  readonly originY: number;
}

/** The ring without doubled corners and without corners on a straight run. */
export function withoutCollinear(ring: Polygon): Point[] {
  const points: Point[] = [];
  for (const point of ring) {
    const last = points.at(-1);
    if (!last || Math.hypot(point.x - last.x, point.y - last.y) > SAME) points.push(point);
  }
  while (points.length > 1 && distance(cyclic(points, 0), cyclic(points, -1)) <= SAME) points.pop();
  for (let i = 0; i < points.length && points.length > 3;) {
    const p = cyclic(points, i - 1);
    const q = cyclic(points, i);
    const r = cyclic(points, i + 1);
    const span = Math.hypot(r.x - p.x, r.y - p.y);
    const off = Math.abs((r.x - p.x) * (q.y - p.y) - (r.y - p.y) * (q.x - p.x));
    const between = (q.x - p.x) * (r.x - q.x) + (q.y - p.y) * (r.y - q.y) >= 0;
    if (between && off <= SAME * span) {
      points.splice(i, 1);
      i = Math.max(0, i - 1);
    } else i++;
  }
  return points;
}

/** The ring moved, its corners started at the least one, so that equal rings read equal. */
function settled(ring: Polygon, dx: number, dy: number): Point[] {
  const moved = ring.map(({ x, y }) => ({ x: x + dx, y: y + dy }));
  let first = 0;
  moved.forEach((p, i) => {
    const q = element(moved, first);
    if (p.x < q.x - SAME || (Math.abs(p.x - q.x) <= SAME && p.y < q.y - SAME)) first = i;
  });
  return [...moved.slice(first), ...moved.slice(0, first)];
}

const keyOf = (rings: readonly Polygon[]): string =>
  rings.map((ring) => ring.map(({ x, y }) => `${Math.round(x * 1e7)},${Math.round(y * 1e7)}`).join(' ')).join('|');

/** Keeps each different shape once. */
export class Shapes {
  readonly all: NestShape[] = [];
  readonly #byKey = new Map<string, NestShape>();
  readonly #grow: number;

  /** @param spacing least distance between parts (mm) */
  constructor(spacing: number) {
    this.#grow = spacing / 2;
  }

  /** The part as it lies when turned (and first mirrored). Rings as in `NestPart`. */
  orient(outline: Polygon, openings: readonly Polygon[], rotationDeg: number, mirrored: boolean): Orientation {
    const placement: Placement = { x: 0, y: 0, rotationDeg, mirrored };
    const turned = (ring: Polygon): Point[] => {
      const points = ring.map((point) => placePoint(point, placement));
      return withoutCollinear(mirrored ? points.reverse() : points);
    };
    const outer = turned(outline);
    const minX = Math.min(...outer.map(({ x }) => x));
    const minY = Math.min(...outer.map(({ y }) => y));
    const rings = [outer, ...openings.map(turned)].map((ring) => settled(ring, -minX, -minY));
    const name = keyOf(rings);
    const shape = this.#byKey.get(name) ?? this.#make(element(rings, 0), rings.slice(1), name);
    return { rotationDeg, mirrored, shape, originX: -minX, originY: -minY };
  }

  #make(outline: Polygon, openings: readonly Polygon[], name: string): NestShape {
    const solid = growOuter(outline, this.#grow);
    const shape: NestShape = {
      index: this.all.length,
      width: Math.max(...outline.map(({ x }) => x)),
      height: Math.max(...outline.map(({ y }) => y)),
      outline,
      solid: solid.filter((ring) => ringArea(ring) > 0),
      openings: [
        ...solid.filter((ring) => ringArea(ring) < 0),
        ...openings.flatMap((ring) => shrinkOpening(ring, this.#grow)),
      ],
      area: ringArea(outline) + openings.reduce((sum, ring) => sum + ringArea(ring), 0),
    };
    this.all.push(shape);
    this.#byKey.set(name, shape);
    return shape;
  }
}
