/** The chapter of the sheets, in the words of the way in which this builder cuts: by router, laser or hand. */
import { layerOrder, operationKey } from '../key.js';
import { laserCautions, routerCautions } from '../gcode/cautions.js';
import { markup, type Markup } from '../markup.js';
import type { BookInput } from './input.js';
import { type Block, block } from './leaves.js';
import type { Measures } from './measures.js';
import type { Paper } from './paper.js';
import { printedHeight } from './printed-height.js';
import { allSheets } from './sheet-blocks.js';

/** What is done along the lines of each colour of the cut files. */
function fileKey({ design }: BookInput): Markup {
  const colours = layerOrder.map((name) => design.colours[name]);
  const swatch = (colour: string | undefined) =>
    colour === undefined
      ? null
      : markup`<svg class="swatch" viewBox="0 0 22 7" aria-hidden="true"><path d="M0 3.5H22" stroke="${colour}"/></svg>`;
  return markup`<h3>Key to the cut files</h3><ul>${operationKey(design.colours).map((line, i) => markup`<li>${swatch(colours[i])}${line}</li>`)}</ul>`;
}

const listed = (title: string, lines: readonly string[]): Markup =>
  markup`<h3>${title}</h3><ul>${lines.map((line) => markup`<li>${line}</li>`)}</ul>`;

/** Every tool that is used on some sheet, by its number, with its speeds and what it cuts on all sheets. */
function toolTable({ cutPictures }: BookInput, { run }: Measures): Markup | null {
  const all = cutPictures.flatMap(({ routed }) => routed?.tools ?? []);
  const numbers = [...new Set(all.map(({ number }) => number))].sort((a, b) => a - b);
  if (numbers.length === 0) return null;
  const rows = numbers.map((number) => {
    const same = all.filter((tool) => tool.number === number);
    const range = (of: (tool: (typeof same)[number]) => number): string => {
      const [low, high] = [Math.min(...same.map(of)), Math.max(...same.map(of))];
      return low === high ? `${low}` : `${low} to ${high}`;
    };
    const length = same.reduce((sum, tool) => sum + tool.length, 0);
    const sheets = cutPictures.filter(({ routed }) => routed?.tools.some((tool) => tool.number === number));
    return markup`<tr><th scope="row">${number}</th><td class="words">${same[0]?.name ?? ''}</td><td>${range(({ spindle }) => spindle)}</td><td>${run(length)}</td><td class="words">${sheets.map(({ sheet }) => sheet).join(', ')}</td></tr>`;
  });
  return markup`<h3>Tools by number</h3>
<div class="scroll" tabindex="0" role="region" aria-label="Table of the tools"><table class="tools-table"><thead><tr><th scope="col">no.</th><th scope="col" class="words">tool</th><th scope="col">rev/min</th><th scope="col">cuts</th><th scope="col" class="words">on sheets</th></tr></thead><tbody>${rows}</tbody></table></div>`;
}

const routerOrder: readonly string[] = [
  'Lay the sheet with its better face up and its lower left corner at zero: X along its length, Y across, Z zero on its upper face. Clamp or screw it only outside the parts: the tables of setting out say where they lie.',
  'Run the file of a sheet from its start to its end: marks, holes, openings, outlines. Each tool comes once.',
  'Leave the parts in the sheet until the last tool has stopped. Then take them out one by one, number them, and stack them by kind.',
  'Measure the first part of each kind against its drawing before the next sheet goes on.',
];

const laserOrder = (square: string, kerf: string): readonly string[] => [
  `First a test square: draw a square of ${square} in a corner that stays free and cut it as an outline, its line moved out by half the kerf of ${kerf}. The files are moved by that already. Out of the sheet its sides measure ${square}; if they do not, put the true kerf into the design file and cut again.`,
  'Never cut along the lines of scribe: they are marks. Set them to engrave, or switch them off. Countersinks and the edge of the sheet stand in no file that a laser runs; countersink at the bench.',
  'Order: marks, then holes, then openings, then outlines. A part that has come free has moved: nothing is cut on it after its outline.',
  'Lay the sheet flat, its lower left corner at zero. A bowed sheet is out of focus: weight it beside the parts, where the tables of setting out leave room.',
  'The edge is a little slanted. The marked face is the upper one; stack the parts with it up.',
];

/** @param proud how far outside the line ribs are sawn */
const handOrder = (proud: string): readonly string[] => [
  'Square the lower left corner of the sheet: all distances of the tables of setting out are measured from it. X runs along the sheet, Y across.',
  'Rough out between the parts first: the sheet falls into pieces that one person can hold. Saw outside the line; the template, plane or file brings the edge to it.',
  `Ribs: saw ${proud} outside the line, then trim along the template with a flush-trimming bit, or plane a pack of ribs to their curve. The marks of the curve stand in the drawing of the rib: heights over the base at a step along it.`,
  'Panels, strips and hub have their prints at full size and their tables of widths in their drawings. Long edges are bowed: join the marks with a bent batten, never with a straight edge.',
  'Drill with the sheet on a waste board, holes before outlines, while there is enough to clamp.',
];

/** Lists that flow through two columns on paper. */
function columns(lists: readonly Markup[], width: number): Block {
  const body = markup`${lists}`;
  return block(markup`<div class="before">${body}</div>`, width, {
    height: printedHeight(body, width / 2 - 3, 0.9) / 2 + 4,
  });
}

/** What is common to all who cut: pictures, grain, where it hangs. */
function about(machines: boolean): Markup {
  return machines
    ? markup`<p>Parts are shown at their finished size; the machine runs the files in <code>sheets/</code>. Arrows at the lower left corner show zero, X and Y of the files. Grain runs from left to right; a number alone is that of the parts list. To hang at the machine: <code>sheets.pdf</code>.</p>`
    : markup`<p>Parts are shown at their finished size, as they are marked out and sawn. Grain runs from left to right; a number alone is that of the parts list. To hang at the bench: <code>sheets.pdf</code>.</p>`;
}

function wayBlocks(input: BookInput, measures: Measures, { width }: Paper): Block[] {
  const { process, template } = input.design;
  const tools = toolTable(input, measures);
  const lasered = input.laserTimes.length > 0 || process.kind === 'laser';
  switch (process.kind) {
    case 'router':
      return [
        ...(tools === null ? [] : [block(tools, width)]),
        columns(
          [
            listed('Before the router runs', routerCautions),
            listed('Order of work', routerOrder),
            fileKey(input),
            ...(lasered ? [listed('Before the laser runs', laserCautions)] : []),
          ],
          width,
        ),
      ];
    case 'laser': {
      const square = measures.length(measures.metric ? 50 : 50.8);
      return [
        columns(
          [
            listed('Before the laser runs', laserCautions),
            listed('Order of work', laserOrder(square, measures.length(process.kerf))),
            fileKey(input),
          ],
          width,
        ),
      ];
    }
    default:
      return [
        block(listed('Order of work', handOrder(measures.metric ? '2 mm' : '1/16 in')), width),
        ...(template.process === 'hand' ? [] : [block(fileKey(input), width)]),
      ];
  }
}

/** The sheets by what cuts them. */
export function cuttingTitle({ design }: BookInput): string {
  return `Sheets, cut by ${design.process.kind}`;
}

export function cuttingBlocks(input: BookInput, measures: Measures, paper: Paper): Block[] {
  if (input.sheets === null)
    return [block(markup`<p role="status">The parts are being nested; the sheets follow.</p>`, paper.width)];
  const { process, template } = input.design;
  const machines = process.kind !== 'hand' || template.process !== 'hand';
  return [
    block(about(machines), paper.width),
    ...wayBlocks(input, measures, paper),
    ...allSheets(input, measures, paper),
  ];
}
