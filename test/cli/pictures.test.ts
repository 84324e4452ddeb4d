/** The README's pictures are those that the demo gives today. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { picturesOf } from '../../cli/pictures/pictures.js';
import { jobOf } from '../helpers/fixtures.js';
import { byDay } from '../helpers/seeds.js';

// by night the demo is nested with all its effort and looks otherwise
it.runIf(byDay(true, false))('the pictures of the README are up to date (npm run pictures)', async () => {
  const pictures = picturesOf(String((await jobOf('press-house')).files.get('book.html')));
  const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');
  expect(pictures.size).toBe(4);
  for (const [name, text] of pictures) {
    const file = `fixtures/pictures/press-house-${name}.svg`;
    expect(readFileSync(new URL(`../../${file}`, import.meta.url), 'utf8'), file).toBe(text);
    expect(readme).toContain(`](${file})`);
    // a reader of the README waits for them
    expect(text.length).toBeLessThan(60_000);
  }
});
