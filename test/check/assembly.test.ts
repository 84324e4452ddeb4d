/**
 * The proof of a folder puts the dish together from the files. Each fault is planted in the parts before they are
 * nested and written, so that drawings, tables and record all agree: only the dish would not go together.
 */
import { beforeAll, describe, expect, it } from 'vitest';
import { type Assembly, assemble } from '../../lib/assembly/index.js';
import { checkAssembly } from '../../lib/check/assembly/index.js';
import { proveFolder } from '../../lib/check/index.js';
import { readDesign } from '../../lib/design/index.js';
import { hasError } from '../../lib/diagnostic/index.js';
import type { Part, PartKind } from '../../lib/part/index.js';
import { buildCutFiles, nestPrepared, prepare } from '../../lib/pipeline.js';
import { cutFiles, sealed } from '../../lib/pipeline/files.js';
import { nestRequests } from '../../lib/pipeline/nesting-request.js';
import type { Job, Prepared } from '../../lib/pipeline/types.js';
import { designOf, fixtureNames, fixtureText, cutOf } from '../helpers/fixtures.js';
import { randomDesign } from '../helpers/random-design.js';
import { byDay, jobSeeds } from '../helpers/seeds.js';
import { randomNester } from '../helpers/random-nester.js';

const sound = prepare(designOf(fixtureText('hand-cut-inch').replace(/^vessel: .*\n/m, '')));

type Change = (part: Part) => Part;

/** The folder of other parts, or of another assembly, with everything in it made of them. */
async function folderOf(parts: readonly Part[], change = (assembly: Assembly) => assembly) {
  const { design } = sound;
  const assembly = change(assemble({ ...sound, parts }));
  const other: Prepared = { ...sound, parts, assembly, requests: nestRequests(design, parts) };
  const { sheets, cost } = await nestPrepared(other, randomNester(1));
  const job: Job = {
    ...other,
    sheets,
    cost,
    routes: [],
    lasered: [],
    aidSheets: [],
    aids: [],
    forecast: null,
    burn: null,
    files: new Map(),
  };
  // the assembly is read from what is cut: a book and drawings of it would only take time
  return sealed(job, await cutFiles(job, []));
}

const changed = (kind: PartKind, change: Change): Part[] =>
  sound.parts.map((part) => (part.kind === kind ? change(part) : part));

const holes =
  (move: (hole: Part['holes'][number], i: number) => Partial<Part['holes'][number]>): Change =>
  (part) => ({
    ...part,
    holes: part.holes.map((hole, i) => ({ ...hole, ...move(hole, i) })),
  });

const outline =
  (by: (v: Part['outline'][number]) => Part['outline'][number]): Change =>
  (part) => ({
    ...part,
    outline: part.outline.map(by),
  });

const radius = sound.dish.innerRadius;

const plants: readonly [string, PartKind, Change, string][] = [
  [
    'ribs scribed on their other face, which is up when they are cut',
    'rib',
    (part) => ({
      ...part,
      up: 'back',
      marks: part.marks.flatMap((mark) => (mark.kind === 'line' ? [{ ...mark, face: 'back' as const }] : [])),
    }),
    'board-pilot',
  ],
  ['a pilot 0.5 mm off in the board', 'board', holes(({ x }, i) => (i === 0 ? { x: x + 0.5 } : {})), 'board-pilot'],
  ['pilots 0.5 mm off in the ribs', 'rib', holes(({ x }) => ({ x: x + 0.5 })), 'rib-pilot'],
  [
    'a hub too tight by 0.2 mm',
    'hub',
    outline((v) => ({ ...v, x: (v.x * (radius + 0.2)) / radius, y: (v.y * (radius + 0.2)) / radius })),
    'hub-reach',
  ],
  [
    'panels that run into their neighbours',
    'panel',
    outline((v) => ({ ...v, y: v.y + 1.5 * Math.sign(v.y) })),
    'panel-wide',
  ],
  ['seams that are 1 mm too wide', 'panel', outline((v) => ({ ...v, y: v.y - 0.5 * Math.sign(v.y) })), 'panel-narrow'],
  [
    'a mirror that reaches over the seam',
    'reflector',
    outline((v) => ({ ...v, y: v.y + 0.5 * Math.sign(v.y) })),
    'mirror-wide',
  ],
  ['a cleat on the wrong side', 'board', holes(({ y }) => ({ y: -y })), 'board-pilot'],
  ['a dowel missing', 'hub', (part) => ({ ...part, holes: part.holes.slice(0, -1) }), 'dowel-count'],
  ['ribs 0.1 mm too high', 'rib', outline((v) => (v.y > 50 ? { ...v, y: v.y + 0.1 } : v)), 'rib-curve'],
];

describe('a folder that is right in itself', () => {
  let files: Awaited<ReturnType<typeof folderOf>>;
  beforeAll(async () => {
    files = await folderOf(sound.parts);
  });

  it('is proven where the dish goes together', () => {
    expect(proveFolder(files).faults).toEqual([]);
  });

  it.each(plants)('is refused for %s', async (_, kind, change, id) => {
    const { faults } = proveFolder(await folderOf(changed(kind, change)));
    expect(faults.filter(({ code }) => code !== 'assembly' && code !== 'more')).toEqual([]);
    expect(faults.map((fault) => fault.id)).toContain(id);
  });

  it('is refused for screws 3 mm too long', async () => {
    const longer = (assembly: Assembly): Assembly => ({
      ...assembly,
      fasteners: assembly.fasteners.map((one) =>
        one.item.kind === 'wood-screw' ? { ...one, item: { ...one.item, length: one.wood + 1 } } : one,
      ),
    });
    const { faults } = proveFolder(await folderOf(sound.parts, longer));
    expect(faults.map(({ id }) => id)).toContain('screw-long');
  });
});

describe('a dish without a fault raises none', () => {
  it.each(fixtureNames)('%s', async (name) => {
    const job = await cutOf(name);
    expect(checkAssembly(JSON.parse(String(job.files.get('job.json'))))).toEqual([]);
  });

  it.each(jobSeeds('assembly of a folder', 1, byDay(3, 200)))('random, of seed %i', async (seed) => {
    const reading = readDesign(randomDesign(seed).text);
    if (reading.kind === 'refused') return;
    const job = await buildCutFiles(reading.design, new Map(), randomNester(1));
    if (hasError(job.problems)) return;
    expect(checkAssembly(JSON.parse(String(job.files.get('job.json'))))).toEqual([]);
  });
});
