import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { verify } from '../../lib/check/index.js';
import { buildCutFiles, type Job } from '../../lib/index.js';
import { textsOf } from '../helpers/jobs.js';
import { fixture } from '../helpers/fixtures.js';
import { measures } from './extra-drawings.js';

const textOf = (file: string): string => readFileSync(new URL(`../../fixtures/extra/${file}`, import.meta.url), 'utf8');
const files = ['bracket.dxf', 'trivet.svg'];
const texts = new Map(files.map((file) => [file, textOf(file)]));

describe('the demo with outlines of one’s own', () => {
  let job: Job;
  beforeAll(async () => {
    const design = fixture('press-house');
    const extra = files.map((file, i) => ({ file, material: 'birch12', quantity: i + 1, unit: undefined }));
    const nest = { ...design.nest, effort: 0 };
    job = await buildCutFiles({ ...design, nest, extra }, texts);
  });
  const part = (id: string) => job.parts.find((each) => each.id === id)!;

  it('takes them at true size', () => {
    expect(job.problems.filter(({ severity }) => severity === 'error')).toEqual([]);
    const inch = 25.4 ** 2;
    // 6 x 4 in less four corners of r 0.5, a slot of 1.5 x 0.5 with round ends of r 0.25, two holes of 4 mm
    const bracket = (24 - (4 - Math.PI) * 0.25 - 0.75 - Math.PI / 16) * inch - 2 * Math.PI * 4;
    expect(measures(part('extra-1-1')).area).toBeCloseTo(bracket, 3);
    expect(part('extra-1-1').holes.map(({ diameter }) => diameter.toFixed(6))).toEqual(['4.000000', '4.000000']);
    expect(part('extra-2-1').openings).toHaveLength(3);
    // 60 x 16 units with ends of r 8, 2 mm a unit
    expect(measures(part('extra-2-2')).area).toBeCloseTo(4 * (44 * 16 + Math.PI * 64), 6);
    expect(part('extra-2-2').name).toBe('trivet 2');
  });

  it('nests every copy on sheets of their material', () => {
    for (const [id, quantity] of [
      ['extra-1-1', 1],
      ['extra-2-1', 2],
      ['extra-2-2', 2],
    ] as const) {
      const on = job.sheets.filter(({ nested }) => nested.placed.some((placed) => placed.part === id));
      expect(on.flatMap(({ nested }) => nested.placed.filter((placed) => placed.part === id))).toHaveLength(quantity);
      for (const { file } of on) expect(file).toContain('birch12');
    }
  });

  it('proves right when the files are read back', () => {
    const proof = verify(textsOf(job));
    expect(proof.faults.map(({ message }) => message)).toEqual([]);
    expect(proof.ok).toBe(true);
  });

  it('is told apart from itself with one outline moved', () => {
    const files2 = textsOf(job);
    const sheet = job.sheets.find(({ nested }) => nested.placed.some(({ part: id }) => id === 'extra-2-2'))!;
    const record = JSON.parse(files2.get('job.json') ?? '') as {
      sheets: { file: string; placed: { part: string; x: number }[] }[];
    };
    const placed = record.sheets.find(({ file }) => file === sheet.file)!.placed;
    placed.find(({ part: id }) => id === 'extra-2-2')!.x += 1;
    files2.set('job.json', JSON.stringify(record));
    expect(verify(files2).ok).toBe(false);
  });

  it('says in the record which file each came from', () => {
    const record = JSON.parse(String(job.files.get('job.json'))) as { extras: unknown };
    expect(record.extras).toEqual([
      { part: 'extra-1-1', file: 'bracket.dxf' },
      { part: 'extra-2-1', file: 'trivet.svg' },
      { part: 'extra-2-2', file: 'trivet.svg' },
    ]);
  });

  it('lists them to be cut', () => {
    expect(String(job.files.get('cut-list.csv'))).toMatch(/extra-2-1.*trivet 1/);
  });
});
