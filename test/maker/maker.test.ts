/** Maker models of parts and sheets, and parts of Maker models, with makerjs itself as the other side. */
import fc from 'fast-check';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import makerjs from 'makerjs';
import { describe, expect, it } from 'vitest';
import {
  bounds,
  bulgeOfSweep,
  circle,
  clockwise,
  type Contour,
  edgesOf,
  pointOnEdge,
} from '../../lib/geometry/index.js';
import { nearestOnContour, rectangle, signedArea } from '../../lib/geometry/index.js';
import { makerExtra, partModel, sheetModel } from '../../lib/maker/index.js';
import { throughHole } from '../../lib/part/index.js';
import { type ExtraSource, readExtras } from '../../lib/parts/index.js';
import { holds } from '../helpers/seeds.js';
import { samplePart, sampleSheet } from '../helpers/drawings.js';
import { plainPart } from '../helpers/plain-part.js';
import { designOf, fixtureText } from '../helpers/fixtures.js';

const design = designOf(
  fixtureText('table-top').replace(/\nprocess:/, '\nextra: [{ file: model, material: ply5, quantity: 1 }]\nprocess:'),
);

function read(source: ExtraSource): ReturnType<typeof readExtras> {
  return readExtras(design, new Map([['model', source]]));
}

/** Greatest distance of a ring, at its corners and within its edges, from another ring. */
function farthest(ring: Contour, other: Contour): number {
  const places = edgesOf(ring).flatMap((edge) => [0, 0.3, 0.5, 0.8].map((share) => pointOnEdge(edge, share)));
  return Math.max(...places.map((place) => nearestOnContour(other, place).distance));
}

/** A ring about the origin of corners at random radii, its edges bent this way or that. */
function blob(radii: readonly number[], bends: readonly number[]): Contour {
  return radii.map((radius, i) => {
    const angle = (2 * Math.PI * i) / radii.length;
    return { x: radius * Math.cos(angle), y: radius * Math.sin(angle), bulge: bulgeOfSweep(bends[i] ?? 0) };
  });
}

describe('a part as a Maker model and back', () => {
  const count = 7;
  const ring = fc.record({
    radii: fc.array(fc.double({ min: 60, max: 90, noNaN: true }), { minLength: count, maxLength: count }),
    bends: fc.array(fc.double({ min: -0.5, max: 0.5, noNaN: true }), { minLength: count, maxLength: count }),
    hole: fc.double({ min: 1, max: 9, noNaN: true }),
    opening: fc.double({ min: 12, max: 20, noNaN: true }),
  });

  it('keeps every edge, opening and hole within a micrometre', () => {
    holds(
      fc.property(ring, ({ radii, bends, hole, opening }) => {
        const outline = blob(radii, bends);
        const inner = clockwise(circle({ x: -25, y: 0 }, opening));
        const holes = [{ ...throughHole({ x: 20, y: 5 }, 2 * hole), countersink: 2 * hole + 2 }];
        const part = { ...samplePart, outline, openings: [inner], holes };
        const { parts, problems } = read(makerExtra(partModel(part)));
        expect(problems.filter(({ severity }) => severity === 'error')).toEqual([]);
        expect(parts).toHaveLength(1);
        const [back] = parts;
        const { minX, minY } = bounds(outline);
        const home = (vertices: Contour): Contour => vertices.map((v) => ({ ...v, x: v.x + minX, y: v.y + minY }));
        const [outer, inside] = [back!.outline, ...back!.openings].map(home);
        expect(farthest(outer!, outline)).toBeLessThan(1e-3);
        expect(farthest(outline, outer!)).toBeLessThan(1e-3);
        expect(farthest(inside!, inner)).toBeLessThan(1e-3);
        expect(signedArea(inside!)).toBeLessThan(0);
        expect(back!.holes).toHaveLength(1);
        expect(Math.hypot(back!.holes[0]!.x + minX - 20, back!.holes[0]!.y + minY - 5)).toBeLessThan(1e-3);
        expect(Math.abs(back!.holes[0]!.diameter - 2 * hole)).toBeLessThan(1e-3);
      }),
      { numRuns: 60 },
    );
  });

  it('is to makerjs as large as it is to us, in closed chains, on our layers', () => {
    const model = partModel(samplePart);
    expect(model.units).toBe(makerjs.unitType.Millimeter);
    const extents = makerjs.measure.modelExtents(model)!;
    expect([extents.width, extents.height].map((size) => Number(size.toFixed(6)))).toEqual([120, 120]);
    const layers = new Set(Object.values(model.models ?? {}).map(({ layer }) => layer));
    expect([...layers].sort()).toEqual(['countersink', 'drill-4mm', 'opening', 'outline', 'scribe']);
    const outline = Object.values(model.models ?? {}).find(({ layer }) => layer === 'outline')!;
    const chains = makerjs.model.findChains(outline) as makerjs.IChain[];
    expect(chains.map(({ endless }) => endless)).toEqual([true]);
    expect(chains[0]!.pathLength).toBeCloseTo(2 * Math.PI * 60, 6);
  });

  it('of a sheet holds every line in cutting order', () => {
    const layers = Object.values(sheetModel(sampleSheet).models ?? {}).map(({ layer }) => layer);
    expect(layers).toEqual([
      'sheet-edge',
      'scribe',
      ...sampleSheet.operations.map(({ operation, diameter }) =>
        operation === 'drill' ? `drill-${diameter}mm` : operation,
      ),
    ]);
  });
});

describe('a Maker model as an extra', () => {
  // exact by definition: 1 in = 25.4 mm (international yard and pound agreement, 1959)
  it('has the size that its unit says, with holes and moved models where makerjs has them', () => {
    const plate: makerjs.IModel = {
      units: makerjs.unitType.Inch,
      models: {
        edge: new makerjs.models.RoundRectangle(4, 2, 0.25),
        holes: {
          origin: [1, 0],
          models: {
            pair: new makerjs.models.Holes(0.125, [
              [0, 1],
              [2, 1],
            ]),
          },
        },
      },
    };
    const { parts, problems } = read(makerExtra(plate));
    expect(problems).toEqual([]);
    const { maxX, maxY } = bounds(parts[0]!.outline);
    expect([maxX, maxY].map((size) => Number(size.toFixed(6)))).toEqual([101.6, 50.8]);
    const holes = parts[0]!.holes.map(({ x, y, diameter }) => [x, y, diameter].map((n) => Number(n.toFixed(6))));
    expect(holes.sort()).toEqual([
      [25.4, 25.4, 6.35],
      [76.2, 25.4, 6.35],
    ]);
  });

  it.each([
    ['no unit', { paths: { a: new makerjs.paths.Circle([0, 0], 30) } }, 'extra-no-unit'],
    ['an unknown unit', { units: 'cubit', paths: { a: new makerjs.paths.Circle([0, 0], 30) } }, 'extra-no-unit'],
    ['an open line', { units: 'mm', paths: { a: new makerjs.paths.Line([0, 0], [30, 0]) } }, 'extra-open'],
    ['a path of another kind', { units: 'mm', paths: { a: { type: 'wave', origin: [0, 0] } } }, 'extra-entity'],
    ['a place that is none', { units: 'mm', paths: { a: new makerjs.paths.Circle([NaN, 0], 30) } }, 'extra-number'],
    ['nothing', { units: 'mm' }, 'extra-no-outline'],
  ] as const)('with %s is refused', (_, model, code) => {
    const { parts, problems } = read(makerExtra(model));
    expect(parts).toEqual([]);
    expect(problems.map((problem) => problem.code)).toContain(code);
  });
});

it('is the only use of makerjs: no command loads it', () => {
  const root = fileURLToPath(new URL('../../', import.meta.url));
  const files = ['lib', 'cli'].flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.ts'))
      .map((name) => join(folder, name)),
  );
  const users = files.filter((file) =>
    /from '(?:makerjs|[./]*maker\/[^']*)'/.test(readFileSync(join(root, file), 'utf8')),
  );
  expect(users.sort()).toEqual(['lib/maker/extra.ts', 'lib/maker/model.ts']);
});

it('is a rectangle’s four lines', () => {
  const model = partModel(plainPart('plate', rectangle(0, 0, 20, 10)));
  const paths = Object.values(model.models ?? {}).find(({ layer }) => layer === 'outline')?.paths ?? {};
  expect(Object.values(paths).map(({ type }) => type)).toEqual(['line', 'line', 'line', 'line']);
});
