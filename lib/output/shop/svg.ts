/** A page as SVG: millimetres of paper, y down, all ink in the colour of the text around it. */
import { edgesOf, edgesOfPath, type Edge, type Point } from '../../geometry/index.js';
import { decimal } from '../decimal.js';
import { markup, type Markup } from '../markup.js';
import { splitArcs } from '../split-arcs.js';
import { CAPITALS, textWidth } from './font.js';
import { lineLooks } from './lines.js';
import { MARGINS } from './paper.js';
import type { Entity, LineKind, ShopPage, Stroke, Words } from './types.js';

const mm = (value: number): string => decimal(value, 2);

function pathData({ vertices, closed }: Stroke, height: number): string {
  const split = splitArcs(vertices, closed, Math.PI * 0.9);
  const first = split[0];
  if (first === undefined) return '';
  const edges = closed ? edgesOf(split) : edgesOfPath(split);
  const to = ({ x, y }: Point): string => `${mm(x)} ${mm(height - y)}`;
  const run = (edge: Edge): string => {
    if (edge.kind === 'straight') return `L${to(edge.to)}`;
    // y points down in a picture, which turns the sense of an arc round
    return `A${mm(edge.radius)} ${mm(edge.radius)} 0 0 ${edge.sweep > 0 ? 0 : 1} ${to(edge.to)}`;
  };
  return `M${to(first)}${edges.map(run).join('')}${closed ? 'Z' : ''}`;
}

/** Strokes of one kind of line in one path. */
function linePath(line: LineKind, strokes: readonly Stroke[], height: number): Markup {
  const { width, dashes } = lineLooks[line];
  const dashed = dashes.length > 0 ? markup` stroke-dasharray="${dashes.map(mm).join(' ')}"` : null;
  return markup`<path class="l-${line}" stroke-width="${mm(width)}"${dashed} d="${strokes.map((one) => pathData(one, height)).join('')}"/>`;
}

const anchors = { start: null, middle: 'middle', end: 'end' } as const;

function textOf({ text, at, height: capitals, anchor, turnDeg }: Words, height: number): Markup {
  const [x, y] = [mm(at.x), mm(height - at.y)];
  const turned = markup`transform="translate(${x} ${y})rotate(${-turnDeg})"`;
  const where = turnDeg === 0 ? markup`x="${x}" y="${y}"` : turned;
  const end = anchors[anchor];
  // a reader without this font or one of its widths must not run into the next cell
  const long = mm(textWidth(text, capitals));
  const length = text.length > 1 ? markup` textLength="${long}" lengthAdjust="spacingAndGlyphs"` : null;
  return markup`<text ${where} font-size="${mm(capitals / CAPITALS)}"${end === null ? null : markup` text-anchor="${end}"`}${length}>${text}</text>`;
}

const solidData = (points: readonly Point[], height: number): string =>
  `M${points.map(({ x, y }) => `${mm(x)} ${mm(height - y)}`).join('L')}Z`;

/** The page; its label is read to those who cannot see it. */
export function pageSvg({ width, height, entities }: ShopPage, label: string): Markup {
  const strokes = new Map<LineKind, Stroke[]>();
  for (const stroke of entities.flatMap((one: Entity) => one.strokes)) {
    const list = strokes.get(stroke.line) ?? [];
    list.push(stroke);
    strokes.set(stroke.line, list);
  }
  const solids = entities.flatMap((one) => one.solids);
  const words = entities.flatMap((one) => one.words);
  // what lies outside the frame is for filing paper
  const { left, other } = MARGINS;
  const box = [left - 1, other - 1, width - left - other + 2, height - 2 * other + 2].map(mm).join(' ');
  return markup`<svg class="shop" xmlns="http://www.w3.org/2000/svg" viewBox="${box}" role="img" aria-label="${label}">
<g fill="none" stroke="currentColor" stroke-linecap="butt">${[...strokes].map(([line, list]) => linePath(line, list, height))}</g>
<g fill="currentColor" stroke="none" font-family="Helvetica,Arial,'Liberation Sans',sans-serif">${solids.length > 0 ? markup`<path d="${solids.map((one) => solidData(one, height)).join('')}"/>` : null}${words.map((one) => textOf(one, height))}</g></svg>`;
}
