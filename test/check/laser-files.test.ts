/**
 * What a laser is given: nothing that it must not cut, and everything in an order that it can follow from top to
 * bottom. Sizes are invented: a round board of 900 mm lies in the opening of a frame of 1180 x 1150 mm.
 */
import { describe, expect, it } from 'vitest';
import { verify } from '../../lib/check/index.js';
import { defaultColours } from '../../lib/design/index.js';
import { circle, clockwise, rectangle } from '../../lib/geometry/index.js';
import { machine } from '../../lib/machining/index.js';
import { throughHole } from '../../lib/part/index.js';
import { type Drawing, drawSheet, writeDxf, writeSvg } from '../../lib/output/index.js';
import { plainPart } from '../helpers/plain-part.js';
import { laser } from '../machining/plates.js';

const parts = [
  plainPart('frame', rectangle(0, 0, 1180, 1150), { openings: [clockwise(rectangle(60, 60, 1120, 1090))] }),
  plainPart('board', circle({ x: 450, y: 450 }, 450), {
    holes: [{ ...throughHole({ x: 450, y: 450 }, 4), countersink: 8 }, throughHole({ x: 200, y: 450 }, 4)],
  }),
];
const placed = [
  { part: 'frame', copy: 1, x: 10, y: 10, rotationDeg: 0, mirrored: false },
  { part: 'board', copy: 1, x: 150, y: 130, rotationDeg: 0, mirrored: false },
];
const [sheet] = machine([{ stock: 'ply', width: 1220, height: 1220, margin: 5, placed }], parts, laser, {
  compensated: true,
});
const drawing = drawSheet(sheet!, defaultColours);

const record = {
  version: '0',
  units: 'mm',
  design: { process: { web: 1 } },
  parts: parts.map(({ id, outline, openings, holes }) => ({
    id,
    name: id,
    material: 'ply',
    thickness: 6,
    quantity: 1,
    contours: [outline, ...openings].map((ring, i) => ({
      operation: i === 0 ? 'outline' : 'opening',
      vertices: ring.map(({ x, y, bulge }) => [x, y, bulge]),
    })),
    drills: holes.map(({ x, y, diameter, depth, countersink }) => ({ x, y, diameter, depth, countersink })),
    labels: [],
  })),
  sheets: [{ file: 's', stock: 'ply', width: 1220, height: 1220, margin: 5, placed }],
  process: { kind: 'laser', kerf: 0.2, compensated: true },
};

function faults(dxf: Drawing, svg: Drawing): string[] {
  const files = new Map([
    ['job.json', JSON.stringify(record)],
    ['s.dxf', writeDxf(dxf)],
    ['s.svg', writeSvg(svg)],
  ]);
  return verify(files).faults.map(({ code, file }) => `${code} ${file}`);
}

/** The drawing with its lines sorted by layer, as a driver or a writer that knows no order would have them. */
function byLayer(one: Drawing): Drawing {
  const rank = (layer: string): number => one.layers.findIndex(({ name }) => name === layer);
  return { ...one, entities: [...one.entities].sort((a, b) => rank(a.layer) - rank(b.layer)) };
}

describe('a sheet for a laser', () => {
  it('cuts a part in the opening of another free before that opening, in the SVG as in the DXF', () => {
    const names = drawing.entities.map((entity) =>
      entity.kind === 'path' ? (entity.title ?? entity.layer) : entity.layer,
    );
    expect(names).toEqual(['drill-4mm', 'drill-4mm', 'board 1', 'opening', 'frame 1']);
    expect(writeSvg(drawing).match(/class="[^"]*"/g)).toEqual(
      ['drill-4mm', 'outline', 'opening', 'outline'].map((name) => `class="${name}"`),
    );
    expect(faults(drawing, drawing)).toEqual([]);
  });

  it('is found out when one of its files has another order, whichever it is', () => {
    expect(faults(drawing, byLayer(drawing))).toContain('order s.svg');
    expect(faults(byLayer(drawing), drawing)).toContain('order s.dxf');
    const both = faults(byLayer(drawing), byLayer(drawing));
    expect(both).toEqual(expect.arrayContaining(['order s.dxf', 'order s.svg']));
    expect(both).not.toContain('disagreement s.svg');
  });

  it('holds neither countersinks nor the edge of the sheet', () => {
    expect(drawing.layers.map(({ name }) => name)).toEqual(['drill-4mm', 'opening', 'outline']);
  });

  it.each([
    ['a countersink', 'stray-path', { kind: 'circle', layer: 'countersink', x: 600, y: 580, diameter: 8 }],
    [
      'the edge of the sheet',
      'layer',
      { kind: 'path', layer: 'sheet-edge', closed: true, vertices: rectangle(0, 0, 1220, 1220) },
    ],
  ] as const)('is found out when it holds %s', (_, code, extra) => {
    const layers = [{ name: extra.layer, colour: '#E69F00' }, ...drawing.layers];
    const altered = { ...drawing, layers, entities: [extra, ...drawing.entities] };
    expect(faults(altered, altered)).toEqual([`${code} s.dxf`, `${code} s.svg`]);
  });

  it('is found out when its SVG is drawn at another scale', () => {
    const files = new Map([
      ['job.json', JSON.stringify(record)],
      ['s.dxf', writeDxf(drawing)],
      ['s.svg', writeSvg(drawing).replace(/(width|height)="1220mm"/g, '$1="2440mm"')],
    ]);
    expect(verify(files).faults.map(({ code, file }) => `${code} ${file}`)).toEqual(['units s.svg']);
  });

  it('is found out when it is wider than its page says', () => {
    const wide = { ...drawing, width: 2440 };
    expect(faults(wide, wide)).toEqual(expect.arrayContaining(['scale s.dxf', 'scale s.svg']));
  });

  it('leaves edge and countersinks to a sheet that is cut by hand', () => {
    const sawn = machine(
      [{ stock: 'ply', width: 1220, height: 1220, margin: 5, placed }],
      parts,
      { kind: 'hand', web: 1 },
      { compensated: false },
    );
    const layers = drawSheet(sawn[0]!, defaultColours).layers.map(({ name }) => name);
    expect(layers).toEqual(expect.arrayContaining(['sheet-edge', 'countersink']));
  });
});
