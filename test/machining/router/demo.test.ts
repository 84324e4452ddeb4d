/** The demo and the other fixtures, routed and simulated: edges, travel and time. */
import { beforeAll, describe, expect, it } from 'vitest';
import { verify } from '../../../lib/check/index.js';
import type { Design } from '../../../lib/design/index.js';
import { distance, type Point } from '../../../lib/geometry/index.js';
import type { Cut } from '../../../lib/machining/index.js';
import { buildCutFiles } from '../../../lib/pipeline.js';
import type { Job } from '../../../lib/pipeline/types.js';
import { designOf, fixtureText, jobOf } from '../../helpers/fixtures.js';
import { textsOf } from '../../helpers/jobs.js';

const quick = (design: Design): Design => ({ ...design, nest: { ...design.nest, effort: 0.05 } });

/** The way of a tool that goes to the nearest part, makes its cuts there in the order planned, and so on. */
function nearestPart(cuts: readonly Cut[], start: Point): { length: number; end: Point } {
  const left = new Map<string, Cut[]>();
  for (const cut of cuts) {
    const part = cut.title
      .replace(/ core$/, '')
      .split(' ')
      .slice(1)
      .join(' ');
    left.set(part, [...(left.get(part) ?? []), cut]);
  }
  const first = (own: readonly Cut[]): Point => own[0]!.moves[0]!.to;
  let length = 0;
  let end = start;
  while (left.size > 0) {
    const [part, own] = [...left].reduce((a, b) => (distance(end, first(b[1])) < distance(end, first(a[1])) ? b : a));
    left.delete(part);
    for (const { moves } of own) {
      length += distance(end, moves[0]!.to);
      end = moves.at(-1)!.to;
    }
  }
  return { length, end };
}

describe('the demo', () => {
  let job: Job;
  beforeAll(async () => {
    job = await jobOf('press-house');
  });

  it('has a router file for every routed sheet, and the whole folder proves', () => {
    expect(job.problems.filter(({ severity }) => severity === 'error')).toEqual([]);
    const routed = job.sheets.filter(({ cut }) => cut.process.kind === 'router');
    expect(routed.length).toBeGreaterThan(2);
    for (const { file } of routed) expect(job.files.has(`${file}.ngc`)).toBe(true);
    expect(verify(textsOf(job)).faults).toEqual([]);
  });

  it('travels at least a quarter less than from part to nearest part', () => {
    let planned = 0;
    let nearest = 0;
    for (const { plan } of job.routes) {
      planned += plan.travelLength;
      let at: Point = { x: 0, y: 0 };
      for (const { cuts } of plan.toolpath.runs) {
        const { length, end } = nearestPart(cuts, at);
        nearest += length;
        at = end;
      }
    }
    expect(planned).toBeGreaterThan(0);
    expect(planned).toBeLessThan(0.75 * nearest);
  });

  it('shows the simulated sheets in the book', () => {
    const book = String(job.files.get('book.html'));
    expect(book).toContain('The sheet as the router leaves it');
  });
});

describe.each(['table-top', 'hand-cut-inch'] as const)('%s, cut by a router instead', (name) => {
  let texts: Map<string, string>;

  it('proves', async () => {
    const text = fixtureText(name).replace(
      /^process:.*$/m,
      'process: { kind: router, toolDiameter: 1/8 in, drillBits: [1.5 mm, 2 mm, 2.5 mm, 3 mm, 5/32 in, 4 mm] }',
    );
    const job = await buildCutFiles(quick(designOf(text)));
    expect(job.problems.filter(({ severity }) => severity === 'error').map(({ message }) => message)).toEqual([]);
    texts = textsOf(job);
    expect([...texts.keys()].filter((one) => one.endsWith('.ngc')).length).toBeGreaterThan(0);
    expect(verify(texts).faults.map(({ message }) => message)).toEqual([]);
  });

  it.runIf(name === 'table-top')('is found at fault when a router file is changed or missing', () => {
    const file = [...texts.keys()].find((one) => one.endsWith('.ngc'))!;
    const text = texts.get(file)!;
    for (const changed of [text.replace(/S\d+ M3/g, ''), text.replace(/^G1 /gm, 'G0 '), text.slice(0, text.length / 2)])
      expect(verify(new Map([...texts, [file, changed]])).faults.map(({ code }) => code)).toContain('router');
    const without = new Map(texts);
    without.delete(file);
    expect(verify(without).faults.map(({ code }) => code)).toContain('missing-file');
  });
});
