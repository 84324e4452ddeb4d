/** Tables and notes as blocks of a known size, which the page then places. */
import { wrapped } from '../../units/index.js';
import { plainWords as words, straight } from './entity.js';
import { textWidth } from './font.js';
import type { Entity, Fact, Stroke, Words } from './types.js';

export interface Cell {
  readonly text: string;
  readonly states?: readonly Fact[];
}

export interface Table {
  readonly title: string;
  readonly heads: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
}

/** A block of a known size, set only where it is used: with its lower left corner at the origin. */
export interface Block {
  readonly width: number;
  readonly height: number;
  readonly build: () => Entity;
}

export interface MeasuredTable {
  readonly table: Table;
  readonly widths: readonly number[];
  readonly titleWidth: number;
}

/** Height of the capitals in tables and notes, mm: ISO 3098 has 2.5 for dimensions. */
const SMALL = 2;
/** Height of a row, mm. */
export const ROW = 4.2;
const PAD = 1.4;
const BASE = 1.1;

const rule = (x1: number, y1: number, x2: number, y2: number): Stroke =>
  straight('rule', { x: x1, y: y1 }, { x: x2, y: y2 });

/** Widths of a table's columns, found once: they do not change with how its rows are divided. */
export function measureTable(table: Table): MeasuredTable {
  const { title, heads, rows } = table;
  const widths = heads.map(
    (head, i) => Math.max(textWidth(head, SMALL), ...rows.map((row) => textWidth(row[i]?.text ?? '', SMALL))) + 2 * PAD,
  );
  return { table, widths, titleWidth: textWidth(title, SMALL) + 2 * PAD };
}

/** A table in columns side by side of at most `maxRows` rows each. */
export function tableBlock({ table, widths, titleWidth }: MeasuredTable, maxRows: number): Block {
  const { rows } = table;
  const chunks = Math.max(1, Math.ceil(rows.length / maxRows));
  const each = Math.ceil(rows.length / chunks);
  const width = Math.max(titleWidth, chunks * widths.reduce((sum, one) => sum + one, 0));
  const height = (each + 2) * ROW;
  return { width, height, build: () => tableEntity(table, widths, each, height) };
}

function tableEntity({ title, heads, rows }: Table, widths: readonly number[], each: number, height: number): Entity {
  const strokes: Stroke[] = [];
  const cells: Words[] = [words(title, { x: PAD, y: height - ROW + BASE }, SMALL)];
  let left = 0;
  for (let start = 0; start < rows.length; start += each) {
    const mine = rows.slice(start, start + each);
    const bottom = height - (mine.length + 2) * ROW;
    let x = left;
    heads.forEach((head, i) => {
      cells.push(words(head, { x: x + PAD, y: height - 2 * ROW + BASE }, SMALL));
      mine.forEach((row, k) => {
        const cell = row[i];
        if (cell) cells.push(words(cell.text, { x: x + PAD, y: height - (k + 3) * ROW + BASE }, SMALL, cell.states));
      });
      strokes.push(rule(x, bottom, x, height - ROW));
      x += widths[i] ?? 0;
    });
    strokes.push(rule(x, bottom, x, height - ROW));
    for (let k = 0; k <= mine.length + 1; k++)
      strokes.push(rule(left, height - (k + 1) * ROW, x, height - (k + 1) * ROW));
    left = x;
  }
  return { kind: 'table', strokes, solids: [], words: cells.filter(({ text }) => text !== '') };
}

const LEAD = 3.4;

/** Numbered notes, broken at a width. */
export function notesBlock(notes: readonly string[], width: number): Block {
  const indent = 4;
  const lines = notes.flatMap((note, i) =>
    wrapped(note, width - indent, (line) => textWidth(line, SMALL)).map((text, k) => ({
      text,
      number: k === 0 ? `${i + 1}` : null,
    })),
  );
  const height = lines.length * LEAD + 0.8;
  const build = (): Entity => ({
    kind: 'notes',
    strokes: [],
    solids: [],
    words: lines.flatMap(({ text, number }, k) => {
      const y = height - (k + 1) * LEAD + 0.8;
      return [...(number === null ? [] : [words(number, { x: 0, y }, SMALL)]), words(text, { x: indent, y }, SMALL)];
    }),
  });
  return { width, height, build };
}
