/** A batten over its seam at the rim, cut across the rib: it lies on its edges, and what holds it runs through the gap. */
import { bounds } from '../../geometry/index.js';
import { markup, type Markup } from '../markup.js';
import { detail, n, SIDE } from './details.js';
import { fastenersOf, sizeText } from './hardware.js';
import type { BookInput } from './input.js';
import type { Measures } from './measures.js';

export function battenDetail(input: BookInput, { length }: Measures): Markup[] {
  const { design, dish, parts } = input;
  const batten = parts.find(({ kind }) => kind === 'batten');
  const fixed = fastenersOf(input, 'batten-to-rib');
  if (batten === undefined || fixed === null) return [];
  const { minY, maxY } = bounds(batten.outline);
  const { ribThickness: t, panelThickness: p, glueWedge } = dish;
  const scale = Math.min(210 / t, 150 / p, 330 / (maxY - minY), 40);
  const [middle, top] = [SIDE / 2, SIDE / 2 + 10];
  const rise = (2 * glueWedge) / t;
  const [gap, half, wide] = [design.panel.gap / 2, t / 2, (maxY - minY) / 2].map((mm) => mm * scale) as [
    number,
    number,
    number,
  ];
  const reach = SIDE / 2 + 4;
  const panel = (sign: 1 | -1): string => {
    const at = (x: number, up: number) => `${n(middle + sign * x)} ${n(top - rise * x - up)}`;
    return `M${at(gap, 0)}L${at(reach, 0)}L${at(reach, p * scale)}L${at(gap, p * scale)}z`;
  };
  const panels = `${panel(1)}${panel(-1)}`;
  const under = top - rise * wide - p * scale;
  const over = under - batten.thickness * scale;
  const strip = `M${n(middle - wide)} ${n(over)}H${n(middle + wide)}V${n(under)}H${n(middle - wide)}z`;
  const rib = `M${n(middle - half)} ${n(top)}H${n(middle + half)}V${SIDE}H${n(middle - half)}z`;
  const [shank, head] = [fixed.item.diameter / 2, (fixed.item.headDiameter ?? 2 * fixed.item.diameter) / 2].map(
    (mm) => mm * scale,
  ) as [number, number];
  const end = Math.min(SIDE + 9, over + (fixed.item.length ?? 0) * scale);
  const screw = `M${n(middle - head)} ${n(over)}H${n(middle + head)}L${n(middle + shank)} ${n(over + head - shank)}V${n(end - 2 * shank)}L${n(middle)} ${n(end)}L${n(middle - shank)} ${n(end - 2 * shank)}V${n(over + head - shank)}z`;
  const solid = (role: string, path: string): Markup =>
    markup`<g class="k-${role}"><path class="s6" d="${path}"/><path class="e" d="${path}"/></g>`;
  return [
    detail(
      [solid('rib', rib), solid('panel', panels), solid('batten', strip), solid('metal', screw)],
      [
        { at: { x: middle + 0.8 * wide, y: (over + under) / 2 }, text: `batten ${length(batten.thickness)}` },
        { at: { x: middle + 0.8 * wide, y: top - rise * 0.8 * wide - (p * scale) / 2 }, text: `panel ${length(p)}` },
        { at: { x: middle + shank, y: top - 0.3 * p * scale }, text: `gap ${length(design.panel.gap)}` },
        { at: { x: middle, y: Math.min(end - 3 * shank, top + 110) }, text: sizeText(fixed.item) },
      ],
      'A batten at the rim, cut across: it lies on its edges, its screw or pin pierces no panel',
    ),
  ];
}
