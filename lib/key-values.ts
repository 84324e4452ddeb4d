/** The key values of a dish, in the user's unit, for the terminal and the book. */
import { type Assembly, belowCode } from './assembly/index.js';
import type { Design } from './design/index.js';
import type { Dish } from './dish/index.js';
import type { Part } from './part/index.js';
import { type CleatStart, takesRibs, thicknessRanges } from './parts/index.js';
import { formatArea, formatLength, inInches } from './units/index.js';

export interface KeyValue {
  readonly label: string;
  readonly value: string;
  readonly note?: string;
}

const degrees = (radians: number): string => `${((radians * 180) / Math.PI).toFixed(2)}°`;

/** Where screws, pins and staples stay below the distances of the timber code. */
function distancesBelowCode(assembly: Assembly, length: (mm: number) => string): KeyValue[] {
  return belowCode(assembly).map(({ distance, what, words }) => ({
    label: what === 'edge' ? 'edge distance' : 'spacing',
    value: length(distance),
    note: words,
  }));
}

/** How much thicker or thinner sheets may turn out. */
function thicknessValues(design: Design, dish: Dish, length: (mm: number) => string): KeyValue[] {
  return thicknessRanges(design, dish).map(({ part, min, max }) => ({
    label: `${part} thickness`,
    value: part === 'rib' ? `${length(min)} to ${length(max)}` : `up to ${length(max)}`,
    note:
      part === 'rib'
        ? `as measured, of ${length(dish.ribThickness)}: thicker ribs would no longer fit, thinner ones would not support both panels`
        : 'as measured: thicker layers would be higher than the ribs’ inner ends',
  }));
}

/** Values that follow from the shape alone, before anything is nested or traced. */
export function keyValues(
  design: Design,
  dish: Dish,
  parts: readonly Part[],
  cleatStart: CleatStart,
  assembly: Assembly,
): KeyValue[] {
  const unit = design.units;
  const length = (mm: number) =>
    inInches(unit) ? formatLength(mm, unit) : formatLength(mm, unit, unit === 'm' ? 5 : 2);
  const fine = (mm: number) => formatLength(mm, inInches(unit) ? 'in' : 'mm', inInches(unit) ? 6 : 4);
  const ribs = parts.find((part) => part.kind === 'rib');
  return [
    {
      label: 'aperture',
      value: length(2 * dish.apertureRadius),
      note: `${dish.layout.ribs.length} ribs, figure ${dish.figure}`,
    },
    {
      label: dish.profile.focusTerm,
      value: length(dish.profile.focusHeight),
      note: `f/D ${(dish.profile.focusHeight / (2 * dish.apertureRadius)).toFixed(3)}`,
    },
    { label: 'depth', value: length(dish.depth), note: 'vertex to rim plane' },
    { label: 'rim angle', value: degrees(dish.rimAngle), note: 'from the axis, seen from the focus' },
    { label: 'profile length', value: length(dish.profileLength), note: 'vertex to rim along the curve' },
    { label: 'surface', value: formatArea(dish.surfaceArea, unit, 3), note: `of the whole ${dish.profile.kind}` },
    {
      label: 'ribs clear from',
      value: length(dish.setBack.clearRadius),
      note: `they start at ${length(dish.innerRadius)}, at the hub`,
    },
    ...(!takesRibs(design)
      ? [
          {
            label: 'hub flat',
            value: length(dish.setBack.flatLength),
            note: `for a rib of ${length(dish.ribThickness)}`,
          },
        ]
      : []),
    ...Object.values(design.materials)
      .filter(({ thickness, thickest }) => thickest > thickness)
      .map(({ id, thickness, thickest }) => ({
        label: `sheet ${id}`,
        value: `${length(thickness)} to ${length(thickest)}`,
        note: 'as measured: passes and overcut follow the thickest, slots and other fits the thinnest',
      })),
    ...thicknessValues(design, dish, length),
    {
      label: 'rib height',
      value: length(dish.innerEndHeight),
      note: `inner end; ${length(dish.rimEndHeight)} at the rim, above the board`,
    },
    ...(cleatStart === null
      ? []
      : [{ label: 'cleats start', value: length(cleatStart), note: 'radius of their inner end' }]),
    ...distancesBelowCode(assembly, length),
    { label: 'mirror', value: length(dish.litFrom), note: `to ${length(dish.litTo)}, radii along a panel’s mid-line` },
    {
      label: 'focus above vertex',
      value: length(dish.focusHeight.atRim),
      note:
        dish.figure === 'rib'
          ? `rim rays; inner rays ${length(dish.focusHeight.atInner)}: lower than f, because the ribs and not the panels are true`
          : 'every panel mid-line',
    },
    { label: 'glue wedge', value: length(dish.glueWedge), note: 'open at the rim between rib top and panel' },
    ...(ribs
      ? [
          {
            label: 'curve fit',
            value: fine(ribs.fitDeviation),
            note: 'greatest deviation of a fitted arc from the true curve',
          },
        ]
      : []),
  ];
}
