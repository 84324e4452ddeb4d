/** Each mistake of a newcomer has a message that names its place, cause and mend, in the words of the trade. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { inProcess, workshop } from '../helpers/command.js';
import { commandMistakes } from './mistakes-command.js';
import { valueMistakes } from './mistakes-values.js';
import { garden, gardenInch, writingMistakes } from './mistakes.js';

const place = workshop({
  'garden.yaml': garden,
  'inch.yaml': gardenInch,
  'letter.txt': 'Dear Ann,\nthe dish is done.\n',
});
mkdirSync(join(place.folder, 'made'));
writeFileSync(join(place.folder, 'photo.jpg'), Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0, 16, 0x4a, 0x46]));
writeFileSync(
  join(place.folder, 'wide.yaml'),
  Buffer.concat([Buffer.from([0xff, 0xfe]), Buffer.from(garden, 'utf16le')]),
);
writeFileSync(join(place.folder, 'latin.yaml'), Buffer.from(garden.replace('Garden', 'Küche'), 'latin1'));
afterAll(() => place.clear());

/** Words of parsers and programs, which mean nothing at a bench. */
const foreign =
  /implicit|mapping|scalar|collection|token|flow|undefined|null\b|NaN|\benum\b|regex|\[object|YError|argument|   at /i;

/** What was printed, and the message that begins it: its first line, and what would do below. */
async function said(args: readonly string[]) {
  const { code, err } = await inProcess(place.folder, args);
  const [first = '', second = ''] = err.split('\n');
  return { code, err, first, mend: second };
}

it('the designs without a mistake are taken', async () => {
  for (const file of ['garden.yaml', 'inch.yaml']) {
    const { code, err } = await said(['check', file]);
    expect(code, err).toBe(0);
  }
});

describe('a mistake in the design file', () => {
  it.each([...writingMistakes, ...valueMistakes])('%s', async (_, from, to, where, cause, mend) => {
    const text = garden.replace(from, () => to);
    expect(text).not.toBe(garden);
    writeFileSync(join(place.folder, 'garden.yaml'), text);
    const found = await said(['check', 'garden.yaml']);
    writeFileSync(join(place.folder, 'garden.yaml'), garden);
    expect(found.code, found.err).not.toBe(0);
    expect(found.first).toMatch(where);
    expect(found.first).toMatch(cause);
    expect(found.mend).toMatch(mend);
    expect(found.first + found.mend).not.toMatch(foreign);
  });
});

describe('a mistake on the command line', () => {
  it.each(commandMistakes)('%s', async (_, args, where, cause, mend) => {
    const found = await said(args);
    expect(found.code, found.err).not.toBe(0);
    expect(found.first).toMatch(where);
    expect(found.first).toMatch(cause);
    expect(found.mend).toMatch(mend);
    expect(found.first + found.mend).not.toMatch(foreign);
  });
});
