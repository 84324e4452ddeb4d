/** Parts as solids of a general-purpose library (manifold-3d): what they have in common, by volume. */
import load, { type ManifoldToplevel } from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import { type AssembledPlate, type AssembledSheet, type Assembly, assemble } from '../../lib/assembly/index.js';
import { prepare } from '../../lib/index.js';
import type { Part, PartKind } from '../../lib/part/index.js';
import type { Prepared } from '../../lib/pipeline/types.js';
import { designOf, fixtureNames, fixtureText } from '../helpers/fixtures.js';
import { panelSolid, plateSolid } from '../helpers/solids.js';

let library: ManifoldToplevel;
beforeAll(async () => {
  library = await load();
  library.setup();
});

const assembled = (prepared: Prepared, parts: readonly Part[] = prepared.parts): Assembly => {
  const { design, dish, cleatStart, splices } = prepared;
  return assemble({ design, dish, parts, cleatStart, splices });
};

const isPlate = (one: Assembly['placed'][number]): one is AssembledPlate => one.form === 'plate';
const near = ({ rib }: { readonly rib?: number }, count: number) => rib === undefined || rib <= 2 || rib === count;

/** Greatest volume that two plates about rib 1 have in common, mm³. */
function commonVolume(assembly: Assembly, count: number): number {
  const solids = assembly.placed
    .filter(isPlate)
    .filter((one) => near(one, count))
    .map((one) => plateSolid(library, one));
  let greatest = 0;
  solids.forEach((a, i) => {
    for (const b of solids.slice(i + 1)) greatest = Math.max(greatest, a.intersect(b).volume());
  });
  return greatest;
}

const solidsOf = (assembly: Assembly, kind: PartKind) =>
  assembly.placed
    .filter(isPlate)
    .filter(({ part }) => part.kind === kind)
    .map((one) => plateSolid(library, one));

const changedKind = (prepared: Prepared, kind: PartKind, change: (part: Part) => Part) =>
  prepared.parts.map((part) => (part.kind === kind ? change(part) : part));

describe.each(fixtureNames)('%s', (name) => {
  const prepared = prepare(designOf(fixtureText(name)));
  const { dish } = prepared;
  const count = dish.layout.ribs.length;

  it('has no two plates in one place', () => {
    // faces that touch share slivers of rounding: 1e-6 mm over a metre and a hand's breadth
    expect(commonVolume(assembled(prepared), count)).toBeLessThan(0.5);
  });

  it.skipIf(prepared.design.hub.build !== 'layers')(
    'with a hub 0.2 mm too wide has the volume in common that the hub takes of a rib',
    () => {
      const share = (dish.innerRadius + 0.2) / dish.innerRadius;
      const parts = changedKind(prepared, 'hub', (part) => ({
        ...part,
        outline: part.outline.map((v) => ({ ...v, x: v.x * share, y: v.y * share })),
      }));
      const layer = prepared.parts.find(({ kind }) => kind === 'hub')!.thickness;
      const expected = 0.2 * dish.ribThickness * layer;
      const found = commonVolume(assembled(prepared, parts), count);
      expect(Math.abs(found / expected - 1)).toBeLessThan(0.05);
    },
  );

  it('has panels that lie on the ribs and do not run into them', () => {
    const assembly = assembled(prepared);
    const rib = assembly.placed.filter(isPlate).find(({ part }) => part.kind === 'rib')!;
    const panel = assembly.placed.find(
      (one): one is AssembledSheet => one.form === 'sheet' && one.part.kind === 'panel',
    )!;
    const [solid, sheet] = [plateSolid(library, rib), panelSolid(library, prepared, panel)];
    // the arcs of the rib's edge may pass the true curve by as much as they deviate
    const touching = dish.ribThickness * dish.profileLength * 0.01;
    expect(solid.intersect(sheet).volume()).toBeLessThan(touching);
    // half a millimetre lower the panel is well in the wood
    expect(solid.intersect(sheet.translate(0, 0, -0.5)).volume()).toBeGreaterThan(10 * touching);
    // and a tenth higher it is free of it
    expect(solid.intersect(sheet.translate(0, 0, 0.1)).volume()).toBe(0);
  });
});

describe('ribs in slots', () => {
  const prepared = prepare(designOf(fixtureText('classroom')));
  const { dish, design } = prepared;
  const count = dish.layout.ribs.length;
  const assembly = assembled(prepared);
  const [rib] = assembly.placed.filter(isPlate).filter(({ part }) => part.kind === 'rib');
  const { outline } = rib!.part;
  const [lowest, left] = [Math.min(...outline.map(({ y }) => y)), Math.min(...outline.map(({ x }) => x))];

  it('go in from above, past board and lower disc', () => {
    const [solid] = solidsOf(assembly, 'rib');
    const under = [...solidsOf(assembly, 'board'), solidsOf(assembly, 'hub')[0]!];
    for (const lift of [0, 0.5, 1, 2, 5, 20])
      for (const one of under)
        expect(solid!.translate(0, 0, lift).intersect(one).volume(), `${lift} mm`).toBeLessThan(0.01);
  });

  it('let the upper disc down between them', () => {
    const disc = solidsOf(assembly, 'hub')[1]!;
    const ribs = solidsOf(assembly, 'rib');
    for (const lift of [0, 1, 5, 20])
      for (const one of ribs)
        expect(disc.translate(0, 0, lift).intersect(one).volume(), `${lift} mm`).toBeLessThan(0.01);
    // 0.2 mm lower it is in the wood of every nose by that much, and of nothing else
    for (const one of ribs)
      expect(disc.translate(0, 0, -0.2).intersect(one).volume()).toBeCloseTo(-left * dish.ribThickness * 0.2, 2);
  });

  it('have the wood in common that too narrow a slot keeps', () => {
    // a rib 0.3 mm thicker than stated, with 0.1 mm of play: 0.1 mm of either face of each tab
    const thick = changedKind(prepared, 'rib', (part) => ({ ...part, thickness: dish.ribThickness + 0.3 }));
    const tabs = outline.filter(({ y }) => y === lowest);
    const length = tabs.slice(1).reduce((sum, v, i) => sum + (i % 2 === 0 ? v.x - tabs[i]!.x : 0), 0);
    const all = assembled(prepared, thick);
    const board = solidsOf(all, 'board')[0]!;
    expect(solidsOf(all, 'rib')[0]!.intersect(board).volume()).toBeCloseTo(
      (0.3 - design.rib.fit) * length * -lowest,
      1,
    );
  });

  it('run into each other when their noses are 3 mm longer', () => {
    expect(commonVolume(assembly, count)).toBeLessThan(0.01);
    const long = changedKind(prepared, 'rib', (part) => ({
      ...part,
      outline: part.outline.map((v) => (v.x === left ? { ...v, x: v.x - 3 } : v)),
    }));
    expect(commonVolume(assembled(prepared, long), count)).toBeGreaterThan(1);
  });
});
