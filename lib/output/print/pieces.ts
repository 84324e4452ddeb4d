/** The ink of a drawing in pieces, each short enough to be seen whole on one of two pages that overlap. */
import {
  type Bounds,
  type Edge,
  edgeLength,
  edgesOf,
  edgesOfPath,
  element,
  type Point,
  pointOnEdge,
} from '../../geometry/index.js';
import type { Drawing } from '../types.js';

export interface Piece {
  readonly from: Point;
  readonly to: Point;
  /** How far the ink reaches off the straight line between them, mm. */
  readonly slack: number;
}

/** Arms of the cross that a hole is drawn with, from its centre, mm. */
export const crossArm = (diameter: number): number => Math.max(diameter / 2 + 1, 2.5);

/** Half of the widest line, mm. */
const HALF_LINE = 0.2;

/** How far an arc of this edge and length bows off its chord. */
function bow(edge: Edge, length: number): number {
  if (edge.kind === 'straight') return 0;
  const half = Math.min(length / (2 * edge.radius), Math.PI);
  return edge.radius * (1 - Math.cos(half));
}

function piecesOfEdge(edge: Edge, longest: number): Piece[] {
  const length = edgeLength(edge);
  const count = Math.max(1, Math.ceil(length / longest));
  const slack = HALF_LINE + bow(edge, length / count);
  const points = Array.from({ length: count + 1 }, (_, i) => pointOnEdge(edge, i / count));
  return points.slice(1).map((to, i) => ({ from: element(points, i), to, slack }));
}

/** @param longest length of a piece of a line, mm */
export function piecesOf({ entities }: Drawing, longest: number): Piece[] {
  return entities.flatMap((entity): Piece[] => {
    if (entity.kind === 'circle') return [{ from: entity, to: entity, slack: crossArm(entity.diameter) }];
    const edges = entity.closed ? edgesOf(entity.vertices) : edgesOfPath(entity.vertices);
    return edges.flatMap((edge) => piecesOfEdge(edge, longest));
  });
}

/** The boxes of the pieces when all is turned about the origin, anticlockwise. */
export function turnedBoxes(pieces: readonly Piece[], angle: number): Bounds[] {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return pieces.map(({ from, to, slack }) => {
    const [ax, ay] = [from.x * cos - from.y * sin, from.x * sin + from.y * cos];
    const [bx, by] = [to.x * cos - to.y * sin, to.x * sin + to.y * cos];
    return {
      minX: Math.min(ax, bx) - slack,
      minY: Math.min(ay, by) - slack,
      maxX: Math.max(ax, bx) + slack,
      maxY: Math.max(ay, by) + slack,
    };
  });
}

export const boxesMeet = (a: Bounds, b: Bounds): boolean =>
  a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;
