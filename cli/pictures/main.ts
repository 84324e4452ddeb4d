/** Makes the pictures of the README from the demo: `npm run pictures`. */
import { readFileSync, writeFileSync } from 'node:fs';
import { buildJob, readDesign } from '../../lib/index.js';
import { print } from '../console.js';
import { picturesOf } from './pictures.js';

/** A nest of little effort and a forecast of few rays: the test makes the same, and holds the files against it. */
const EFFORT = 0.05;
const RAYS = 16_384;

const fixtures = new URL('../../../fixtures/', import.meta.url);
const reading = readDesign(readFileSync(new URL('press-house.yaml', fixtures), 'utf8'));
if (reading.kind === 'refused') throw new Error('the demo is refused');
const { design } = reading;
const quick = { ...design, nest: { ...design.nest, effort: EFFORT } };
const { files } = await buildJob(quick, new Map(), undefined, RAYS);
for (const [name, text] of picturesOf(String(files.get('book.html')))) {
  writeFileSync(new URL(`pictures/press-house-${name}.svg`, fixtures), text);
  print(`press-house-${name}.svg, ${(text.length / 1000).toFixed(0)} kB`);
}
