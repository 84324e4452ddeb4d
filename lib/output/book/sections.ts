/** The chapters of the book that are prose and tables. */
import { diagnosticText } from '../../diagnostic/index.js';
import { bounds } from '../../geometry/index.js';
import { cautions } from '../cautions.js';
import { layerOrder, operationKey } from '../key.js';
import { laserCautions, routerCautions } from '../gcode/cautions.js';
import type { Part } from '../../part/index.js';
import { markup, type Markup, raw } from '../markup.js';
import type { BookBurn, BookInput, BookSheet, CutPicture, ForecastRow } from './input.js';
import type { ForecastPlot } from '../plots/index.js';
import { boardJoint, cleatSide, hubFace, hubJoint, ribJoint, seam, spliceJoint } from './details.js';
import type { Measures } from './measures.js';
import { needsStrip } from './needs.js';
import { aimPicture, vesselPicture } from './section-picture.js';
import { sheetPicture, useOf } from './sheet-picture.js';
import type { Model } from '../illustrate/solids.js';
import { picture, type Standpoint } from '../illustrate/index.js';
import { sceneOf, standScene, type Stage } from './scenes/index.js';
import type { Step } from './step.js';
import { assemblySteps } from './steps.js';

export function cautionsChapter({ burn }: Pick<BookInput, 'burn'>): Markup {
  return markup`${cautions.map(({ title, sentences }) => markup`<h3>${title}</h3><p>${sentences.join(' ')}</p>`)}${burn && burnSection(burn)}`;
}

function burnSection({ plots, heads, rows, notes }: BookBurn): Markup {
  const cells = ([stand = '', ...reaches]: readonly string[]) =>
    markup`<tr><th scope="row">${stand}</th>${reaches.map((reach) => markup`<td>${reach}</td>`)}</tr>`;
  return markup`<h3>Where it burns</h3>
<div class="scroll" tabindex="0" role="region" aria-label="Table of where it burns"><table class="forecast"><caption>How far from the focus it burns, and from where on it is harmless</caption>
<thead><tr>${heads.map((head) => markup`<th scope="col">${head}</th>`)}</tr></thead><tbody>${rows.map(cells)}</tbody></table></div>
${notes.map((note) => markup`<p>${note}</p>`)}
${plots.map(({ title, svg }) => markup`<figure class="plot">${raw(svg)}<figcaption>${title}</figcaption></figure>`)}`;
}

function partRow(part: Part, input: BookInput, measures: Measures): Markup {
  const box = bounds(part.outline);
  const size = `${measures.length(box.maxX - box.minX)} x ${measures.length(box.maxY - box.minY)}`;
  const sheets = (input.sheets ?? []).filter(({ placed }) => placed.some((at) => at.part === part.id));
  const material = input.design.materials[part.material]?.description ?? part.material;
  const number = input.parts.indexOf(part) + 1;
  return markup`<tr><td class="words">${number}</td><th scope="row"><button type="button" data-light="${part.id}" aria-pressed="false">${part.name}</button></th><td data-quantity="${part.id}">${part.quantity}</td><td class="words">${material}</td><td>${measures.length(part.thickness)}</td><td>${size}</td><td class="words">${sheets.map(({ id }) => id).join(', ')}</td></tr>`;
}

/** What is cut by hand to a print at full size. */
function printsWords({ printed }: BookInput): Markup | null {
  if (printed.length === 0) return null;
  const prints = printed.map(({ name, id }) => markup`<li>${name}: <code>prints/${id}.pdf</code></li>`);
  return markup`<h3>Full-size prints</h3><p>Glue a print to the material, or prick its corners through, and cut to the middle of the line.</p><ul>${prints}</ul>`;
}

export function partsChapter(input: BookInput, measures: Measures): Markup {
  const aids = input.aids.map(
    ({ id, name, quantity, notes }) =>
      markup`<li><strong>${name}</strong>${quantity > 1 ? `, ${quantity} off` : ''} (<code>prints/${id}.pdf</code>). ${measures.words(notes.join(' '))}</li>`,
  );
  const noted = input.parts.filter((part) => part.notes.length > 0);
  return markup`<p class="controls">Press a part to light it up in the dish and on the sheets.</p>
<div class="scroll" tabindex="0" role="region" aria-label="Table of the parts"><table class="parts"><caption>Parts, with the size of the piece and the sheets they are on</caption>
<thead><tr><th scope="col" class="words">no.</th><th scope="col">part</th><th scope="col">number off</th><th scope="col" class="words">material</th><th scope="col">thickness</th><th scope="col">size</th><th scope="col" class="words">sheets</th></tr></thead>
<tbody>${input.parts.map((part) => partRow(part, input, measures))}</tbody></table></div>
${noted.length > 0 ? markup`<h3>Notes for the bench</h3><ul>${noted.map(({ name, notes }) => markup`<li><strong>${name}.</strong> ${measures.words(notes.join(' '))}</li>`)}</ul>` : null}
${printsWords(input)}${aids.length > 0 ? markup`<h3>Templates, gauges and jigs</h3><ul>${aids}</ul>` : null}`;
}

function contents(sheet: BookSheet, parts: readonly Part[]): string {
  return parts
    .map((part) => ({ part, count: sheet.placed.filter((at) => at.part === part.id).length }))
    .filter(({ count }) => count > 0)
    .map(({ part, count }) => `${count} x ${part.name}`)
    .join(', ');
}

/** How long the router is at it, and how far each tool cuts. */
function routing({ cuttingSeconds, toolWear }: CutPicture, { run }: Measures): string {
  const wear = toolWear.map(({ tool, length }) => `tool ${tool} cuts ${run(length)}`);
  return `About ${Math.ceil(cuttingSeconds / 60)} minutes without tool changes; ${wear.join(', ')}.`;
}

function sheetFigure(sheet: BookSheet, input: BookInput, measures: Measures): Markup {
  const { design, parts } = input;
  const stock = design.stock.find(({ id }) => id === sheet.stock);
  const material = stock ? (design.materials[stock.material]?.description ?? stock.material) : sheet.stock;
  const size = `${measures.length(sheet.width)} x ${measures.length(sheet.height)}`;
  const holds = contents(sheet, parts);
  const use = `${(100 * useOf(sheet, parts)).toFixed(0)} %`;
  const picture = sheetPicture(sheet, parts, design.colours, `Sheet ${sheet.id}, ${material}, ${size}, with ${holds}`);
  const rest = sheet.offcut
    ? ` Dashed: the offcut of ${measures.length(sheet.offcut.width)} x ${measures.length(sheet.offcut.height)} that is left.`
    : '';
  const time = input.laserTimes.find((one) => one.sheet === sheet.id);
  const simulated = input.cutPictures.find((cut) => cut.sheet === sheet.id);
  return markup`<div><h3 id="sheet-${sheet.id}">${sheet.id}</h3>
<figure class="zoom">${picture}<figcaption>${material}, <span data-sheet="${sheet.id}" data-dim="width" data-mm="${sheet.width.toFixed(4)}">${measures.length(sheet.width)}</span> x <span data-sheet="${sheet.id}" data-dim="height" data-mm="${sheet.height.toFixed(4)}">${measures.length(sheet.height)}</span>: ${holds}. ${use} of it becomes parts.${rest}${time ? ` ${time.text}` : ''}</figcaption></figure>
${simulated ? markup`<figure class="zoom simulated">${raw(simulated.svg)}<figcaption>The sheet as the tool paths leave it, simulated. ${routing(simulated, measures)}</figcaption></figure>` : null}</div>`;
}

/** What to heed before a router runs; nothing where none does. */
function routerWords({ cutPictures }: BookInput): Markup | null {
  if (cutPictures.length === 0) return null;
  return markup`<h3>Before the router runs</h3><ul>${routerCautions.map((caution) => markup`<li>${caution}</li>`)}</ul>`;
}

/** What to heed before a laser runs; nothing where none does. */
function laserWords({ laserTimes }: BookInput): Markup | null {
  if (laserTimes.length === 0) return null;
  return markup`<h3>Before the laser runs</h3><ul>${laserCautions.map((caution) => markup`<li>${caution}</li>`)}</ul>`;
}

/** What is to be done along the lines of each colour of the cut files. */
function fileKey({ design }: BookInput): Markup {
  const colours = layerOrder.map((name) => design.colours[name]);
  const swatch = (colour: string | undefined) =>
    colour === undefined
      ? null
      : markup`<svg class="swatch" viewBox="0 0 22 7" aria-hidden="true"><path d="M0 3.5H22" stroke="${colour}"/></svg>`;
  return markup`<h3>Key to the cut files</h3><ul>${operationKey(design.colours).map((line, i) => markup`<li>${swatch(colours[i])}${line}</li>`)}</ul>`;
}

export function sheetsChapter(input: BookInput, measures: Measures): Markup {
  const { sheets } = input;
  if (sheets === null) return markup`<p role="status">The parts are being nested; the sheets follow.</p>`;
  if (sheets.length === 0) return markup`<p>The design names no stock to nest on.</p>`;
  // whoever saws by hand reads no file of lines
  const machines = input.design.process.kind !== 'hand' || input.design.template.process !== 'hand';
  const about = machines
    ? markup`<p>Parts are shown at their finished size; the cut files in <code>sheets/</code> hold what the machine runs. The arrows at the lower left corner show zero, X and Y of the files. Grain runs from left to right; a number alone is that of the parts list. To hang at the machine: <code>sheets.pdf</code>.</p><div class="before">${fileKey(input)}${routerWords(input)}${laserWords(input)}</div>`
    : markup`<p>Parts are shown at their finished size, as they are marked out and sawn. Grain runs from left to right; a number alone is that of the parts list. To hang at the bench: <code>sheets.pdf</code>.</p>`;
  return markup`${about}<div class="sheets">${sheets.map((sheet) => sheetFigure(sheet, input, measures))}</div>`;
}

function stepPicture(step: Step, stage: Stage, measures: Measures): Markup {
  const { input } = stage;
  if (step.scene === 'vessel') return vesselPicture(input, measures, step.picture);
  if (step.scene === 'aim') return aimPicture(input, step.picture);
  if (step.scene === 'stand') {
    const look = step.look ?? (() => 'hidden' as const);
    return picture({ from: stage.from, ...standScene(stage, look), label: step.picture });
  }
  return picture(sceneOf(step.scene, stage, step.picture));
}

/** Small pictures of what the large one is too small for. */
function detailsOf({ scene }: Step, input: BookInput, measures: Measures): Markup[] {
  switch (scene) {
    case 'hub':
      return [...hubJoint(input, measures), ...hubFace(input)];
    case 'lower-disc':
      return hubFace(input);
    case 'upper-disc':
      return hubJoint(input, measures);
    case 'cleat':
      return [...ribJoint(input, measures), ...cleatSide(input)];
    case 'first-ribs':
      return boardJoint(input, measures);
    case 'join':
      return spliceJoint(input, measures);
    case 'panels':
      return seam(input, measures);
    default:
      return [];
  }
}

function stepItem(step: Step, index: number, stage: Stage, measures: Measures): Markup {
  const { input } = stage;
  const details = detailsOf(step, input, measures);
  const checks =
    step.checks.length > 0
      ? markup`<ul class="checks" aria-label="Checks">${step.checks.map((line) => markup`<li>${measures.words(line)}</li>`)}</ul>`
      : null;
  return markup`<li class="step"><h3>${index + 1}. ${step.title}</h3>${needsStrip(step, input)}<div>${step.text.map((line) => markup`<p>${measures.words(line)}</p>`)}${checks}${details.length > 0 ? markup`<div class="details">${details}</div>` : null}</div><figure>${stepPicture(step, stage, measures)}</figure></li>`;
}

export function assemblyChapter(input: BookInput, measures: Measures, model: Model, from: Standpoint): Markup {
  const stage = { input, model, from, R: input.dish.apertureRadius };
  return markup`<ol class="steps">${assemblySteps(input, measures).map((step, i) => stepItem(step, i, stage, measures))}</ol>`;
}

export function forecastChapter({ forecast }: BookInput): Markup {
  if (forecast.kind === 'none') return markup`<p>The forecast could not be made: see the problems.</p>`;
  if (forecast.kind === 'pending')
    return markup`<p role="status">The forecast is being worked out and follows with the sheets.</p>`;
  const row = ({ label, value, error, note }: ForecastRow) =>
    markup`<tr><th scope="row">${label}</th><td>${value}</td><td>${error}</td><td class="words">${note ?? ''}</td></tr>`;
  const plot = ({ title, svg }: ForecastPlot) =>
    markup`<figure class="plot">${raw(svg)}<figcaption>${title}</figcaption></figure>`;
  return markup`<p>An estimate from the shape, the sun and the stated care of the work; not a promise.</p>
<div class="plots">${forecast.plots.map(plot)}</div>
<div class="scroll" tabindex="0" role="region" aria-label="Table of the forecast"><table class="forecast"><caption>Forecast, with the standard error of what was traced</caption>
<thead><tr><th scope="col">quantity</th><th scope="col">value</th><th scope="col">error</th><th scope="col" class="words">remark</th></tr></thead><tbody>${forecast.rows.map(row)}</tbody></table></div>
<h3>By care of the work</h3>
<div class="scroll" tabindex="0" role="region" aria-label="Table of the forecast by care"><table class="forecast"><caption>The same dish with good, usual and poor care: one number promises too much</caption>
<thead><tr><th scope="col">quantity</th><th scope="col">good</th><th scope="col">usual</th><th scope="col">poor</th></tr></thead><tbody>${forecast.care.map(([label, ...values]) => markup`<tr><th scope="row">${label}</th>${values.map((value) => markup`<td>${value}</td>`)}</tr>`)}</tbody></table></div>
<h3>What it rests on</h3><ul>${forecast.assumptions.map((line) => markup`<li>${line}</li>`)}</ul>`;
}

export function problemsChapter({ problems }: BookInput): Markup {
  return markup`<ul class="problems">${problems.map((problem) => markup`<li><strong>${problem.severity}</strong>: ${diagnosticText(problem)}</li>`)}</ul>`;
}
