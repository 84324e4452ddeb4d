/** Frame and title block, after ISO 5457 and ISO 7200. */
import { wrapped } from '../../units/index.js';
import { entity, frameAt, plainWords, ringAt, straight } from './entity.js';
import { textWidth } from './font.js';
import type { Entity, Stroke, Words } from './types.js';

export interface TitleCell {
  readonly head: string;
  readonly text: string;
  /** Share of the row. */
  readonly share: number;
}

export interface Title {
  readonly rows: readonly (readonly TitleCell[])[];
  /** First angle where lengths are metric, third where they are inches, as is usual (ISO 5456-2). */
  readonly projection: 'first' | 'third';
}

/** ISO 7200. */
export const TITLE_WIDTH = 180;
const ROW = 9;
const HEAD = 1.6;
const SYMBOL = 20;

export const titleHeight = ({ rows }: Title): number => rows.length * ROW;

/** Text in a cell: as large as it fits in, on two lines where need be. */
function cellWords(text: string, x: number, y: number, width: number): Words[] {
  const line = (one: string, at: number, height: number): Words => plainWords(one, { x, y: at }, height);
  for (const height of [3, 2.5, 2]) if (textWidth(text, height) <= width) return [line(text, y + 1.6, height)];
  const [first = '', second = '', ...rest] = wrapped(text, width, (one) => textWidth(one, 1.8));
  const cut = rest.length > 0 ? `${second}…` : second;
  return [line(first, y + 3.5, 1.8), line(cut, y + 0.9, 1.8)].filter((one) => one.text !== '');
}

/** The truncated cone of ISO 5456-2, seen from the side and from its end. */
function symbol(x: number, y: number, projection: Title['projection']): Stroke[] {
  const middle = y + ROW / 2;
  const [cone, rings] = projection === 'first' ? [x + 5.5, x + 14.5] : [x + 14.5, x + 5.5];
  // the end view is from the left, at the small end; the first angle puts it on the right
  const small = cone - 3;
  const large = cone + 3;
  return [
    {
      line: 'thin',
      closed: true,
      vertices: [
        { x: small, y: middle - 1.4, bulge: 0 },
        { x: large, y: middle - 2.8, bulge: 0 },
        { x: large, y: middle + 2.8, bulge: 0 },
        { x: small, y: middle + 1.4, bulge: 0 },
      ],
    },
    ringAt('thin', { x: rings, y: middle }, 1.4),
    ringAt('thin', { x: rings, y: middle }, 2.8),
    straight('centre', { x: x + 1, y: middle }, { x: x + SYMBOL - 1, y: middle }),
  ];
}

/** The block with its lower left corner at x, y. */
export function titleBlock({ rows, projection }: Title, x: number, y: number, width: number): Entity {
  const height = rows.length * ROW;
  const strokes: Stroke[] = [frameAt('outline', { x, y }, width, height)];
  const words: Words[] = [];
  rows.forEach((cells, i) => {
    const bottom = y + height - (i + 1) * ROW;
    const last = i === rows.length - 1;
    const wide = last ? width - SYMBOL : width;
    if (!last) strokes.push(straight('rule', { x, y: bottom }, { x: x + width, y: bottom }));
    const shares = cells.reduce((sum, { share }) => sum + share, 0);
    let left = x;
    cells.forEach(({ head, text, share }, k) => {
      const own = (wide * share) / shares;
      if (k > 0) strokes.push(straight('rule', { x: left, y: bottom }, { x: left, y: bottom + ROW }));
      words.push(plainWords(head, { x: left + 1, y: bottom + ROW - HEAD - 0.9 }, HEAD));
      words.push(...cellWords(text, left + 1, bottom, own - 2));
      left += own;
    });
    if (last) {
      strokes.push(straight('rule', { x: left, y: bottom }, { x: left, y: bottom + ROW }));
      strokes.push(...symbol(left, bottom, projection));
    }
  });
  return entity('title-block', { strokes, words });
}
