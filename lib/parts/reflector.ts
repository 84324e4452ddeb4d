/** The mirror sheet on the panels: one strip a panel, or rows across it from a narrow roll. */
import {
  type Contour,
  contourFromPoints,
  cross,
  cyclic,
  edgesOfPath,
  element,
  type Point,
  pointOnEdge,
  strokeTextWidth,
  subtract,
  unit,
} from '../geometry/index.js';
import { type DevelopedPanel, developPanel, type Dish } from '../dish/index.js';
import type { Design, StockItem } from '../design/index.js';
import { type Diagnostic, diagnostic } from '../diagnostic/index.js';
import { inUnits, thicknessOf, usableSize } from './blank.js';
import { battenShade, besideBattens, hasBattens } from './battens.js';
import { chordAtLength, parameterAt } from './chord.js';
import { type FlatPattern, flatPattern } from './flat-pattern.js';
import { flatHem, type Hem, hemNarrower } from './hem.js';
import { blank, type LineMark, lineMark, type Part, textMark } from '../part/index.js';

/** The mirror sheet of a panel as it lies flat. */
interface Blank {
  readonly material: string;
  readonly thickness: number;
  readonly panel: DevelopedPanel;
  /** Lengths along the panel at which the sheet begins and its cylinder ends; the hem comes on top. */
  readonly from: number;
  readonly to: number;
  readonly hem: Hem;
  /** How much narrower the hem is on each side. */
  readonly narrower: number;
  /** How far its sides lie inside the panel's. */
  readonly inset: number;
}

/** What a hem leaves on each side at most, as a share of half the panel's width. */
const maxNarrower = 0.6;

/** Half the width that the mirror has at its narrow end beside battens, mm. */
const narrowEnd = 2;

/** Length at which the panel leaves a mirror of a width beside its battens. */
function lengthFrom(panel: DevelopedPanel, inset: number): number {
  const open = parameterAt(panel, (t) => panel.chord(t).halfWidth - inset, narrowEnd);
  return panel.chord(open).length;
}

function blankOf(design: Design, dish: Dish): Blank | null {
  const { material, inset: end, hem, glue } = design.reflector;
  if (material === undefined) return null;
  const thickness = thicknessOf(design, material);
  const panel = developPanel(dish, thickness / 2);
  const inset = Math.max(end, besideBattens(design));
  return {
    material,
    thickness,
    panel,
    from: hasBattens(design) ? Math.max(end, lengthFrom(panel, inset)) : end,
    to: hem > 0 ? panel.length : panel.length - end,
    hem: hem > 0 ? flatHem(hem, dish.panelThickness + glue, thickness) : { past: 0, folds: [0, 0] },
    // the narrowest panels keep some of it
    narrower: Math.min(
      Math.max(0, hemNarrower(dish.ribThickness, dish.seamGap) - inset),
      maxNarrower * panel.chord(panel.to).halfWidth,
    ),
    inset,
  };
}

/** Half the width of the sheet at its narrow end: what is left of the panel's after the inset. */
function innerHalfWidth({ panel, from, inset }: Blank): number {
  return panel.chord(chordAtLength(panel, from)).halfWidth - inset;
}

const outerWidth = ({ panel, to, inset }: Blank): number =>
  2 * (panel.chord(chordAtLength(panel, to)).halfWidth - inset);

/** Pieces of stock that a piece can be cut from: length along the roll or sheet, and height across. */
function usableAreas(design: Design, material: string): { readonly width: number; readonly height: number }[] {
  const turned = (item: StockItem) => {
    const size = usableSize(item);
    if (size === null) return [];
    return item.size ? [size, { width: size.height, height: size.width }] : [size];
  };
  return design.stock.filter((item) => item.material === material).flatMap(turned);
}

/** How rows are laid: their number, the height of each, and the lengths along the sheet at which they begin. */
interface Rows {
  readonly height: number;
  readonly starts: readonly number[];
}

/** Even rows across the panel, as few as the widest roll allows; null when no stock is wide or long enough. */
function rowsOf(design: Design, sheet: Blank): Rows | null {
  const { overlap } = design.reflector;
  const width = outerWidth(sheet);
  const tallest = Math.max(
    0,
    ...usableAreas(design, sheet.material).flatMap((area) => (area.width >= width ? [area.height] : [])),
  );
  const total = sheet.to + sheet.hem.past - sheet.from;
  if (tallest <= overlap) return null;
  const count = Math.max(1, Math.ceil((total - overlap) / (tallest - overlap) - 1e-9));
  const height = (total + (count - 1) * overlap) / count;
  // the hem stays on the outermost row
  if (height - sheet.hem.past <= overlap) return null;
  return { height, starts: Array.from({ length: count }, (_, i) => sheet.from + i * (height - overlap)) };
}

/** What does not fit of the mirror sheet. */
export function reflectorProblems(design: Design, dish: Dish): Diagnostic[] {
  const sheet = blankOf(design, dish);
  if (sheet === null) return [];
  const show = (mm: number) => inUnits(design, Math.round(10 * mm) / 10);
  const { inset, layout, overlap } = design.reflector;
  if (inset > 0 && innerHalfWidth(sheet) < 1)
    return [
      diagnostic(
        'inset',
        ['reflector', 'inset'],
        `reflector.inset of ${show(inset)} leaves nothing of the strip at its narrow end`,
        `use at most ${show(Math.max(0, Math.floor(10 * (innerHalfWidth(sheet) + inset - 1)) / 10))}`,
      ),
    ];
  const areas = usableAreas(design, sheet.material);
  if (areas.length === 0) return [];
  const length = sheet.to + sheet.hem.past - sheet.from;
  const width = outerWidth(sheet);
  const rows = rowsOf(design, sheet);
  if (layout === 'rows') {
    if (rows !== null) return [];
    const tallest = Math.max(...areas.map((area) => area.height));
    const [why, remedy] =
      tallest <= overlap
        ? [
            `their overlap of ${show(overlap)} takes the whole width of the roll, ${show(tallest)}`,
            'use a smaller reflector.overlap or a wider roll',
          ]
        : [
            `no stock of ${sheet.material} is ${show(width)} long inside its margin`,
            `use stock at least ${show(width)} long inside its margin`,
          ];
    return [
      diagnostic(
        'rows-do-not-fit',
        ['reflector', tallest <= overlap ? 'overlap' : 'layout'],
        `rows across the panel do not fit: ${why}`,
        remedy,
      ),
    ];
  }
  const fits = areas.some(
    (area) => (length <= area.width && width <= area.height) || (width <= area.width && length <= area.height),
  );
  if (fits) return [];
  const advice =
    rows === null
      ? `use a roll at least ${show(width)} wide inside its margin`
      : `use a roll at least ${show(width)} wide inside its margin, or reflector.layout: rows, which needs ${rows.starts.length} rows of ${show(rows.height)}`;
  return [
    diagnostic(
      'strip-does-not-fit',
      ['reflector', 'layout'],
      `a strip of ${show(length)} x ${show(width)} does not fit any roll or sheet of ${sheet.material}`,
      advice,
    ),
  ];
}

function shifted(vertices: Contour, x: number): Contour {
  return vertices.map((vertex) => ({ ...vertex, x: vertex.x - x }));
}

/** A piece of the sheet between two lengths along it; `hem` when it carries the hem. */
function piece(design: Design, sheet: Blank, from: number, to: number, hem: boolean): FlatPattern {
  return flatPattern(
    sheet.panel,
    { from, to, inset: sheet.inset, ...(hem ? { flap: { past: sheet.hem.past, narrower: sheet.narrower } } : {}) },
    design.dish.arcTolerance,
  );
}

/** Lines across a piece on which its hem is folded; the piece starts at length `from`. */
function foldLines(sheet: Blank, pattern: FlatPattern, from: number): LineMark[] {
  if (sheet.hem.past === 0) return [];
  const half = cyclic(pattern.side, -1).y;
  return sheet.hem.folds.map((fold) => {
    const x = sheet.panel.length + fold - from;
    return lineMark(
      contourFromPoints([
        { x, y: -half },
        { x, y: half },
      ]),
    );
  });
}

/** Lengths along the panel at which the pieces of its mirror begin, from the hub outward. */
export function mirrorStarts(design: Design, dish: Dish): readonly number[] {
  const sheet = blankOf(design, dish);
  if (sheet === null) return [];
  return (design.reflector.layout === 'rows' ? rowsOf(design, sheet)?.starts : undefined) ?? [sheet.from];
}

/** Where on its panel a strip goes. */
function placeOf(design: Design, { from, inset }: Blank): string {
  if (hasBattens(design))
    return `, its sides ${inUnits(design, inset)} in from the panel’s, where the battens end, its narrow end ${inUnits(design, Math.round(10 * from) / 10)} from the panel’s`;
  return inset > 0 ? `, ${inUnits(design, inset)} in from the edges` : ', edge on edge';
}

/** Whether the mirror covers what fixes its panel, and so goes on after it. */
const goesOnAfter = ({ panel }: Design): boolean => panel.fixing === 'pins' || panel.fixing === 'staples';

const hemNote = (design: Design): string =>
  goesOnAfter(design)
    ? 'Turn the hem down square on the first scribed line over a batten before the strip is glued on; once it lies, drive it back under the panel’s rim with a flat bar. Ease the panel’s rim first. The hem is narrower than the strip: it ends beside the ribs.'
    : 'Fold the hem on the two scribed lines over a batten of the panel’s thickness; ease the panel’s rim first. The hem is narrower than the strip: it ends beside the ribs.';

/** Bows of less than this are cut along a straight edge, mm. */
const straightEnough = 0.2;

/** How far the long edges of a piece bow, mm. */
function bowOf({ long }: FlatPattern): number {
  const [first, last] = [element(long, 0), cyclic(long, -1)];
  const along = unit(subtract(last, first));
  const off = (place: Point): number => Math.abs(cross(along, subtract(place, first)));
  return Math.max(...edgesOfPath(long).flatMap((edge) => [off(edge.to), off(pointOnEdge(edge, 0.5))]));
}

/** How a piece is marked and cut without a machine. */
function cutNote(design: Design, pattern: FlatPattern): string {
  const bow = bowOf(pattern);
  const how =
    bow < straightEnough
      ? 'cut with shears or a knife along a straight edge'
      : `cut with shears along the line: the long edges bow by ${inUnits(design, Math.round(10 * bow) / 10)}, which a straight edge would miss`;
  return `Mark only the protective film, never the mirror; ${how}.`;
}

/** The mirror sheet's parts: `reflector`, or `reflector-1` (at the hub) outward; none when the panel itself reflects. */
export function makeReflectors(design: Design, dish: Dish): Part[] {
  const sheet = blankOf(design, dish);
  if (sheet === null || innerHalfWidth(sheet) <= 0) return [];
  const common = {
    kind: 'reflector' as const,
    material: sheet.material,
    thickness: sheet.thickness,
    quantity: dish.layout.ribs.length,
  };
  const hemmed = sheet.hem.past > 0;
  const rows = design.reflector.layout === 'rows' ? rowsOf(design, sheet) : null;
  if (rows === null) {
    const pattern = piece(design, sheet, sheet.from, sheet.to, hemmed);
    return [
      blank({
        ...common,
        id: 'reflector',
        name: 'Reflector strip',
        outline: shifted(pattern.outline, sheet.from),
        marks: foldLines(sheet, pattern, sheet.from),
        fitDeviation: pattern.deviation,
        notes: [
          goesOnAfter(design)
            ? `Glue it on once its panel is fixed and the ${design.panel.fixing} are flush, which it covers${placeOf(design, sheet)}.`
            : `Glue it to its panel while both lie flat${placeOf(design, sheet)}.`,
          cutNote(design, pattern),
          ...(hemmed ? [hemNote(design)] : []),
        ],
      }),
    ];
  }
  const { overlap } = design.reflector;
  return rows.starts.map((start, i) => {
    const last = i === rows.starts.length - 1;
    const pattern = piece(design, sheet, start, last ? sheet.to : start + rows.height, last && hemmed);
    const text = `ROW ${i + 1}`;
    const letters = Math.min(5, 0.5 * overlap);
    // the lettering goes where the next row covers it
    const hidden = !last && letters >= 2.5;
    return blank({
      ...common,
      id: `reflector-${i + 1}`,
      name: `Reflector row ${i + 1} of ${rows.starts.length}`,
      outline: shifted(pattern.outline, start),
      marks: [
        ...(last ? foldLines(sheet, pattern, start) : []),
        ...(hidden
          ? [
              textMark(
                text,
                { x: rows.height - letters / 2, y: -strokeTextWidth(text, letters) / 2 },
                letters,
                Math.PI / 2,
              ),
            ]
          : []),
      ],
      fitDeviation: pattern.deviation,
      notes: [
        `Row ${i + 1} counted from the hub; each row laps ${inUnits(design, overlap)} over the one nearer the hub, so that rain runs over the joint.`,
        cutNote(design, pattern),
        ...(last && hemmed ? [hemNote(design)] : []),
      ],
    });
  });
}

/**
 * Share of the panels' reflecting area, as it is seen along the axis, that has no mirror or is under tape: the inset
 * round the sheet, tape over the seams (half of it on each panel, less half the open seam), and battens with the mirror
 * that ends beside them. 0 to 1; 0 when the panel itself reflects without battens. The open seam is not part of it, as no panel is there.
 */
export function stripSeamShare(design: Design, dish: Dish): number {
  const { tape, hem, material } = design.reflector;
  const shade = battenShade(design, dish);
  if (material === undefined && shade === 0) return 0;
  const inset = material === undefined ? 0 : design.reflector.inset;
  const edge =
    material === undefined ? shade : Math.max(inset, besideBattens(design), shade, (tape - dish.seamGap) / 2);
  const side = Math.max(edge, 0) / Math.cos(dish.layout.halfAngle);
  const { litFrom: from, litTo: to, layout, profile, seamGap } = dish;
  const { halfAngle } = layout;
  // half the width is a straight line over u, so all areas are closed; near the hub tape may cover all
  const lost = seamGap / 2 / Math.cos(halfAngle);
  const area = (a: number, b: number, less: number): number => {
    const start = Math.min(b, Math.max(a, (lost + less) / Math.tan(halfAngle)));
    return ((b * b - start * start) / 2) * Math.tan(halfAngle) - (lost + less) * (b - start);
  };
  const depthFrom = inset * Math.cos(profile.slopeAngle(from));
  const depthTo = hem > 0 ? 0 : inset * Math.cos(profile.slopeAngle(to));
  return 1 - area(from + depthFrom, to - depthTo, side) / area(from, to, 0);
}
