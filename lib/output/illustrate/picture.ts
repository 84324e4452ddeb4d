/** A scene as a picture: regions of wood and metal, lines that are seen, then what is written. */
import { markup, type Markup } from '../markup.js';
import { camera, canvasFor } from './camera.js';
import { notesOf } from './notes.js';
import type { Scene } from './scene.js';
import { cornersOf, type SeenGroup, seenOf } from './seen.js';

/** Of every picture, in its own units; letters are sized to it. */
const pictureWidth = 1000;
const MAX_HEIGHT = 800;

const groupClass = ({ role, look }: SeenGroup): string => `k-${role}${look === 'new' ? ' new' : ''}`;

/** The picture. Colours come from the page's style: a class for the role, a class for the tone. */
export function picture({ pieces, notes, from, label, fit }: Scene): Markup {
  const eye = camera(from);
  const written = notes.some(({ kind }) => kind === 'balloon' || kind === 'label');
  const margins = written ? { side: 96, top: 84, bottom: 84 } : { side: 12, top: 12, bottom: 12 };
  const canvas = canvasFor(eye, fit ?? pieces.flatMap(cornersOf), pictureWidth, MAX_HEIGHT, margins);
  const seen = seenOf(pieces, eye, canvas);
  const { groups } = seen;
  const fills = groups.map(
    (group) =>
      markup`<g class="${groupClass(group)}" data-part="${group.parts}">${group.regions.map(([tone, data]) => markup`<path class="s${tone}" d="${data}"/>`)}</g>`,
  );
  const lines = groups.map(
    (group) =>
      markup`<g class="${groupClass(group)}" data-part="${group.parts}">${group.lines === '' ? null : markup`<path class="e" d="${group.lines}"/>`}${group.surface.map(([kind, data]) => markup`<path class="on-${kind}" d="${data}"/>`)}</g>`,
  );
  // where nothing is new, nothing steps back
  const style = groups.some(({ look }) => look === 'new') ? 'dish stepped' : 'dish';
  return markup`<svg class="${style}" viewBox="0 0 ${pictureWidth} ${canvas.height}" role="img" aria-label="${label}">${fills}${lines}${notesOf(notes, canvas, seen)}</svg>`;
}
