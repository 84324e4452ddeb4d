/**
 * The pages of the book. A page is a box of the paper's size that is filled from the top and then closed, so that the
 * number of every page is known when the contents are written; what grows in it takes the room that is left.
 */
import { markup, type Markup } from '../markup.js';
import { printedHeight } from './printed-height.js';

/** What stays together on a page. */
export interface Block {
  readonly body: Markup;
  /** What it takes of a page, mm, where it is not worked out from its words. */
  readonly height: number;
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
  return { body, height: printedHeight(body, width), grows: false, fresh: false, alone: false, screen: false, ...more };
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

/** Fills pages of a height (mm) one after the other. On the first, `taken` of it is not free. */
export function leavesOf(chapters: readonly Chapter[], height: number, taken: number): Leaf[] {
  const leaves: { pieces: Piece[]; used: number; closed: boolean }[] = [{ pieces: [], used: taken, closed: false }];
  for (const chapter of chapters) {
    let first = true;
    for (const each of chapter.blocks) {
      const needed = each.screen ? 0 : each.height + (first ? HEADING : 0);
      let leaf = leaves.at(-1);
      if (leaf === undefined || (!each.screen && (each.fresh || leaf.closed || leaf.used + needed > height))) {
        leaf = { pieces: [], used: 0, closed: false };
        leaves.push(leaf);
      }
      const piece = leaf.pieces.at(-1);
      if (piece?.chapter === chapter) piece.blocks.push(each);
      else leaf.pieces.push({ chapter, first, blocks: [each] });
      leaf.used += needed;
      leaf.closed ||= each.alone;
      first = false;
    }
  }
  return leaves.map(({ pieces }, i) => ({ number: i + 1, pieces }));
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
