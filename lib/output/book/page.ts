/** The build book: one HTML file that opens from disk, asks the network for nothing, and prints. */
import { bookScript, inlinedLicences } from '#book-assets';
import { cautions } from '../cautions.js';
import { decides } from './decides.js';
import { drawingsChapter } from './drawings.js';
import { json, markup, type Markup, raw } from '../markup.js';
import type { BookInput } from './input.js';
import { type Measures, measuresIn } from './measures.js';
import { dishModel } from './model.js';
import { policyOf } from './policy.js';
import {
  assemblyChapter,
  cautionsChapter,
  forecastChapter,
  partsChapter,
  problemsChapter,
  sheetsChapter,
} from './sections.js';
import type { Standpoint } from '../illustrate/index.js';
import { shoppingList } from './shopping.js';
import type { Model } from '../illustrate/solids.js';
import { standChapter } from './stand-chapter.js';
import { all, safeElevation, still } from './still.js';
import { bookStyle } from './style.js';

interface Chapter {
  readonly id: string;
  readonly title: string;
  readonly body: Markup;
  readonly className?: string;
}

/** From ahead and to the right of rib 1, high enough to see into the dish. */
function standpoint({ dish }: BookInput): Standpoint {
  return { azimuth: -1.1, elevation: safeElevation(dish.rimSlopeAngle) };
}

function dishChapter(input: BookInput, model: Model, view: Standpoint): Markup {
  const { dish } = input;
  const words = `The dish: ${dish.layout.ribs.length} ribs on a ${input.design.board.shape} board, with panels, mirror${input.design.vessel ? ' and vessel' : ''}`;
  const drawing = still(model, { ...view, spread: 0, look: all, label: words });
  const keyValues = input.keyValues.map(
    ({ label, value, note }) =>
      markup`<tr><th scope="row">${label}</th><td>${value}</td><td class="words">${note ?? ''}</td></tr>`,
  );
  return markup`<div class="controls" role="group" aria-label="View of the dish">
<button type="button" data-turn="left">Turn left</button><button type="button" data-turn="right">Turn right</button><button type="button" data-turn="up">From above</button><button type="button" data-turn="down">From below</button><button type="button" data-turn="in">Nearer</button><button type="button" data-turn="out">Farther</button><button type="button" data-turn="home">As at first</button>
<label>Pull apart <input type="range" id="spread" min="0" max="100" value="0"></label></div>
<div id="look"><div><div id="stage" role="group" tabindex="0" aria-label="${words}, in space. Arrow keys turn it, plus and minus move it nearer and farther."></div>
<figure id="drawn">${drawing}</figure></div>
<div class="scroll" tabindex="0" role="region" aria-label="Table of the key values"><table class="key-values"><caption>Key values</caption><tbody>${keyValues}</tbody></table></div></div>`;
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

function chapters(input: BookInput, measures: Measures): Chapter[] {
  const model = dishModel(input);
  const view = standpoint(input);
  const drawings = drawingsChapter(input);
  const list: (Chapter | null)[] = [
    input.problems.length > 0
      ? { id: 'problems', title: 'Problems', body: problemsChapter(input), className: 'joined' }
      : null,
    { id: 'dish', title: 'The dish', body: dishChapter(input, model, view), className: 'joined' },
    { id: 'cautions', title: 'Cautions', body: cautionsChapter(input), className: 'cautions' },
    { id: 'parts', title: 'Parts', body: partsChapter(input, measures) },
    { id: 'sheets', title: 'Sheets', body: sheetsChapter(input, measures) },
    drawings && { id: 'drawings', title: 'Shop drawings', body: drawings },
    { id: 'assembly', title: 'Assembly', body: assemblyChapter(input, measures, model, view) },
    input.stand && { id: 'stand', title: 'Stand', body: standChapter(input.stand, measures) },
    { id: 'shopping', title: 'Shopping list', body: shoppingList(input, measures) },
    { id: 'forecast', title: 'Forecast', body: forecastChapter(input) },
    {
      id: 'licences',
      title: 'Licences',
      body: markup`<details><summary>This page holds software of others, under these terms</summary><pre>${inlinedLicences}</pre></details>`,
      className: 'joined',
    },
  ];
  return list.filter((chapter) => chapter !== null);
}

// replaced by the policy, which follows from what the page holds
const policyPlace = '{policy}';

/** The book as one HTML text. Same input, same bytes. */
export function buildBook(input: BookInput): string {
  const measures = measuresIn(input.design.units);
  const list = chapters(input, measures);
  const first = cautions[0];
  const model = json({ ...dishModel(input), view: standpoint(input) });
  const page = markup`<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policyPlace}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${input.design.name}: build book</title>
<style>${raw(bookStyle)}</style>
</head>
<body>
<a class="skip" href="#dish">To the dish</a>
<div class="wrap">
<header class="leaf"><h1>${input.design.name}: build book</h1>${titleBlock(input, measures)}${decides(input, measures)}
<p class="beware"><strong>${first?.title ?? ''}.</strong> ${first?.sentences[0] ?? ''} <a href="#cautions">Read the cautions first.</a></p></header>
<nav class="leaf" aria-label="Chapters"><ol>${list.map(({ id, title }) => markup`<li><a href="#${id}">${title}</a></li>`)}</ol></nav>
<main>${list.map(({ id, title, body, className }) => markup`<section class="leaf ${className ?? 'chapter'}" id="${id}" aria-labelledby="${id}-head"><h2 id="${id}-head">${title}</h2>${body}</section>`)}</main>
</div>
<script type="application/json" id="model">${model}</script>
<script>${raw(bookScript)}</script>
</body>
</html>
`;
  return page.text.replace(policyPlace, () => policyOf(page.text, bookScript));
}
