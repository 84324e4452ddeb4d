import { describe, expect, it } from 'vitest';
import { type JobRecord, recordPart, writeJob } from '../../lib/output/index.js';
import { lineMark, textMark, throughHole } from '../../lib/part/index.js';
import { hostileText, placedRibOutline } from '../helpers/drawings.js';
import { plainPart } from '../helpers/plain-part.js';

const rib = plainPart('rib', placedRibOutline(), {
  kind: 'rib',
  name: hostileText,
  material: 'ply-12',
  thickness: 11.6,
  quantity: 24,
  marks: [
    lineMark([
      { x: 1.23456789, y: -0, bulge: 1e-7 },
      { x: 100, y: 0, bulge: 0 },
    ]),
    textMark('R{n}', { x: 2 / 3, y: 5 }, 8, Math.PI / 6),
  ],
  holes: [throughHole({ x: 1 / 3, y: 2 }, 4)],
  notes: ['not in the record'],
});

const record: JobRecord = {
  version: '0.1.0',
  units: 'mm',
  seed: 1,
  design: { name: 'press house', stock: [{ count: Infinity }] },
  dish: { rimAngle: 0.12345678901234 },
  parts: [recordPart(rib)],
  fasteners: [{ joint: 'hub-bolt', item: 'bolt', size: 'M8', diameter: 8, length: 90, count: 1 }],
  sheets: [
    {
      file: 'sheets/ply-12-1',
      stock: 'ply-12',
      width: 2440,
      height: 1220,
      margin: 10,
      placed: [{ part: 'rib', copy: 1, x: 100.00000049, y: 20, rotationDeg: 0.123456789012, mirrored: false }],
    },
  ],
  process: { kind: 'router', toolDiameter: 6, compensated: true },
  optics: { spot: 1e-9 },
  problems: [],
  offcuts: [{ sheet: 'sheets/ply-12-1', x: 1000, y: 0, width: 1440, height: 1220 }],
  extras: [],
};

describe('job.json', () => {
  const text = writeJob(record);
  const read = JSON.parse(text) as JobRecord;

  it('has the fields of the contract and no others', () => {
    expect(Object.keys(read).sort()).toEqual(
      [
        'version',
        'units',
        'seed',
        'design',
        'dish',
        'parts',
        'fasteners',
        'sheets',
        'process',
        'optics',
        'problems',
        'offcuts',
        'extras',
      ].sort(),
    );
    expect(Object.keys(read.parts[0]!).sort()).toEqual(
      ['id', 'name', 'material', 'thickness', 'quantity', 'contours', 'drills', 'labels'].sort(),
    );
  });

  it('holds the lettering of a part, its direction in degrees', () => {
    expect(read.parts[0]!.labels).toEqual([
      { text: 'R{n}', x: 0.666667, y: 5, height: 8, angleDeg: 30, face: 'front' },
    ]);
  });

  it('keeps places within 1e-6 mm and arcs as well', () => {
    const vertices = read.parts[0]!.contours[0]!.vertices;
    placedRibOutline().forEach(({ x, y, bulge }, i) => {
      const [gotX, gotY, gotBulge] = vertices[i]!;
      expect(Math.hypot(gotX - x, gotY - y)).toBeLessThan(1e-6);
      expect(Math.abs(gotBulge - bulge)).toBeLessThan(1e-12);
    });
    expect(read.parts[0]!.contours[1]!.vertices[0]).toEqual([1.234568, 0, 1e-7]);
    expect(read.parts[0]!.drills[0]).toEqual({ x: 0.333333, y: 2, diameter: 4, depth: 'through' });
    expect(read.sheets[0]!.placed[0]).toEqual({
      part: 'rib',
      copy: 1,
      x: 100,
      y: 20,
      rotationDeg: 0.123456789012,
      mirrored: false,
    });
  });

  it('rounds nothing else to a place: an angle, a small number', () => {
    expect(read.dish).toEqual({ rimAngle: 0.123456789012 });
    expect(read.optics).toEqual({ spot: 1e-9 });
  });

  it('marks an open scribe, and nothing else, as open', () => {
    expect(read.parts[0]!.contours.map(({ closed }) => closed)).toEqual([undefined, false]);
  });

  it('gives names back as they were', () => {
    expect(read.parts[0]!.name).toBe(hostileText);
    const odd = '[\n 1,\n 2\n]';
    expect((JSON.parse(writeJob({ ...record, design: odd })) as JobRecord).design).toBe(odd);
  });

  it('puts a vertex on one line', () => {
    expect(text).toMatch(/\n +\[1\.234568, 0, 1e-7\],\n/);
  });

  it('holds null where JSON has no number, but refuses a place that is none', () => {
    expect(read.design).toEqual({ name: 'press house', stock: [{ count: null }] });
    const part = recordPart({ ...rib, holes: [throughHole({ x: NaN, y: 0 }, 4)] });
    expect(() => writeJob({ ...record, parts: [part] })).toThrow(/cannot write NaN/);
  });
});
