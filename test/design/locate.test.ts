import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { keyEntries, readDesign } from '../../lib/design/index.js';
import { diagnostic, diagnosticCodes, type KeyPath } from '../../lib/diagnostic/index.js';
import { changed } from '../helpers/changed.js';

/** A design that states what it must and no more; `name` is on line 1. */
const minimal = `name: Minimal
dish: { aperture: 1200, focalLength: 450, ribs: 16 }
materials:
  ply: { kind: plywood, thickness: 12 }
  board: { kind: hardboard, thickness: 3 }
rib: { material: ply }
panel: { material: board }
`;

function placesIn(text: string) {
  const reading = readDesign(text, 'own.yaml');
  if (reading.kind === 'refused') throw new Error('the design was refused');
  return (path: KeyPath) => reading.locate(diagnostic('usage', path, 'wrong', 'right'));
}

const placeIn = (text: string, path: KeyPath) => placesIn(text)(path);

describe('the place of a diagnostic', () => {
  it('is the line and column of its key, with what the file states there', () => {
    expect(placeIn(minimal, ['dish', 'focalLength'])).toMatchObject({
      place: { file: 'own.yaml', line: 2, column: 25 },
      value: 450,
    });
    expect(placeIn(minimal, ['materials', 'board', 'thickness'])).toMatchObject({ place: { line: 5 }, value: 3 });
  });

  it('is its section where the key itself is left out, and has no value then', () => {
    const found = placeIn(minimal, ['dish', 'baseHeight']);
    expect(found.place).toMatchObject({ line: 2, column: 1 });
    expect(found).not.toHaveProperty('value');
  });

  it('is an item of a list', () => {
    const text = `${minimal}stock:\n  - { material: ply, size: 2440 x 1220 }\n  - { material: board, size: 900 x 600 }\n`;
    expect(placeIn(text, ['stock', 1, 'size'])).toMatchObject({ place: { line: 10 }, value: '900 x 600' });
    expect(placeIn(text, ['stock', 1, 'margin']).place?.line).toBe(10);
  });

  it('is what the default follows from where the section is left out too', () => {
    expect(placeIn(minimal, ['cleat', 'material']).place?.line).toBe(6);
    expect(placeIn(minimal, ['router', 'tabs', 'width']).place?.line).toBe(3);
    expect(placeIn(minimal, ['board', 'size']).place?.line).toBe(2);
  });

  it('is never the name of the job, whichever key it is about', () => {
    const placeOf = placesIn(minimal);
    const astray = keyEntries()
      .map(({ path }) => path.replace(/\[\]/g, '').replace('<name>', 'ply').split('.'))
      .filter(([section]) => section !== 'name' && section !== 'units')
      .filter((path) => (placeOf(path).place?.line ?? 1) === 1);
    expect(astray).toEqual([]);
  });

  it('is the line of a fault in the text itself', () => {
    const reading = readDesign(changed('press-house', 'ribs: 24', 'ribs: [24'), 'own.yaml');
    const [fault] = reading.problems;
    expect(fault).toMatchObject({ code: 'unreadable', place: { file: 'own.yaml' } });
    // where the bracket opens, not where the parser gives up
    expect(fault?.place?.line).toBe(9);
  });
});

describe('the codes', () => {
  it('are all in use', () => {
    const root = fileURLToPath(new URL('../..', import.meta.url));
    const texts = ['lib', 'cli'].flatMap((folder) =>
      readdirSync(`${root}/${folder}`, { recursive: true, encoding: 'utf8' })
        .filter((name) => name.endsWith('.ts') && name !== 'diagnostic/codes.ts')
        .map((name) => readFileSync(`${root}/${folder}/${name}`, 'utf8')),
    );
    const unused = Object.keys(diagnosticCodes).filter((code) => !texts.some((text) => text.includes(`'${code}'`)));
    expect(unused).toEqual([]);
  });
});
