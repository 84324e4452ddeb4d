/** Tabs and slots cut by a router: from the design to G-code and its proof. The slots of a laser are covered by its fixture. */
import { describe, expect, it, beforeAll } from 'vitest';
import { proveFolder } from '../../lib/check/index.js';
import { buildCutFiles } from '../../lib/pipeline.js';
import type { Job } from '../../lib/pipeline/types.js';
import { changed } from '../helpers/changed.js';
import { designOf } from '../helpers/fixtures.js';
import { textsOf } from '../helpers/jobs.js';
import { randomNester } from '../helpers/random-nester.js';

const text = changed('press-house', 'rib: { material: birch12 }', 'rib: { material: birch12, joint: tab-slot }');

describe('a dish whose ribs go in slots of a routed board', () => {
  const design = designOf(text);
  let job: Job;
  beforeAll(async () => {
    job = await buildCutFiles(design, new Map(), randomNester(1));
  });

  it('has no error, and a program for every sheet of wood', () => {
    expect(job.problems.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(job.routes.length).toBeGreaterThan(1);
  });

  it('is proven: drawings, tool paths and the dish that they make', () => {
    expect(proveFolder(textsOf(job)).faults).toEqual([]);
  });

  it('has its slots relieved, so that square tabs seat in what a round bit leaves', () => {
    const board = job.routes.find(({ sheet }) => sheet.nested.placed.some(({ part }) => part === 'board'))!;
    const slots = board.sheet.cut.operations.filter(
      ({ operation, part }) => operation === 'opening' && part === 'board',
    );
    const ribs = design.dish.ribs;
    expect(slots.length % ribs).toBe(0);
    expect(slots.length).toBeGreaterThanOrEqual(2 * ribs);
    // each of four corners is run into and out of: two vertices more than the four of the slot
    for (const { vertices } of slots) expect(vertices.length).toBe(12);
    expect(board.sheet.cut.unreached.filter(({ part }) => part === 'board')).toEqual([]);
  });

  it('is refused where a slot in its program is 0.2 mm too narrow', () => {
    const files = textsOf(job);
    const record = JSON.parse(files.get('job.json')!) as {
      parts: { id: string; contours: { operation: string; vertices: [number, number, number][] }[] }[];
    };
    const slot = record.parts
      .find(({ id }) => id === 'board')!
      .contours.find(({ operation }) => operation === 'opening')!;
    const [a, b, c, d] = slot.vertices as [
      [number, number, number],
      [number, number, number],
      [number, number, number],
      [number, number, number],
    ];
    const wide = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const [ux, uy] = [(b[0] - a[0]) / wide, (b[1] - a[1]) / wide];
    for (const [vertex, sign] of [
      [a, -1],
      [d, -1],
      [b, 1],
      [c, 1],
    ] as const) {
      vertex[0] += sign * 0.1 * ux;
      vertex[1] += sign * 0.1 * uy;
    }
    files.set('job.json', JSON.stringify(record));
    const ids = proveFolder(files).faults.map(({ id }) => id);
    // the record asks for a slot 0.2 mm wider than drawings and programs cut
    expect(ids).toEqual(expect.arrayContaining(['cut-leaves', 'edge-left']));
  });
});
