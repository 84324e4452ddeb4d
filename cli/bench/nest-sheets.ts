/**
 * Sheets of the designs in `fixtures` (or the files named) compared with bounding-box packing by maxrects-packer on the
 * same parts; then how time and memory grow from 100 to 1000 parts of 20 shapes. One JSON line a group or size.
 */
import { readdirSync } from 'node:fs';
import { resolve } from 'node:path';
import { nest, type NestPart, type NestStock, prepare } from '../../lib/index.js';
import { loadDesign } from '../design-file.js';
import { nestOnCores } from '../nest/on-cores.js';

const SIZES = [100, 200, 500, 1000];
const SHAPES = 20;

interface Rect {
  width: number;
  height: number;
  x: number;
  y: number;
}

interface Packer {
  readonly bins: readonly { readonly rects: readonly Rect[] }[];
  addArray(rects: Rect[]): void;
}

// the package names a file as its main one that exports nothing to modules, so the other is named here, with its shape
const packerFile: string = 'maxrects-packer/dist/maxrects-packer.mjs';
const { MaxRectsPacker } = (await import(packerFile)) as {
  MaxRectsPacker: new (width: number, height: number, padding: number, options: Record<string, boolean>) => Packer;
};

interface Sheets {
  readonly sheets: number;
  /** Length taken up on the last sheet (mm). */
  readonly used: number;
}

/** Parts of one group packed as the boxes that they fill, on sheets of one stock. */
function boxed(parts: readonly NestPart[], stock: NestStock, spacing: number): Sheets | null {
  if (stock.shape.kind !== 'sheet') return null;
  const { width, height } = stock.shape;
  const packer = new MaxRectsPacker(width - 2 * stock.margin, height - 2 * stock.margin, spacing, {
    smart: false,
    pot: false,
    square: false,
    allowRotation: parts.every(({ rotations }) => rotations === 'any'),
  });
  packer.addArray(
    parts.flatMap(({ outline, quantity, rotations }) => {
      const xs = outline.map(({ x }) => x);
      const ys = outline.map(({ y }) => y);
      const across = Math.max(...xs) - Math.min(...xs);
      const up = Math.max(...ys) - Math.min(...ys);
      const turned = rotations !== 'any' && (rotations[0] ?? 0) % 180 !== 0;
      const size = turned ? { width: up, height: across } : { width: across, height: up };
      return Array.from({ length: quantity }, () => ({ ...size, x: 0, y: 0 }));
    }),
  );
  const last = packer.bins.map(({ rects }) => Math.max(...rects.map(({ x, width: w }) => x + w))).sort((a, b) => b - a);
  return { sheets: packer.bins.length, used: (last.at(-1) ?? 0) + 2 * stock.margin };
}

async function compare(file: string): Promise<void> {
  const { design } = loadDesign(file);
  for (const { parts, stock, options } of prepare(design).requests) {
    const begun = performance.now();
    const layout = await nestOnCores(parts, stock, options);
    const seconds = (performance.now() - begun) / 1000;
    for (const group of new Set(parts.map((part) => part.group))) {
      const own = parts.filter((part) => part.group === group);
      const ids = new Set(stock.filter((item) => item.group === group).map(({ id }) => id));
      const sheets = layout.sheets.filter((sheet) => ids.has(sheet.stock));
      const item = stock.find(({ id }) => id === sheets[0]?.stock);
      const line = {
        design: file.replace(/^.*\//, ''),
        group,
        pieces: own.reduce((sum, { quantity }) => sum + quantity, 0),
        nested: { sheets: sheets.length, used: sheets.at(-1)?.usedLength ?? 0 },
        boxes: item ? boxed(own, item, options.spacing) : null,
        unplaced: layout.unplaced.length,
        seconds,
      };
      console.log(JSON.stringify(line));
    }
  }
}

/** Twenty invented shapes: tapered panels, curved slivers, notched plates of several sizes. */
function shapes(count: number): NestPart[] {
  return Array.from({ length: SHAPES }, (_, k): NestPart => {
    const length = 120 + 23 * k;
    const width = 60 + 7 * ((k * 3) % 11);
    const curve = Array.from({ length: 9 }, (__, i) => {
      const x = length * (1 - i / 8);
      return { x, y: width * (0.4 + 0.6 * (x / length) ** 2) };
    });
    const notched = [
      [0, 0],
      [length, 0],
      [length, width],
      [length * 0.7, width],
      [length * 0.6, width * 0.5],
      [length * 0.4, width * 0.5],
      [length * 0.3, width],
      [0, width],
    ].map(([x = 0, y = 0]) => ({ x, y }));
    const outline = k % 2 === 0 ? [{ x: 0, y: 0 }, { x: length, y: 0 }, ...curve] : notched;
    const quantity = Math.floor(count / SHAPES) + (k < count % SHAPES ? 1 : 0);
    return {
      id: `shape-${k}`,
      quantity,
      outline,
      openings: [],
      group: 'ply',
      rotations: [0, 90, 180, 270],
      faces: ['front'],
    };
  });
}

function grow(count: number): void {
  const shape = { kind: 'sheet', width: 2440, height: 1220 } as const;
  const stock: NestStock = { id: 'sheet', group: 'ply', shape, count: Infinity, price: 1, margin: 10, keepOuts: [] };
  const begun = performance.now();
  const layout = nest(shapes(count), [stock], { spacing: 8, seed: 1, effort: 0 });
  const seconds = (performance.now() - begun) / 1000;
  const memoryMB = Math.round(process.memoryUsage().rss / 1e6);
  console.log(
    JSON.stringify({
      parts: count,
      shapes: SHAPES,
      firstAnswerSeconds: seconds,
      sheets: layout.sheets.length,
      memoryMB,
    }),
  );
}

const named = process.argv.slice(2);
const fixtures = resolve('fixtures');
const files =
  named.length > 0
    ? named
    : readdirSync(fixtures)
        .filter((name) => name.endsWith('.yaml'))
        .sort()
        .map((name) => resolve(fixtures, name));
for (const file of files) await compare(file);
for (const size of SIZES) grow(size);
