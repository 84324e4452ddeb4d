import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import { afterAll, afterEach, beforeEach, describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { parseHeats, parseMaterial, usualAnswers, usualRibs } from '../../cli/new/answers.js';
import { designText } from '../../cli/new/design-text.js';
import { askQuestions } from '../../cli/new/questions.js';
import { writeDesign } from '../../cli/new/write.js';
import { buildCutFiles, designJsonSchema, keyEntries, LengthError, prepare } from '../../lib/index.js';
import { inProcess, workshop } from '../helpers/command.js';
import { designOf } from '../helpers/fixtures.js';
import { randomNester } from '../helpers/random-nester.js';

/** Answers in turn, as typed; what was said about them is kept. */
async function typed(...lines: string[]) {
  const reported: string[] = [];
  const answers = await askQuestions(
    () => Promise.resolve(lines.shift() ?? ''),
    (message, remedy) => reported.push(`  ${message}; ${remedy}`),
  );
  return { answers, reported, left: lines };
}

/** The file with every default uncommented: `#key:` lines, as the file itself says. */
const uncommented = (text: string): string => text.replace(/^(\s*)#(?=[a-z])/gm, '$1');

describe('the file that `new` writes', () => {
  it('is a design as it stands', () => {
    const design = designOf(designText(usualAnswers()));
    expect(design.dish).toMatchObject({ aperture: 1200, focalLength: 440, figure: 'panel' });
    expect(design.process.kind).toBe('router');
  });

  it('names every section and key', () => {
    const text = designText(usualAnswers());
    const missing = keyEntries().filter(({ path }) => {
      const name = path.split('.').at(-1)?.replace('[]', '') ?? path;
      return !new RegExp(`^[\\s#]*${name}:`, 'm').test(text);
    });
    expect(missing.map(({ path }) => path)).toEqual([]);
  });

  it('shows defaults that are the defaults', () => {
    const plain = designOf(designText(usualAnswers()));
    const full = designOf(uncommented(designText(usualAnswers())));
    // sections that a design may leave out stand there with examples
    const { vessel, load, stand, site, defaults, ...rest } = full;
    expect([vessel, load, stand, site].every((section) => section !== undefined)).toBe(true);
    const { defaults: taken, ...expected } = plain;
    expect(rest).toEqual(expected);
    expect(defaults.length).toBeLessThan(taken.length);
  });

  it('is cut by a router though small parts have no room for tabs: an onion skin holds them', async () => {
    const text = designText({ ...usualAnswers(), aperture: 500, focalLength: 190, thickness: 6, ribs: 18 });
    const { problems, files } = await buildCutFiles(designOf(text), new Map(), randomNester(1));
    expect(problems.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(problems.map(({ message }) => message).join()).toContain('no room for tabs on cleat');
    expect(files.size).toBeGreaterThan(0);
  });

  it('points editors at its schema, and holds to it', () => {
    const text = designText(usualAnswers());
    expect(text.split('\n')[0]).toBe('# yaml-language-server: $schema=./dishwright.schema.json');
    const validate = new Ajv({ allowUnionTypes: true }).compile(designJsonSchema());
    expect(validate(parse(uncommented(text)))).toBe(true);
  });
});

describe('what `new` writes', () => {
  it.each([
    ['a table-top dish on a laser', 400, 150, 'laser', 3],
    ['a dish of 1.2 m on a router', 1200, 440, 'router', 12],
    ['a dish of 2.4 m by hand', 2400, 900, 'hand', 18],
    ['a small dish of thick stock', 540, 280, 'hand', 12],
  ] as const)('goes together: %s', (_, aperture, focalLength, machine, thickness) => {
    for (const units of ['mm', 'in'] as const) {
      const text = designText({ ...usualAnswers(), units, aperture, focalLength, machine, thickness });
      expect(prepare(designOf(text)).problems.filter(({ severity }) => severity === 'error')).toEqual([]);
    }
  });
});

describe('the questions', () => {
  it('take what is offered for an empty answer', async () => {
    expect((await typed()).answers).toEqual(usualAnswers());
  });

  it('go in the order of the trade, and make a design of what is answered', async () => {
    const { answers } = await typed(
      ...[
        '12 l in 260 mm',
        '47.1 15.4',
        '1500',
        'mdf 15.8',
        '2800 x 2070 for 62.50',
        'router',
        '4 mm',
        '2.5, 3, 4, 4.5',
      ],
      ...['', '24', '11', '9.50'],
    );
    expect(answers).toMatchObject({
      units: 'mm',
      aperture: 1500,
      heats: { litres: 12, diameter: 260 },
      place: { latitude: 47.1, longitude: 15.4 },
      kind: 'mdf',
      thickness: 15.8,
      machine: 'router',
      bit: 4,
      drillBits: [2.5, 3, 4, 4.5],
      ribs: 24,
      sheet: { width: 2800, height: 2070 },
      price: 62.5,
    });
    const design = designOf(designText(answers));
    expect(design.dish.ribs).toBe(24);
    expect(design.vessel?.diameter).toBe(260);
    expect(design.load?.mass).toBe(12);
    expect(design.site).toMatchObject({ latitude: 47.1, longitude: 15.4 });
    expect(design.stock.map(({ price }) => price)).toEqual([62.5, 11, 9.5]);
    expect(design.process).toMatchObject({ toolDiameter: 4, drillBits: [2.5, 3, 4, 4.5] });
  });

  it('go on in inches when the aperture or the vessel is given in inches', async () => {
    const { answers } = await typed('', '', '52 in', '15/32', '', 'hand', '20');
    expect(answers.units).toBe('in');
    expect(answers.focalLength).toBeCloseTo(508, 9);
    const design = designOf(designText(answers));
    expect(design.dish.aperture).toBeCloseTo(52 * 25.4, 9);
    expect(design.materials['plywood']?.thickness).toBeCloseTo((15 / 32) * 25.4, 2);
    expect((await typed('2 gal in 10 in')).answers.units).toBe('in');
    expect((await typed('5 l in 220 mm')).answers.units).toBe('mm');
  });

  it('ask again for what they cannot take, and say why', async () => {
    const { answers, reported, left } = await typed(
      ...[
        'a stew',
        '',
        'Graz',
        '',
        'wide',
        '3 mm',
        '900',
        'ply',
        '9',
        '8 ft',
        '8 ft x 4 ft',
        'saw',
        'hand',
        '100',
        '400',
      ],
      ...['many', '18', 'cheap', '12.50', 'none', 'x'],
    );
    expect(answers).toMatchObject({ aperture: 900, focalLength: 400, thickness: 9, machine: 'hand', ribs: 18 });
    expect(answers).toMatchObject({ panelPrice: 12.5, reflectorPrice: 0 });
    expect(reported).toHaveLength(10);
    expect(reported[9]).toContain('such as 12.50');
    expect(reported[0]).toContain('write it as 5 l in 220 mm');
    expect(reported[1]).toContain('such as 47.1 15.4');
    expect(reported[3]).toContain('from 50 mm to 20000 mm');
    expect(reported[7]).toContain('225 mm');
    expect(left).toEqual(['x']);
  });

  it('refuse what cannot be built, with what would do', async () => {
    const { answers, reported } = await typed(
      ...['', '', '340', '15 mm', '120 x 80', 'laser', '15 mm', '', 'laser', '180', '39', '20'],
    );
    expect(reported).toHaveLength(2);
    expect(reported[0]).toMatch(/with these answers the dish cannot be built: .*; .*sheets? (?:of|at least)/);
    // 39 ribs of 15 mm fill the whole circle out to 15 / (2 tan(π/39)) = 93 mm of 170 mm
    expect(reported[1]).toMatch(/\d+ ribs would work, or another thickness/);
    expect(answers).toMatchObject({ ribs: 20, sheet: { width: 2440, height: 1220 } });
  });

  it('read a vessel in litres or US gallons', () => {
    expect(parseHeats('5 l in 220 mm', 'mm')).toEqual({ litres: 5, diameter: 220 });
    // US liquid gallon of 231 cubic inches: 3.785 L (NIST Handbook 44, appendix C)
    expect(parseHeats('2 gal in 10 in', 'in')?.litres).toBeCloseTo(2 * 3.785, 2);
    expect(parseHeats('450 mm', 'mm')).toBeNull();
    expect(() => parseHeats('0 l in 220 mm', 'mm')).toThrow(LengthError);
    expect(() => parseMaterial('plywood -3', 'mm')).toThrow(LengthError);
  });

  it('give panels no wider than the vessel', () => {
    // a panel does not focus across its width: the half-chord R·sin(π/N) must lie within the vessel
    const [aperture, diameter] = [2000, 160];
    const ribs = usualRibs(aperture, { litres: 3, diameter });
    expect((aperture / 2) * Math.sin(Math.PI / ribs)).toBeLessThan(diameter / 2);
  });
});

describe('writing it', () => {
  let folder = '';
  beforeEach(() => (folder = mkdtempSync(join(tmpdir(), 'dishwright-new-'))));
  afterEach(() => rmSync(folder, { recursive: true }));

  it('lays the schema beside it', () => {
    writeDesign(join(folder, 'a.yaml'), 'name: a\n', false);
    expect(readdirSync(folder).sort()).toEqual(['a-log.csv', 'a.yaml', 'dishwright.schema.json']);
    expect(JSON.parse(readFileSync(join(folder, 'dishwright.schema.json'), 'utf8'))).toEqual(designJsonSchema());
  });

  it('overwrites nothing unless told to', () => {
    const file = join(folder, 'a.yaml');
    writeFileSync(file, 'mine');
    expect(() => writeDesign(file, 'name: a\n', false)).toThrow('already exists');
    expect(readFileSync(file, 'utf8')).toBe('mine');
    expect(readdirSync(folder)).toEqual(['a.yaml']);
    writeDesign(file, 'name: a\n', true);
    expect(readFileSync(file, 'utf8')).toBe('name: a\n');
  });

  it('leaves a schema alone that is not ours', () => {
    const schema = join(folder, 'dishwright.schema.json');
    writeFileSync(schema, '{"title":"another"}');
    expect(writeDesign(join(folder, 'a.yaml'), 'name: a\n', false)).toHaveLength(1);
    expect(readFileSync(schema, 'utf8')).toBe('{"title":"another"}');
  });

  it('says so when the folder is not there, and leaves nothing behind', () => {
    expect(() => writeDesign(join(folder, 'none', 'a.yaml'), 'name: a\n', false)).toThrow('no such file or folder');
    expect(readdirSync(folder)).toEqual([]);
  });
});

describe('answers as flags', () => {
  const place = workshop();
  afterAll(() => place.clear());
  const run = (...flags: string[]) => inProcess(place.folder, ['new', 'flags.yaml', ...flags]);

  it('write a design that `check` takes, and say what it costs and does', async () => {
    const made = await run(
      '--heat',
      '3 l in 200 mm',
      '--aperture',
      '800 mm',
      '--material',
      'plywood 9',
      '--sheet',
      '1250 x 1250 for 31',
      '--process',
      'hand',
    );
    expect(made.code, made.err).toBe(0);
    expect(made.err).toMatch(/To buy: \d+ x plywood 1250 mm x 1250 mm for \d+\.00/);
    expect(made.err).toMatch(/power absorbed: \d+ W/);
    expect((await inProcess(place.folder, ['check', 'flags.yaml'])).code).toBe(0);
  });

  it.each([
    [['--heat', 'soup'], /^error: --heat: "soup" does not say how much/, /5 l in 220 mm/],
    [['--place', '46,9 15,5'], /^error: --place: /, /with decimal points/],
    [['--aperture', '1,2 m'], /^error: --aperture: "1,2 m" has a comma/, /1\.2 m/],
    [['--sheet', '8 x 4'], /^error: --sheet: .*implausible/, /8 ft x 4 ft/],
    [['--drills', 'none'], /^error: --drills: .*smaller than the 6 mm router bit/, /drill bit/],
    [['--ribs', '4'], /^error: --ribs: /, /6 to 240/],
  ])('%j are refused in words, with nothing written', async (flags, cause, mend) => {
    rmSync(join(place.folder, 'flags.yaml'), { force: true });
    const { code, err } = await run(...flags);
    expect(code).toBe(2);
    expect(err).toMatch(cause);
    expect(err.split('\n')[1]).toMatch(mend);
    expect(readdirSync(place.folder)).not.toContain('flags.yaml');
  });
});
