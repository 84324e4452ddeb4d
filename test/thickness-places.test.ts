import { describe, expect, it } from 'vitest';
import { checkRecord } from '../lib/check/record.js';
import { proveSomeSheets } from '../lib/check/index.js';
import { readDesign } from '../lib/design/index.js';
import { diagnosticText } from '../lib/diagnostic/index.js';
import { keyValues } from '../lib/key-values.js';
import { buildCutFiles, prepare } from '../lib/pipeline.js';
import { designOf, fixtureText } from './helpers/fixtures.js';
import { randomNester } from './helpers/random-nester.js';

const text = fixtureText('press-house');
const measured = (places: string): string =>
  text.replace('kind: plywood, thickness: 12,', `kind: plywood, thickness: ${places},`);
const problemsOf = (places: string): string[] => {
  const reading = readDesign(measured(places));
  return reading.problems.map((one) => `${one.place?.line} ${diagnosticText(one)}`);
};

describe('a sheet measured at several places', () => {
  const design = designOf(measured('[11.9, 12.1, 12 mm]'));

  it('is made to fit by the thinnest, and cut through at the thickest', async () => {
    expect(design.materials['birch12']).toMatchObject({ thickness: 11.9, thickest: 12.1 });
    const prepared = prepare(design);
    expect(prepared.parts.find(({ id }) => id === 'rib')?.thickness).toBe(11.9);
    const job = await buildCutFiles(design, new Map(), randomNester(1));
    const [name, head] = [...job.files].find(([file]) => /birch12.*\.ngc$/.test(file)) as [string, string];
    // through the thickest place and the overcut of 0.3 mm into the spoil board
    const deepest = Math.min(...[...head.matchAll(/Z(-?[\d.]+)/g)].map(([, z]) => Number(z)));
    expect(deepest).toBeCloseTo(-12.4, 6);
    expect(head.replace(/\)\n\(/g, ' ')).toMatch(/11\.9 mm to 12\.1 mm thick.*follow 12\.1 mm.*fits 11\.9 mm/);
    // the smallest of its sheets is proven by simulated cutting
    const numbers = job.sheets.flatMap(({ file }, i) => (file.includes('birch12') ? [i] : []));
    const turns = [Math.max(...numbers), Infinity].values();
    const proofs = proveSomeSheets(job.files, () => turns.next().value ?? Infinity);
    expect([...proofs.values()].map(({ faults }) => faults)).toEqual([[]]);
    expect(checkRecord(JSON.parse(job.files.get('job.json') as string))).toEqual([]);
    // a record whose cuts end at the thin place is found
    const record = JSON.parse(job.files.get('job.json') as string) as {
      sheets: { file: string; router?: { limits: { thickness: number } } }[];
    };
    const sheet = record.sheets.find(({ file }) => name.startsWith(file))!;
    sheet.router!.limits.thickness = 11.9;
    expect(
      checkRecord(record)
        .map(({ message }) => message)
        .join(),
    ).toContain('thickness of 11.9 mm');
  });

  it('is said by check', () => {
    const { dish, parts, cleatStart, assembly } = prepare(design);
    expect(keyValues(design, dish, parts, cleatStart, assembly)).toContainEqual(
      expect.objectContaining({ label: 'sheet birch12', value: '11.9 mm to 12.1 mm' }),
    );
  });

  it('with places that cannot be of one sheet is refused, with its line', () => {
    expect(problemsOf('[11.9, 21.1]')[0]).toMatch(/^12 .*thickness is 11\.9 mm to 21\.1 mm.*measure again/);
    expect(problemsOf('[]')[0]).toContain('list of 0 readings');
    expect(problemsOf('[11.9, thick]')[0]).toContain('thickness');
    expect(problemsOf('[11.9, -12]')[0]).toContain('above 0');
    // half an inch in a file of millimetres
    expect(problemsOf('[0.0004]')[0]).toContain('thickness');
  });

  it('warns where the places differ by more than slots, the hub, tabs or skins bear', async () => {
    const warnings = (places: string, more = ''): string =>
      prepare(designOf(measured(places) + more))
        .problems.map(diagnosticText)
        .join('\n');
    const slots = 'rib: { material: birch12, joint: tab-slot, fit: 0.2 }';
    const slotted = (places: string): string =>
      prepare(designOf(measured(places).replace('rib: { material: birch12 }', slots)))
        .problems.map(diagnosticText)
        .join('\n');
    expect(slotted('[11.9, 12.05]')).not.toContain('too thick');
    // 11.6 + 0.2 for ribs of 12.1
    expect(slotted('[11.6, 12.1]')).toMatch(/slots of 11\.8 mm.*0\.3 mm too thick.*rib\.fit to 0\.7 mm/s);
    expect(warnings('[11.9, 12.05]')).not.toContain('do not fit at the hub');
    expect(warnings('[11.9, 14]')).toContain('do not fit at the hub');
    const thin = await buildCutFiles(designOf(measured('[11.2, 12.1]')), new Map(), randomNester(1));
    expect(thin.problems.map(diagnosticText).join('\n')).toMatch(/onion skins of 0\.4 mm in birch12 are cut through/);
  });
});
