/** The dish goes together; and each fault that a builder would meet at the bench is found when it is planted. */
import { describe, expect, it } from 'vitest';
import { type Assembly, assemble, type AssemblyFault, assemblyFaults } from '../../lib/assembly/index.js';
import { prepare, readDesign } from '../../lib/index.js';
import type { Vertex } from '../../lib/geometry/index.js';
import type { Part, PartKind } from '../../lib/part/index.js';
import type { Prepared } from '../../lib/pipeline/types.js';
import { designOf, allFixtureNames, fixtureText } from '../helpers/fixtures.js';
import { randomDesign } from '../helpers/random-design.js';
import { byDay, jobSeeds } from '../helpers/seeds.js';

const fixtures = new Map(allFixtureNames.map((name) => [name, prepare(designOf(fixtureText(name)))]));

/** A change of every part of a kind. */
type Change = (part: Part) => Part;

function withParts(prepared: Prepared, kind: PartKind, change: Change): Prepared['parts'] {
  return prepared.parts.map((part) => (part.kind === kind ? change(part) : part));
}

function faultsOf(prepared: Prepared, parts: Prepared['parts'] = prepared.parts, move = (a: Assembly) => a) {
  const { design, dish, cleatStart, splices } = prepared;
  return assemblyFaults(design, dish, move(assemble({ design, dish, parts, cleatStart, splices })));
}

describe.each(allFixtureNames)('%s', (name) => {
  it('goes together', () => {
    expect(faultsOf(fixtures.get(name)!)).toEqual([]);
  });
});

describe('random dishes', () => {
  it.each(jobSeeds('assembly', 1, byDay(8, 300)))('of seed %i go together or say why not', (seed) => {
    const reading = readDesign(randomDesign(seed).text);
    if (reading.kind === 'refused') return;
    const prepared = prepare(reading.design);
    if (prepared.problems.some(({ severity }) => severity === 'error')) return;
    const grave = faultsOf(prepared).filter(({ kind }) =>
      ['overlap', 'gap', 'hole', 'mark', 'count', 'play', 'proud', 'parts'].includes(kind),
    );
    expect(grave).toEqual([]);
  });
});

const moved =
  (dx: number, dy: number): Change =>
  (part) => ({
    ...part,
    holes: part.holes.map((hole, i) => (i === 0 ? { ...hole, x: hole.x + dx, y: hole.y + dy } : hole)),
  });

const grown =
  (share: number): Change =>
  (part) => ({ ...part, outline: part.outline.map((v) => ({ ...v, x: v.x * share, y: v.y * share })) });

const demo = fixtures.get('press-house')!;
const radius = demo.dish.innerRadius;

/** Planted in the press house's dish: what, where, how, and what is found. */
const plants: readonly [string, PartKind, Change, Partial<AssemblyFault>][] = [
  ['a pilot 0.5 mm off in the board', 'board', moved(0.5, 0), { kind: 'hole', joint: 'cleat-to-board' }],
  ['a pilot 0.1 mm off in the board', 'board', moved(0, 0.1), { kind: 'hole', joint: 'cleat-to-board' }],
  ['a pilot 0.5 mm off in the rib', 'rib', moved(0.5, 0), { kind: 'hole', joint: 'cleat-to-rib' }],
  [
    'a pilot missing in the rib',
    'rib',
    (part) => ({ ...part, holes: part.holes.slice(1) }),
    { kind: 'hole', joint: 'cleat-to-rib', off: null },
  ],
  ['a pilot as wide as the screw', 'board', wider(4), { kind: 'hole-size', joint: 'cleat-to-board' }],
  [
    'a clearance hole narrower than the screw',
    'cleat',
    wider(3.5),
    { kind: 'hole-size', joint: 'cleat-to-board', part: 'cleat 1' },
  ],
  ['a hub 0.2 mm too wide', 'hub', grown((radius + 0.2) / radius), { kind: 'overlap' }],
  ['a hub 0.05 mm too wide', 'hub', grown((radius + 0.05) / radius), { kind: 'overlap' }],
  [
    'a dowel hole missing in the hub',
    'hub',
    (part) => ({ ...part, holes: part.holes.slice(0, -1) }),
    { kind: 'count', joint: 'hub-dowel' },
  ],
  [
    'a dowel hole missing in the board',
    'board',
    (part) => ({ ...part, holes: part.holes.filter(({ diameter }) => diameter !== demo.design.hub.dowelDiameter) }),
    { kind: 'hole', joint: 'hub-dowel' },
  ],
  [
    'a panel that overlaps its neighbour',
    'panel',
    (part) => ({ ...part, outline: part.outline.map((v) => ({ ...v, y: v.y + 1.5 * Math.sign(v.y) })) }),
    { kind: 'overlap', between: ['panel 1', 'the next panel'] },
  ],
  [
    'a rib 0.1 mm too high',
    'rib',
    (part) => ({ ...part, outline: part.outline.map((v) => (v.y > 30 ? { ...v, y: v.y + 0.1 } : v)) }),
    { kind: 'overlap', between: ['panel 1', 'rib 1'] },
  ],
  [
    'a rib 0.1 mm too low',
    'rib',
    (part) => ({ ...part, outline: part.outline.map((v) => (v.y > 30 ? { ...v, y: v.y - 0.1 } : v)) }),
    { kind: 'gap', between: ['panel 1', 'rib 1'] },
  ],
  [
    'a rib scribed on its other face',
    'rib',
    (part) => ({ ...part, marks: part.marks.map((mark) => ({ ...mark, face: 'back' as const })) }),
    { kind: 'mark', part: 'rib' },
  ],
  ['a screw too close to its rib for a driver', 'cleat', moved(0, -14), { kind: 'reach', joint: 'cleat-to-board' }],
  [
    'a cleat’s line 2 mm off its middle',
    'rib',
    (part) => ({
      ...part,
      marks: part.marks.map((mark) =>
        mark.kind === 'line' ? { ...mark, vertices: mark.vertices.map((v) => ({ ...v, x: v.x + 2 })) } : mark,
      ),
    }),
    { kind: 'mark', part: 'rib' },
  ],
];

const laser = fixtures.get('classroom')!;
const inner = laser.dish.innerRadius;

/** Narrows every slot of the board by moving the long sides together. */
const narrowSlots =
  (by: number): Change =>
  (part) => ({
    ...part,
    openings: part.openings.map((ring) => {
      const [a, b, c, d] = ring as [Vertex, Vertex, Vertex, Vertex];
      const [ux, uy] = [(b.x - a.x) / Math.hypot(b.x - a.x, b.y - a.y), (b.y - a.y) / Math.hypot(b.x - a.x, b.y - a.y)];
      const moved = (v: Vertex, sign: number) => ({
        ...v,
        x: v.x + (sign * by * ux) / 2,
        y: v.y + (sign * by * uy) / 2,
      });
      return [moved(a, 1), moved(b, -1), moved(c, -1), moved(d, 1)];
    }),
  });

/** The bottoms of the disc's slots moved outward. */
const tighterDisc =
  (by: number): Change =>
  (part) => ({
    ...part,
    outline: part.outline.map((v) => {
      const radius = Math.hypot(v.x, v.y);
      return radius < inner + 1 ? { ...v, x: v.x * (1 + by / radius), y: v.y * (1 + by / radius) } : v;
    }),
  });

const deeperTabs =
  (by: number): Change =>
  (part) => ({ ...part, outline: part.outline.map((v) => (v.y < 0 ? { ...v, y: v.y - by } : v)) });

/** Planted in the dish whose ribs go in slots. */
const slotPlants: readonly [string, PartKind, Change, Partial<AssemblyFault>][] = [
  ['slots 0.2 mm too narrow', 'board', narrowSlots(0.2), { kind: 'overlap' }],
  ['slots 0.05 mm too narrow', 'board', narrowSlots(0.05), { kind: 'play', wanted: 0.1 }],
  ['slots 0.2 mm too wide', 'board', narrowSlots(-0.2), { kind: 'play', wanted: 0.1 }],
  ['a slot missing', 'board', (part) => ({ ...part, openings: part.openings.slice(1) }), { kind: 'overlap' }],
  [
    'a slot too many',
    'board',
    (part) => ({
      ...part,
      openings: [...part.openings, part.openings[0]!.map((v) => ({ ...v, x: v.x - 40, y: v.y + 60 }))],
    }),
    { kind: 'parts', found: 32, wanted: 33 },
  ],
  ['tabs 0.3 mm too long', 'rib', deeperTabs(0.3), { kind: 'proud', part: 'rib' }],
  ['a hub 0.2 mm too tight', 'hub', tighterDisc(0.2), { kind: 'overlap' }],
  ['a hub 0.2 mm too loose', 'hub', tighterDisc(-0.2), { kind: 'gap' }],
  ['a disc of the hub missing', 'hub', (part) => ({ ...part, quantity: 1 }), { kind: 'parts', found: 1, wanted: 2 }],
  [
    'noses 0.2 mm too low for the upper disc',
    'rib',
    (part) => ({
      ...part,
      outline: part.outline.map((v) => (v.x < 1e-6 && Math.abs(v.y - noseTop) < 1e-6 ? { ...v, y: v.y - 0.2 } : v)),
    }),
    { kind: 'gap', between: ['hub 2', 'rib 1'] },
  ],
  [
    'noses 0.2 mm too high for the upper disc',
    'rib',
    (part) => ({
      ...part,
      outline: part.outline.map((v) => (v.x < 1e-6 && Math.abs(v.y - noseTop) < 1e-6 ? { ...v, y: v.y + 0.2 } : v)),
    }),
    { kind: 'overlap', between: ['rib 1', 'hub 2'] },
  ],
  [
    'ribs whose base stays off the board',
    'rib',
    (part) => ({ ...part, outline: part.outline.map((v) => (v.y === 0 ? { ...v, y: 0.2 } : v)) }),
    { kind: 'gap', between: ['rib 1', 'the board'] },
  ],
];
const noseTop = laser.assembly.placed
  .filter(({ part }) => part.kind === 'hub')
  .map((disc) => (disc.form === 'plate' ? disc.frame.origin[2] : 0))[1]!;

describe('a planted fault of ribs in slots is found', () => {
  it.each(slotPlants)('%s', (_, kind, change, fault) => {
    expect(faultsOf(laser, withParts(laser, kind, change))).toContainEqual(expect.objectContaining(fault));
  });
});

function wider(diameter: number): Change {
  return (part) => ({ ...part, holes: part.holes.map((hole) => ({ ...hole, diameter })) });
}

describe('a planted fault of a part is found', () => {
  it.each(plants)('%s', (_, kind, change, fault) => {
    expect(faultsOf(demo, withParts(demo, kind, change))).toContainEqual(expect.objectContaining(fault));
  });
});

describe('a planted fault of the assembly is found', () => {
  it('a cleat on the wrong side of its rib', () => {
    const across = (assembly: Assembly): Assembly => ({
      ...assembly,
      placed: assembly.placed.map((one) => {
        if (one.form !== 'plate' || one.part.kind !== 'cleat' || one.copy !== 1) return one;
        // rib 1 lies along x: half a turn about the cleat's middle, on the other side
        const { origin, x, y } = one.frame;
        const turned = { origin: [2 * 405 - origin[0], -origin[1], 0], x: [-x[0], -x[1], 0], y: [-y[0], -y[1], 0] };
        return { ...one, frame: turned as unknown as typeof one.frame };
      }),
    });
    expect(faultsOf(demo, demo.parts, across)).toContainEqual(expect.objectContaining({ kind: 'mark', part: 'rib' }));
  });

  it('a screw 3 mm too long', () => {
    const longer = (assembly: Assembly): Assembly => ({
      ...assembly,
      fasteners: assembly.fasteners.map((one) => ({
        ...one,
        item: { ...one.item, length: (one.item.length ?? 0) + 5 },
      })),
    });
    const found = faultsOf(demo, demo.parts, longer);
    expect(found).toContainEqual(expect.objectContaining({ kind: 'length', joint: 'cleat-to-board' }));
    expect(found).toContainEqual(expect.objectContaining({ kind: 'length', joint: 'cleat-to-rib' }));
  });
});

describe('what is not to be had is told with its key', () => {
  it.each([
    ['hub: { radius: 60, dowels: 2, dowelDiameter: 8 }', []],
    ['cleat: { screw: 6, width: 20, ribScrews: 2 }', ['fastener-length']],
    ['rib: { material: birch12, pilotDiameter: 5 }', ['hole-size']],
  ])('%s', (line, codes) => {
    const key = line.split(':')[0]!;
    const text = fixtureText('press-house');
    const stated = new RegExp(`^${key}: .*$`, 'm');
    const design = designOf(
      stated.test(text) ? text.replace(stated, line) : text.replace(/^vessel:/m, `${line}\nvessel:`),
    );
    expect([...new Set(prepare(design).problems.map(({ code }) => code))]).toEqual(expect.arrayContaining([...codes]));
  });
});

describe('a joint that cannot be made is told with what would do', () => {
  const classroom = fixtureText('classroom');
  const problemsOf = (text: string) => {
    const reading = readDesign(text);
    return reading.kind === 'refused' ? reading.problems : prepare(reading.design).problems;
  };
  it.each([
    [
      'no screw for cleats of 3 mm',
      'rib: { material: ply3',
      'rib: { joint: screwed-cleat, material: ply3',
      'rib-joint',
      /no screws/,
    ],
    [
      'no base for tabs',
      'rib: { material: ply3',
      'rib: { toeRadius: 60, material: ply3',
      'rib-joint',
      /has only \d.*for tabs/,
    ],
    [
      'play that eats the tabs',
      'rib: { material: ply3',
      'rib: { fit: 1.8, material: ply3',
      'rib-joint',
      /play of 1\.8/,
    ],
    ['slots without wood between them', 'hub: { bolt: M5', 'hub: { radius: 14, bolt: M5', 'set-back', /slots/],
    ['discs higher than the ribs', 'ribs: 16', 'ribs: 16\n  baseHeight: 12', 'hub', /two slotted discs/],
    ['three discs', 'hub: { bolt: M5', 'hub: { layers: 3, bolt: M5', 'hub', /has 2, not 3/],
    ['a bolt through the noses', 'hub: { bolt: M5', 'hub: { bolt: M16, dowels: 0', 'hub-bolt', /noses|leaves/],
  ])('%s', (_, from, to, code, message) => {
    expect(classroom).toContain(from);
    expect(problemsOf(classroom.replace(from, to))).toContainEqual(
      expect.objectContaining({ code, message: expect.stringMatching(message) as string }),
    );
  });

  it('glued cleats with screws', () => {
    const text = fixtureText('table-top').replace('hub: {', 'cleat: { downScrews: 2 }\nhub: {');
    expect(problemsOf(text)).toContainEqual(expect.objectContaining({ code: 'rib-joint' }));
  });

  it('panels glued over the joints of a board that comes apart', () => {
    const text = fixtureText('village-bakery').replace('panel: { ', 'panel: { fixing: glue, ');
    expect(problemsOf(text)).toContainEqual(
      expect.objectContaining({ code: 'panels-over-joints', severity: 'warning' }),
    );
  });

  it('tee nuts that find no place', () => {
    const text = fixtureText('village-bakery').replace('splice: bolted', 'splice: bolted, spliceWidth: 30');
    expect(problemsOf(text)).toContainEqual(expect.objectContaining({ code: 'splice-bolt' }));
  });
});
