/** The build book of a job, or of what is known before anything is nested. */
import { type Dish, facetAt, type Facet } from '../dish/index.js';
import { keyFigures } from '../figures.js';
import { type BookForecast, type BookSheet, buildBook, type CutPicture } from '../output/book/index.js';
import type { JobSheet, Prepared } from '../pipeline.js';

export interface BookSource extends Prepared {
  /** Null before the nest. */
  readonly sheets: readonly JobSheet[] | null;
  readonly forecast?: BookForecast | null;
  readonly cutPictures?: readonly CutPicture[];
}

/** Chords of a panel for the book's pictures: enough to look bent. */
const chords = 9;

function facetsOf(dish: Dish): Facet[] {
  return Array.from({ length: chords }, (_, i) =>
    facetAt(dish, dish.litFrom + ((dish.litTo - dish.litFrom) * i) / (chords - 1)),
  );
}

const bookSheet = ({ nested, cut }: JobSheet): BookSheet => ({
  id: cut.id,
  stock: nested.stock,
  width: nested.width,
  height: nested.height,
  margin: cut.margin,
  usedLength: nested.usedLength,
  offcut: nested.offcut,
  placed: nested.placed,
});

/** `book.html`, whole. */
export function bookOf({
  design,
  dish,
  parts,
  aids,
  cleatStart,
  problems,
  sheets,
  forecast,
  cutPictures,
}: BookSource): string {
  return buildBook({
    design,
    dish,
    parts,
    aids,
    cleatStart,
    facets: facetsOf(dish),
    figures: keyFigures(design, dish, parts, cleatStart),
    problems,
    sheets: sheets && sheets.map(bookSheet),
    forecast: forecast ?? null,
    cutPictures: cutPictures ?? [],
  });
}
