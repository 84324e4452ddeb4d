/** The rib as a dimensioned drawing, measured on the part itself. */
import { bounds, type Path } from '../../geometry/index.js';
import type { Dish } from '../../dish/index.js';
import { linesUp, type Part } from '../../part/index.js';
import { markup, type Markup, px } from '../markup.js';
import type { Measures } from './measures.js';
import { ribInPlace } from './rib-place.js';
import { ringPath } from './ring-path.js';

/** What is measured on a rib; radii from the axis, heights above the board. */
export interface RibSizes {
  readonly innerRadius: number;
  readonly rimRadius: number;
  readonly toeRadius: number;
  readonly innerHeight: number;
  readonly rimHeight: number;
  /** Height of the toe cut's end at the rim. */
  readonly rimFoot: number;
}

const near = (a: number, b: number): boolean => Math.abs(a - b) < 1e-3;

export function ribSizes(rib: Part, dish: Dish): RibSizes {
  const outline = ribInPlace(rib.outline, dish);
  const box = bounds(outline);
  // the curve's ends: the optical edge runs from the rim inward
  const curve = rib.edges.find(({ role }) => role === 'optical');
  const innerRadius = curve === undefined ? box.minX : (outline[curve.to + 1]?.x ?? box.minX);
  const heights = (x: number) => outline.filter((v) => near(v.x, x)).map((v) => v.y);
  return {
    innerRadius,
    rimRadius: box.maxX,
    toeRadius: Math.max(...outline.filter((v) => near(v.y, 0)).map((v) => v.x)),
    innerHeight: Math.max(...heights(innerRadius)),
    rimHeight: Math.max(...heights(box.maxX)),
    rimFoot: Math.min(...heights(box.maxX)),
  };
}

interface Letters {
  readonly size: number;
  readonly measures: Measures;
}

/** A dimension along x, its line at height `y` of the picture, between two radii. */
function level(name: string, from: number, to: number, y: number, { size, measures }: Letters): Markup {
  const head = size * 0.4;
  const arrows = `M${px(from)} ${px(y)}H${px(to)}M${px(from + head)} ${px(y - head / 2)}L${px(from)} ${px(y)}L${px(from + head)} ${px(y + head / 2)}M${px(to - head)} ${px(y - head / 2)}L${px(to)} ${px(y)}L${px(to - head)} ${px(y + head / 2)}`;
  return markup`<path class="dim" d="${arrows}"/><text class="dim" font-size="${px(size)}" x="${px((from + to) / 2)}" y="${px(y - size * 0.35)}" data-dim="rib.${name}" data-mm="${(to - from).toFixed(4)}">${measures.length(to - from)}</text>`;
}

/** A dimension along y at `x`, between two heights of the picture (y down). */
function upright(
  name: string,
  x: number,
  low: number,
  high: number,
  side: 1 | -1,
  { size, measures }: Letters,
): Markup {
  const head = size * 0.4;
  const arrows = `M${px(x)} ${px(low)}V${px(high)}M${px(x - head / 2)} ${px(low - head)}L${px(x)} ${px(low)}L${px(x + head / 2)} ${px(low - head)}M${px(x - head / 2)} ${px(high + head)}L${px(x)} ${px(high)}L${px(x + head / 2)} ${px(high + head)}`;
  return markup`<path class="dim" d="${arrows}"/><text class="dim ${side === 1 ? 'after' : 'before'}" font-size="${px(size)}" x="${px(x + side * size * 0.4)}" y="${px((low + high) / 2 + size * 0.35)}" data-dim="rib.${name}" data-mm="${(low - high).toFixed(4)}">${measures.length(low - high)}</text>`;
}

const extension = (x1: number, y1: number, x2: number, y2: number): string =>
  `M${px(x1)} ${px(y1)}L${px(x2)} ${px(y2)}`;

/** The drawing: axis at the left, radii below, heights at the ends. Null when no rib is among the parts. */
export function ribDrawing(parts: readonly Part[], dish: Dish, measures: Measures): Markup | null {
  const rib = parts.find((part) => part.kind === 'rib');
  if (!rib) return null;
  const sizes = ribSizes(rib, dish);
  const { innerRadius, rimRadius, toeRadius, innerHeight, rimHeight, rimFoot } = sizes;
  const size = rimRadius / 42;
  const letters = { size, measures };
  const row = size * 1.9;
  const [left, right] = [Math.min(-size * 1.5, innerRadius - size * 8), rimRadius + size * 12];
  const topEdge = -rimHeight - size * 2;
  const bottom = row * 3 + size;
  const path = (style: string, vertices: Path, closed = true) =>
    markup`<path class="${style}" d="${ringPath(ribInPlace(vertices, dish), closed, 0)}"/>`;
  const shapes = [
    path('stuff', rib.outline),
    ...rib.openings.map((opening) => path('gap', opening)),
    ...linesUp(rib).map(({ vertices, closed }) => path('scribe', vertices, closed)),
  ];
  const holes = rib.holes.map(
    ({ x, y, diameter }) =>
      markup`<circle class="hole" cx="${px(dish.innerRadius + x)}" cy="${px(-y)}" r="${px(Math.max(diameter / 2, size / 8))}"/>`,
  );
  const lines = [
    extension(innerRadius, size * 0.3, innerRadius, row + size * 0.4),
    extension(toeRadius, size * 0.3, toeRadius, row * 2 + size * 0.4),
    extension(rimRadius, -rimFoot + size * 0.3, rimRadius, row * 3 + size * 0.4),
    extension(rimRadius + size * 0.3, -rimHeight, rimRadius + size * 6.8, -rimHeight),
    extension(rimRadius + size * 0.3, -rimFoot, rimRadius + size * 1.4, -rimFoot),
    extension(toeRadius + size * 0.3, 0, rimRadius + size * 6.8, 0),
  ];
  const label = `Rib: from radius ${measures.length(innerRadius)} to ${measures.length(rimRadius)}, ${measures.length(innerHeight)} high at its inner end and ${measures.length(rimHeight)} at the rim`;
  return markup`<figure class="zoom"><svg class="plan" data-part="${rib.id}" viewBox="${px(left)} ${px(topEdge)} ${px(right - left)} ${px(bottom - topEdge)}" role="img" aria-label="${label}">
${shapes}${holes}
<path class="axis" d="M0 ${px(topEdge)}V${px(row * 3 + size * 0.4)}"/>
<path class="thin" d="${lines.join('')}"/>
${level('innerRadius', 0, innerRadius, row, letters)}
${level('toeRadius', 0, toeRadius, row * 2, letters)}
${level('rimRadius', 0, rimRadius, row * 3, letters)}
${upright('innerHeight', innerRadius - size * 0.7, 0, -innerHeight, -1, letters)}
${upright('rimEnd', rimRadius + size * 0.9, -rimFoot, -rimHeight, 1, letters)}
${upright('rimHeight', rimRadius + size * 6.4, 0, -rimHeight, 1, letters)}
</svg><figcaption>Rib, ${rib.quantity} off, ${measures.length(rib.thickness)} thick. Radii are from the dish’s axis (dash-dotted), heights above the board’s face. Edges are cut square.</figcaption></figure>
<table class="sizes"><caption>Sizes of the rib</caption><tbody>${ribRows(sizes, measures)}</tbody></table>`;
}

function ribRows(sizes: RibSizes, measures: Measures): Markup[] {
  const rows: [string, string, number][] = [
    ['Inner end, from the axis', 'innerRadius', sizes.innerRadius],
    ['End of the base, from the axis', 'toeRadius', sizes.toeRadius],
    ['Rim end, from the axis', 'rimRadius', sizes.rimRadius],
    ['Height of the inner end', 'innerHeight', sizes.innerHeight],
    ['Height at the rim, above the board', 'rimHeight', sizes.rimHeight],
    ['Length of the rim end', 'rimEnd', sizes.rimHeight - sizes.rimFoot],
  ];
  return rows.map(
    ([head, name, mm]) => markup`<tr><th scope="row">${head}</th><td>${measures.dim(`rib.${name}`, mm)}</td></tr>`,
  );
}
