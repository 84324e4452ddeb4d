/** Short forms for entities, and moving them about. */
import type { Point } from '../../geometry/index.js';
import type { Entity, EntityKind, LineKind, Stroke, Words } from './types.js';

export const straight = (line: LineKind, ...points: readonly Point[]): Stroke => ({
  line,
  closed: false,
  vertices: points.map(({ x, y }) => ({ x, y, bulge: 0 })),
});

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
