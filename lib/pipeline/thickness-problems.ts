/**
 * Sheets that were measured at several places: what is cut goes by the thickest of them, what has to fit by the thinnest
 * (a tight joint is eased with sandpaper, a loose one is not filled). Where the places differ by more than a joint, a tab
 * or an onion skin bears, it is said.
 */
import type { Design } from '../design/index.js';
import { type Diagnostic, diagnostic, type KeyPath } from '../diagnostic/index.js';
import type { Dish } from '../dish/index.js';
import type { RouterPlan } from '../machining/index.js';
import { takesRibs, thicknessRanges } from '../parts/index.js';
import { formatLength } from '../units/index.js';

/** A tab or skin holds nothing once this share of it is gone (common practice, no source). */
const lostShare = 0.5;
const same = 1e-9;

type Sheet = Design['materials'][string];

const spreadOf = ({ thickness, thickest }: Sheet): number => thickest - thickness;

const keyOf = ({ id }: Sheet): KeyPath => ['materials', id, 'thickness'];

/** `11.8 mm to 12.1 mm`, of a sheet whose places differ. */
function rangeOf({ thickness, thickest }: Sheet, { units }: Design): string {
  return `${formatLength(thickness, units)} to ${formatLength(thickest, units)}`;
}

/** How a sheet that was measured at several places is cut, in a sentence; null for one that is as thick everywhere. */
export function spreadSentence(sheet: Sheet, design: Design): string | null {
  if (spreadOf(sheet) < same) return null;
  const { thickness, thickest } = sheet;
  const length = (mm: number): string => formatLength(mm, design.units);
  return `The sheet is ${rangeOf(sheet, design)} thick: passes and overcut follow ${length(thickest)}, slots and other fits ${length(thickness)}.`;
}

const maxOf = (which: 'rib' | 'hub', design: Design, dish: Dish): number =>
  thicknessRanges(design, dish).find(({ part }) => part === which)?.max ?? Infinity;

/** Layers of the hub below the panels. */
function hubProblems(design: Design, dish: Dish): Diagnostic[] {
  const sheet = design.materials[design.hub.material];
  const max = maxOf('hub', design, dish);
  if (sheet === undefined || spreadOf(sheet) < same || sheet.thickest <= max + same) return [];
  const show = (mm: number): string => formatLength(mm, design.units, 3);
  return [
    diagnostic(
      'thickness-spread',
      keyOf(sheet),
      `hub layers of ${show(sheet.thickest)} are higher than the ribs' inner ends, which allow up to ${show(max)} each`,
      'cut the hub from a thinner part of the sheet, or plane it',
      'warning',
    ),
  ];
}

/** Ribs in their slots and between their neighbours. */
function ribProblems(design: Design, dish: Dish): Diagnostic[] {
  const sheet = design.materials[design.rib.material];
  if (sheet === undefined || spreadOf(sheet) < same) return [];
  const show = (mm: number): string => formatLength(mm, design.units, 3);
  const slotted = design.rib.joint === 'tab-slot' || takesRibs(design);
  const over = spreadOf(sheet) - design.rib.fit;
  const found: Diagnostic[] = [];
  if (slotted && over > same)
    found.push(
      diagnostic(
        'thickness-spread',
        keyOf(sheet),
        `ribs of ${rangeOf(sheet, design)} go into slots of ${show(sheet.thickness + design.rib.fit)}, which are made for the thinnest part of the sheet: the thickest are ${show(over)} too thick`,
        `sand the ribs where they go in, or set rib.fit to ${show(spreadOf(sheet) + design.rib.fit)} and glue the loose ones`,
        'warning',
      ),
    );
  const max = maxOf('rib', design, dish);
  if (!slotted && sheet.thickest > max + same)
    found.push(
      diagnostic(
        'thickness-spread',
        keyOf(sheet),
        `ribs of ${show(sheet.thickest)} do not fit at the hub, which has room for up to ${show(max)}`,
        'sand their inner ends, or use a larger hub.radius',
        'warning',
      ),
    );
  return found;
}

/** What `check` has to say of sheets whose thickness differs from place to place. */
export function thicknessProblems(design: Design, dish: Dish): Diagnostic[] {
  return [...ribProblems(design, dish), ...hubProblems(design, dish)];
}

/** Tabs and onion skins that are gone where the sheet is thin. */
export function holdingProblems(design: Design, sheet: Sheet, { limits }: Pick<RouterPlan, 'limits'>): Diagnostic[] {
  const spread = spreadOf(sheet);
  const show = (mm: number): string => formatLength(mm, design.units, 3);
  const held: readonly (readonly [string, KeyPath, number, boolean])[] = [
    ['tabs', ['router', 'tabs', 'height'], limits.tabHeight, limits.holding.some(({ tabs }) => tabs > 0)],
    [
      'onion skins',
      ['router', 'tabs', 'onionSkin'],
      limits.onionSkin,
      limits.holding.some(({ onionSkin }) => onionSkin),
    ],
  ];
  return held
    .filter(([, , height, used]) => used && spread > lostShare * height)
    .map(([what, path, height]) =>
      diagnostic(
        'thickness-spread',
        path,
        `${what} of ${show(height)} in ${sheet.id} are ${spread < height ? `only ${show(height - spread)} thick` : 'cut through'} where the sheet is thinnest (${rangeOf(sheet, design)})`,
        `use at least ${show(Math.ceil((10 * spread) / lostShare) / 10)}`,
        'warning',
      ),
    );
}
