/** Short forms for entities, and moving them about. */
import { circle, type Contour, type Point, rectangle } from '../../geometry/index.js';
import type { Entity, EntityKind, Fact, LineKind, Stroke, Words } from './types.js';

export const straight = (line: LineKind, ...points: readonly Point[]): Stroke => ({
  line,
  closed: false,
  vertices: points.map(({ x, y }) => ({ x, y, bulge: 0 })),
});

const ring = (line: LineKind, vertices: Contour): Stroke => ({ line, closed: true, vertices });

export const ringAt = (line: LineKind, centre: Point, radius: number): Stroke => ring(line, circle(centre, radius));

/** A rectangle by its lower left corner. */
export const frameAt = (line: LineKind, { x, y }: Point, width: number, height: number): Stroke =>
  ring(line, rectangle(x, y, x + width, y + height));

/** Text that is read from below, from its left end on. */
export const plainWords = (text: string, at: Point, height: number, states: readonly Fact[] = []): Words => ({
  text,
  at,
  height,
  anchor: 'start',
  turnDeg: 0,
  states,
});

/** Along a text that is turned; a quarter turn is exact. */
export function directionOf(turnDeg: number): { readonly cos: number; readonly sin: number } {
  const turn = (turnDeg * Math.PI) / 180;
  return turnDeg === 90 ? { cos: 0, sin: 1 } : { cos: Math.cos(turn), sin: Math.sin(turn) };
}

export function entity(kind: EntityKind, parts: Partial<Omit<Entity, 'kind'>>): Entity {
  return { kind, strokes: [], solids: [], words: [], ...parts };
}

const by = <P extends Point>(point: P, dx: number, dy: number): P => ({ ...point, x: point.x + dx, y: point.y + dy });

export function movedBy(one: Entity, dx: number, dy: number): Entity {
  return {
    kind: one.kind,
    strokes: one.strokes.map((stroke) => ({ ...stroke, vertices: stroke.vertices.map((v) => by(v, dx, dy)) })),
    solids: one.solids.map((solid) => solid.map((point) => by(point, dx, dy))),
    words: one.words.map((words): Words => ({ ...words, at: by(words.at, dx, dy) })),
  };
}

/** Arrow head by ISO 129-1: closed and filled, 15 degrees, its point at `at`. */
export function arrowHead(at: Point, direction: number, length = 2.2): Point[] {
  const half = (15 / 2) * (Math.PI / 180);
  const back = (angle: number): Point => ({
    x: at.x - (length * Math.cos(direction + angle)) / Math.cos(half),
    y: at.y - (length * Math.sin(direction + angle)) / Math.cos(half),
  });
  return [at, back(half), back(-half)];
}
