import { XMLParser } from 'fast-xml-parser';
import { describe, expect, it } from 'vitest';
import { Unreadable } from '../../lib/check/drawn.js';
import { readDxfLines } from '../../lib/check/dxf-reader.js';
import { parseRecord, readJob } from '../../lib/check/job-reader.js';
import { readPathData } from '../../lib/check/svg-path.js';
import { readSvg } from '../../lib/check/svg-reader.js';
import { writeDxf, writeSvg } from '../../lib/output/index.js';
import { sampleDrawing } from '../helpers/drawings.js';
import { readDxf as readOtherwise } from '../helpers/read-dxf.js';
import { plainDxf, plainSvg } from '../helpers/plain-files.js';

const drawing = sampleDrawing();

describe('the reader of DXF', () => {
  it('reads what dxf-parser, an independent library, reads', () => {
    const text = writeDxf(drawing);
    const { sheet, unit } = readDxfLines(text);
    const other = readOtherwise(text);
    expect(unit).toBe(4);
    expect(other.entities.length).toBe(sheet.entities.length);
    sheet.entities.forEach((entity, i) => {
      const theirs = other.entities[i] as unknown as {
        layer: string;
        vertices?: { x: number; y: number; bulge?: number }[];
        center?: { x: number; y: number };
        radius?: number;
        shape?: boolean;
      };
      expect(theirs.layer).toBe(entity.layer);
      if (entity.kind === 'circle') {
        expect([theirs.center?.x, theirs.center?.y, theirs.radius]).toEqual([entity.x, entity.y, entity.diameter / 2]);
      } else {
        expect(theirs.vertices?.map(({ x, y, bulge = 0 }) => ({ x, y, bulge }))).toEqual(entity.line.vertices);
        expect(theirs.shape ?? false).toBe(entity.line.closed);
      }
    });
  });

  it.each([
    ['an empty file', '', 'cut short'],
    ['a line that is no code', 'x\nSECTION\n', 'group code'],
    [
      'a file without its end',
      plainDxf(readDxfLines(writeDxf(drawing)).sheet).replace(/\s*0\s+EOF\s*$/, ''),
      'cut short',
    ],
    ['a spline', writeDxf(drawing).replace('CIRCLE', 'SPLINE'), 'neither LWPOLYLINE nor CIRCLE'],
    ['a part in paper space', writeDxf(drawing).replace(/CIRCLE\n5\n/, 'CIRCLE\n67\n1\n5\n'), 'does not belong'],
    ['a mirrored extrusion', writeDxf(drawing).replace(/CIRCLE\n5\n/, 'CIRCLE\n230\n-1\n5\n'), 'does not belong'],
    ['a frozen layer', writeDxf(drawing).replace(/(\noutline\n62\n\d+\n70\n)0/, '$11'), 'hidden'],
    ['a number beyond all', writeDxf(drawing).replace(/(CIRCLE\n(?:.*\n){16}40\n)[\d.]+/, '$11e300'), 'kilometre'],
  ])('refuses %s', (_, text, message) => {
    expect(() => readDxfLines(text)).toThrow(Unreadable);
    expect(() => readDxfLines(text)).toThrow(message);
  });
});

describe('the reader of SVG', () => {
  it('finds as many shapes as fast-xml-parser, an independent library, and their circles', () => {
    const text = writeSvg(drawing);
    const { sheet, scale } = readSvg(text);
    const parsed = new XMLParser({
      ignoreAttributes: false,
      isArray: (name) => ['g', 'path', 'circle'].includes(name),
    }).parse(text) as {
      svg: { g: { path?: unknown[]; circle?: { '@_cx': string; '@_cy': string; '@_r': string }[] }[] };
    };
    const circles = parsed.svg.g.flatMap(({ circle = [] }) => circle);
    const paths = parsed.svg.g.flatMap(({ path = [] }) => path);
    expect(scale).toBe(1);
    expect(sheet.entities.length).toBe(circles.length + paths.length);
    expect(sheet.entities.flatMap((entity) => (entity.kind === 'circle' ? [entity] : []))).toEqual(
      circles.map((circle) => ({
        kind: 'circle',
        layer: expect.any(String) as string,
        x: Number(circle['@_cx']),
        y: sheet.height - Number(circle['@_cy']),
        diameter: 2 * Number(circle['@_r']),
      })),
    );
  });

  it('reads arcs as SVG 1.1 (second edition, 8.3.8) has them', () => {
    // the four arcs between the same ends, of radius 10: large or not, sweep flag or not
    const bulgeOf = (large: number, sweep: number) =>
      readPathData(`M 0 0 A 10 10 0 ${large} ${sweep} 10 10`).vertices[0]?.bulge;
    const quarter = Math.tan(Math.PI / 8);
    const rest = Math.tan((3 * Math.PI) / 8);
    expect(bulgeOf(0, 1)).toBeCloseTo(quarter, 12);
    expect(bulgeOf(0, 0)).toBeCloseTo(-quarter, 12);
    expect(bulgeOf(1, 1)).toBeCloseTo(rest, 12);
    expect(bulgeOf(1, 0)).toBeCloseTo(-rest, 12);
  });

  const plain = plainSvg(readDxfLines(writeDxf(drawing)).sheet);
  it.each([
    ['no XML', 'M 0 0', 'well-formed'],
    ['a document type', `<!DOCTYPE svg [<!ENTITY a "aaaa">]>${plain}`, 'document type'],
    ['an entity', plain.replace('<g', '&a;<g'), 'well-formed'],
    // SVG 2, 8.12: moves what it stands on with the viewport instead of with its group
    ['another vector effect', plain.replace('<path', '<path vector-effect="fixed-position"'), 'fixed-position'],
    ['a transform', plain.replace('<g', '<g transform="scale(2)"'), 'transform'],
    ['a style', plain.replace('<g', '<style>path{}</style><g'), 'does not belong'],
    ['a page in inches', plain.replaceAll('mm"', 'in"'), 'not in mm'],
    ['a curve', plain.replace(/d="M [^"]*"/, 'd="M 0 0 C 1 1 2 2 3 3"'), 'something other than'],
    ['an ellipse', plain.replace(/d="M [^"]*"/, 'd="M 0 0 A 5 6 0 0 1 3 3"'), 'not circular'],
    ['groups in groups', '<g>'.repeat(100_000), 'does not belong'],
  ])('refuses %s', (_, text, message) => {
    expect(() => readSvg(text)).toThrow(Unreadable);
    expect(() => readSvg(text)).toThrow(message);
  });
});

describe('the reader of the record', () => {
  it.each([
    ['no JSON', '{', 'not JSON'],
    ['another kind of JSON', '[]', 'the whole'],
    ['deep nesting', '['.repeat(200_000), 'not JSON'],
    ['units of its own', '{"units":"in"}', 'units'],
  ])('refuses %s', (_, text, message) => {
    expect(() => readJob(parseRecord(text))).toThrow(Unreadable);
    expect(() => readJob(parseRecord(text))).toThrow(message);
  });
});
