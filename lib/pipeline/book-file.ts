/** The build book of a job, or of what is known before anything is nested. */
import { type Dish, facetAt, type Facet, type SheetChord } from '../dish/index.js';
import type { Design } from '../design/index.js';
import { keyValues } from '../key-values.js';
import {
  burnHeads,
  burnNotes,
  burnRows,
  type BurnResult,
  careRows,
  type Forecast,
  summaryRows,
} from '../optics/index.js';
import {
  type BookBurn,
  type BookForecast,
  type BookSheet,
  type BookStand,
  buildBook,
  type CutPicture,
} from '../output/book/index.js';
import { burnPlots, forecastPlots } from '../output/plots/index.js';
import { battenOver, coverOf, hasBattens, thicknessRanges } from '../parts/index.js';
import { axisTable, boughtFor, liftAlone, posed, settingsOf } from '../stand/index.js';
import { formatLength, inInches, type LengthUnit, proseIn, reachIn } from '../units/index.js';
import { laserSentences } from './laser-files.js';
import type { ShopDrawing } from '../output/shop/index.js';
import { printedParts } from './prints.js';
import { shopDrawings } from './shop.js';
import { standValues } from './stand.js';
import { inWords, rowIn, valueIn } from './words.js';
import type { JobSheet, LaserRoute, Prepared } from './types.js';

export interface BookSource extends Prepared {
  /** Null before the nest. */
  readonly sheets: readonly JobSheet[] | null;
  /** Null when it could not be made; left out while it is being worked on. */
  readonly forecast?: Forecast | null;
  /** Where it burns; left out while it is being worked on. */
  readonly burn?: BurnResult | null;
  /** Pictures of sheets as a simulated router leaves them. */
  readonly cutPictures?: readonly CutPicture[];
  readonly lasered?: readonly LaserRoute[];
}

/** Chords of a panel for the book's pictures: enough to look bent. */
const chords = 17;

function facetsOf(dish: Dish): Facet[] {
  return Array.from({ length: chords }, (_, i) =>
    facetAt(dish, dish.litFrom + ((dish.litTo - dish.litFrom) * i) / (chords - 1)),
  );
}

function battenChords(design: Design, dish: Dish): SheetChord[] {
  if (!hasBattens(design)) return [];
  const { length, at } = battenOver(design, dish);
  return Array.from({ length: chords }, (_, i) => at((length * i) / (chords - 1)));
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

function bookForecast(forecast: Forecast | null | undefined, units: LengthUnit): BookForecast {
  if (forecast === undefined) return { kind: 'pending' };
  if (forecast === null) return { kind: 'none' };
  return {
    kind: 'made',
    rows: summaryRows(forecast, (mm) => formatLength(mm, units)).map((row) => rowIn(row, units)),
    care: careRows(forecast).map(({ label, cells }) => {
      const [good = '', usual = '', poor = ''] = cells.map((cell) => rowIn(cell, units).value);
      return [proseIn(label, units), good, usual, poor];
    }),
    plots: forecastPlots(forecast, units),
    assumptions: forecast.assumptions.map(
      ({ quantity, assumption, source }) => `${quantity}: ${proseIn(assumption, units)} (${source})`,
    ),
  };
}

function bookBurn(result: BurnResult | null | undefined, units: LengthUnit): BookBurn | null {
  if (!result) return null;
  return {
    plots: burnPlots(result, units),
    heads: burnHeads,
    rows: burnRows(result.burn, reachIn(units)),
    notes: burnNotes(result.burn).map((note) => proseIn(note, units)),
  };
}

/** Heights of the sun at which the machine is drawn: both ends of its range and the middle. */
function bookStand({ design, dish, stand, forecast }: BookSource): BookStand | null {
  if (stand === null || design.stand === undefined) return null;
  const { cradle, holder, values, prisms } = stand;
  const length = (mm: number) => formatLength(Math.round(10 * mm) / 10, design.units);
  const { axis, tilt } = cradle;
  const half = Array.from({ length: 21 }, (_, i) => (dish.apertureRadius * (i - 10)) / 10);
  const mirror = half.map((x) => ({ x, y: dish.baseHeight + dish.profile.height(Math.abs(x)) }));
  return {
    rows: standValues({ design, stand }, forecast).map((row) => valueIn(row, design.units)),
    axes: axisTable(stand, length),
    settings: settingsOf(stand),
    bought: boughtFor(stand, length, inInches(design.units)),
    pictures: [tilt.from, (tilt.from + tilt.to) / 2, tilt.to].map((angle) => ({
      sunDeg: 90 - (angle * 180) / Math.PI,
      outlines: prisms.map(({ name, motion, outline }) => ({
        name,
        outline: outline.map((place) => posed(place, motion, cradle, angle)),
      })),
      mirror: mirror.map((place) => posed(place, 'tilts', cradle, angle)),
      focus: posed({ x: 0, y: cradle.focus }, 'tilts', cradle, angle),
    })),
    balanced: cradle.axis !== cradle.focus,
    axis,
    ground: cradle.ground,
    axisAbove: axis - cradle.ground,
    base: cradle.base.halfX,
    reach: cradle.swept,
    castors: cradle.castors,
    dishKg: values.dishKg,
    swingKg: values.tiltingKg,
    liftAlone,
    weightKg: values.weights.each,
    ballastKg: values.ballastKg,
    handN: values.handN,
    lowest: 90 - (tilt.to * 180) / Math.PI,
    holder: holder && {
      inside: holder.inside,
      strapsApart: holder.strapsApart,
      base: design.vessel?.offset ?? 0,
    },
  };
}

/** `book.html`, complete. */
export function bookOf(source: BookSource): string {
  return bookWith(source, shopDrawings(source));
}

/** The same with drawings that are made already. */
export function bookWith(source: BookSource, drawings: readonly ShopDrawing[]): string {
  const { design, dish, parts, cleatStart, assembly, sheets, forecast, burn, cutPictures = [], lasered = [] } = source;
  return buildBook({
    ...source,
    facets: facetsOf(dish),
    battens: battenChords(design, dish),
    thicknessRanges: thicknessRanges(design, dish),
    cover: coverOf(source),
    keyValues: keyValues(design, dish, parts, cleatStart, assembly),
    sheets: sheets && sheets.map(bookSheet),
    forecast: bookForecast(forecast, design.units),
    burn: bookBurn(burn, design.units),
    cutPictures,
    laserTimes: lasered.map((route) => ({
      sheet: route.sheet.cut.id,
      text: laserSentences(route, design.units).join(' '),
    })),
    drawings,
    printed: printedParts(source),
    problems: source.problems.map((problem) => inWords(problem, design.units)),
    stand: bookStand(source),
  });
}
