/** The machine from its side, tilted: outlines of what stands and what tilts, across the tilt axis. */
import { markup, type Markup, px } from '../markup.js';
import type { BookStand } from './input.js';
import type { Measures } from './measures.js';

const behind = ['ground', 'base', 'side frame', 'base beam', 'spacer'];

/** One tilt. Height runs down the page, the sun is on the right. */
export function standPicture(stand: BookStand, at: BookStand['pictures'][number], measures: Measures): Markup {
  const { ground, castors, base, reach, axis } = stand;
  const size = reach / 16;
  const [left, right] = [-1.3 * reach, 1.3 * reach];
  const [top, bottom] = [axis + 1.15 * reach, ground - size];
  const path = (outline: readonly { readonly x: number; readonly y: number }[]): string =>
    `M${outline.map(({ x, y }) => `${px(x)} ${px(-y)}`).join('L')}Z`;
  const shapes = (names: (name: string) => boolean, className: string) =>
    at.outlines
      .filter(({ name }) => name !== 'ground' && names(name))
      .map(({ outline }) => markup`<path class="${className}" d="${path(outline)}"/>`);
  const still = (name: string): boolean => behind.includes(name);
  const angle = (at.sunDeg * Math.PI) / 180;
  const { x, y } = at.focus;
  const ray = `M${px(x)} ${px(-y)}L${px(x + 1.25 * reach * Math.cos(angle))} ${px(-y - 1.1 * reach * Math.sin(angle))}`;
  const wheels = [-castors.x, castors.x].map(
    (x) =>
      markup`<circle class="pot" cx="${px(x)}" cy="${px(-ground - 0.4 * castors.height)}" r="${px(0.4 * castors.height)}"/>`,
  );
  const words = `The machine from its side, aimed at a sun ${at.sunDeg.toFixed(0)} degrees high`;
  return markup`<svg class="plan" viewBox="${px(left)} ${px(-top)} ${px(right - left)} ${px(top - bottom)}" role="img" aria-label="${words}">
${shapes(still, 'stuff')}${wheels}${shapes((name) => name === 'dish', 'stuff')}${shapes((name) => !still(name) && name !== 'dish' && name !== 'vessel', 'stuff')}${shapes((name) => name === 'vessel', 'pot')}
<path class="mirror-line" d="${at.mirror.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${px(x)} ${px(-y)}`).join('')}"/>
<path class="axis" d="${ray}"/>
<path class="thin" d="M${px(left)} ${px(-ground)}H${px(right)}M${px(-base - size)} ${px(-axis)}H${px(-1.1 * reach)}M${px(-1.05 * reach)} ${px(-axis)}V${px(-ground)}"/>
<text class="after" font-size="${px(size)}" x="${px(-1.03 * reach)}" y="${px(-(axis + ground) / 2)}" data-dim="stand.axis" data-mm="${(axis - ground).toFixed(4)}">${measures.length(axis - ground)}</text>
<text font-size="${px(size)}" x="${px(0.5 * reach)}" y="${px(-top + 1.5 * size)}">sun ${at.sunDeg.toFixed(0)}°</text></svg>`;
}
