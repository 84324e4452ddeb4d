/** A laser as the machine of a design: one kerf for each material, bed, order and colours, from the design to the proof. */
import { describe, expect, it } from 'vitest';
import { proveFolder, verify } from '../lib/check/index.js';
import { readDxfLines } from '../lib/check/dxf-reader.js';
import { readDesign } from '../lib/design/index.js';
import { buildCutFiles, prepare } from '../lib/pipeline.js';
import type { Job } from '../lib/pipeline/types.js';
import { smallDish } from './faults/small-dish.js';
import { designOf } from './helpers/fixtures.js';
import { textsOf } from './helpers/jobs.js';
import { randomNester } from './helpers/random-nester.js';

const laserText = (machine: string, template = 'process: laser, material: card') =>
  smallDish('laser', machine === '' ? '' : `machine: ${machine}`)
    .replace('process: { kind: hand }', 'process: { kind: laser, kerf: 0.2, web: 2, margin: 5 }')
    .replace('process: hand', template);
const cut = (machine: string): Promise<Job> => buildCutFiles(designOf(laserText(machine)), new Map(), randomNester(1));
const described =
  '{ kind: laser, materials: { ply: { kerf: 0.3 }, card: { kerf: 0.12 } }, order: [scribe, opening, drill, outline], colours: { outline: "#FF0000" } }';
/** Cut once. */
const job = cut(described);

interface Recorded {
  readonly process: { readonly kerf: number };
  readonly sheets: readonly { readonly stock: string; readonly process?: { readonly kerf: number } }[];
}

/** Width less that of the finished part, of the outline of one part on a sheet. */
function widerBy(job: Job, stock: string): number {
  const sheet = job.sheets.find(({ nested }) => nested.stock === stock)!;
  const { part, rotationDeg } = sheet.nested.placed[0]!;
  const outline = job.parts.find(({ id }) => id === part)!.outline;
  const angle = (rotationDeg * Math.PI) / 180;
  const across = outline.map(({ x, y }) => x * Math.cos(angle) - y * Math.sin(angle));
  const { sheet: read } = readDxfLines(String(job.files.get(`${sheet.file}.dxf`)));
  const rings = read.entities.flatMap((one) => (one.kind === 'path' && one.layer === 'outline' ? [one.line] : []));
  const wide = Math.max(...across) - Math.min(...across);
  const widths = rings.map(({ vertices }) => {
    const xs = vertices.map(({ x }) => x);
    return Math.max(...xs) - Math.min(...xs) - wide;
  });
  return widths.reduce((a, b) => (Math.abs(b) < Math.abs(a) ? b : a));
}

describe('the kerf of a material', () => {
  it('is one number in nest, drawings, record and proof', async () => {
    const texts = textsOf(await job);
    const record = JSON.parse(texts.get('job.json')!) as Recorded;
    const kerfOf = (stock: string) => {
      const sheet = record.sheets.find((one) => one.stock.startsWith(stock))!;
      return (sheet.process ?? record.process).kerf;
    };
    // the last is the sheet of an aid, of card
    expect(['ply-sheet', 'card-sheet', 'card'].map(kerfOf)).toEqual([0.3, 0.12, 0.12]);
    // two kerfs and the web
    expect((await job).requests.map(({ options }) => options.spacing)).toEqual([2.6, 2.24]);
    expect(verify(texts).faults).toEqual([]);
    // the square board has flat sides: its cut is wider by the kerf
    expect(widerBy(await job, 'ply-sheet')).toBeCloseTo(0.3, 3);
  });

  it('is held by the proof against that of the machine', async () => {
    const texts = textsOf(await job);
    const record = texts.get('job.json')!;
    const other = record.replace(/("card": \{\s*"kerf": )0\.12/, '$10.4');
    expect(other).not.toBe(record);
    const { faults } = proveFolder(texts.set('job.json', other));
    expect(faults.map(({ id, message }) => (id === 'kerf' ? message : ''))).toContain(
      'job.json: sheets/card-sheet-1: the kerf is 0.12 mm, but 0.4 mm in the design',
    );
  });

  it('is that of the process where the machine states none, which is whole', () => {
    const reading = readDesign(laserText('{ kind: laser, materials: { ply: { kerf: 0.3 } } }'));
    expect(reading.problems.map(({ code, severity, place }) => [code, severity, place?.path])).toEqual([
      ['machine-material', 'warning', ['machine', 'materials']],
    ]);
  });
});

describe('the bed', () => {
  it('is held against the sheets, before anything is nested', async () => {
    const refused = await cut('{ area: 600 x 500 }');
    expect(refused.files.size).toBe(0);
    const [problem] = refused.problems.filter(({ severity }) => severity === 'error');
    expect([problem?.code, problem?.place?.path]).toEqual(['machine-area', ['machine', 'area']]);
    expect(problem?.message).toBe('ply-sheet is 900 mm x 600 mm, but the working area of the laser is 600 mm x 500 mm');
  });

  it('is that of templates that the machine cuts, and not of what is cut otherwise', () => {
    expect(designOf(laserText('{ area: 900 x 600 }')).template.bed).toEqual({ width: 900, height: 600 });
    const small = designOf(
      laserText('{ kind: laser, area: 90 x 60 }').replace('kind: laser, kerf', 'kind: hand, kerf'),
    );
    const { problems } = prepare(small);
    // a template in halves of less than a hand's width
    expect(problems.map(({ code }) => code)).not.toContain('machine-area');
    expect(problems.map(({ code }) => code)).toContain('bed-too-small');
  });
});

describe('the order of operations', () => {
  const layersOf = (job: Job): string[] => {
    const sheet = job.sheets.find(({ nested }) => nested.stock === 'ply-sheet')!;
    const { entities } = readDxfLines(String(job.files.get(`${sheet.file}.dxf`))).sheet;
    const kinds = entities.map(({ layer }) => layer.replace(/-.*/, ''));
    return kinds.filter((kind, i) => kind !== kinds[i - 1]);
  };

  it('is that of the machine, in files that prove right', async () => {
    const usual = await cut('');
    expect(layersOf(usual)).toEqual(['scribe', 'drill', 'scribe', 'opening', 'outline']);
    expect(layersOf(await job)).toEqual(['scribe', 'opening', 'drill', 'outline']);
    // the files of the one by the record of the other
    const texts = textsOf(await job);
    const asked = texts.get('job.json')!.replace(/"scribe",\s*"opening",\s*"drill"/, '"drill", "scribe", "opening"');
    expect(verify(new Map([...texts, ['job.json', asked]])).faults.map(({ id }) => id)).toContain('order-machine');
  });
});

describe('the colours of the machine', () => {
  it('go before those of the design, in both files and their key', async () => {
    const texts = textsOf(await job);
    expect((await job).design.colours.outline).toBe('#FF0000');
    expect(texts.get('sheets/ply-sheet-1.svg')).toContain('class="outline" stroke="#FF0000"');
  });
});

describe('a machine of one kind', () => {
  it.each([
    ['{ kind: laser, toolChange: none }', 'machine-kind', 'machine.toolChange is for a router'],
    ['{ kind: router, beam: M4 }', 'machine-kind', 'machine.beam is for a laser'],
    ['{ kind: plasma }', 'wrong-value', 'machine.kind is "plasma"'],
    ['{ order: [outline, drill, scribe, opening] }', 'wrong-value', 'must end with outline'],
    ['{ order: [drill, outline] }', 'wrong-value', 'once each'],
    ['{ materials: { plj: { kerf: 0.1 } } }', 'unknown-material', '"plj"'],
    ['{ materials: { ply: { kerf: -1 } } }', 'wrong-value', 'machine.materials.ply.kerf'],
  ])('%s is refused as %s', (machine, code, words) => {
    const reading = readDesign(laserText(machine));
    expect(reading.kind).toBe('refused');
    const [problem] = reading.problems;
    const whole = `${problem?.message} ${problem?.remedy}`;
    expect([problem?.code, whole.includes(words), problem?.place?.path[0]]).toEqual([code, true, 'machine']);
  });

  it('may have more materials in a file of its own than a design', () => {
    const machine = 'kind: laser\nmaterials:\n  ply: { kerf: 0.2 }\n  card: { kerf: 0.1 }\n  oak9: { kerf: 0.4 }\n';
    const reading = readDesign(laserText('laser.yaml'), 'dish.yaml', { kind: 'text', text: machine });
    expect(reading.problems).toEqual([]);
    const wrong = readDesign(laserText('laser.yaml'), 'dish.yaml', { kind: 'text', text: `${machine}spinUp: 4\n` });
    expect(wrong.problems[0]).toMatchObject({ code: 'machine-kind', place: { file: 'laser.yaml', line: 6 } });
  });
});
