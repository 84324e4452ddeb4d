/** A nested sheet as a picture: every part true to size, named, and lit up by the part list. */
import { bounds, element, placePoint, placeVertices, signedArea } from '../../geometry/index.js';
import { linesUp, type Part, type PlacedPart, ringsOf } from '../../part/index.js';
import { markup, type Markup, px } from '../markup.js';
import type { BookSheet } from './input.js';
import { ringPath } from './ring-path.js';

/** Area of a part's sheet material, mm²: outline less openings and holes. */
export function partArea(part: Part): number {
  const rings = ringsOf(part).reduce((sum, ring) => sum + signedArea(ring), 0);
  const holes = part.holes.reduce((sum, { diameter }) => sum + (Math.PI / 4) * diameter ** 2, 0);
  return rings - holes;
}

/** `rib 3`, or `board` when there is one. */
function copyName(part: Part, copy: number): string {
  return part.quantity > 1 ? `${part.name} ${copy}` : part.name;
}

function placedPart(part: Part, at: PlacedPart, sheet: BookSheet): Markup {
  const top = sheet.height;
  const material = ringsOf(part).map((ring) => ringPath(placeVertices(ring, at), true, top));
  const scribes = linesUp(part).map(({ vertices, closed }) => ringPath(placeVertices(vertices, at), closed, top));
  const holes = part.holes.map((drill) => {
    const { x, y } = placePoint(drill, at);
    return markup`<circle cx="${px(x)}" cy="${px(top - y)}" r="${drill.diameter / 2}"/>`;
  });
  const name = copyName(part, at.copy);
  const lines = scribes.length > 0 ? markup`<path class="scribe" d="${scribes.join('')}"/>` : null;
  const stuff = markup`<path class="stuff" fill-rule="evenodd" d="${material.join('')}"/>`;
  return markup`<g data-part="${part.id}" class="piece of-${part.kind}"><title>${name}</title>${stuff}${lines}${holes}</g>`;
}

/** The label along the part's longer side, where it has room for one. */
function label(part: Part, at: PlacedPart, sheet: BookSheet): Markup | null {
  const box = bounds(placeVertices(part.outline, at));
  const own = bounds(part.outline);
  const [wide, high] = [box.maxX - box.minX, box.maxY - box.minY];
  const name = copyName(part, at.copy);
  const quarter = Number.isInteger(at.rotationDeg / 90);
  const upright = quarter ? high > 1.3 * wide : false;
  const long = quarter ? Math.max(wide, high) : own.maxX - own.minX;
  const short = quarter ? Math.min(wide, high) : Math.min(wide, high) / 2;
  const size = Math.min(sheet.width / 62, (long / name.length) * 1.5, short * 0.6);
  if (size < sheet.width / 260) return null;
  const middle = placePoint(labelPoint(part), at);
  const place = `translate(${px(middle.x)} ${px(sheet.height - middle.y)})${upright ? ' rotate(-90)' : ''}`;
  return markup`<text class="name" data-part="${part.id}" font-size="${px(size)}" transform="${place}">${name}</text>`;
}

/** A point well within the material: half way up over the middle of the base, where a rib is solid. */
function labelPoint(part: Part): { x: number; y: number } {
  const { outline } = part;
  const box = bounds(outline);
  const x = (box.minX + box.maxX) / 2;
  if (part.kind !== 'rib') return { x, y: (box.minY + box.maxY) / 2 };
  const crossings = outline.flatMap((from, i) => {
    const to = element(outline, (i + 1) % outline.length);
    if (from.x > x === to.x > x) return [];
    return [from.y + ((to.y - from.y) * (x - from.x)) / (to.x - from.x)];
  });
  return { x, y: crossings.reduce((sum, y) => sum + y, 0) / Math.max(1, crossings.length) };
}

/** What share of the sheet (or of the used length of a roll) becomes parts. */
export function useOf(sheet: BookSheet, parts: readonly Part[]): number {
  const used = sheet.placed.reduce((sum, { part }) => {
    const found = parts.find(({ id }) => id === part);
    return sum + (found ? partArea(found) : 0);
  }, 0);
  return used / (sheet.width * sheet.height);
}

export function sheetPicture(sheet: BookSheet, parts: readonly Part[], description: string): Markup {
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
${found.map(({ part, at }) => placedPart(part, at, sheet))}
${found.map(({ part, at }) => label(part, at, sheet))}
</svg>`;
}
