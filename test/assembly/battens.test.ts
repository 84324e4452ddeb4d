/** Panels under battens: where the battens lie, what they cost in light, and every fault that is planted in them. */
import load, { type ManifoldToplevel } from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import { assemble, type Assembly, type AssembledSheet, assemblyFaults } from '../../lib/assembly/index.js';
import { sheetPoint, sheetShape } from '../../lib/assembly/sheet-shape.js';
import { checkAssembly } from '../../lib/check/assembly/index.js';
import { readDesign } from '../../lib/design/index.js';
import { bounds } from '../../lib/geometry/index.js';
import { buildCutFiles, prepare } from '../../lib/pipeline.js';
import type { Part, PartKind } from '../../lib/part/index.js';
import { battenOver, stripSeamShare } from '../../lib/parts/index.js';
import { designOf } from '../helpers/fixtures.js';
import { shelfNester } from '../helpers/shelf-nester.js';
import { panelSolid, sheetSolid } from '../helpers/solids.js';

const text = `name: Dish under battens
dish: { aperture: 1000, focalLength: 380, ribs: 16 }
materials:
  ply12: { kind: plywood, thickness: 12 }
  ply15: { kind: plywood, thickness: 15 }
  hardboard: { kind: hardboard, thickness: 3 }
  foil: { kind: aluminium, thickness: 0.3 }
stock:
  - { material: ply12, size: 2440 x 1220 }
  - { material: ply15, size: 2440 x 1220 }
  - { material: hardboard, size: 2440 x 1220 }
  - { material: foil, rollWidth: 600 }
rib: { material: ply12 }
board: { material: ply15 }
panel: { material: hardboard, gap: 3, fixing: battens }
reflector: { material: foil }
process: { kind: hand }
`;

const made = prepare(designOf(text));
const { design, dish } = made;
const half = Math.PI / 16;
const partOf = (kind: PartKind, from = made): Part => from.parts.find((part) => part.kind === kind)!;
const problemsOf = (change: (text: string) => string) => prepare(designOf(change(text))).problems;
const panelKeys = (keys: string) => (all: string) => all.replace('fixing: battens', `fixing: battens, ${keys}`);

/** Height of the panels' upper face over the board in the middle plane of a bay, by the paraboloid's own formulas. */
function faceHeight(x: number): number {
  const f = 380;
  // a parallel of z = u²/4f, 0.3 mm below it: u + 0.3·sin ψ = x, by halving
  let [low, high] = [0, x];
  for (let i = 0; i < 60; i++) {
    const u = (low + high) / 2;
    if (u + 0.3 * Math.sin(Math.atan(u / (2 * f))) < x) low = u;
    else high = u;
  }
  return dish.baseHeight + (low * low) / (4 * f) - 0.3 * Math.cos(Math.atan(low / (2 * f)));
}

describe('a batten', () => {
  const batten = made.assembly.placed.find(({ part }) => part.kind === 'batten') as AssembledSheet;
  const shape = sheetShape(design, dish, batten);

  it('lies on both panels with its lower edges, over its whole length', () => {
    for (const share of [0, 0.2, 0.5, 0.8, 1])
      for (const side of [-1, 1]) {
        const at = shape.at(share * shape.length);
        const [x, y, z] = sheetPoint(shape, batten.bay, at, side * 10, 3);
        // rib 1 lies along x, and the bays on both sides half the angle away
        expect(z).toBeCloseTo(faceHeight(x * Math.cos(half) + Math.abs(y) * Math.sin(half)), 6);
      }
  });

  it('is as long as its middle layer, point by point', () => {
    const points = Array.from({ length: 4001 }, (_, i) => {
      const [x, , z] = sheetPoint(shape, batten.bay, shape.at((i / 4000) * shape.length), 0, 1.5);
      return [x, z] as const;
    });
    const length = points
      .slice(1)
      .reduce((sum, [x, z], i) => sum + Math.hypot(x - points[i]![0], z - points[i]![1]), 0);
    const { minX, maxX } = bounds(partOf('batten').outline);
    expect(maxX - minX).toBeCloseTo(length, 3);
  });

  it('ends where the panels end, and begins where it clears its neighbour by 2 mm', () => {
    const { u } = battenOver(design, dish).at(0);
    expect(2 * (u * Math.sin(half) - 10 * Math.cos(half))).toBeCloseTo(2, 6);
  });

  it('is held by screws in the middle of the gap, into the middle of the rib', () => {
    const screws = made.assembly.fasteners.filter(({ joint }) => joint === 'batten-to-rib');
    expect(screws).toHaveLength(16 * partOf('batten').holes.length);
    for (const { item, through } of screws) {
      expect(item.kind).toBe('wood-screw');
      // through a gap of 3 mm without a panel in between
      expect(item.diameter).toBeLessThanOrEqual(3);
      expect(through.map(({ part }) => part.part.kind)).toEqual(['batten', 'rib']);
    }
    const places = partOf('batten').holes.map(({ x }) => x);
    for (const [i, x] of places.slice(1).entries()) expect(x - places[i]!).toBeLessThanOrEqual(100);
  });

  it('takes from the light what mirror there is no more of', () => {
    // areas in plan: panels between ribs, mirrors between battens with 1 mm beside each
    const steps = 20_000;
    let [panels, mirrors] = [0, 0];
    for (let i = 0; i < steps; i++) {
      const u = dish.litFrom + ((dish.litTo - dish.litFrom) * (i + 0.5)) / steps;
      panels += u * Math.tan(half) - 1.5 / Math.cos(half);
      mirrors += Math.max(0, u * Math.tan(half) - 11 / Math.cos(half));
    }
    expect(stripSeamShare(design, dish)).toBeCloseTo(1 - mirrors / panels, 3);
    const pinned = prepare(designOf(text.replace('fixing: battens', 'fixing: pins')));
    expect(stripSeamShare(pinned.design, pinned.dish)).toBe(0);
  });

  it('shades a panel that is itself the mirror', () => {
    const bare = prepare(designOf(text.replace(/^reflector: .*\n/m, '').replace(/^ {2}- .*foil.*\n/m, '')));
    expect(stripSeamShare(bare.design, bare.dish)).toBeGreaterThan(0.15);
  });
});

describe('a batten as a solid (manifold-3d)', () => {
  let library: ManifoldToplevel;
  beforeAll(async () => {
    library = await load();
    library.setup();
  });
  const sheets = made.assembly.placed.filter((one) => one.form === 'sheet');
  const of = (kind: PartKind, copy: number) => sheets.find((one) => one.part.kind === kind && one.copy === copy)!;

  it('only touches the panels on both sides, and runs into them a twentieth lower', () => {
    const solid = sheetSolid(library, made, of('batten', 1));
    for (const bay of [1, 16]) {
      const panel = panelSolid(library, made, of('panel', bay));
      expect(solid.intersect(panel).volume(), `bay ${bay}`).toBeLessThan(0.2);
      expect(solid.translate(0, 0, -0.05).intersect(panel).volume(), `bay ${bay}`).toBeGreaterThan(1);
      expect(solid.translate(0, 0, 0.02).intersect(panel).volume(), `bay ${bay}`).toBe(0);
    }
  });

  it('keeps clear of its neighbour', () => {
    const solid = sheetSolid(library, made, of('batten', 1));
    expect(solid.intersect(sheetSolid(library, made, of('batten', 2))).volume()).toBe(0);
  });
});

const faults = (parts: readonly Part[], move = (assembly: Assembly) => assembly) =>
  assemblyFaults(design, dish, move(assemble({ ...made, parts })));
const changed = (kind: PartKind, change: (part: Part) => Part) =>
  made.parts.map((part) => (part.kind === kind ? change(part) : part));
const wider =
  (by: number) =>
  (part: Part): Part => ({ ...part, outline: part.outline.map((v) => ({ ...v, y: v.y + by * Math.sign(v.y) })) });

describe('planted in battens', () => {
  it('nothing is found where nothing is planted', () => {
    expect(faults(made.parts)).toEqual([]);
  });

  const plants: readonly [string, PartKind, (part: Part) => Part, object][] = [
    ['a batten that is 2 mm wider on a side', 'batten', wider(2), { kind: 'overlap' }],
    ['one that is 3 mm narrower and hangs over the valley', 'batten', wider(-3), { kind: 'gap' }],
    ['a mirror that reaches under it', 'reflector', wider(1.5), { kind: 'overlap' }],
    [
      'a pilot 0.5 mm off in the rib',
      'rib',
      (part) => ({ ...part, edgeHoles: part.edgeHoles.map((hole) => ({ ...hole, x: hole.x + 0.5 })) }),
      { kind: 'hole', joint: 'batten-to-rib' },
    ],
    [
      'a pilot 0.5 mm off the middle of the rib',
      'rib',
      (part) => ({ ...part, edgeHoles: part.edgeHoles.map((hole) => ({ ...hole, height: hole.height + 0.5 })) }),
      { kind: 'hole', joint: 'batten-to-rib' },
    ],
  ];
  it.each(plants)('%s', (_, kind, change, found) => {
    expect(faults(changed(kind, change))).toContainEqual(expect.objectContaining(found));
  });

  it('screws that come out of the rib', () => {
    const long = (assembly: Assembly): Assembly => ({
      ...assembly,
      fasteners: assembly.fasteners.map((one) =>
        one.joint === 'batten-to-rib' ? { ...one, item: { ...one.item, length: one.wood + 1 } } : one,
      ),
    });
    expect(faults(made.parts, long)).toContainEqual(
      expect.objectContaining({ kind: 'length', joint: 'batten-to-rib' }),
    );
  });
});

describe('what cannot be made is named', () => {
  const bad: readonly [string, string, string, RegExp][] = [
    ['wider than the mirror spares', 'battenWidth: 60', 'batten-width', /cover \d+ % of the mirror/],
    ['too narrow to bear', 'battenWidth: 8', 'batten-width', /overlap each panel by only 2\.5 mm/],
    [
      'screws that do not pass the gap',
      'battenScrew: 4',
      'batten-gap',
      /screws of 4 mm do not fit through a panel\.gap of 3 mm/,
    ],
    ['too stiff', 'battenMaterial: ply12', 'batten-stiff', /plywood of 12 mm .* breaks at 38 MPa/],
  ];
  it.each(bad)('%s', (_, keys, code, message) => {
    const found = problemsOf(panelKeys(keys)).find((one) => one.code === code);
    expect(found?.message).toMatch(message);
    expect(found?.severity).toBe('error');
  });

  it('pins that do not pass the gap', () => {
    const [found] = problemsOf((all) => all.replace('gap: 3', 'gap: 1')).filter(({ code }) => code === 'batten-gap');
    expect(found?.message).toMatch(/pins of 1\.2 mm do not fit/);
  });

  it('screws for which the rib is too shallow', () => {
    const shallow = (all: string) =>
      panelKeys('battenScrew: 6')(all)
        .replace('gap: 3', 'gap: 7')
        .replace('{ material: ply12 }', '{ material: ply15, rimHeight: 12, clampHole: 0 }');
    const found = problemsOf(shallow).find(({ code }) => code === 'fastener-length');
    expect(found?.message).toMatch(/no length that is sold suits the screws or pins of the battens/);
  });

  it('a material that is not listed', () => {
    const reading = readDesign(panelKeys('battenMaterial: oak')(text));
    expect(reading.problems.map(({ code }) => code)).toContain('unknown-material');
  });
});

const variants = {
  screws: text,
  pins: text.replace('gap: 3', 'gap: 2'),
  rows: text.replace('{ material: foil }', '{ material: foil, layout: rows }').replace('600', '300'),
  figure: text.replace('ribs: 16', 'ribs: 16, figure: rib'),
} as const;

describe.each(Object.entries(variants))('battens with %s', (_, variant) => {
  it('go together', () => {
    const { design: own, dish: solved, assembly, problems } = prepare(designOf(variant));
    expect(problems.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(assemblyFaults(own, solved, assembly)).toEqual([]);
  });
});

it('leaves no corner twice where the hem is as wide as its mirror', () => {
  const { outline } = partOf('reflector');
  outline.forEach((v, i) => {
    const next = outline[(i + 1) % outline.length]!;
    expect(Math.hypot(next.x - v.x, next.y - v.y)).toBeGreaterThan(0.1);
  });
});

describe.each(['screws', 'pins'] as const)('files of battens with %s', (name) => {
  it('are proven', async () => {
    const { files } = await buildCutFiles(designOf(variants[name]), new Map(), shelfNester);
    expect(checkAssembly(JSON.parse(String(files.get('job.json'))))).toEqual([]);
  });
});
