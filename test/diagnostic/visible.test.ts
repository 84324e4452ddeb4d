import { describe, expect, it } from 'vitest';
import { readDesign } from '../../lib/design/index.js';
import { diagnosticText, hasHidden, visible } from '../../lib/diagnostic/index.js';
import { changed } from '../helpers/changed.js';

// The marks are those with the property Bidi_Control in the Unicode Character Database (PropList.txt)
const bidi = [
  '\u061c',
  '\u200e',
  '\u200f',
  '\u202a',
  '\u202b',
  '\u202c',
  '\u202d',
  '\u202e',
  '\u2066',
  '\u2067',
  '\u2068',
  '\u2069',
];

describe('characters that are not seen as written', () => {
  it.each([...bidi, '\u001b', '\u0007', '\u0085', '\u2028', '\ufeff'])('%j is shown by its number', (character) => {
    const text = `a${character}b`;
    expect(hasHidden(text)).toBe(true);
    expect(visible(text)).toMatch(/^a\\u[0-9a-f]{4}b$/);
  });

  it('are none of these: letters of any script, dashes, signs', () => {
    const text = 'Käse – שלום العربية 皿 ½″ 👍';
    expect(hasHidden(text)).toBe(false);
    expect(visible(text)).toBe(text);
  });
});

describe('a design file with such characters', () => {
  it.each([
    ['in the name', 'name: Press house kettle dish', 'name: "Press \u202e house"'],
    ['in a description', 'description: Birch plywood 12 mm', 'description: "Birch\u2066 ply"'],
    ['in a material', 'rib: { material: birch12 }', 'rib: { material: "birch\u200f12" }'],
    ['in a key', 'ribs: 24', '"ri\u202ebs": 24'],
    ['as an escape', 'name: Press house kettle dish', 'name: "Press \\e[31m house"'],
  ])('is refused, and the message shows them: %s', (_, from, to) => {
    const reading = readDesign(changed('press-house', from, to));
    expect(reading.kind).toBe('refused');
    for (const problem of reading.problems) expect(hasHidden(diagnosticText(problem))).toBe(false);
  });

  it('names both materials that differ by case only, each on its line', () => {
    const text = changed('press-house', 'birch18: {', 'Birch12: {')
      .replace('board: { material: birch18', 'board: { material: Birch12')
      .replace('material: birch18, size', 'material: Birch12, size');
    const found = readDesign(text).problems.filter(({ code }) => code === 'names-collide');
    expect(found.map(({ place }) => place?.line)).toEqual([12, 13]);
    expect(found[0]?.message).toContain('"birch12" and "Birch12"');
  });
});
