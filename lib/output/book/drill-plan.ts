/** The backer board's drill plan: a picture, and a table of every hole from the two centre lines. */
import { bounds, boundsOfAll, type Path } from '../../geometry/index.js';
import { type Hole, linesUp, type Part, ringsOf } from '../../part/index.js';
import { markup, type Markup, px } from '../markup.js';
import type { Measures } from './measures.js';
import { letterSize, ringPath } from './ring-path.js';

interface NumberedHole extends Hole {
  /** Number in the plan and the table. */
  readonly number: number;
  readonly part: Part;
  /** Index among the part's holes. */
  readonly index: number;
}

/** Holes by diameter, then round the board from the x axis, then outward. */
function holesOf(boards: readonly Part[]): NumberedHole[] {
  const turn = (x: number, y: number): number => {
    const angle = Math.atan2(y, x);
    return angle < -1e-9 ? angle + 2 * Math.PI : Math.max(0, angle);
  };
  return boards
    .flatMap((part) => part.holes.map((hole, index) => ({ part, index, ...hole })))
    .sort(
      (a, b) =>
        a.diameter - b.diameter ||
        // rounded, so that holes of one cleat stay together
        Math.round((turn(a.x, a.y) - turn(b.x, b.y)) * 1e6) ||
        Math.hypot(a.x, a.y) - Math.hypot(b.x, b.y),
    )
    .map((hole, i) => ({ number: i + 1, ...hole }));
}

function plan(boards: readonly Part[], holes: readonly NumberedHole[], label: string): Markup {
  const box = boundsOfAll(boards.flatMap((part) => ringsOf(part).map(bounds)));
  const rim = 0.04 * (box.maxX - box.minX);
  const width = box.maxX - box.minX + 2 * rim;
  const height = box.maxY - box.minY + 2 * rim;
  const size = Number(letterSize(width)) * 0.8;
  const path = (style: string, part: Part, vertices: Path, closed: boolean) =>
    markup`<path class="${style}" data-part="${part.id}" d="${ringPath(vertices, closed, 0)}"/>`;
  const rings = boards.flatMap((part) => ringsOf(part).map((ring) => path('stuff', part, ring, true)));
  const lines = boards.flatMap((part) =>
    linesUp(part).map(({ vertices, closed }) => path('scribe', part, vertices, closed)),
  );
  const min = Math.min(...holes.map(({ diameter }) => diameter));
  const marks = holes.map(({ number, x, y, diameter }) => {
    const from = Math.hypot(x, y) || 1;
    // a hole for the stand is named on its other side, away from the cleats' holes
    const wide = diameter > min;
    const off = diameter / 2 + 0.75 * size;
    const [dx, dy] = from === 1 ? [off, off] : [((wide ? y : -y) / from) * off, ((wide ? -x : x) / from) * off];
    return markup`<circle class="hole" cx="${px(x)}" cy="${px(-y)}" r="${px(Math.max(diameter / 2, size / 6))}"/><text class="no" font-size="${px(size * 0.8)}" x="${px(x + dx)}" y="${px(-y - dy)}">${number}</text>`;
  });
  const axis = {
    left: px(box.minX - rim / 2),
    right: px(box.maxX + rim / 2),
    up: px(-box.maxY - rim / 2),
    down: px(-box.minY + rim / 2),
  };
  return markup`<svg class="plan" viewBox="${px(box.minX - rim)} ${px(-box.maxY - rim)} ${px(width)} ${px(height)}" role="img" aria-label="${label}">
${rings}
${lines}
<path class="axis" d="M${axis.left} 0H${axis.right}M0 ${axis.up}V${axis.down}"/>
<text class="no" font-size="${px(size)}" x="${axis.right}" y="${px(-size * 0.4)}" text-anchor="end">x</text>
<text class="no" font-size="${px(size)}" x="${px(size * 0.7)}" y="${px(Number(axis.up) + size * 0.7)}">y</text>
${marks}
</svg>`;
}

function row({ number, part, index, x, y, diameter }: NumberedHole, several: boolean, measures: Measures): Markup {
  const angle = (Math.atan2(y, x) * 180) / Math.PI;
  const theta = (angle < -5e-7 ? angle + 360 : Math.abs(angle)).toFixed(3);
  const cell = (name: string, mm: number) =>
    markup`<td data-hole="${part.id}/${index}" data-dim="${name}" data-mm="${mm.toFixed(4)}">${measures.bare(mm)}</td>`;
  return markup`<tr><th scope="row">${number}</th>${several ? markup`<td class="words">${part.id}</td>` : null}${cell('diameter', diameter)}${cell('x', x)}${cell('y', y)}${cell('r', Math.hypot(x, y))}<td data-hole="${part.id}/${index}" data-dim="theta" data-deg="${theta}">${theta}</td></tr>`;
}

/** Picture and table; null when no board is among the parts. */
export function drillPlan(parts: readonly Part[], measures: Measures): Markup | null {
  const boards = parts.filter((part) => part.kind === 'board');
  if (boards.length === 0) return null;
  const holes = holesOf(boards);
  const several = boards.length > 1;
  const label = `Drill plan of the backer board: ${holes.length} holes, numbered as in the table, with the scribed centre lines of the ribs`;
  const unit = measures.unit;
  return markup`<div class="beside"><figure class="zoom">${plan(boards, holes, label)}<figcaption>Numbers are those of the table. x runs along rib 1, y square to it; θ turns anticlockwise from x.</figcaption></figure>
<div class="scroll" tabindex="0" role="region" aria-label="Table of the holes"><table class="holes"><caption>Holes in the backer board, from the two centre lines (${unit}, degrees)</caption>
<thead><tr><th scope="col">no.</th>${several ? markup`<th scope="col" class="words">piece</th>` : null}<th scope="col">diameter</th><th scope="col">x</th><th scope="col">y</th><th scope="col">r</th><th scope="col">θ</th></tr></thead>
<tbody>${holes.map((hole) => row(hole, several, measures))}</tbody></table></div></div>`;
}
