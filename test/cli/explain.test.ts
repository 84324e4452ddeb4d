import { afterAll, describe, expect, it } from 'vitest';
import { keyLines } from '../../cli/explain.js';
import { designJsonSchema, keyEntries, recordJsonSchema, recordPage, referencePage, wrapped } from '../../lib/index.js';
import { dishwright, inProcess, workshop } from '../helpers/command.js';

const shop = workshop();
const { folder } = shop;
afterAll(() => shop.clear());

describe('explaining a key', () => {
  it('fits the terminal, whatever its width', () => {
    for (const width of [40, 60, 100])
      for (const entry of keyEntries())
        for (const line of keyLines(entry, width))
          expect(line.length, line).toBeLessThanOrEqual(Math.max(width, entry.path.length));
  });

  it('breaks at spaces and loses nothing', () => {
    const text = 'one two three four';
    expect(wrapped(text, 9)).toEqual(['one two', 'three', 'four']);
    expect(wrapped(text, 9).join(' ')).toBe(text);
  });

  it('tells meaning, value, default with its reason, and limits', async () => {
    const { out, code } = await inProcess(folder, ['explain', 'dish.baseHeight']);
    expect(code).toBe(0);
    expect(out).toContain('Height of the vertex above the backer board.');
    expect(out).toMatch(/default +1\/25 of the aperture, from 40 to 100 mm/);
    expect(out).toMatch(/limits +above 0, at most 2000 mm/);
    expect(out).not.toContain('\u001b');
  });

  it('names the nearest key for one that is not there, and ends with code 2', async () => {
    const { code, out, err } = await inProcess(folder, ['explain', 'dish.apperture']);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toContain('did you mean dish.aperture?');
  });

  it('prints the list, the page and the schema that everything else is made from', async () => {
    expect((await inProcess(folder, ['explain'])).out).toContain('dish.focalLength');
    expect((await inProcess(folder, ['explain', '--page'])).out).toBe(referencePage());
    expect(JSON.parse((await inProcess(folder, ['explain', '--schema'])).out)).toEqual(designJsonSchema());
    expect((await inProcess(folder, ['explain', '--record'])).out).toBe(recordPage());
    const record = (await inProcess(folder, ['explain', '--record', '--schema'])).out;
    expect(JSON.parse(record)).toEqual(recordJsonSchema());
    const found = JSON.parse((await inProcess(folder, ['explain', 'kerf', '--json'])).out) as { path: string }[];
    expect(found.map(({ path }) => path)).toEqual(['process.kerf', 'machine.materials.<name>.kerf', 'template.kerf']);
  });
});

describe('a new design in a pipe', () => {
  it('is printed ready to be checked', async () => {
    const { code, out } = dishwright(folder, ['new']);
    expect(code).toBe(0);
    const other = workshop({ 'mine.yaml': out });
    const checked = await inProcess(other.folder, ['check', 'mine.yaml']);
    expect(checked.err).not.toContain('error');
    expect(checked.code).toBe(0);
    other.clear();
  });

  it('is written when a name is given, and never over a file that is there', async () => {
    expect((await inProcess(folder, ['new', 'fresh.yaml'])).code).toBe(0);
    const again = await inProcess(folder, ['new', 'fresh.yaml']);
    expect(again.code).toBe(3);
    expect(again.err).toContain('already exists');
    expect((await inProcess(folder, ['new', 'fresh.yaml', '--force'])).code).toBe(0);
    expect((await inProcess(folder, ['check', 'fresh.yaml'])).code).toBe(0);
  });
});
