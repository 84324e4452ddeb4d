/** Masses and centres of gravity against solids of a general-purpose library (manifold-3d). */
import load, { type Manifold, type ManifoldToplevel } from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import type { AssembledPlate } from '../../lib/assembly/index.js';
import { partMasses, together } from '../../lib/stand/masses.js';
import { panelSolid, plateSolid } from '../helpers/solids.js';
import { preparedOn, standOn } from './on-stand.js';

let library: ManifoldToplevel;
beforeAll(async () => {
  library = await load();
  library.setup();
});

/** Volume and its middle, from the triangles of a solid: tetrahedra to the origin. */
function moments(solid: Manifold): { readonly volume: number; readonly at: readonly [number, number, number] } {
  const { vertProperties: v, triVerts, numProp } = solid.getMesh();
  let volume = 0;
  const sum: [number, number, number] = [0, 0, 0];
  for (let i = 0; i < triVerts.length; i += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => {
      const from = triVerts[i + k]! * numProp;
      return [v[from]!, v[from + 1]!, v[from + 2]!] as const;
    }) as [readonly [number, number, number], readonly [number, number, number], readonly [number, number, number]];
    const six =
      a[0] * (b[1] * c[2] - b[2] * c[1]) + a[1] * (b[2] * c[0] - b[0] * c[2]) + a[2] * (b[0] * c[1] - b[1] * c[0]);
    volume += six / 6;
    for (const k of [0, 1, 2] as const) sum[k] += (six / 6) * ((a[k] + b[k] + c[k]) / 4);
  }
  return { volume, at: [sum[0] / volume, sum[1] / volume, sum[2] / volume] };
}

/** A plate with its through holes bored out. */
function bored(plate: AssembledPlate): Manifold {
  const { part, frame } = plate;
  const z = [
    frame.x[1] * frame.y[2] - frame.x[2] * frame.y[1],
    frame.x[2] * frame.y[0] - frame.x[0] * frame.y[2],
    frame.x[0] * frame.y[1] - frame.x[1] * frame.y[0],
  ];
  const motion = [...frame.x, 0, ...frame.y, 0, ...z, 0, ...frame.origin, 1] as const;
  const bits = part.holes
    .filter(({ depth }) => depth === 'through')
    .map(({ x, y, diameter }) =>
      library.Manifold.cylinder(part.thickness + 2, diameter / 2, diameter / 2, 64)
        .translate(x, y, -1)
        .transform(motion),
    );
  const solid = plateSolid(library, plate);
  return bits.length === 0 ? solid : solid.subtract(library.Manifold.union(bits));
}

describe.each(['press-house', 'cider-yard'] as const)('%s', (name) => {
  const prepared = preparedOn(name);
  const { assembly, design, dish } = prepared;

  it('weighs what the solids of its plates weigh, and balances where they do', () => {
    // of ribs and cleats two copies stand for all
    const plates = assembly.placed.filter((one): one is AssembledPlate => one.form === 'plate' && one.copy <= 2);
    const ours = partMasses(design, dish, plates);
    const wanted = plates.map((plate) => {
      const { volume, at } = moments(bored(plate));
      return { name: '', kg: volume * 1e-9 * design.materials[plate.part.material]!.densityKgPerM3, at };
    });
    ours.forEach(({ kg, at }, i) => {
      expect(Math.abs(kg / wanted[i]!.kg - 1)).toBeLessThan(0.001);
      for (const k of [0, 1, 2] as const) expect(Math.abs(at[k] - wanted[i]!.at[k])).toBeLessThan(0.5);
    });
    expect(together('', ours).kg / together('', wanted).kg).toBeCloseTo(1, 3);
  });

  it('weighs what its panels weigh, within one in a hundred, and balances where they do', () => {
    const panel = assembly.placed.find(({ form, part }) => form === 'sheet' && part.kind === 'panel')!;
    if (panel.form !== 'sheet') throw new Error('no panel');
    const [ours] = partMasses(design, dish, [panel]);
    const { volume, at } = moments(panelSolid(library, prepared, panel));
    const kg = volume * 1e-9 * design.materials[panel.part.material]!.densityKgPerM3;
    expect(Math.abs(ours!.kg / kg - 1)).toBeLessThan(0.01);
    for (const k of [0, 1, 2] as const) expect(Math.abs(ours!.at[k] - at[k])).toBeLessThan(2);
  });

  it('adds up to the masses that the book states', () => {
    const { values, cradle } = standOn(prepared);
    const isStand = ({ part }: { readonly part: { readonly kind: string } }) => part.kind === 'stand';
    const dishKg = together(
      '',
      partMasses(
        design,
        dish,
        assembly.placed.filter((one) => !isStand(one)),
      ),
    ).kg;
    // screws and bolts are the rest
    expect(values.dishKg).toBeGreaterThan(dishKg);
    expect(values.dishKg).toBeLessThan(1.03 * dishKg);
    const moving = partMasses(
      design,
      dish,
      assembly.placed.filter((one) => !isStand(one) || /arm|cross|flange/.test(one.part.id)),
    );
    const { kg, at } = together('', moving);
    expect(values.tiltingKg / kg).toBeCloseTo(1, 1);
    expect(Math.abs(values.below - (cradle.axis - at[2]))).toBeLessThan(5);
  });
});
