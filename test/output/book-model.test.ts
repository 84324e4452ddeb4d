import { describe, expect, it } from 'vitest';
import { facetAt } from '../../lib/dish/index.js';
import { signedArea } from '../../lib/geometry/index.js';
import { prepare } from '../../lib/index.js';
import { dishModel } from '../../lib/output/book/model.js';
import { type SolidFace, facesOf, placed, type Role, type Vec3 } from '../../lib/output/illustrate/solids.js';
import { fixture, fixtureNames } from '../helpers/fixtures.js';

function modelOf(name: (typeof fixtureNames)[number]) {
  const prepared = prepare(fixture(name));
  const { dish } = prepared;
  const facets = Array.from({ length: 9 }, (_, i) =>
    facetAt(dish, dish.litFrom + ((dish.litTo - dish.litFrom) * i) / 8),
  );
  return { ...prepared, facets, model: dishModel({ ...prepared, facets, battens: [] }) };
}

const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** Volume by the divergence theorem: fans of tetrahedra over every ring, holes taking away by their own sense. */
function volume(faces: readonly SolidFace[]): number {
  let six = 0;
  for (const { ring, holes } of faces)
    for (const each of [ring, ...holes])
      for (let i = 1; i + 1 < each.length; i += 1) six += dot(each[0]!, cross(each[i]!, each[i + 1]!));
  return six / 6;
}

/** Edges that are not walked once each way: none in a closed solid whose faces all look outward. */
function openEdges(faces: readonly SolidFace[]): number {
  const key = (p: Vec3) => p.map((value) => value.toFixed(6)).join(' ');
  const walked = new Map<string, number>();
  for (const { ring, holes } of faces)
    for (const each of [ring, ...holes])
      each.forEach((from, i) => {
        const to = each[(i + 1) % each.length]!;
        const [a, b] = [key(from), key(to)];
        walked.set(`${a}>${b}`, (walked.get(`${a}>${b}`) ?? 0) + 1);
        walked.set(`${b}>${a}`, (walked.get(`${b}>${a}`) ?? 0) - 1);
      });
  return [...walked.values()].filter((count) => count !== 0).length;
}

describe.each(fixtureNames)('the model of %s', (name) => {
  const { model, dish, design, parts, facets } = modelOf(name);
  const solid = (role: Role) => {
    const found = model.solids.find((each) => each.role === role);
    if (!found) throw new Error(`no ${role}`);
    return found;
  };

  it('is made of closed solids that are turned inside in', () => {
    for (const each of model.solids) {
      const faces = facesOf(each.shape);
      expect(openEdges(faces), each.name).toBe(0);
      expect(volume(faces), each.name).toBeGreaterThan(0);
    }
  });

  it('has as many of each as are cut', () => {
    const quantity = (kind: string) =>
      parts.filter((part) => part.kind === kind).reduce((sum, part) => sum + part.quantity, 0);
    for (const role of ['rib', 'panel', 'hub', 'cleat'] as const) {
      const of = model.solids.filter((each) => each.role === role);
      expect(
        of.reduce((sum, { instances }) => sum + instances.length, 0),
        role,
      ).toBe(quantity(role));
    }
  });

  it('has ribs of the volume of their outline', () => {
    const rib = parts.find((part) => part.kind === 'rib');
    const area = rib && [rib.outline, ...rib.openings].reduce((sum, ring) => sum + signedArea(ring), 0);
    const expected = (area ?? 0) * dish.ribThickness;
    // chords within half a millimetre of the curve
    expect(Math.abs(volume(facesOf(solid('rib').shape)) / expected - 1)).toBeLessThan(0.01);
  });

  it('lays each panel between its two ribs: neighbours leave the seam gap at the mirror, and no more', () => {
    const { shape, instances } = solid('mirror');
    if (shape.kind !== 'bent') throw new Error('the mirror is not bent');
    const [first, second] = instances;
    const rim = shape.sections.at(-1);
    if (!first || !second || !rim) throw new Error('too few panels');
    const left = placed([rim.top[0], rim.halfWidth, rim.top[1]], first, 0);
    const right = placed([rim.top[0], -rim.halfWidth, rim.top[1]], second, 0);
    expect(Math.hypot(left[0] - right[0], left[1] - right[1], left[2] - right[2])).toBeCloseTo(design.panel.gap, 6);
  });

  it('puts the mirror’s mid-line on the paraboloid, as far as the figure does', () => {
    if (dish.figure !== 'panel') return;
    for (const { u, z } of facets) expect(z).toBeCloseTo((u * u) / (4 * dish.profile.focusHeight), 9);
    const { shape } = solid('mirror');
    if (shape.kind !== 'bent') throw new Error('the mirror is not bent');
    for (const { top } of shape.sections)
      expect(top[1] - dish.baseHeight).toBeCloseTo((top[0] * top[0]) / (4 * dish.profile.focusHeight), 9);
  });

  it('rests the panels on the ribs: at the rib the underside is as high as the rib’s top', () => {
    const { shape } = solid('panel');
    if (shape.kind !== 'bent') throw new Error('the panel is not bent');
    const rim = shape.sections.at(-1);
    expect(rim?.bottom[1]).toBeCloseTo(dish.rimEndHeight, 3);
  });
});
