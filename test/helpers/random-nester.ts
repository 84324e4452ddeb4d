/**
 * A plain nest for tests that need many jobs fast: parts in rows by their bounding boxes, each turned and mirrored at
 * random as far as it may be. Wasteful on purpose; it shares nothing with the program's own nest.
 */
import type { Layout, NestPart, NestStock } from '../../lib/nest/index.js';
import type { Nester } from '../../lib/pipeline/types.js';

type Placed = Layout['sheets'][number]['placed'][number];

interface Turned {
  readonly part: NestPart;
  readonly rotationDeg: number;
  readonly mirrored: boolean;
  readonly minX: number;
  readonly minY: number;
  readonly width: number;
  readonly height: number;
}

/** Random numbers from 0 to 1 (Marsaglia, Xorshift RNGs, 2003: the 32-bit generator 13, 17, 5). */
export function randomOf(seed: number): () => number {
  let state = (seed ^ 0x9e3779b9) >>> 0 || 1;
  const next = (): number => {
    state ^= state << 13;
    state >>>= 0;
    state ^= state >>> 17;
    state ^= state << 5;
    state >>>= 0;
    return state / 2 ** 32;
  };
  for (let i = 0; i < 8; i += 1) next();
  return next;
}

function turned(part: NestPart, rotationDeg: number, mirrored: boolean): Turned {
  const angle = (rotationDeg * Math.PI) / 180;
  const points = part.outline.map(({ x, y }) => {
    const px = mirrored ? -x : x;
    return { x: px * Math.cos(angle) - y * Math.sin(angle), y: px * Math.sin(angle) + y * Math.cos(angle) };
  });
  const minX = Math.min(...points.map(({ x }) => x));
  const minY = Math.min(...points.map(({ y }) => y));
  const width = Math.max(...points.map(({ x }) => x)) - minX;
  const height = Math.max(...points.map(({ y }) => y)) - minY;
  return { part, rotationDeg, mirrored, minX, minY, width, height };
}

function sizeOf(stock: NestStock): { width: number; height: number } | null {
  if (stock.shape.kind === 'sheet') return stock.shape;
  return stock.shape.kind === 'roll' ? { width: stock.shape.maxLength, height: stock.shape.height } : null;
}

interface Row {
  x: number;
  y: number;
  height: number;
}

/** A nester that lays rows; `seed` decides on turns. Keep-outs and offcuts are not used. */
export function randomNester(seed: number): Nester {
  return (parts, stock, options) => {
    const random = randomOf(seed);
    const sheets: { stock: NestStock; row: Row; usedX: number; placed: Placed[] }[] = [];
    const missing = new Map<string, number>();

    const lay = (item: Turned, copy: number, sheet: (typeof sheets)[number]): boolean => {
      const size = sizeOf(sheet.stock);
      if (!size) return false;
      const { margin } = sheet.stock;
      const tryAt = (row: Row): boolean => {
        if (row.x + item.width > size.width - margin || row.y + item.height > size.height - margin) return false;
        sheet.placed.push({
          part: item.part.id,
          copy,
          x: row.x - item.minX,
          y: row.y - item.minY,
          rotationDeg: item.rotationDeg,
          mirrored: item.mirrored,
        });
        sheet.usedX = Math.max(sheet.usedX, row.x + item.width);
        sheet.row = {
          x: row.x + item.width + options.spacing,
          y: row.y,
          height: Math.max(row.height, item.height),
        };
        return true;
      };
      if (tryAt(sheet.row)) return true;
      return tryAt({ x: margin, y: sheet.row.y + sheet.row.height + options.spacing, height: 0 });
    };

    for (const part of parts) {
      const usable = stock.filter(
        (one) => one.group === part.group && one.shape.kind !== 'offcut' && one.keepOuts.length === 0,
      );
      for (let copy = 1; copy <= part.quantity; copy += 1) {
        const any = part.rotations === 'any' ? [random() * 360, 0, 90] : [...part.rotations];
        const mirrored = part.faces.length === 2 ? random() < 0.5 : part.faces[0] === 'back';
        const first = part.rotations === 'any' ? 0 : Math.floor(random() * any.length);
        const turns = [...any.slice(first), ...any.slice(0, first)].map((angle) => turned(part, angle, mirrored));
        const last = sheets.filter((sheet) => sheet.stock.group === part.group).at(-1);
        let done = last !== undefined && turns.some((item) => lay(item, copy, last));
        for (const one of usable) {
          if (done) break;
          const fresh = { stock: one, row: { x: one.margin, y: one.margin, height: 0 }, usedX: 0, placed: [] };
          done = turns.some((item) => lay(item, copy, fresh));
          if (done) sheets.push(fresh);
        }
        if (!done) missing.set(part.id, (missing.get(part.id) ?? 0) + 1);
      }
    }
    return {
      sheets: sheets.map(({ stock: one, placed, usedX }) => {
        const size = sizeOf(one) ?? { width: 0, height: 0 };
        const usedLength = usedX + one.margin;
        const width = one.shape.kind === 'roll' ? usedLength : size.width;
        return { stock: one.id, width, height: size.height, placed, usedLength, offcut: null };
      }),
      unplaced: [...missing].map(([part, copies]) => ({ part, copies, reason: 'larger-than-stock', minSheet: null })),
      cost: 0,
    };
  };
}
