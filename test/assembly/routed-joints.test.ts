/** Joints that a router cuts, from the design to all files and their proof: tabs in slots, and housings. */
import load, { type ManifoldToplevel } from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import { assemble, type AssembledPlate, type AssemblyFault, assemblyFaults } from '../../lib/assembly/index.js';
import { proveFolder } from '../../lib/check/index.js';
import { readDesign } from '../../lib/design/index.js';
import { signedArea, type Vertex } from '../../lib/geometry/index.js';
import { prepare } from '../../lib/index.js';
import type { Part, PartKind, Pocket } from '../../lib/part/index.js';
import type { Job, Prepared } from '../../lib/pipeline/types.js';
import { designOf, fixtureText } from '../helpers/fixtures.js';
import { randomDesign } from '../helpers/random-design.js';
import { routedJob, routedText } from '../helpers/routed-joints.js';
import { byDay, jobSeeds } from '../helpers/seeds.js';
import { plateSolid } from '../helpers/solids.js';

/** A record as a test changes it. */
interface Changed {
  parts: { id: string; contours: { operation: string; depth?: number; vertices: [number, number, number][] }[] }[];
}

/** What the proof of the folder finds when its record is changed, drawings and programs being as they are. */
function provenWith({ files }: Job, change: (record: Changed) => void): string[] {
  const other = new Map(files);
  const record = JSON.parse(String(files.get('job.json'))) as Changed;
  change(record);
  other.set('job.json', JSON.stringify(record));
  return proveFolder(other).faults.map(({ id }) => id);
}

const contour = (record: Changed, id: string, operation: string) =>
  record.parts.find((part) => part.id === id)!.contours.find((one) => one.operation === operation)!;

describe.each([
  ['joint: tab-slot', 'opening'],
  ['joint: housing', 'pocket'],
])('a dish of %s', (rib, operation) => {
  let job: Job;
  beforeAll(async () => {
    job = await routedJob(rib);
  }, 60_000);

  it('has no error, and a program for every sheet of wood', () => {
    expect(job.problems.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(job.routes.map(({ files }) => files.size)).toEqual(job.routes.map(() => 1));
  });

  it('is proven: drawings, programs, and the dish that they make', () => {
    expect(proveFolder(job.files).faults).toEqual([]);
  });

  it('leaves no wood where a rib goes into the board', () => {
    const unreached = job.routes.flatMap(({ sheet }) => sheet.cut.unreached);
    expect(unreached.filter(({ part }) => part === 'board' || part === 'hub')).toEqual([]);
    const cuts = job.routes.flatMap(({ sheet }) => sheet.cut.operations);
    const own = cuts.filter((one) => one.part === 'board' && one.operation === operation);
    expect(own.length % job.design.dish.ribs).toBe(0);
    expect(own.length).toBeGreaterThan(0);
  });

  it('is refused where its program cuts a groove or slot 0.1 mm too narrow', () => {
    // the record asks for 0.1 mm more on either side of one
    const faults = provenWith(job, (record) => {
      const { vertices } = contour(record, 'board', operation);
      const [a, b] = vertices as [[number, number, number], [number, number, number]];
      const wide = Math.hypot(b[0] - a[0], b[1] - a[1]);
      const [ux, uy] = [(b[0] - a[0]) / wide, (b[1] - a[1]) / wide];
      vertices.forEach((vertex, i) => {
        const sign = i === 1 || i === 2 ? 0.1 : -0.1;
        vertex[0] += sign * ux;
        vertex[1] += sign * uy;
      });
    });
    expect(faults).toEqual(expect.arrayContaining(['cut-leaves', operation === 'pocket' ? 'pocket-off' : 'edge-left']));
  });
});

describe('a housing', () => {
  const prepared = prepare(designOf(routedText('joint: housing')));
  const { design, dish, cleatStart, splices } = prepared;
  const all = (parts: Prepared['parts'] = prepared.parts) => assemble({ design, dish, parts, cleatStart, splices });
  const faultsOf = (parts: Prepared['parts']): AssemblyFault[] => assemblyFaults(design, dish, all(parts));
  const changed = (kind: PartKind, change: (part: Part) => Part) =>
    prepared.parts.map((part) => (part.kind === kind ? change(part) : part));
  const pockets = (change: (pocket: Pocket) => Pocket) => (part: Part) => ({
    ...part,
    pockets: part.pockets.map(change),
  });

  it('is a third of the board deep, and the rib stops short of its floor by its play', () => {
    const board = prepared.parts.find(({ kind }) => kind === 'board')!;
    expect(board.pockets).toHaveLength(design.dish.ribs);
    for (const { depth, ring } of board.pockets) {
      expect(depth).toBe(12 / 3);
      // a rectangle as wide as the rib and its play, with half a disc at either end
      const wide = 12 + 0.2;
      const straight = Math.hypot(ring[2]!.x - ring[1]!.x, ring[2]!.y - ring[1]!.y);
      expect(-signedArea(ring)).toBeCloseTo(wide * straight + (Math.PI / 4) * wide ** 2, 6);
    }
    const rib = prepared.parts.find(({ kind }) => kind === 'rib')!;
    expect(Math.min(...rib.outline.map(({ y }) => y))).toBeCloseTo(0.2 - 4, 9);
  });

  it('goes together', () => {
    expect(faultsOf(prepared.parts)).toEqual([]);
  });

  const narrower = (by: number) =>
    pockets((pocket) => ({
      ...pocket,
      ring: pocket.ring.map((v, i) => {
        const [a, b] = pocket.ring as [Vertex, Vertex];
        const wide = Math.hypot(b.x - a.x, b.y - a.y);
        const sign = (i === 1 || i === 2 ? -by : by) / 2 / wide;
        return { ...v, x: v.x + sign * (b.x - a.x), y: v.y + sign * (b.y - a.y) };
      }),
    }));
  const inner = dish.innerRadius;
  const plants: readonly [string, PartKind, (part: Part) => Part, Partial<AssemblyFault>][] = [
    ['grooves 0.3 mm too narrow', 'board', narrower(0.3), { kind: 'overlap' }],
    ['grooves 0.05 mm too narrow', 'board', narrower(0.05), { kind: 'play', wanted: 0.2 }],
    ['grooves 0.2 mm too wide', 'board', narrower(-0.2), { kind: 'play', wanted: 0.2 }],
    ['grooves 0.5 mm too shallow', 'board', pockets((one) => ({ ...one, depth: 3.5 })), { kind: 'overlap' }],
    ['grooves 0.1 mm too shallow', 'board', pockets((one) => ({ ...one, depth: 3.9 })), { kind: 'play' }],
    ['grooves 1 mm too deep', 'board', pockets((one) => ({ ...one, depth: 5 })), { kind: 'play' }],
    ['grooves in the lower face', 'board', pockets((one) => ({ ...one, from: 'back' })), { kind: 'overlap' }],
    ['a groove missing', 'board', (part) => ({ ...part, pockets: part.pockets.slice(1) }), { kind: 'overlap' }],
    [
      'a groove too many',
      'board',
      (part) => ({
        ...part,
        pockets: [
          ...part.pockets,
          { ...part.pockets[0]!, ring: part.pockets[0]!.ring.map((v) => ({ ...v, x: v.x - 300, y: v.y + 50 })) },
        ],
      }),
      { kind: 'parts', found: 8 },
    ],
    [
      'bases 0.3 mm too deep',
      'rib',
      (part) => ({ ...part, outline: part.outline.map((v) => (v.y < 0 ? { ...v, y: v.y - 0.3 } : v)) }),
      { kind: 'overlap' },
    ],
    [
      'grooves of the hub 0.2 mm too tight',
      'hub',
      (part) => ({
        ...part,
        outline: part.outline.map((v) => {
          const radius = Math.hypot(v.x, v.y);
          return radius < inner + 2 ? { ...v, x: v.x * (1 + 0.2 / radius), y: v.y * (1 + 0.2 / radius) } : v;
        }),
      }),
      { kind: 'overlap' },
    ],
  ];

  it.each(plants)('with %s is found', (_, kind, change, fault) => {
    expect(faultsOf(changed(kind, change))).toContainEqual(expect.objectContaining(fault));
  });

  it.each([
    [
      'of a depth that is not cut',
      (record: Changed): void => {
        contour(record, 'board', 'pocket').depth = 3;
      },
      'pocket-depth',
    ],
    [
      'whose grooves are too shallow for the ribs',
      (record: Changed) => {
        for (const one of record.parts.flatMap(({ contours }) => contours))
          if (one.operation === 'pocket') one.depth = 3;
      },
      'groove-shallow',
    ],
    [
      'whose ribs are thicker than their grooves',
      (record: Changed) => {
        for (const part of record.parts) if (part.id === 'rib') Object.assign(part, { thickness: 12.5 });
      },
      'tab-slot',
    ],
    [
      'whose grooves are cut through',
      (record: Changed) => {
        for (const one of record.parts.flatMap(({ contours }) => contours))
          if (one.operation === 'pocket') Object.assign(one, { operation: 'opening', depth: undefined });
      },
      'path-missing',
    ],
  ] as const)('%s is refused by the proof of the folder', async (_, change, id) => {
    expect(provenWith(await routedJob('joint: housing'), change)).toContain(id);
  });

  describe('as solids of a library (manifold-3d)', () => {
    let library: ManifoldToplevel;
    beforeAll(async () => {
      library = await load();
      library.setup();
    });
    const solids = (kind: PartKind, parts?: Prepared['parts']) =>
      all(parts)
        .placed.filter((one): one is AssembledPlate => one.form === 'plate' && one.part.kind === kind)
        .map((one) => plateSolid(library, one));

    it('lets every rib in from above, and keeps it off the floor of its groove', () => {
      const under = [...solids('board'), ...solids('hub')];
      for (const rib of solids('rib'))
        for (const lift of [0, 0.5, 2, 10])
          for (const one of under) expect(rib.translate(0, 0, lift).intersect(one).volume()).toBeLessThan(0.01);
    });

    it('has the wood in common that a deeper rib would take of the floor', () => {
      const deeper = changed('rib', (part) => ({
        ...part,
        outline: part.outline.map((v) => (v.y < 0 ? { ...v, y: v.y - 0.5 } : v)),
      }));
      const feet = prepared.parts.find(({ kind }) => kind === 'rib')!.outline.filter(({ y }) => y < 0);
      const length = Math.max(...feet.map(({ x }) => x)) - Math.min(...feet.map(({ x }) => x));
      const [board] = solids('board', deeper);
      expect(solids('rib', deeper)[0]!.intersect(board!).volume()).toBeCloseTo((0.5 - 0.2) * length * 12, 1);
    });
  });
});

describe('a housing that cannot be made is told with what would do', () => {
  const problemsOf = (text: string) => {
    const reading = readDesign(text);
    return reading.kind === 'refused' ? reading.problems : prepare(reading.design).problems;
  };
  const text = routedText('joint: housing');
  it.each([
    ['a laser', text.replace('kind: router, toolDiameter: 6, drillBits: [4, 4.5]', 'kind: laser'), /needs a router/],
    ['a saw', text.replace('kind: router, toolDiameter: 6, drillBits: [4, 4.5]', 'kind: hand'), /needs a router/],
    ['a thin board', text.replace('thickness: 12', 'thickness: 6'), /6 mm is too thin for a housing/],
    ['a groove deeper than the board allows', routedText('joint: housing, housing: 7'), /leaves 5 mm of a board/],
    ['a groove that takes nothing', routedText('joint: housing, housing: 1.5'), /holds only 1\.3 mm of the rib/],
    ['a depth for cleats', routedText('housing: 4'), /rib\.joint is screwed-cleat/],
    ['a short base', routedText('joint: housing, toeRadius: 60'), /only .* for a groove/],
    ['a bit wider than the groove', text.replace('toolDiameter: 6', 'toolDiameter: 14'), /pocket about .* too narrow/],
    ['a hub without wood between its grooves', text.replace('board:', 'hub: { radius: 16 }\nboard:'), /8 grooves/],
    [
      'sheets that are thicker in places',
      text.replace('thickness: 12', 'thickness: [12, 12.5]'),
      /go into slots of 12\.2 mm/,
    ],
  ])('%s', (_, changed, message) => {
    expect(problemsOf(changed)).toContainEqual(
      expect.objectContaining({ message: expect.stringMatching(message) as string }),
    );
  });
});

describe('housings of larger dishes', () => {
  it.each([
    [
      'the press house, round hub',
      ['rib: { material: birch12 }', 'rib: { material: birch12, joint: housing }\nhub: { shape: round }'],
    ],
    ['the bakery, in segments', ['rib: { material: ply15 }', 'rib: { material: ply15, joint: housing }']],
  ] as const)('%s, go together', (name, [from, to]) => {
    const fixture = name.startsWith('the press') ? 'press-house' : 'village-bakery';
    const text = fixtureText(fixture)
      .replace(from, to)
      .replace(
        'process: { kind: hand, web: 8 }',
        'process: { kind: router, toolDiameter: 8, drillBits: [2.5, 4, 4.5, 6, 6.6] }',
      );
    const { design, dish, assembly, problems } = prepare(designOf(text));
    expect(problems.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(assemblyFaults(design, dish, assembly)).toEqual([]);
  });
});

describe('housings of random dishes', () => {
  it.each(jobSeeds('housings', 1, byDay(6, 300)))('of seed %i go together or say why not', (seed) => {
    // every third random dish is for a router; the others are told why they have none
    const text = randomDesign(seed).text.replace('rib: {', 'rib: { joint: housing,');
    const reading = readDesign(text);
    if (reading.kind === 'refused') return;
    const { design, dish, assembly, problems } = prepare(reading.design);
    if (problems.some(({ severity }) => severity === 'error')) return;
    const grave = assemblyFaults(design, dish, assembly).filter(({ kind }) =>
      ['overlap', 'gap', 'mark', 'play', 'proud', 'parts'].includes(kind),
    );
    expect(grave).toEqual([]);
    expect(design.rib.joint).toBe('housing');
  });
});
