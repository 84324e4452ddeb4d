/** The steps of the assembly, each with what it needs, its words and its pictures. */
import { markup, type Markup } from '../markup.js';
import { picture, type Standpoint } from '../illustrate/index.js';
import type { Model } from '../illustrate/solids.js';
import { battenDetail } from './batten-detail.js';
import { hasBattens } from './batten-steps.js';
import { boardJoint, cleatSide, hubFace, hubJoint, ribJoint, seam, spliceJoint } from './details.js';
import { housingJoint } from './housing-detail.js';
import type { BookInput } from './input.js';
import { type Block, block } from './leaves.js';
import type { Measures } from './measures.js';
import { needsStrip } from './needs.js';
import type { Paper } from './paper.js';
import { linesOf } from './printed-height.js';
import { sceneOf, standScene, type Stage } from './scenes/index.js';
import { aimPicture, vesselPicture } from './section-picture.js';
import type { Step } from './step.js';
import { assemblySteps } from './steps.js';

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
      return [...boardJoint(input, measures), ...housingJoint(input, measures)];
    case 'join':
      return spliceJoint(input, measures);
    case 'panels':
      return hasBattens(input) ? [] : seam(input, measures);
    case 'battens':
      return battenDetail(input, measures);
    default:
      return [];
  }
}

/** Of the page's width, what a step's words take beside its picture on paper. */
const WORDS = 0.58;
/** Smallest height of a step's picture, and of small ones below its words, on paper, mm. */
const PICTURE = 38;
const DETAIL = 34;

/** What a balloon and the room beside it take of a line of the strip, mm. */
const BALLOON = 9;

/** Height of the strip of needs on paper, with the fasteners drawn in it true to size, mm. */
function stripHeight(strip: Markup, width: number): number {
  const drawn = [...strip.text.matchAll(/width="([\d.]+)mm" height="([\d.]+)mm"/g)];
  const wide = drawn.reduce((sum, [, across]) => sum + Number(across) + 3, 0);
  const high = drawn.reduce((sum, [, , up]) => sum + Math.max(0, Number(up) - 4), 0);
  const items = strip.text.split('<li>').length - 1;
  return 4.7 * linesOf(strip, width - 8, 0.93, wide + BALLOON * items) + high + 1.5;
}

/** Height of a step's words on paper, with small pictures below them, mm. */
function wordsHeight(step: Step, measures: Measures, width: number, details: number): number {
  const lines = [...step.text, ...step.checks].map((line) =>
    linesOf(markup`${measures.words(line)}`, WORDS * width, 0.97),
  );
  return 3.8 * lines.reduce((sum, each) => sum + each, 0) + 0.8 * lines.length + (details > 0 ? DETAIL : 0);
}

function stepBlock(step: Step, index: number, stage: Stage, measures: Measures, { width }: Paper): Block {
  const { input } = stage;
  const details = detailsOf(step, input, measures);
  const checks =
    step.checks.length > 0
      ? markup`<ul class="checks" aria-label="Checks">${step.checks.map((line) => markup`<li>${measures.words(line)}</li>`)}</ul>`
      : null;
  const needs = needsStrip(step, input);
  const words = markup`${step.text.map((line) => markup`<p>${measures.words(line)}</p>`)}${checks}`;
  const body = markup`<ol class="steps"><li class="step"><h3>${index + 1}. ${step.title}</h3>${needs}<div>${words}${details.length > 0 ? markup`<div class="details">${details}</div>` : null}</div><figure>${stepPicture(step, stage, measures)}</figure></li></ol>`;
  const height =
    7 +
    (needs === null ? 0 : stripHeight(needs, width)) +
    Math.max(wordsHeight(step, measures, width, details.length), PICTURE);
  return block(body, width, { height, max: Math.max(height, (1 - WORDS) * width + 12), grows: true });
}

export function assemblyBlocks(
  input: BookInput,
  measures: Measures,
  { model, from, paper }: { readonly model: Model; readonly from: Standpoint; readonly paper: Paper },
): Block[] {
  const stage = { input, model, from, R: input.dish.apertureRadius };
  return assemblySteps(input, measures).map((step, i) => stepBlock(step, i, stage, measures, paper));
}
