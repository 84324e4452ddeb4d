/** The chapter of the stand: the machine at its tilts, its values, its settings and cautions. */
import { standCautions } from '../cautions.js';
import { markup, type Markup } from '../markup.js';
import type { BookStand } from './input.js';
import type { Measures } from './measures.js';
import { type Block, block } from './leaves.js';
import type { Paper } from './paper.js';
import { standPicture } from './stand-picture.js';

/** Settings by the ten, so that the table stays short enough to be pinned up. */
function settingRows({ settings }: BookStand): Markup[] {
  const rows = new Map<number, BookStand['settings'][number][]>();
  for (const setting of settings) {
    const tens = 10 * Math.floor(setting.sunDeg / 10 + 1e-9);
    rows.set(tens, [...(rows.get(tens) ?? []), setting]);
  }
  return [...rows].map(
    ([tens, list]) =>
      markup`<tr><th scope="row">${tens}°</th><td class="words">${list.map(({ sunDeg, hole, letter }) => `${Number(sunDeg.toFixed(2))}° ${hole}${letter}`).join(', ')}</td></tr>`,
  );
}

const axisWords = {
  focus:
    'This stand tilts about the focus: the vessel stays where it is. Through the centre of gravity the dish would be balanced and the vessel would travel (stand.axis: balance).',
  balance:
    'This stand tilts about the centre of gravity of dish and full vessel: it is balanced, and with less in the vessel it turns its mirror up by itself. The vessel travels with the focus and is kept level by levers and links. About the focus it would stay where it is (stand.axis: focus).',
};

/** Cautions and pictures, values, then the axis and the lock. */
export function standBlocks(stand: BookStand, measures: Measures, { width }: Paper): Block[] {
  const { rows, axes } = stand;
  const values = markup`<div class="scroll" tabindex="0" role="region" aria-label="Table of the stand"><table class="forecast"><caption>The stand</caption>
<thead><tr><th scope="col">quantity</th><th scope="col">value</th><th scope="col" class="words">remark</th></tr></thead><tbody>${rows.map(({ label, value, note }) => markup`<tr><th scope="row">${label}</th><td>${value}</td><td class="words">${note ?? ''}</td></tr>`)}</tbody></table></div>`;
  const places = markup`<h3>Where the tilt axis lies</h3><p>${axisWords[stand.balanced ? 'balance' : 'focus']}</p>
<div class="scroll" tabindex="0" role="region" aria-label="Table of the tilt axis"><table class="forecast"><caption>Both places of the tilt axis</caption>
<thead><tr>${axes.heads.map((head) => markup`<th scope="col">${head}</th>`)}</tr></thead><tbody>${axes.rows.map(([head = '', ...cells]) => markup`<tr><th scope="row">${head}</th>${cells.map((cell) => markup`<td>${cell}</td>`)}</tr>`)}</tbody></table></div>`;
  const lock = markup`<h3>Settings of the lock</h3><p>A pin goes through a numbered hole of each side frame and a lettered hole of the arm behind it; one pair of holes meets at each setting. Holes count from the one furthest towards the sun, which bears 0; every second bears its number.</p>
<div class="scroll" tabindex="0" role="region" aria-label="Table of the settings"><table class="forecast"><caption>Height of the sun, hole of the frame and letter of the arm</caption><tbody>${settingRows(stand)}</tbody></table></div>`;
  const words = markup`<p>An estimate from published coefficients and stated working values: local codes and licensed practice come first.</p>
<h3>Cautions</h3><ul>${standCautions.map((line) => markup`<li>${line}</li>`)}</ul>`;
  const pictures = markup`<div class="plots">${stand.pictures.map((at) => markup`<figure>${standPicture(stand, at, measures)}<figcaption>Aimed at a sun ${at.sunDeg.toFixed(0)}° high.</figcaption></figure>`)}</div>`;
  return [
    block(words, width),
    block(pictures, width, { height: 62, max: 110, grows: true }),
    block(values, width),
    block(places, width),
    block(lock, width),
  ];
}
