/** Parts of fixtures and of changed fixtures, for the tests of this folder. */
import * as polyclip from 'polyclip-ts';
import { type Design, shapeOf } from '../../lib/design/index.js';
import type { Diagnostic } from '../../lib/diagnostic/index.js';
import type { Dish } from '../../lib/dish/index.js';
import { solveDish } from '../../lib/dish/index.js';
import { edgesOf, edgesOfPath, type Point, pointOnEdge, type Vertex } from '../../lib/geometry/index.js';
import type { Part } from '../../lib/part/index.js';
import { makeParts } from '../../lib/parts/index.js';
import { changedBy } from '../helpers/changed.js';
import { designOf, type FixtureName } from '../helpers/fixtures.js';

export interface Made {
  readonly design: Design;
  readonly dish: Dish;
  readonly parts: readonly Part[];
  readonly problems: readonly Diagnostic[];
  readonly cleatStart: number;
}

const made = new Map<string, Made>();

function makeFrom(text: string): Made {
  const known = made.get(text);
  if (known) return known;
  const design = designOf(text);
  const dish = solveDish(shapeOf(design), design.dish.arcTolerance);
  const parts = makeParts(design, dish);
  // without cleats there is no such radius, and what is asked about it should not pass
  const result = { design, dish, ...parts, cleatStart: parts.cleatStart ?? NaN };
  made.set(text, result);
  return result;
}

export function make(name: FixtureName, changes: readonly (readonly [string | RegExp, string])[] = []): Made {
  return makeFrom(changedBy(name, changes));
}

export function firstPart(made: Made, id: string): Part {
  const part = made.parts.find((one) => one.id === id);
  if (!part) throw new Error(`no part ${id} among ${made.parts.map((one) => one.id).join(', ')}`);
  return part;
}

/** Points along a ring or path, close together on its arcs. */
export function dense(vertices: readonly Vertex[], closed: boolean, perEdge = 64): Point[] {
  const edges = closed ? edgesOf(vertices) : edgesOfPath(vertices);
  return edges.flatMap((edge) =>
    Array.from({ length: edge.kind === 'arc' ? perEdge : 1 }, (_, i) =>
      pointOnEdge(edge, i / (edge.kind === 'arc' ? perEdge : 1)),
    ),
  );
}

type Polygon = [number, number][][];
const polygon = (points: readonly Point[]): Polygon => [points.map(({ x, y }): [number, number] => [x, y])];

function areaOf(multi: readonly (readonly (readonly (readonly [number, number])[])[])[]): number {
  // the library gives outer rings anticlockwise and holes clockwise
  return multi.flat().reduce((sum, ring) => {
    let twice = 0;
    ring.forEach(([x, y], i) => {
      const [nx, ny] = ring[(i + 1) % ring.length]!;
      twice += x * ny - nx * y;
    });
    return sum + twice / 2;
  }, 0);
}

/** Area that two rings share, by polyclip-ts, mm². */
export function overlapArea(a: readonly Point[], b: readonly Point[]): number {
  return areaOf(polyclip.intersection(polygon(a), polygon(b)));
}

/** Area that any of the rings covers, by polyclip-ts, mm². */
export function unionArea(all: readonly (readonly Point[])[]): number {
  const [first, ...rest] = all.map(polygon);
  return areaOf(polyclip.union(first!, ...rest));
}

export const areaOfRing = (points: readonly Point[]): number => areaOf([polygon(points)]);

/** A point turned about the origin, radians. */
export function turn({ x, y }: Point, angle: number): Point {
  return { x: x * Math.cos(angle) - y * Math.sin(angle), y: x * Math.sin(angle) + y * Math.cos(angle) };
}
