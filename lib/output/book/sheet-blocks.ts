/** Each sheet with what a person at the machine asks of it: what is on it, where, how it is cut, what is left. */
import { bounds, placeVertices } from '../../geometry/index.js';
import type { Part } from '../../part/index.js';
import { markup, type Markup, raw } from '../markup.js';
import { copyName } from '../sheet/index.js';
import type { BookInput, BookSheet, CutPicture } from './input.js';
import { onPaper } from './drawings.js';
import { type Block, block } from './leaves.js';
import type { Measures } from './measures.js';
import type { Paper } from './paper.js';
import { linesOf, printedHeight } from './printed-height.js';
import { shapeOf, sheetPicture, useOf } from './sheet-picture.js';

function contents(sheet: BookSheet, parts: readonly Part[]): string {
  return parts
    .map((part) => ({ part, count: sheet.placed.filter((at) => at.part === part.id).length }))
    .filter(({ count }) => count > 0)
    .map(({ part, count }) => `${count} x ${part.name}`)
    .join(', ');
}

/** How long the router is at it, and how far each tool cuts. */
function routing({ cuttingSeconds, tools }: NonNullable<CutPicture['routed']>, { run }: Measures): string {
  const wear = tools.map(({ number, length }) => `tool ${number} cuts ${run(length)}`);
  return `About ${Math.ceil(cuttingSeconds / 60)} minutes without tool changes; ${wear.join(', ')}.`;
}

interface Spot {
  readonly name: string;
  readonly from: { readonly x: number; readonly y: number };
  readonly to: { readonly x: number; readonly y: number };
}

/** Where each part lies, from the corner at zero, in the order in which one meets them along the sheet. */
function spotsOf(sheet: BookSheet, parts: readonly Part[]): Spot[] {
  return sheet.placed
    .flatMap((at) => {
      const part = parts.find(({ id }) => id === at.part);
      if (part === undefined) return [];
      const box = bounds(placeVertices(part.outline, at));
      return [{ name: copyName(part, at.copy), from: { x: box.minX, y: box.minY }, to: { x: box.maxX, y: box.maxY } }];
    })
    .sort((a, b) => a.from.x - b.from.x || a.from.y - b.from.y);
}

/** Tables of places beside each other on paper. */
const ABREAST = 2;
/** Fewer rows than this stay in one column. */
const FEW = 6;

function settingOut(sheet: BookSheet, parts: readonly Part[], { unit, bare }: Measures): Markup {
  const spots = spotsOf(sheet, parts);
  const few = spots.length < FEW ? ' few' : '';
  const row = ({ name, from, to }: Spot) =>
    markup`<tr><th scope="row">${name}</th><td>${bare(from.x)}</td><td>${bare(to.x)}</td><td>${bare(from.y)}</td><td>${bare(to.y)}</td></tr>`;
  return markup`<div class="scroll setting${few}" tabindex="0" role="region" aria-label="Table of the places on ${sheet.id}"><table><caption>Setting out: from the zero corner to both ends of each part along X and along Y, ${unit}</caption>
<thead><tr><th scope="col">part</th><th scope="col">X from</th><th scope="col">to</th><th scope="col">Y from</th><th scope="col">to</th></tr></thead><tbody>${spots.map(row)}</tbody></table></div>`;
}

/** A picture of a sheet on paper is not lower than this, mm, nor higher than this leaves room for its tables. */
const LOWEST = 26;
const HIGHEST = 76;

/** Facts in sentences or lists, which take the width of the page. */
const LONG: ReadonlySet<string> = new Set(['Parts', 'Time']);
const wide = markup` class="wide"`;

function factsOf(
  sheet: BookSheet,
  input: BookInput,
  measures: Measures,
  simulated: CutPicture | undefined,
): readonly (readonly [string, Markup])[] {
  const { design, parts } = input;
  const stock = design.stock.find(({ id }) => id === sheet.stock);
  const material = stock ? (design.materials[stock.material]?.description ?? stock.material) : sheet.stock;
  const size = markup`<span data-sheet="${sheet.id}" data-dim="width" data-mm="${sheet.width.toFixed(4)}">${measures.length(sheet.width)}</span> x <span data-sheet="${sheet.id}" data-dim="height" data-mm="${sheet.height.toFixed(4)}">${measures.length(sheet.height)}</span>`;
  const time =
    input.laserTimes.find((one) => one.sheet === sheet.id)?.text ??
    (simulated?.routed && routing(simulated.routed, measures));
  return [
    ['Material', markup`${material}`],
    ['Size', size],
    ['Parts', markup`${contents(sheet, parts)}`],
    ['Use', markup`${(100 * useOf(sheet, parts)).toFixed(0)} % becomes parts`],
    ...(sheet.offcut
      ? [
          [
            'Offcut',
            markup`dashed, ${measures.length(sheet.offcut.width)} x ${measures.length(sheet.offcut.height)}`,
          ] as const,
        ]
      : []),
    ...(time === undefined || time === null ? [] : [['Time', markup`${time}`] as const]),
  ];
}

function sheetBlocks(sheet: BookSheet, input: BookInput, measures: Measures, { width }: Paper): Block[] {
  const { parts } = input;
  const holds = contents(sheet, parts);
  const description = `Sheet ${sheet.id}, ${measures.length(sheet.width)} x ${measures.length(sheet.height)}, with ${holds}`;
  const simulated = input.cutPictures.find((cut) => cut.sheet === sheet.id);
  const facts = factsOf(sheet, input, measures, simulated);
  const list = markup`<dl class="facts">${facts.map(([head, value]) => markup`<div${LONG.has(head) ? wide : null}><dt>${head}</dt><dd>${value}</dd></div>`)}</dl>`;
  const left =
    simulated &&
    markup`<figure class="zoom simulated">${raw(simulated.svg)}<figcaption>${simulated.routed ? 'What is left: the sheet as the tool paths cut it, simulated.' : 'What is left: the sheet as the laser cuts it by its file. Pale: parts that have come free; dark: what has fallen out.'}</figcaption></figure>`;
  const places = settingOut(sheet, parts, measures);
  const factLines = facts.map(([head, value]) => linesOf(value, LONG.has(head) ? width - 18 : (width - 5) / 2 - 18));
  const rows = facts.reduce((sum, [head], i) => sum + (factLines[i] ?? 1) / (LONG.has(head) ? 1 : 2), 0);
  const factsHeight = 4.1 * (rows + 1);
  const tableHeight = printedHeight(places, width / ABREAST) / ABREAST + 6;
  const full = Math.max(width * shapeOf(sheet, parts), LOWEST);
  const picture = Math.min(Math.max(0.9 * full, LOWEST), HIGHEST);
  const wordsHeight = 8 + factsHeight + tableHeight;
  const pictures = simulated ? 2 : 1;
  return [
    block(
      markup`<h3 id="sheet-${sheet.id}">${sheet.id}</h3>
<figure class="zoom">${sheetPicture(sheet, input, measures, description)}</figure>${left ?? null}${list}${places}`,
      width,
      {
        height: wordsHeight + pictures * picture,
        max: wordsHeight + pictures * full,
        grows: true,
        fresh: simulated !== undefined,
      },
    ),
    ...handDrawings(sheet, input, width),
  ];
}

/** Drawings of what a person cuts from a sheet where a machine does the rest: they belong with it. */
function handDrawings(sheet: BookSheet, input: BookInput, width: number): Block[] {
  if (input.design.process.kind === 'hand') return [];
  const here = input.printed.filter(({ id }) => sheet.placed.some(({ part }) => part === id));
  return input.drawings.filter(({ id }) => here.some((part) => part.id === id)).flatMap((one) => onPaper(one, width));
}

/** A block for each sheet, in the order of cutting. */
export function allSheets(input: BookInput, measures: Measures, paper: Paper): Block[] {
  return (input.sheets ?? []).flatMap((sheet) => sheetBlocks(sheet, input, measures, paper));
}
