import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { defaultText, explainKey, keyEntries, limitsText, referencePage, valueText } from '../../lib/design/index.js';

const entries = keyEntries();

function one(path: string) {
  const answer = explainKey(path);
  if (answer.kind !== 'found' || answer.entries[0] === undefined) throw new Error(`${path} is not explained`);
  return answer.entries[0];
}

describe('explained keys', () => {
  it('has a meaning for every key', () => {
    expect(entries.length).toBeGreaterThan(100);
    expect(entries.filter(({ about }) => about === '').map(({ path }) => path)).toEqual([]);
  });

  it('tells default, reason, choices and limits as the schema holds them', () => {
    expect(defaultText(one('dish.figure'))).toBe('panel (with `panel` every mid-line focuses at the focal length)');
    expect(valueText(one('dish.figure'))).toBe('panel or rib');
    expect(limitsText(one('dish.aperture'))).toBe('at least 50, at most 20000, usually 120 to 12000 mm');
    expect(defaultText(one('dish.aperture'))).toBe('none (required)');
    expect(defaultText(one('hub.radius'))).toContain('where the ribs clear each other');
    expect(limitsText(one('sun.slopeError'))).toBe('at least 0, at most 100 mrad');
  });

  it('finds a key however its path is written', () => {
    for (const path of ['stock[].size', 'stock[2].size', 'stock.size', 'size'])
      expect(one(path).about).toContain('Sheet size');
    expect(one('materials.birch12.thickness').path).toBe('materials.<name>.thickness');
  });

  it('finds a bare name wherever it stands, and a section with its keys', () => {
    const kerf = explainKey('kerf');
    expect(kerf.kind === 'found' && kerf.entries.map(({ path }) => path)).toEqual([
      'process.kerf',
      'machine.materials.<name>.kerf',
      'template.kerf',
    ]);
    const cleat = explainKey('cleat');
    expect(cleat.kind === 'found' && cleat.entries.length).toBeGreaterThan(8);
  });

  it('names the nearest key for a misspelt one', () => {
    expect(explainKey('dish.apperture')).toEqual({ kind: 'unknown', near: 'dish.aperture' });
    expect(explainKey('focallength')).toEqual({ kind: 'unknown', near: 'focalLength' });
    expect(explainKey('constructor').kind).toBe('unknown');
  });

  it('is what the reference page says', () => {
    const page = readFileSync(new URL('../../lib/design/design-file.md', import.meta.url), 'utf8');
    expect(page).toBe(referencePage());
    expect(entries.filter(({ path }) => !page.includes(`\`${path}\``) && !page.includes(`## ${path}`))).toEqual([]);
  });
});
