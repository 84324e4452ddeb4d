/** How a page is shared out: paper upright or lying, the scale, and where tables and notes go. */
import { MARGINS, type Paper, type Scale, scales } from './paper.js';
import { type Block, measureTable, type MeasuredTable, notesBlock, ROW, type Table, tableBlock } from './table.js';

/** What the picture needs around the part at any scale, mm on paper. */
export interface PictureSize {
  /** Of the part. */
  readonly width: number;
  readonly height: number;
  /** Beside it, for dimensions and labels. */
  readonly level: number;
  readonly upright: number;
  /** Dimensions alone may need more than the part is wide or high, mm on paper. */
  readonly minWidth: number;
  readonly minHeight: number;
}

export interface PlacedBlock extends Block {
  readonly x: number;
  readonly y: number;
}

export interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface PagePlan {
  readonly page: { readonly width: number; readonly height: number };
  readonly scale: Scale;
  /** Where the picture stands. */
  readonly area: Area;
  readonly blocks: readonly PlacedBlock[];
  /** Tables that found no place: they go on a page of their own. */
  readonly rest: readonly Table[];
}

const GAP = 4;
/** So many rows are long. */
const LONG = 24;

const spaceIn = ({ width, height }: { width: number; height: number }): Area => ({
  x: MARGINS.left,
  y: MARGINS.other,
  width: width - MARGINS.left - MARGINS.other,
  height: height - 2 * MARGINS.other,
});

/** The largest scale at which the picture goes into an area. */
function scaleIn(size: PictureSize, area: { readonly width: number; readonly height: number }): Scale | null {
  return (
    scales.find(
      ({ factor }) =>
        Math.max(size.width * factor, size.minWidth) + size.level <= area.width &&
        Math.max(size.height * factor, size.minHeight) + size.upright <= area.height,
    ) ?? null
  );
}

/** Blocks in rows from the upper left; null where one is too wide. */
function inRows(blocks: readonly Block[], width: number): { placed: PlacedBlock[]; height: number } | null {
  const placed: PlacedBlock[] = [];
  let [x, top, row] = [0, 0, 0];
  for (const block of blocks) {
    if (block.width > width) return null;
    if (x > 0 && x + block.width > width) {
      top += row + GAP;
      [x, row] = [0, 0];
    }
    placed.push({ ...block, x, y: -top - block.height });
    x += block.width + GAP;
    row = Math.max(row, block.height);
  }
  const height = top + row;
  return { placed: placed.map((one) => ({ ...one, y: one.y + height })), height };
}

/** Blocks in columns from the upper right; null where one is too high. */
function inColumns(blocks: readonly Block[], height: number): { placed: PlacedBlock[]; width: number } | null {
  const columns: Block[][] = [[]];
  let used = 0;
  for (const block of blocks) {
    if (block.height > height) return null;
    if (used > 0 && used + block.height > height) {
      columns.push([]);
      used = 0;
    }
    columns.at(-1)?.push(block);
    used += block.height + GAP;
  }
  let x = 0;
  const placed = columns.flatMap((column) => {
    let top = height;
    const left = x;
    x += Math.max(0, ...column.map(({ width }) => width)) + GAP;
    return column.map((block): PlacedBlock => {
      const y = top - block.height;
      top = y - GAP;
      return { ...block, x: left, y };
    });
  });
  return { placed, width: Math.max(0, x - GAP) };
}

const moved = (blocks: readonly PlacedBlock[], dx: number, dy: number): PlacedBlock[] =>
  blocks.map((block) => ({ ...block, x: block.x + dx, y: block.y + dy }));

interface Content {
  readonly size: PictureSize;
  readonly tables: readonly MeasuredTable[];
  /** The notes at a width. */
  readonly notes: (width: number) => Block;
  readonly titleHeight: number;
}

export interface PageContent {
  readonly size: PictureSize;
  readonly tables: readonly Table[];
  readonly notes: readonly string[];
  readonly titleHeight: number;
}

/** Tables and notes below the picture. */
function below(page: { width: number; height: number }, content: Content, maxRows: number): PagePlan | null {
  const space = spaceIn(page);
  const floor = space.y + content.titleHeight + 3;
  const notes = content.notes(space.width - 4);
  const rows = inRows(
    content.tables.map((table) => tableBlock(table, maxRows)),
    space.width - 4,
  );
  if (rows === null) return null;
  const tablesAt = floor + notes.height + (rows.height > 0 ? GAP : 0);
  const bottom = tablesAt + rows.height + 3;
  const area = { x: space.x + 2, y: bottom, width: space.width - 4, height: space.y + space.height - bottom - 2 };
  const scale = scaleIn(content.size, area);
  if (scale === null) return null;
  return {
    page,
    scale,
    area,
    blocks: [...moved(rows.placed, space.x + 2, tablesAt), { ...notes, x: space.x + 2, y: floor }],
    rest: [],
  };
}

/** Tables to the right of the picture, notes under them or below both. */
function aside(
  page: { width: number; height: number },
  content: Content,
  maxRows: number,
  notesBelow: boolean,
): PagePlan | null {
  const space = spaceIn(page);
  const base = space.y + content.titleHeight + 3;
  const notes = notesBelow ? [{ ...content.notes(space.width - 4), x: space.x + 2, y: base }] : [];
  const floor = notes.reduce((above, { height }) => above + height + GAP, base);
  const height = space.y + space.height - floor - 2;
  const tables = content.tables.map((table) => tableBlock(table, maxRows));
  const width = Math.max(70, ...tables.map((table) => table.width));
  const columns = inColumns(notesBelow ? tables : [...tables, content.notes(width)], height);
  if (columns === null || columns.width === 0) return null;
  const left = space.x + space.width - 2 - columns.width;
  const area = { x: space.x + 2, y: floor, width: left - GAP - space.x - 2, height };
  const scale = scaleIn(content.size, area);
  return scale && { page, scale, area, blocks: [...moved(columns.placed, left, floor), ...notes], rest: [] };
}

const index = ({ scale }: PagePlan): number => scales.indexOf(scale);

function bestOf(plans: readonly (PagePlan | null)[]): PagePlan | null {
  return plans.reduce((best, plan) => (plan && (best === null || index(plan) < index(best)) ? plan : best), null);
}

function plansOn(paper: Paper, content: Content): PagePlan | null {
  const upright = { width: paper.width, height: paper.height };
  const lying = { width: paper.height, height: paper.width };
  return bestOf([
    ...[12, 20, 30].map((rows) => aside(lying, content, rows, false)),
    ...[4, 6, 9, 14].map((rows) => below(lying, content, rows)),
    ...[12, 20].map((rows) => aside(lying, content, rows, true)),
    ...[4, 6, 9, 14, 24].map((rows) => below(upright, content, rows)),
    ...[20, 40].map((rows) => aside(upright, content, rows, false)),
  ]);
}

/**
 * The page at the largest scale. Tables go on a page of their own where they cost the picture two steps of scale, or
 * one and are long.
 * @throws RangeError where not even the picture fits
 */
export function planPage(paper: Paper, { size, tables, notes, titleHeight }: PageContent): PagePlan {
  const broken = new Map<number, Block>();
  const content: Content = {
    size,
    tables: tables.map(measureTable),
    notes: (width) => {
      const block = broken.get(width) ?? notesBlock(notes, width);
      broken.set(width, block);
      return block;
    },
    titleHeight,
  };
  const rows = tables.reduce((sum, table) => sum + table.rows.length, 0);
  const whole = plansOn(paper, content);
  const bare = whole !== null && scales[0] === whole.scale ? whole : plansOn(paper, { ...content, tables: [] });
  const goesOn = whole !== null && (bare === null || index(whole) - index(bare) < (rows > LONG ? 1 : 2));
  const best = goesOn ? whole : bare && { ...bare, rest: tables };
  if (best === null) throw new RangeError('a part that goes on no page at any scale');
  return best;
}

/** A table in pieces that go on a page. */
const divided = (table: Table, maxRows: number): Table[] =>
  Array.from({ length: Math.max(1, Math.ceil(table.rows.length / maxRows)) }, (_, i) => ({
    ...table,
    rows: table.rows.slice(i * maxRows, (i + 1) * maxRows),
  }));

/** Pages of tables alone. */
export function tablePages(
  paper: Paper,
  tables: readonly Table[],
  titleHeight: number,
): { page: PagePlan['page']; blocks: PlacedBlock[] }[] {
  const page = { width: paper.width, height: paper.height };
  const space = spaceIn(page);
  const height = space.height - titleHeight - 6;
  const width = space.width - 4;
  const floor = space.y + titleHeight + 3;
  const pages: { page: PagePlan['page']; blocks: PlacedBlock[] }[] = [];
  let mine: Block[] = [];
  const close = (): void => {
    const rows = inRows(mine, width);
    if (rows && mine.length > 0)
      pages.push({ page, blocks: moved(rows.placed, space.x + 2, floor + height - rows.height) });
    mine = [];
  };
  const maxRows = Math.floor(height / ROW) - 2;
  for (const table of tables.flatMap((one) => divided(one, maxRows))) {
    const measured = measureTable(table);
    const block = [12, 24, maxRows]
      .map((rows) => tableBlock(measured, rows))
      .find((one) => one.width <= width && one.height <= height);
    if (block === undefined) throw new RangeError(`the table ${table.title} goes on no page`);
    const next = inRows([...mine, block], width);
    if (next === null || next.height > height) close();
    mine.push(block);
  }
  close();
  return pages;
}
