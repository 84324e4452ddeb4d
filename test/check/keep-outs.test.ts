/** Places of the stock that parts keep off, told by the proof whatever cuts the sheet. */
import { describe, expect, it } from 'vitest';
import { verify } from '../../lib/check/index.js';
import { buildCutFiles } from '../../lib/pipeline.js';
import { textsOf } from '../helpers/jobs.js';
import { designOf, fixtureText } from '../helpers/fixtures.js';

const codes = (files: ReadonlyMap<string, string>): string[] => verify(files).faults.map(({ code }) => code);

describe('a sheet with a knot in it', () => {
  it('is nested around the knot, and the proof sees a part that lies on one', async () => {
    const knot = '[[20, 330], [90, 330], [50, 390]]';
    const text = fixtureText('table-top').replace(/(material: ply5, [^}]*)\}/, `$1, keepOuts: [${knot}] }`);
    expect(text).toContain(knot);
    const job = await buildCutFiles({ ...designOf(text), nest: { ...designOf(text).nest, effort: 0.01 } });
    const files = textsOf(job);
    expect(codes(files)).toEqual([]);
    // the same job, the knot elsewhere: under the first part
    const record = JSON.parse(files.get('job.json')!) as {
      design: { stock: { id: string; keepOuts: { x: number; y: number }[][] }[] };
      sheets: { stock: string; placed: { x: number; y: number }[] }[];
    };
    const [sheet] = record.sheets;
    const { x, y } = sheet!.placed[0]!;
    const stock = record.design.stock.find(({ id }) => id === sheet!.stock)!;
    const far = 1000;
    stock.keepOuts = [[-far, far / 2, far].map((by, i) => ({ x: x + by, y: y + (i === 1 ? far : -far) }))];
    expect(codes(new Map([...files, ['job.json', JSON.stringify(record)]]))).toContain('keep-out');
  });
});
