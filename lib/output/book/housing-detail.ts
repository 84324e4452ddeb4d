/** A rib in its groove of the board, cut across: a small picture beside that of the step. */
import type { Markup } from '../markup.js';
import { markup } from '../markup.js';
import { cutLayer, detail, n, SIDE } from './details.js';
import type { BookInput } from './input.js';
import { grooveOf } from './housing-steps.js';
import type { Measures } from './measures.js';

export function housingJoint(input: BookInput, { length }: Measures): Markup[] {
  const { design, dish, parts } = input;
  const board = parts.find(({ kind }) => kind === 'board');
  const depth = grooveOf(input);
  if (board === undefined || depth === 0) return [];
  const { fit } = design.rib;
  const t = dish.ribThickness;
  const scale = Math.min(150 / t, 170 / board.thickness);
  const middle = SIDE / 2;
  const top = SIDE / 2;
  const [half, groove] = [(t / 2) * scale, ((t + fit) / 2) * scale];
  const floor = top + depth * scale;
  const base = top + (depth - fit) * scale;
  const rib = `M${n(middle - half)} 0H${n(middle + half)}V${n(base)}H${n(middle - half)}z`;
  return [
    detail(
      [
        cutLayer(
          { name: 'board', thickness: board.thickness, role: 'board' },
          top,
          top + board.thickness * scale,
          true,
        ),
        markup`<path class="bore" d="M${n(middle - groove)} ${n(top - 2)}H${n(middle + groove)}V${n(floor)}H${n(middle - groove)}z"/>`,
        markup`<path class="e" d="M${n(middle - groove)} ${n(top)}V${n(floor)}H${n(middle + groove)}V${n(top)}"/>`,
        markup`<g class="k-rib"><path class="s6" d="${rib}"/><path class="e" d="${rib}"/></g>`,
      ],
      [
        { at: { x: middle + half / 2, y: top - 90 }, text: `rib ${length(t)}` },
        { at: { x: middle + groove, y: (top + floor) / 2 }, text: `groove ${length(t + fit)}` },
        { at: { x: middle + half / 2, y: floor }, text: `${length(depth)} deep` },
        { at: { x: middle + 130, y: top + 0.8 * board.thickness * scale }, text: `board ${length(board.thickness)}` },
      ],
      'A rib in its groove, cut across: glue on both walls; beside the groove the rib lies on the board',
    ),
  ];
}
