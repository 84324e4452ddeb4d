/** Where a text can stand without touching a line or another text. */
import { type Bounds, bounds, flattenPath, type Point } from '../../geometry/index.js';
import { directionOf } from './entity.js';
import { descentOf, textWidth } from './font.js';
import type { Entity, Words } from './types.js';

export interface Segment {
  readonly a: Point;
  readonly b: Point;
}

/** The box of a line of text. */
export function boxOf({ text, at, height, anchor, turnDeg }: Words): Bounds {
  const width = textWidth(text, height);
  const from = anchor === 'start' ? 0 : anchor === 'end' ? -width : -width / 2;
  const low = -descentOf(height);
  const { cos, sin } = directionOf(turnDeg);
  const corners = [from, from + width].flatMap((x) =>
    [low, height].map((y) => ({ x: at.x + x * cos - y * sin, y: at.y + x * sin + y * cos, bulge: 0 })),
  );
  return bounds(corners);
}

export const grown = ({ minX, minY, maxX, maxY }: Bounds, by: number): Bounds => ({
  minX: minX - by,
  minY: minY - by,
  maxX: maxX + by,
  maxY: maxY + by,
});

export const overlap = (a: Bounds, b: Bounds): boolean =>
  a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;

/** Whether a straight line passes through a box (Liang and Barsky 1984). */
export function passes({ a, b }: Segment, box: Bounds): boolean {
  if (Math.max(a.x, b.x) < box.minX || Math.min(a.x, b.x) > box.maxX) return false;
  if (Math.max(a.y, b.y) < box.minY || Math.min(a.y, b.y) > box.maxY) return false;
  let [from, to] = [0, 1];
  for (const [start, step, min, max] of [
    [a.x, b.x - a.x, box.minX, box.maxX],
    [a.y, b.y - a.y, box.minY, box.maxY],
  ] as const) {
    if (Math.abs(step) < 1e-12) continue;
    const [t, u] = [(min - start) / step, (max - start) / step];
    from = Math.max(from, Math.min(t, u));
    to = Math.min(to, Math.max(t, u));
  }
  return from <= to;
}

/** The straight pieces of all strokes. */
export function segmentsOf(entities: readonly Entity[]): Segment[] {
  return entities.flatMap(({ strokes }) =>
    strokes.flatMap(({ vertices, closed }) => {
      const first = vertices[0];
      const path = closed && first ? [...vertices, { ...first, bulge: 0 }] : vertices;
      const points = flattenPath(path, 0.1);
      return points.slice(1).flatMap((b, i): Segment[] => {
        const a = points[i];
        return a ? [{ a, b }] : [];
      });
    }),
  );
}

/** What is in the way of texts. */
export interface Crowd {
  readonly segments: readonly Segment[];
  readonly boxes: readonly Bounds[];
  /** Lines that no leader may cross. */
  readonly dimensions: readonly Segment[];
  /** Texts stay within. */
  readonly within: Bounds;
}

const isFree = (box: Bounds, { segments, boxes, within }: Crowd): boolean =>
  box.minX >= within.minX &&
  box.minY >= within.minY &&
  box.maxX <= within.maxX &&
  box.maxY <= within.maxY &&
  !boxes.some((other) => overlap(box, other)) &&
  !segments.some((segment) => passes(segment, box));

const cross = (a: Point, b: Point, c: Point): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
export const crossing = (s: Segment, t: Segment): boolean =>
  cross(s.a, s.b, t.a) * cross(s.a, s.b, t.b) < 0 && cross(t.a, t.b, s.a) * cross(t.a, t.b, s.b) < 0;

export interface BoxSize {
  readonly width: number;
  readonly height: number;
}

export interface FreePlace {
  /** Lower left corner of the box. */
  readonly corner: Point;
  /** From the place to the box; null where it stands close by. */
  readonly leader: Segment | null;
}

/** Directions in which a place is looked for, in turn: upper right first, as is usual. */
const first = [1, 7, 3, 5, 0, 2, 4, 6];
const directionsOf = (count: number): number[] =>
  [...first, ...Array.from({ length: count - 8 }, (_, i) => (i * 8) / (count - 8) + 0.5)].map((k) => (k * Math.PI) / 4);
const directions: Readonly<Record<16 | 64, readonly number[]>> = { 16: directionsOf(16), 64: directionsOf(64) };
const FURTHEST = 150;
/** Beyond this a text needs a line to its place. */
const CLOSE = 3.5;

/** A box with a place in its middle, where that is free. */
export function placeOn(at: Point, { width, height }: BoxSize, crowd: Crowd): FreePlace | null {
  const corner = { x: at.x - width / 2, y: at.y - height / 2 };
  const box = { minX: corner.x, minY: corner.y, maxX: corner.x + width, maxY: corner.y + height };
  return isFree(grown(box, 0.3), crowd) ? { corner, leader: null } : null;
}

/**
 * The nearest free place for a box of the given size; null where there is none.
 * @param leader whether a line to the place is wanted in any case
 * @param furthest from the place, mm
 */
export function freePlace(
  at: Point,
  size: BoxSize,
  leader: boolean,
  crowd: Crowd,
  furthest = FURTHEST,
): FreePlace | null {
  return (
    placeIn(at, size, leader, crowd, 16, furthest) ??
    placeIn(at, size, leader, { ...crowd, dimensions: [] }, 16, furthest) ??
    placeIn(at, size, leader, { ...crowd, dimensions: [] }, 64, furthest)
  );
}

function placeIn(
  at: Point,
  { width, height }: BoxSize,
  leader: boolean,
  crowd: Crowd,
  count: 16 | 64,
  furthest: number,
): FreePlace | null {
  for (let distance = leader ? 5 : 1.2; distance <= furthest; distance += distance < 12 ? 0.8 : 2) {
    for (const direction of directions[count]) {
      const [dx, dy] = [Math.cos(direction), Math.sin(direction)];
      // the side of the box that looks at the place is `distance` away
      const near = { x: at.x + dx * distance, y: at.y + dy * distance };
      const corner = {
        x: dx > 0.3 ? near.x : dx < -0.3 ? near.x - width : near.x - width / 2,
        y: dy > 0.3 ? near.y : dy < -0.3 ? near.y - height : near.y - height / 2,
      };
      const box = { minX: corner.x, minY: corner.y, maxX: corner.x + width, maxY: corner.y + height };
      if (!isFree(grown(box, 0.5), crowd)) continue;
      if (!leader && distance <= CLOSE) return { corner, leader: null };
      const line = leaderTo(at, box);
      if (crowd.boxes.some((other) => passes(line, other))) continue;
      if (crowd.dimensions.some((dimension) => crossing(line, dimension))) continue;
      return { corner, leader: line };
    }
  }
  return null;
}

/** From a place to the middle of the nearest side of a box, not through the box. */
function leaderTo(at: Point, box: Bounds): Segment {
  const [x, y] = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];
  const gap = 0.5;
  const ends: Point[] = [
    { x: box.minX - gap, y },
    { x: box.maxX + gap, y },
    { x, y: box.minY - gap },
    { x, y: box.maxY + gap },
  ];
  const far = (end: Point): number => Math.hypot(end.x - at.x, end.y - at.y);
  const open = ends.filter((b) => !passes({ a: at, b }, grown(box, gap / 2)));
  return { a: at, b: open.reduce((best, end) => (far(end) < far(best) ? end : best), open[0] ?? at) };
}
