/** The chapters that stand before the work: cautions, problems, parts. */
import { diagnosticText } from '../../diagnostic/index.js';
import { bounds } from '../../geometry/index.js';
import type { Part } from '../../part/index.js';
import { cautions } from '../cautions.js';
import { markup, type Markup, raw } from '../markup.js';
import type { BookBurn, BookInput } from './input.js';
import { type Block, block } from './leaves.js';
import type { Measures } from './measures.js';
import type { Paper } from './paper.js';
import { printedHeight } from './printed-height.js';

export function cautionsBlocks({ burn }: Pick<BookInput, 'burn'>, { width }: Paper): Block[] {
  const words = markup`${cautions.map(({ title, sentences }) => markup`<h3>${title}</h3><p>${sentences.join(' ')}</p>`)}`;
  // on paper each title runs on into its sentences
  const run = markup`${cautions.map(({ title, sentences }) => markup`<p>${title}. ${sentences.join(' ')}</p>`)}`;
  return [
    block(words, width, { fresh: true, height: printedHeight(run, width) + 2 }),
    ...(burn ? burnBlocks(burn, width) : []),
  ];
}

function burnBlocks({ plots, heads, rows, notes }: BookBurn, width: number): Block[] {
  const cells = ([stand = '', ...reaches]: readonly string[]) =>
    markup`<tr><th scope="row">${stand}</th>${reaches.map((reach) => markup`<td>${reach}</td>`)}</tr>`;
  const table = markup`<div class="scroll" tabindex="0" role="region" aria-label="Table of where it burns"><table class="forecast"><caption>How far from the focus it burns, and from where on it is harmless</caption>
<thead><tr>${heads.map((head) => markup`<th scope="col">${head}</th>`)}</tr></thead><tbody>${rows.map(cells)}</tbody></table></div>`;
  const remarks = markup`${notes.map((note) => markup`<p>${note}</p>`)}`;
  const height = 6 + printedHeight(table, width, 0.93) + printedHeight(remarks, width / 2 - 3, 0.91) / 2;
  const drawn = plots.map(
    ({ title, svg }) => markup`<figure class="plot">${raw(svg)}<figcaption>${title}</figcaption></figure>`,
  );
  return [
    block(markup`<h3>Where it burns</h3><div class="reaches">${table}<div class="two">${remarks}</div></div>`, width, {
      height,
    }),
    block(markup`${drawn}`, width, { height: 92, max: 190, grows: true, alone: true }),
  ];
}

function partRow(part: Part, input: BookInput, measures: Measures): Markup {
  const box = bounds(part.outline);
  const size = `${measures.length(box.maxX - box.minX)} x ${measures.length(box.maxY - box.minY)}`;
  const sheets = (input.sheets ?? []).filter(({ placed }) => placed.some((at) => at.part === part.id));
  const material = input.design.materials[part.material]?.description ?? part.material;
  const number = input.parts.indexOf(part) + 1;
  return markup`<tr><td class="words">${number}</td><th scope="row"><button type="button" data-light="${part.id}" aria-pressed="false">${part.name}</button></th><td data-quantity="${part.id}">${part.quantity}</td><td class="words">${material}</td><td>${measures.length(part.thickness)}</td><td>${size}</td><td class="words">${sheets.map(({ id }) => id).join(', ')}</td></tr>`;
}

/** A list in two columns on paper. */
function twoColumns(title: string, items: readonly Markup[], width: number): Block {
  const body = markup`<h3>${title}</h3><ul class="two">${items}</ul>`;
  return block(body, width, { height: 8 + printedHeight(markup`${items}`, width / 2 - 3, 0.91) / 2 + 4 });
}

/** What is cut by hand to a print at full size. */
function printsBlock({ printed }: BookInput, width: number): Block[] {
  if (printed.length === 0) return [];
  const prints = printed.map(({ name, id }) => markup`${name}: <code>prints/${id}.pdf</code>. `);
  return [
    block(
      markup`<h3>Full-size prints</h3><p>Glue a print to the material, or prick its corners through, and cut to the middle of the line. ${prints}</p>`,
      width,
    ),
  ];
}

export function partsBlocks(input: BookInput, measures: Measures, { width }: Paper): Block[] {
  const aids = input.aids.map(
    ({ id, name, quantity, notes }) =>
      markup`<li><strong>${name}</strong>${quantity > 1 ? `, ${quantity} off` : ''} (<code>prints/${id}.pdf</code>). ${measures.words(notes.join(' '))}</li>`,
  );
  const noted = input.parts
    .filter((part) => part.notes.length > 0)
    .map(({ name, notes }) => markup`<li><strong>${name}.</strong> ${measures.words(notes.join(' '))}</li>`);
  const table = markup`<p class="controls">Press a part to light it up in the dish and on the sheets.</p>
<div class="scroll" tabindex="0" role="region" aria-label="Table of the parts"><table class="parts"><caption>Parts, with the size of the piece and the sheets they are on</caption>
<thead><tr><th scope="col" class="words">no.</th><th scope="col">part</th><th scope="col">number off</th><th scope="col" class="words">material</th><th scope="col">thick<wbr>ness</th><th scope="col">size</th><th scope="col" class="words">sheets</th></tr></thead>
<tbody>${input.parts.map((part) => partRow(part, input, measures))}</tbody></table></div>`;
  return [
    block(table, width),
    ...(noted.length > 0 ? [twoColumns('Notes for the bench', noted, width)] : []),
    ...printsBlock(input, width),
    ...(aids.length > 0 ? [twoColumns('Templates, gauges and jigs', aids, width)] : []),
  ];
}

export function problemsMarkup({ problems }: BookInput): Markup {
  return markup`<ul class="problems">${problems.map((problem) => markup`<li><strong>${problem.severity}</strong>: ${diagnosticText(problem)}</li>`)}</ul>`;
}
