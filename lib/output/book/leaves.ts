/**
 * The pages of the book. A page is a box of the paper's size that is filled from the top and then closed, so that the
 * number of every page is known when the contents are written; what grows in it takes the room that is left.
 */
import { markup, type Markup } from '../markup.js';
import { printedHeight } from './printed-height.js';

/** What stays together on a page. */
export interface Block {
  readonly body: Markup;
  /** What it takes of a page at the smallest, mm, where it is not worked out from its words. */
  readonly height: number;
  /** What it can make use of where more is left, mm. */
  readonly max: number;
  /** Its picture takes room that is left on the page. */
  readonly grows: boolean;
  /** Begins a page. */
  readonly fresh: boolean;
  /** Nothing follows it on its page. */
  readonly alone: boolean;
  /** Read on a screen; paper has it elsewhere. */
  readonly screen: boolean;
}

export interface Chapter {
  readonly id: string;
  readonly title: string;
  readonly blocks: readonly Block[];
  readonly className?: string;
}

/** A block with what is usual of it. */
export function block(body: Markup, width: number, more: Partial<Omit<Block, 'body'>> = {}): Block {
  const height = more.height ?? printedHeight(body, width);
  return { body, height, max: height, grows: false, fresh: false, alone: false, screen: false, ...more };
}

/** The part of a chapter that is on one page. */
interface Piece {
  readonly chapter: Chapter;
  readonly first: boolean;
  readonly blocks: Block[];
}

export interface Leaf {
  /** Printed, counted from 1. */
  readonly number: number;
  readonly pieces: readonly Piece[];
}

/** A chapter's heading with the rule below it, mm. */
const HEADING = 9.5;

interface Laid {
  readonly chapter: Chapter;
  readonly block: Block;
  /** Heights with the chapter's heading, where the block begins it, mm. */
  readonly height: number;
  readonly max: number;
}

/** What is printed, in its order. */
function printedBlocks(chapters: readonly Chapter[]): Laid[] {
  return chapters.flatMap((chapter) =>
    chapter.blocks
      .filter(({ screen }) => !screen)
      .map((one, i): Laid => {
        const heading = i === 0 ? HEADING : 0;
        return { chapter, block: one, height: one.height + heading, max: one.max + heading };
      }),
  );
}

/** Against a page more, no emptiness of others counts. */
const PAGE = 100;

/**
 * Where pages begin, so that they are as few as can be and the emptiest of them as full as can be: the sum of the
 * squares of what stays free is least. Every page that begins with some block is followed by the best of the rest.
 */
function pageStarts(laid: readonly Laid[], height: number, taken: number): ReadonlySet<number> {
  const best: { cost: number; next: number }[] = [];
  best[laid.length] = { cost: 0, next: laid.length };
  for (let from = laid.length - 1; from >= 0; from--) {
    const free = height - (from === 0 ? taken : 0);
    let [low, high] = [0, 0];
    let found = { cost: Infinity, next: from + 1 };
    for (let to = from; to < laid.length; to++) {
      const one = laid[to]!;
      low += one.height;
      high += one.max;
      if (to > from && (low > free || one.block.fresh)) break;
      const empty = Math.max(0, free - high) / height;
      const cost = PAGE + empty ** 2 + (best[to + 1]?.cost ?? 0);
      if (cost <= found.cost) found = { cost, next: to + 1 };
      if (one.block.alone) break;
    }
    best[from] = found;
  }
  const starts = new Set<number>();
  for (let at = 0; at < laid.length; at = best[at]!.next) starts.add(at);
  return starts;
}

/**
 * Fills pages of a height (mm). On the first, `taken` of it is not free. What is read on a screen follows what is
 * printed before it.
 */
export function leavesOf(chapters: readonly Chapter[], height: number, taken: number): Leaf[] {
  const starts = pageStarts(printedBlocks(chapters), height, taken);
  const leaves: Piece[][] = [[]];
  let printed = 0;
  for (const chapter of chapters)
    for (const [i, each] of chapter.blocks.entries()) {
      if (!each.screen && printed > 0 && starts.has(printed)) leaves.push([]);
      if (!each.screen) printed += 1;
      const pieces = leaves.at(-1)!;
      const piece = pieces.at(-1);
      if (piece?.chapter === chapter) piece.blocks.push(each);
      else pieces.push({ chapter, first: i === 0, blocks: [each] });
    }
  return leaves.map((pieces, i) => ({ number: i + 1, pieces }));
}

/** Number of the page on which each chapter begins. */
export function pageNumbers(leaves: readonly Leaf[]): ReadonlyMap<string, number> {
  return new Map(
    leaves.flatMap(({ number, pieces }) =>
      pieces.filter(({ first }) => first).map(({ chapter }) => [chapter.id, number] as const),
    ),
  );
}

function pieceMarkup({ chapter, first, blocks }: Piece): Markup {
  const { id, title, className } = chapter;
  const grows = blocks.some((each) => each.grows) ? ' filled' : '';
  const paper = blocks.every(({ screen }) => screen) ? ' screen' : '';
  const classes = `chapter ${className ?? id}${grows}${paper}`;
  const bodies = blocks.map(
    ({ body, screen, grows: growing }) =>
      markup`<div class="kept${growing ? ' grow' : ''}${screen ? ' screen' : ''}">${body}</div>`,
  );
  return first
    ? markup`<section class="${classes}" id="${id}" data-chapter="${id}" aria-labelledby="${id}-head"><h2 id="${id}-head">${title}</h2>${bodies}</section>`
    : markup`<div class="${classes}" data-chapter="${id}">${bodies}</div>`;
}

export function piecesMarkup({ pieces }: Leaf): Markup {
  return markup`${pieces.map(pieceMarkup)}`;
}

export function leafMarkup(leaf: Leaf): Markup {
  return markup`<div class="leaf" data-page="${leaf.number}">${piecesMarkup(leaf)}</div>`;
}
