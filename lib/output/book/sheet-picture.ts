/** A nested sheet as a picture: every part true to size, named, and lit up by the part list. */
import { placePoint, placeVertices, signedArea } from '../../geometry/index.js';
import { linesUp, type Part, type PlacedPart, pocketsUp, ringsOf } from '../../part/index.js';
import { markup, type Markup, px } from '../markup.js';
import { copyName, sheetLabels } from '../sheet/index.js';
import { CAPITALS, textWidth } from '../shop/font.js';
import type { Colours } from '../types.js';
import type { BookSheet } from './input.js';
import { ringPath } from './ring-path.js';

/** Area of a part's sheet material, mm²: outline less openings and holes. */
export function partArea(part: Part): number {
  const rings = ringsOf(part).reduce((sum, ring) => sum + signedArea(ring), 0);
  const holes = part.holes.reduce((sum, { diameter }) => sum + (Math.PI / 4) * diameter ** 2, 0);
  return rings - holes;
}

function placedPart(part: Part, at: PlacedPart, sheet: BookSheet, colours: Colours): Markup {
  const top = sheet.height;
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

/** Width of a sheet on a printed page, mm: labels are chosen for it. */
const PRINTED = 180;

function labels(sheet: BookSheet, parts: readonly Part[]): Markup[] {
  return sheetLabels(sheet.placed, parts, PRINTED / Math.max(sheet.width, sheet.height)).map((label) => {
    const place = `translate(${px(label.x)} ${px(sheet.height - label.y)})rotate(${px(-label.angleDeg)})`;
    // a reader without this font or one of its widths must not run over the edge
    const long = px(textWidth(label.text, label.height));
    const length = label.text.length > 1 ? markup` textLength="${long}" lengthAdjust="spacingAndGlyphs"` : null;
    return markup`<text class="name" data-part="${label.part}" font-size="${px(label.height / CAPITALS)}" transform="${place}"${length}>${label.text}</text>`;
  });
}

/** The corner from which all files of the sheet measure: an arrow each along X and Y. */
function zeroCorner({ width, height }: BookSheet): Markup {
  const long = Math.max(width, height) / 22;
  const head = long / 5;
  return markup`<path class="zero" d="M0 ${px(height - long)}V${px(height)}H${px(long)}M${px(-head / 2)} ${px(height - long + head)}L0 ${px(height - long)}L${px(head / 2)} ${px(height - long + head)}M${px(long - head)} ${px(height - head / 2)}L${px(long)} ${px(height)}L${px(long - head)} ${px(height + head / 2)}"/>`;
}

/** What share of the sheet (or of the used length of a roll) becomes parts. */
export function useOf(sheet: BookSheet, parts: readonly Part[]): number {
  const used = sheet.placed.reduce((sum, { part }) => {
    const found = parts.find(({ id }) => id === part);
    return sum + (found ? partArea(found) : 0);
  }, 0);
  return used / (sheet.width * sheet.height);
}

export function sheetPicture(sheet: BookSheet, parts: readonly Part[], colours: Colours, description: string): Markup {
  const { width, height, margin, offcut } = sheet;
  const edge = Math.max(width, height) / 200;
  const found = sheet.placed.flatMap((at) => {
    const part = parts.find(({ id }) => id === at.part);
    return part ? [{ part, at }] : [];
  });
  const rest =
    offcut &&
    markup`<rect class="offcut" x="${px(offcut.x)}" y="${px(height - offcut.y - offcut.height)}" width="${px(offcut.width)}" height="${px(offcut.height)}"/>`;
  const inner = { x: px(margin), width: px(width - 2 * margin), height: px(height - 2 * margin) };
  return markup`<svg class="sheet" viewBox="${px(-edge)} ${px(-edge)} ${px(width + 2 * edge)} ${px(height + 2 * edge)}" role="img" aria-label="${description}">
<rect class="stock" width="${px(width)}" height="${px(height)}"/>
<rect class="margin" x="${inner.x}" y="${inner.x}" width="${inner.width}" height="${inner.height}"/>${rest}
${found.map(({ part, at }) => placedPart(part, at, sheet, colours))}
${labels(sheet, parts)}${zeroCorner(sheet)}
</svg>`;
}
