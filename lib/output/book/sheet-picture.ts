/** A nested sheet as a picture: every part true to size, named, and lit up by the part list. */
import { placePoint, placeVertices, type Point, signedArea } from '../../geometry/index.js';
import { linesUp, type Part, type PlacedPart, pocketsUp, ringsOf } from '../../part/index.js';
import { markup, type Markup, px, raw } from '../markup.js';
import { copyName, laidOut, type LaidPicture, sheetLabels } from '../sheet/index.js';
import { CAPITALS, textWidth } from '../shop/font.js';
import type { Colours } from '../types.js';
import type { BookInput, BookSheet } from './input.js';
import type { Measures } from './measures.js';
import { ringPath } from './ring-path.js';

/** Area of a part's sheet material, mm²: outline less openings and holes. */
export function partArea(part: Part): number {
  const rings = ringsOf(part).reduce((sum, ring) => sum + signedArea(ring), 0);
  const holes = part.holes.reduce((sum, { diameter }) => sum + (Math.PI / 4) * diameter ** 2, 0);
  return rings - holes;
}

function placedPart(part: Part, at: PlacedPart, top: number, colours: Colours): Markup {
  const material = ringsOf(part).map((ring) => ringPath(placeVertices(ring, at), true, top));
  const scribes = linesUp(part).map(({ vertices, closed }) => ringPath(placeVertices(vertices, at), closed, top));
  const pockets = pocketsUp(part).map(({ ring }) => ringPath(placeVertices(ring, at), true, top));
  const holes = part.holes.map((drill) => {
    const { x, y } = placePoint(drill, at);
    return markup`<circle cx="${px(x)}" cy="${px(top - y)}" r="${drill.diameter / 2}" stroke="${colours.drill}"/>`;
  });
  const name = copyName(part, at.copy);
  const line = (colour: string, data: readonly string[]) =>
    data.length > 0 ? markup`<path class="line" stroke="${colour}" d="${data.join('')}"/>` : null;
  const lines = [
    line(colours.scribe, scribes),
    line(colours.pocket, pockets),
    line(colours.opening, material.slice(1)),
    line(colours.outline, material.slice(0, 1)),
  ];
  const stuff = markup`<path class="stuff" fill-rule="evenodd" d="${material.join('')}"/>`;
  return markup`<g data-part="${part.id}" class="piece of-${part.kind}"><title>${name}</title>${stuff}${lines}${holes}</g>`;
}

/**
 * A picture of a sheet on paper is so wide or so high at the least, mm, with what a reader’s font takes of its page.
 * Labels are chosen for it.
 */
const PRINTED = { width: 180, height: 65 } as const;

/** Capitals of what stands beside a sheet, mm on paper: the smallest of ISO 3098-1. */
const LETTERS = 1.8;

/** mm on paper, at the smallest, for a mm of a picture. */
const factorOf = ({ width, height }: LaidPicture): number => Math.min(PRINTED.width / width, PRINTED.height / height);

/** Letters of capitals of a height, their middle at a place. */
function textAt(text: string, classes: string, height: number, place: string): Markup {
  // a reader without this font or one of its widths must not run over the edge
  const long = px(textWidth(text, height));
  const length = text.length > 1 ? markup` textLength="${long}" lengthAdjust="spacingAndGlyphs"` : null;
  return markup`<text${raw(classes)} font-size="${px(height / CAPITALS)}" transform="${place}"${length}>${text}</text>`;
}

function labels(picture: LaidPicture, parts: readonly Part[]): Markup[] {
  return sheetLabels(picture, parts, factorOf(picture)).map((label) => {
    const { leader } = label;
    const place = `translate(${px(label.x)} ${px(picture.height - label.y)})rotate(${px(-label.angleDeg)})`;
    const to = ({ x, y }: Point): string => `${px(x)} ${px(picture.height - y)}`;
    const line = leader ? markup`<path class="leader" d="M${to(leader[0])}L${to(leader[1])}"/>` : null;
    return markup`${line}${textAt(label.text, ` class="name" data-part="${label.part}"`, label.height, place)}`;
  });
}

/** The corner from which all files of the sheet measure: an arrow each along X and Y. */
function zeroCorner({ width, height, lengths: [first] }: LaidPicture): Markup {
  const long = Math.max(width, height) / 22;
  const head = long / 5;
  const y = height - first.bottom;
  return markup`<path class="zero" d="M0 ${px(y - long)}V${px(y)}H${px(long)}M${px(-head / 2)} ${px(y - long + head)}L0 ${px(y - long)}L${px(head / 2)} ${px(y - long + head)}M${px(long - head)} ${px(y - head / 2)}L${px(long)} ${px(y)}L${px(long - head)} ${px(y + head / 2)}"/>`;
}

/** The stock itself, each length of it, with the margin that parts keep from its edge. */
function stockOf(picture: LaidPicture, { height, margin }: BookSheet, { length }: Measures): Markup[] {
  const capitals = LETTERS / factorOf(picture);
  return picture.lengths.map(({ from, to, bottom }, i) => {
    const top = picture.height - bottom - height;
    const [first, last] = [i === 0, i === picture.lengths.length - 1];
    const [left, right] = [first ? margin : 0, to - from - (last ? margin : 0)];
    const goesOn = first
      ? null
      : textAt(`on from X = ${length(from)}`, ' class="row"', capitals, `translate(0 ${px(top - capitals / 2)})`);
    return markup`<rect class="stock" y="${px(top)}" width="${px(to - from)}" height="${px(height)}"/>
<rect class="margin" x="${px(left)}" y="${px(top + margin)}" width="${px(right - left)}" height="${px(height - 2 * margin)}"/>${goesOn}`;
  });
}

/** What share of the sheet (or of the used length of a roll) becomes parts. */
export function useOf(sheet: BookSheet, parts: readonly Part[]): number {
  const used = sheet.placed.reduce((sum, { part }) => {
    const found = parts.find(({ id }) => id === part);
    return sum + (found ? partArea(found) : 0);
  }, 0);
  return used / (sheet.width * sheet.height);
}

/** Height over width of a sheet's picture. */
export function shapeOf(sheet: BookSheet, parts: readonly Part[]): number {
  const { width, height } = laidOut(sheet, parts);
  return height / width;
}

export function sheetPicture(
  sheet: BookSheet,
  { parts, design: { colours } }: Pick<BookInput, 'parts' | 'design'>,
  measures: Measures,
  description: string,
): Markup {
  const picture = laidOut(sheet, parts);
  const { width, height } = picture;
  const edge = Math.max(width, height) / 200;
  const found = picture.placed.flatMap((at) => {
    const part = parts.find(({ id }) => id === at.part);
    return part ? [{ part, at }] : [];
  });
  const offcut = picture.lengths.length === 1 ? sheet.offcut : null;
  const rest =
    offcut &&
    markup`<rect class="offcut" x="${px(offcut.x)}" y="${px(height - offcut.y - offcut.height)}" width="${px(offcut.width)}" height="${px(offcut.height)}"/>`;
  return markup`<svg class="sheet" viewBox="${px(-edge)} ${px(-edge)} ${px(width + 2 * edge)} ${px(height + 2 * edge)}" role="img" aria-label="${description}">
${stockOf(picture, sheet, measures)}${rest}
${found.map(({ part, at }) => placedPart(part, at, height, colours))}
${labels(picture, parts)}${zeroCorner(picture)}
</svg>`;
}
