/**
 * The labels of a sheet: what each piece is called, along it; the number of the part list where the name is too long, and
 * that beside the piece, with a line to it, where it has no room for it that is clear of holes.
 */
import { placePoint, type Point } from '../../geometry/index.js';
import type { Part, PlacedPart } from '../../part/index.js';
import { textWidth } from '../shop/font.js';
import { Asides } from './aside.js';
import { labelPlace, type LabelPlace } from './label.js';
import type { LaidPicture } from './lengths.js';

export interface SheetLabel {
  readonly part: string;
  readonly copy: number;
  readonly text: string;
  /** Middle of the text on the sheet, y up. */
  readonly x: number;
  readonly y: number;
  /** Anticlockwise, from -90 (not included) to 90, so that nothing is read upside down. */
  readonly angleDeg: number;
  /** Of the capitals, mm of the sheet. */
  readonly height: number;
  /** Of a label beside its piece: the line from it to the piece. */
  readonly leader?: readonly [Point, Point];
}

/** Heights of capitals on paper, mm: 1.8 is the smallest of ISO 3098-1, 2.5 the next. */
const HEIGHTS = { max: 2.5, min: 1.8 } as const;

/** `rib 3`, or `board` where there is one. */
export const copyName = ({ name, quantity }: Part, copy: number): string => (quantity > 1 ? `${name} ${copy}` : name);

interface Chosen {
  readonly short: boolean;
  readonly place: LabelPlace;
}

/** Letters hang below their line, digits do not. */
const AIR = { name: 0.35, number: 0.15 } as const;

/** One place for all copies of a part, by the longest of their names: rather the number than a name over lines. */
function chosenFor(part: Part, number: string, factor: number): Chosen | null {
  const heights = { max: HEIGHTS.max / factor, min: HEIGHTS.min / factor };
  const name = { ratio: textWidth(copyName(part, part.quantity), 1), air: AIR.name };
  const short = { ratio: textWidth(number, 1), air: AIR.number };
  for (const clear of ['lines', 'holes'] as const) {
    const place = labelPlace(part, { ...name, clear }, heights);
    if (place !== null) return { short: false, place };
    const shorter = labelPlace(part, { ...short, clear }, heights);
    if (shorter !== null) return { short: true, place: shorter };
  }
  return null;
}

function readable(angleDeg: number): number {
  const turned = (((angleDeg + 90) % 180) + 180) % 180;
  // a text that is read from the right, not from the left
  return turned < 0.01 ? 90 : turned - 90;
}

function onSheet({ short, place }: Chosen, part: Part, number: string, at: PlacedPart): SheetLabel {
  const middle = placePoint(place, at);
  const angle = at.mirrored ? 180 - place.angleDeg : place.angleDeg;
  return {
    part: part.id,
    copy: at.copy,
    text: short ? number : copyName(part, at.copy),
    ...middle,
    angleDeg: readable(angle + at.rotationDeg),
    height: place.height,
  };
}

/**
 * @param picture of the sheet, at its true size
 * @param parts of the whole job, in the order of the part list
 * @param factor mm on paper for a mm of the sheet
 * @returns none for a piece that is too small for its number and lies too close to others for one beside it
 */
export function sheetLabels(picture: LaidPicture, parts: readonly Part[], factor: number): SheetLabel[] {
  const { placed } = picture;
  const chosen = new Map(
    parts
      .filter(({ id }) => placed.some(({ part }) => part === id))
      .map((part) => {
        const number = String(parts.indexOf(part) + 1);
        return [part.id, { part, number, found: chosenFor(part, number, factor) }] as const;
      }),
  );
  const own = placed.map((at) => {
    const one = chosen.get(at.part);
    return one?.found ? onSheet(one.found, one.part, one.number, at) : null;
  });
  const asides = new Asides(picture, parts, HEIGHTS.min / factor);
  for (const label of own) if (label) asides.keepOff(label, textWidth(label.text, label.height));
  const aside = (at: PlacedPart, over: boolean): SheetLabel[] => {
    const one = chosen.get(at.part);
    const found = one ? asides.placeFor(one.part, at, one.number, over) : null;
    return one && found ? [{ part: at.part, copy: at.copy, text: one.number, angleDeg: 0, ...found }] : [];
  };
  const labels = placed.flatMap((at, i) => {
    const label = own[i];
    return label ? [label] : aside(at, false);
  });
  // of a kind without any one copy is named all the same, from farther off
  const nameless = placed.filter(
    (at, i) => !labels.some(({ part }) => part === at.part) && placed.findIndex(({ part }) => part === at.part) === i,
  );
  return [...labels, ...nameless.flatMap((at) => aside(at, true))];
}
