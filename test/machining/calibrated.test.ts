import { describe, expect, it } from 'vitest';
import { commandedPath, commandedPoint } from '../../lib/geometry/axes.js';
import { circle, element, rectangle, reversed } from '../../lib/geometry/index.js';
import type { DrawnEntity, DrawnPath } from '../../lib/output/index.js';
import { sheetEntities } from '../../lib/output/index.js';
import { throughHole } from '../../lib/part/index.js';
import { routerProcess, shop, shopPart } from '../helpers/router-sheets.js';

const axes = { scaleX: 1.003, scaleY: 0.9985, lean: 0.002 };
/** The machine, by the definition of its axes: what it makes of a place. */
const machine = ({ x, y }: { readonly x: number; readonly y: number }) => ({
  x: 1.003 * x + 0.002 * y,
  y: 0.9985 * y,
});

/** Places along a path, 16 to each edge: of an arc by its circle, whose centre follows from chord and bulge. */
function along({ vertices, closed }: Pick<DrawnPath, 'vertices' | 'closed'>): { x: number; y: number }[] {
  return vertices.flatMap((a, i) => {
    const b = vertices[i + 1] ?? (closed ? element(vertices, 0) : undefined);
    if (b === undefined) return [];
    return Array.from({ length: 16 }, (_, k) => {
      const t = k / 16;
      if (a.bulge === 0) return { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) };
      const sweep = 4 * Math.atan(a.bulge);
      const off = (1 - a.bulge ** 2) / (4 * a.bulge);
      const [cx, cy] = [(a.x + b.x) / 2 - (b.y - a.y) * off, (a.y + b.y) / 2 + (b.x - a.x) * off];
      const [c, s] = [Math.cos(sweep * t), Math.sin(sweep * t)];
      return { x: cx + (a.x - cx) * c - (a.y - cy) * s, y: cy + (a.x - cx) * s + (a.y - cy) * c };
    });
  });
}

const disc = circle({ x: 100, y: 80 }, 60);
const part = shopPart('disc', disc, {
  openings: [reversed(rectangle(80, 70, 110, 90))],
  holes: [throughHole({ x: 100, y: 120 }, 12), throughHole({ x: 60, y: 80 }, 4), throughHole({ x: 140, y: 80 }, 6)],
});
const job = {
  parts: [part],
  placed: [{ part: 'disc', copy: 1, x: 20, y: 10, rotationDeg: 0, mirrored: false }],
  width: 240,
  height: 180,
  thickness: 12,
};
const made = shop({ ...job, process: routerProcess({ width: 6.12, bore: -0.3, axes }) });
const pathsOf = (entities: readonly DrawnEntity[], layer: string) =>
  entities.filter((one): one is DrawnPath => one.kind === 'path' && one.layer === layer);

describe('a machine whose axes are not true', () => {
  it('is sent to the places that it makes true, to a nanometre', () => {
    const { x, y } = machine(commandedPoint(axes, { x: 612.5, y: 1170.25 }));
    expect(Math.hypot(x - 612.5, y - 1170.25)).toBeLessThan(1e-9);
  });

  it('is sent along arcs that come out within a micrometre of the circle, however large', () => {
    for (const radius of [0.5, 60, 2500]) {
      const ring = circle({ x: 100, y: -40 }, radius);
      const path = commandedPath(axes, ring, true);
      for (const place of along({ vertices: path, closed: true })) {
        const { x, y } = machine(place);
        expect(Math.abs(Math.hypot(x - 100, y + 40) - radius)).toBeLessThan(0.001);
      }
    }
  });

  it('gets drawings whose lines come out where the cut belongs, for the width that the bit takes away', () => {
    const entities = sheetEntities(made.cut);
    // on the sheet the disc stands about 120, 90
    const [outline] = pathsOf(entities, 'outline');
    for (const place of along(outline!)) {
      const { x, y } = machine(place);
      expect(Math.hypot(x - 120, y - 90)).toBeCloseTo(60 + 6.12 / 2, 2);
    }
    // a hole that would come out 0.3 mm too narrow is bored on a wider circle
    const [bore] = pathsOf(entities, 'drill-12mm');
    for (const place of along(bore!)) {
      const { x, y } = machine(place);
      expect(Math.hypot(x - 120, y - 130)).toBeCloseTo((12 + 0.3 - 6.12) / 2, 2);
    }
    const drill = entities.find(({ layer }) => layer === 'drill-4mm');
    const { x, y } = machine(drill as { x: number; y: number });
    expect(Math.hypot(x - 80, y - 90)).toBeLessThan(1e-6);
  });

  it('keeps the edge of the stock where it is', () => {
    const [edge] = pathsOf(sheetEntities(made.cut), 'sheet-edge');
    expect(edge?.vertices.map(({ x, y }) => [x, y])).toContainEqual([240, 180]);
  });

  it('gets tool paths that prove right on it, and on no other', () => {
    expect(made.simulate().findings).toEqual([]);
    const onTrue = shop({ ...job, process: routerProcess({ width: 6.12, bore: -0.3 }) });
    // the files for the one machine on the other
    expect(onTrue.simulate(made.files).findings.map(({ code }) => code)).toContain('edge');
    expect(made.simulate(onTrue.files).findings.map(({ code }) => code)).toContain('edge');
  });

  it('names a bit by the size that is printed on it', () => {
    const text = [...made.files.values()].join('');
    expect(text).toContain('6 mm end mill');
    expect(made.plan.limits.tools.find(({ kind }) => kind === 'mill')).toMatchObject({ diameter: 6.12, sold: 6 });
  });
});
