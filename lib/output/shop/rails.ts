/**
 * Running dimensions (ISO 129-1): from one origin, with one arrow head each, the values at the ends of their extension
 * lines. Values that would crowd are moved apart and joined to their lines by a kink.
 */
import { bounds, type Contour, flatten, type Point } from '../../geometry/index.js';
import type { RailValue } from './described.js';
import { arrowHead, entity, ringAt, straight } from './entity.js';
import { textWidth } from './font.js';
import { spreadOut } from './spread.js';
import type { Entity } from './types.js';

/** ISO 3098: height of the capitals of dimensions, mm. */
export const LETTERS = 2.5;
/** Between neighbouring values. */
const PITCH = LETTERS + 1.3;
/** From the outline to the dimension line, the kink, the text. */
const LINE = 6;
const KINK = [8.5, 12] as const;
const TEXT = 13;
/** Between the outline and an extension line. */
const GAP = 1.2;

export type Side = 'bottom' | 'top' | 'left' | 'right';
export const sides: readonly Side[] = ['bottom', 'top', 'left', 'right'];

export type Rails = Readonly<Record<Side, readonly RailValue[]>>;

/** Whether nothing of the outline lies between a corner and the side, for an extension line to cross. */
function isOpen(corner: Point, side: Side, outline: readonly Point[]): boolean {
  const level = side === 'left' || side === 'right';
  const sign = side === 'bottom' || side === 'left' ? -1 : 1;
  const along = level ? 'y' : 'x';
  const out = level ? 'x' : 'y';
  const slack = 0.02;
  return [-slack, slack].every((off) =>
    outline.every((a, i) => {
      const b = outline[(i + 1) % outline.length] ?? a;
      const place = corner[along] + off;
      if (a[along] > place === b[along] > place) return true;
      const at = a[out] + ((b[out] - a[out]) * (place - a[along])) / (b[along] - a[along]);
      return (at - corner[out]) * sign < 3 * slack;
    }),
  );
}

/** The corner of a value that lies furthest out on a side. */
function outermost({ from }: RailValue, side: Side): Point | undefined {
  const axis = side === 'left' || side === 'right' ? 'x' : 'y';
  const sign = side === 'bottom' || side === 'left' ? -1 : 1;
  return [...from].sort((a, b) => sign * (b[axis] - a[axis]))[0];
}

/**
 * Distributes values over the sides, where their extension lines cross nothing: level ones below as long as that can
 * be, because paper lies; upright ones to the nearer side.
 */
export function railsOn(values: readonly RailValue[], outline: Contour): Rails {
  const points = flatten(outline, 0.02, 'inside');
  const box = bounds(outline);
  const rails: Record<Side, RailValue[]> = { bottom: [], top: [], left: [], right: [] };
  for (const value of values) {
    const [first, second]: readonly [Side, Side] = value.axis === 'x' ? ['bottom', 'top'] : ['left', 'right'];
    const gap = (side: Side): number => {
      const corner = outermost(value, side);
      if (corner === undefined || !isOpen(corner, side, points)) return Infinity;
      return {
        bottom: corner.y - box.minY,
        top: box.maxY - corner.y,
        left: corner.x - box.minX,
        right: box.maxX - corner.x,
      }[side];
    };
    const closer =
      value.axis === 'x' ? gap(first) === Infinity && gap(second) < Infinity : gap(second) < gap(first) - 1;
    rails[closer ? second : first].push(value);
  }
  return rails;
}

/** How far a side's values reach beyond the outline, mm. */
export function railReach(values: readonly RailValue[]): number {
  if (values.length === 0) return 0;
  return TEXT + Math.max(...values.map(({ text }) => textWidth(text, LETTERS))) + 1;
}

/** Length that a side's values take along it, mm. */
export const railLength = (values: readonly RailValue[]): number => (values.length + 1) * PITCH;

interface Frame {
  /** From the part's measures to paper. */
  readonly place: (point: Point) => Point;
  /** The outline's box on paper. */
  readonly box: { readonly minX: number; readonly minY: number; readonly maxX: number; readonly maxY: number };
  /** The origin of all measures, on paper. */
  readonly origin: Point;
}

/** The running dimensions of one side. */
export function railEntities(values: readonly RailValue[], side: Side, { place, box, origin }: Frame): Entity[] {
  if (values.length === 0) return [];
  const level = side === 'bottom' || side === 'top';
  const sign = side === 'bottom' || side === 'left' ? -1 : 1;
  const edge = { bottom: box.minY, top: box.maxY, left: box.minX, right: box.maxX }[side];
  // along the side, and out from the outline
  const at = (along: number, out: number): Point =>
    level ? { x: along, y: edge + sign * out } : { x: edge + sign * out, y: along };
  const start = level ? origin.x : origin.y;
  const rows = values
    .map((value) => {
      const corner = place(outermost(value, side) ?? origin);
      return { value, along: level ? corner.x : corner.y, out: sign * ((level ? corner.y : corner.x) - edge) };
    })
    .sort((a, b) => a.along - b.along);
  const places = spreadOut(
    rows.map(({ along }) => along),
    PITCH,
  );
  const far = rows.reduce((max, { along }) => (Math.abs(along - start) > Math.abs(max - start) ? along : max), start);
  const drop = LETTERS / 2;
  const zero = rows.some(({ along }) => Math.abs(along - start) < 1e-6);
  const list = rows.map(({ value, along, out }, i): Entity => {
    const end = places[i] ?? along;
    const strokes = [straight('thin', at(along, out + GAP), at(along, KINK[0]), at(end, KINK[1]))];
    const atStart = Math.abs(along - start) < 1e-6;
    const direction = level ? (along > start ? 0 : Math.PI) : along > start ? Math.PI / 2 : -Math.PI / 2;
    const text = at(end, TEXT);
    return entity('dimension', {
      strokes,
      solids: atStart ? [] : [arrowHead(at(along, LINE), direction)],
      words: [
        {
          text: value.text,
          // level values are read from the right, upright ones from below
          at: level ? { x: text.x + drop, y: text.y } : { x: text.x, y: text.y - drop },
          height: LETTERS,
          anchor: sign < 0 ? 'end' : 'start',
          turnDeg: level ? 90 : 0,
          states: value.states,
        },
      ],
    });
  });
  return [
    entity('dimension', {
      strokes: [
        ...(Math.abs(far - start) > 0.5 ? [straight('thin', at(start, LINE), at(far, LINE))] : []),
        ringAt('thin', at(start, LINE), 0.8),
        ...(zero ? [] : [straight('thin', at(start, LINE - 2.5), at(start, LINE + 2.5))]),
      ],
    }),
    ...list,
  ];
}
