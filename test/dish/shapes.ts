/** Dish shapes for tests: that of the press house, and random ones that can be built. */
import fc from 'fast-check';
import { type DishShape, type Figure, paraboloid, radialLayout } from '../../lib/dish/index.js';

/** Changes of a shape; rib count and focal length stand for a radial layout and a paraboloid. */
export type ShapeChange = Partial<DishShape> & { readonly ribCount?: number; readonly focalLength?: number };

/** The press-house dish of the fixtures, with some things changed. */
export function shapeWith({ ribCount = 24, focalLength = 550, ...changes }: ShapeChange): DishShape {
  const panelThickness = changes.panelThickness ?? 3;
  const reflectorThickness = changes.reflectorThickness ?? 0.3;
  return {
    figure: 'panel',
    profile: paraboloid(focalLength),
    layout: radialLayout(ribCount),
    apertureRadius: 750,
    ribThickness: 12,
    seamGap: 2,
    baseHeight: 60,
    innerRadius: 51,
    facingThickness: panelThickness + reflectorThickness,
    ...changes,
    panelThickness,
    reflectorThickness,
  };
}

/** Shapes over the range that a workshop would build: ribs of 0.6 to 3 % of the radius that clear each other, panels that reach them. */
export function anyShape(figure: Figure): fc.Arbitrary<DishShape> {
  return fc
    .record({
      ribCount: fc.integer({ min: 8, max: 48 }),
      apertureRadius: fc.double({ min: 200, max: 2500, noNaN: true }),
      focalRatio: fc.double({ min: 0.27, max: 1.2, noNaN: true }),
      ribShare: fc.double({ min: 0.006, max: 0.03, noNaN: true }),
      panelShare: fc.double({ min: 0.02, max: 0.35, noNaN: true }),
      reflectorShare: fc.double({ min: 0, max: 0.05, noNaN: true }),
      gapShare: fc.double({ min: 0, max: 0.4, noNaN: true }),
      past: fc.double({ min: 1, max: 30, noNaN: true }),
    })
    .map(({ ribCount, apertureRadius, focalRatio, ribShare, panelShare, reflectorShare, gapShare, past }) => {
      const ribThickness = ribShare * apertureRadius;
      return shapeWith({
        figure,
        ribCount,
        apertureRadius,
        focalLength: 2 * apertureRadius * focalRatio,
        ribThickness,
        panelThickness: panelShare * ribThickness,
        reflectorThickness: reflectorShare * ribThickness,
        seamGap: gapShare * ribThickness,
        innerRadius: ribThickness / (2 * Math.tan(Math.PI / ribCount)) + past,
      });
    })
    .filter(({ innerRadius, apertureRadius }) => innerRadius < 0.5 * apertureRadius);
}

/** The integral of a smooth function by Romberg's scheme, to a relative 1e-12 or as far as it goes. */
export function romberg(f: (t: number) => number, from: number, to: number): number {
  let row = [((to - from) * (f(from) + f(to))) / 2];
  for (let level = 1; level <= 20; level++) {
    const step = (to - from) / 2 ** level;
    let sum = 0;
    for (let i = 1; i < 2 ** level; i += 2) sum += f(from + i * step);
    const next = [row[0]! / 2 + step * sum];
    row.forEach((value, k) => next.push(next[k]! + (next[k]! - value) / (4 ** (k + 1) - 1)));
    const done = Math.abs(next.at(-1)! - row.at(-1)!) <= 1e-12 * Math.abs(next.at(-1)!);
    row = next;
    if (done && level > 4) break;
  }
  return row.at(-1)!;
}
