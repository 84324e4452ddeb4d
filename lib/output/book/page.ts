/** The build book: one HTML file that opens from disk, asks the network for nothing, and prints. */
import { bookScript, inlinedLicences } from '#book-assets';
import { cautions } from '../cautions.js';
import type { Standpoint } from '../illustrate/index.js';
import type { Model } from '../illustrate/solids.js';
import { json, markup, type Markup, raw } from '../markup.js';
import { assemblyBlocks } from './assembly-chapter.js';
import { cuttingBlocks, cuttingTitle } from './cutting.js';
import { decides } from './decides.js';
import { drawingsBlocks } from './drawings.js';
import { forecastBlocks } from './forecast-chapter.js';
import type { BookInput } from './input.js';
import { type Block, block, type Chapter, leafMarkup, leavesOf, pageNumbers, piecesMarkup } from './leaves.js';
import { type Measures, measuresIn } from './measures.js';
import { dishModel } from './model.js';
import { type Paper, paperFor } from './paper.js';
import { policyOf } from './policy.js';
import { printStyle } from './print-style.js';
import { cautionsBlocks, partsBlocks, problemsMarkup } from './sections.js';
import { shoppingBlocks } from './shopping.js';
import { standBlocks } from './stand-chapter.js';
import { all, safeElevation, still } from './still.js';
import { bookStyle } from './style.js';

/** From ahead and to the right of rib 1, high enough to see into the dish. */
function standpoint({ dish }: BookInput): Standpoint {
  return { azimuth: -1.1, elevation: safeElevation(dish.rimSlopeAngle) };
}

function dishBlocks(input: BookInput, model: Model, view: Standpoint, width: number): Block[] {
  const { dish } = input;
  const words = `The dish: ${dish.layout.ribs.length} ribs on a ${input.design.board.shape} board, with panels, mirror${input.design.vessel ? ' and vessel' : ''}`;
  const drawing = still(model, { ...view, spread: 0, look: all, label: words });
  const keyValues = input.keyValues.map(
    ({ label, value, note }) =>
      markup`<tr><th scope="row">${label}</th><td>${value}</td><td class="words">${note ?? ''}</td></tr>`,
  );
  const controls = markup`<div class="controls" role="group" aria-label="View of the dish">
<button type="button" data-turn="left">Turn left</button><button type="button" data-turn="right">Turn right</button><button type="button" data-turn="up">From above</button><button type="button" data-turn="down">From below</button><button type="button" data-turn="in">Nearer</button><button type="button" data-turn="out">Farther</button><button type="button" data-turn="home">As at first</button>
<label>Pull apart <input type="range" id="spread" min="0" max="100" value="0"></label></div>`;
  const look = markup`<div id="stage" role="group" tabindex="0" aria-label="${words}, in space. Arrow keys turn it, plus and minus move it nearer and farther."></div>
<figure id="drawn">${drawing}</figure>`;
  const table = markup`<div class="scroll" tabindex="0" role="region" aria-label="Table of the key values"><table class="key-values"><caption>Key values</caption><tbody>${keyValues}</tbody></table></div>`;
  return [block(markup`${controls}${look}`, width, { height: 66, max: 150, grows: true }), block(table, width)];
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

function titleBlock(input: BookInput, measures: Measures): Markup {
  const { design, dish } = input;
  const cells: readonly (readonly [string, string | Markup])[] = [
    ['Aperture', measures.dim('aperture', 2 * dish.apertureRadius)],
    [capital(dish.profile.focusTerm), measures.dim('focalLength', dish.profile.focusHeight)],
    ['Depth', measures.dim('depth', dish.depth)],
    ['Ribs', String(dish.layout.ribs.length)],
    ['Cut by', design.process.kind],
    ['Lengths in', measures.unit],
  ];
  return markup`<dl class="block">${cells.map(([head, value]) => markup`<div><dt>${head}</dt><dd>${value}</dd></div>`)}</dl>`;
}

function chapters(input: BookInput, measures: Measures, paper: Paper): Chapter[] {
  const model = dishModel(input);
  const view = standpoint(input);
  const drawings = drawingsBlocks(input, paper);
  const { width } = paper;
  const list: (Chapter | null)[] = [
    { id: 'dish', title: 'The dish', blocks: dishBlocks(input, model, view, width) },
    input.problems.length > 0
      ? { id: 'problems', title: 'Problems', blocks: [block(problemsMarkup(input), width)] }
      : null,
    { id: 'cautions', title: 'Cautions', blocks: cautionsBlocks(input, paper) },
    { id: 'parts', title: 'Parts', blocks: partsBlocks(input, measures, paper) },
    { id: 'shopping', title: 'Shopping list', blocks: shoppingBlocks(input, measures, paper) },
    drawings.length > 0 ? { id: 'drawings', title: 'Shop drawings', blocks: drawings } : null,
    { id: 'sheets', title: cuttingTitle(input), blocks: cuttingBlocks(input, measures, paper) },
    { id: 'assembly', title: 'Assembly', blocks: assemblyBlocks(input, measures, { model, from: view, paper }) },
    input.stand && { id: 'stand', title: 'Stand', blocks: standBlocks(input.stand, measures, paper) },
    { id: 'forecast', title: 'Forecast', blocks: forecastBlocks(input, paper) },
    {
      id: 'licences',
      title: 'Licences',
      blocks: [
        block(
          markup`<details><summary>This page holds software of others, under these terms</summary><pre>${inlinedLicences}</pre></details>`,
          width,
          { height: 0, screen: true },
        ),
      ],
    },
  ];
  return list.filter((chapter) => chapter !== null);
}

/** The contents with the number of the page on which each chapter begins. */
function contentsList(list: readonly Chapter[], numbers: ReadonlyMap<string, number>): Markup {
  return markup`<nav aria-label="Contents"><ol>${list.map(({ id, title, blocks }) => markup`<li${raw(blocks.every(({ screen }) => screen) ? ' class="screen"' : '')}><a href="#${id}">${title}</a><span class="at">${numbers.get(id) ?? ''}</span></li>`)}</ol></nav>`;
}

/** Of the first page, what stands over the dish, mm: the title, both rows of the title block, the caution, the contents. */
const HEAD = 52;
const CONTENTS_ROW = 4.2;

// replaced by the policy, which follows from what the page holds
const policyPlace = '{policy}';

/** The book as one HTML text. Same input, same bytes. */
export function buildBook(input: BookInput): string {
  const measures = measuresIn(input.design.units);
  const paper = paperFor(input.design.units);
  const list = chapters(input, measures, paper);
  const printed = list.filter(({ blocks }) => blocks.some(({ screen }) => !screen));
  const leaves = leavesOf(list, paper.height, HEAD + CONTENTS_ROW * Math.ceil(printed.length / 2));
  const [title, ...rest] = leaves;
  const first = cautions[0];
  const model = json({ ...dishModel(input), view: standpoint(input) });
  const page = markup`<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policyPlace}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${input.design.name}: build book</title>
<style>${raw(bookStyle)}${raw(printStyle(paper, input.design.name))}</style>
</head>
<body>
<a class="skip" href="#dish">To the dish</a>
<main class="wrap"><div class="leaf" data-page="1">
<header><h1>${input.design.name}: build book</h1>${decides(input, measures)}${titleBlock(input, measures)}
<p class="beware"><strong>${first?.title ?? ''}.</strong> ${first?.sentences[0] ?? ''} <a href="#cautions">Read the cautions first.</a></p></header>
${contentsList(list, pageNumbers(leaves))}${title ? piecesMarkup(title) : null}</div>
${rest.map(leafMarkup)}</main>
<script type="application/json" id="model">${model}</script>
<script>${raw(bookScript)}</script>
</body>
</html>
`;
  return page.text.replace(policyPlace, () => policyOf(page.text, bookScript));
}
