import { describe, expect, it } from 'vitest';
import { defaultColours } from '../../lib/design/index.js';
import { drawPart, drawSheet, type DrawnPath, writeDxf } from '../../lib/output/index.js';
import { indexColour, nearestIndex } from '../../lib/output/dxf/colour-index.js';
import { hostileText, sampleDrawing, samplePart, sampleSheet, wideArc } from '../helpers/drawings.js';
import { readDxf } from '../helpers/read-dxf.js';
import { textMark } from '../../lib/part/index.js';

type TextTag = readonly [code: number, value: string];

/** The tags of a file, read by the rule of the format: a line for the code, a line for the value. */
function readTags(text: string): TextTag[] {
  const lines = text.split('\n');
  expect(lines.pop()).toBe('');
  return Array.from({ length: lines.length / 2 }, (_, i) => [Number(lines[2 * i]), lines[2 * i + 1]!]);
}

function entitiesOf(tags: readonly TextTag[]): TextTag[][] {
  const start = tags.findIndex(([code, value]) => code === 2 && value === 'ENTITIES');
  const end = tags.findIndex(([code, value], i) => i > start && code === 0 && value === 'ENDSEC');
  const entities: TextTag[][] = [];
  for (const tag of tags.slice(start + 1, end)) {
    if (tag[0] === 0) entities.push([]);
    entities.at(-1)!.push(tag);
  }
  return entities;
}

const valueOf = (entity: readonly TextTag[], code: number): string | undefined =>
  entity.find(([one]) => one === code)?.[1];

interface ReadVertex {
  x: number;
  y: number;
  bulge?: number;
}

describe('a sheet as DXF', () => {
  const drawing = sampleDrawing();
  const text = writeDxf(drawing);
  const tags = readTags(text);

  it('is read back by an independent parser with all places within 1 µm, in cutting order', () => {
    const read = readDxf(text);
    expect(read.header['$INSUNITS']).toBe(4);
    expect(read.entities.map(({ layer, type }) => [layer, type])).toEqual(
      drawing.entities.map(({ layer, kind }) => [layer, kind === 'circle' ? 'CIRCLE' : 'LWPOLYLINE']),
    );
    read.entities.forEach((entity, i) => {
      const drawn = drawing.entities[i]!;
      if (drawn.kind === 'circle') {
        const circle = entity as unknown as { center: { x: number; y: number }; radius: number };
        expect(Math.hypot(circle.center.x - drawn.x, circle.center.y - drawn.y)).toBeLessThan(1e-3);
        expect(circle.radius).toBeCloseTo(drawn.diameter / 2, 6);
        return;
      }
      const polyline = entity as unknown as { vertices: ReadVertex[]; shape: boolean };
      expect(polyline.shape).toBe(drawn.closed);
      expect(polyline.vertices).toHaveLength(drawn.vertices.length);
      polyline.vertices.forEach(({ x, y, bulge = 0 }, k) => {
        const vertex = drawn.vertices[k]!;
        expect(Math.hypot(x - vertex.x, y - vertex.y)).toBeLessThan(1e-3);
        expect(Math.abs(bulge - vertex.bulge)).toBeLessThan(1e-11);
      });
    });
  });

  // Autodesk, DXF Reference, LWPOLYLINE: "The bulge is the tangent of one fourth the included angle for an arc
  // segment"; the middle of the arc then stands bulge times half the chord off the chord, to the right when positive.
  it('places the middle of every arc within 1e-6 mm', () => {
    const middle = (a: ReadVertex, b: ReadVertex) => ({
      x: (a.x + b.x) / 2 + ((b.y - a.y) / 2) * (a.bulge ?? 0),
      y: (a.y + b.y) / 2 - ((b.x - a.x) / 2) * (a.bulge ?? 0),
    });
    const read = readDxf(text);
    let arcs = 0;
    read.entities.forEach((entity, i) => {
      const drawn = drawing.entities[i]!;
      if (drawn.kind === 'circle') return;
      const { vertices } = entity as unknown as { vertices: ReadVertex[] };
      drawn.vertices.forEach((vertex, k) => {
        if (vertex.bulge === 0) return;
        arcs++;
        const next = (k + 1) % drawn.vertices.length;
        const wanted = middle(vertex, drawn.vertices[next]!);
        const got = middle(vertices[k]!, vertices[next]!);
        expect(Math.hypot(got.x - wanted.x, got.y - wanted.y)).toBeLessThan(1e-6);
      });
    });
    expect(arcs).toBeGreaterThan(10);
  });

  // Autodesk, DXF Reference, edition of 2012, "Group Code Value Types": from memory, the ranges met here
  it('gives every group code a value of its kind', () => {
    const kinds: readonly (readonly [RegExp, ...(readonly [number, number])[]])[] = [
      [/^[0-9A-F]{1,16}$/, [5, 5], [105, 105], [320, 369], [390, 399]],
      [/^[\x20-\x7e]{0,255}$/, [0, 9], [100, 100], [999, 999]],
      [/^-?\d+(\.\d+)?$/, [10, 59]],
      [
        /^ *-?([0-2]?\d{1,4}|3[01]\d{3}|32[0-6]\d{2}|327[0-5]\d|3276[0-7])$/,
        [60, 79],
        [170, 179],
        [280, 289],
        [370, 370],
      ],
      [/^ *-?\d+$/, [90, 99], [420, 420]],
    ];
    for (const [code, value] of tags) {
      const kind = kinds.find(([, ...ranges]) => ranges.some(([from, to]) => code >= from && code <= to));
      if (kind === undefined) throw new Error(`group code ${code} is not expected`);
      expect(value).toMatch(kind[0]);
    }
  });

  // Autodesk, DXF Reference, edition of 2012, "LWPOLYLINE" and "CIRCLE": order of the subclasses and needed codes
  it('writes entities with the codes of the reference', () => {
    for (const entity of entitiesOf(tags)) {
      const type = valueOf(entity, 0);
      expect(entity.filter(([code]) => code === 100).map(([, value]) => value)).toEqual([
        'AcDbEntity',
        type === 'CIRCLE' ? 'AcDbCircle' : 'AcDbPolyline',
      ]);
      if (type === 'CIRCLE') {
        for (const code of [10, 20, 30, 40]) expect(valueOf(entity, code)).toBeDefined();
        continue;
      }
      expect(type).toBe('LWPOLYLINE');
      expect(Number(valueOf(entity, 90))).toBe(entity.filter(([code]) => code === 10).length);
      expect(['0', '1']).toContain(valueOf(entity, 70));
      // 10, 20 and, for an arc, 42 follow one another for each vertex
      const run = entity.slice(entity.findIndex(([code]) => code === 10)).map(([code]) => code);
      expect(run.join(' ')).toMatch(/^(10 20( 42)? ?)+$/);
    }
  });

  it('has the entities of a small drawing tag by tag', () => {
    const small = drawSheet(
      {
        id: 's',
        width: 100,
        height: 50,
        process: { kind: 'router', toolDiameter: 6, web: 4, relief: 'none' },
        operations: [
          {
            depth: 'through',
            operation: 'drill',
            part: 'a',
            copy: 1,
            closed: true,
            vertices: [{ x: 10, y: 20, bulge: 0 }],
            diameter: 4,
          },
          {
            depth: 'through',
            operation: 'scribe',
            part: 'a',
            copy: 1,
            closed: false,
            vertices: [
              { x: 0.1234567, y: -0, bulge: 1 },
              { x: 1e-7, y: 30, bulge: 0 },
            ],
          },
        ],
      },
      defaultColours,
    );
    const [, drill, scribe] = entitiesOf(readTags(writeDxf(small)));
    const withoutHandles = (entity: TextTag[]) => entity.filter(([code]) => code !== 5 && code !== 330);
    expect(withoutHandles(drill!)).toEqual([
      [0, 'CIRCLE'],
      [100, 'AcDbEntity'],
      [100, 'AcDbCircle'],
      [8, 'drill-4mm'],
      [10, '10'],
      [20, '20'],
      [30, '0'],
      [40, '2'],
    ]);
    expect(withoutHandles(scribe!)).toEqual([
      [0, 'LWPOLYLINE'],
      [100, 'AcDbEntity'],
      [100, 'AcDbPolyline'],
      [8, 'scribe'],
      [6, 'ByLayer'],
      [62, '256'],
      [370, '-1'],
      [90, '2'],
      [70, '0'],
      [10, '0.123457'],
      [20, '0'],
      [42, '1'],
      [10, '0'],
      [20, '30'],
    ]);
  });

  it('gives each handle once, and names no handle that is not there', () => {
    const given = tags.filter(([code]) => code === 5 || code === 105).map(([, value]) => value);
    // the seed in the header is the next free one
    expect(new Set(given).size).toBe(given.length);
    const seed = parseInt(given[0]!, 16);
    expect(Math.max(...given.slice(1).map((handle) => parseInt(handle, 16)))).toBeLessThan(seed);
    const named = tags.filter(([code]) => [330, 340, 350, 390].includes(code)).map(([, value]) => value);
    expect(named.filter((handle) => handle !== '0' && !given.includes(handle))).toEqual([]);
  });

  it('holds no splines and no block but the two spaces of every file', () => {
    expect(
      tags.filter(([code, value]) => code === 0 && /SPLINE|INSERT|POLYLINE$/.test(value)).map(([, v]) => v),
    ).toEqual(drawing.entities.filter(({ kind }) => kind === 'path').map(() => 'LWPOLYLINE'));
    expect(tags.filter(([code, value]) => code === 0 && value === 'BLOCK')).toHaveLength(2);
  });

  it('says at its head what to do along the lines of each layer', () => {
    const comments = tags.filter(([code]) => code === 999).map(([, value]) => value);
    expect(comments[0]).toBe(drawing.title);
    for (const { name, colour } of drawing.layers)
      expect(comments.filter((line) => line.startsWith(`${name} ${colour}: `))).toHaveLength(1);
    expect(comments.at(-1)).toMatch(/order of the file/);
  });

  it('is the same, byte for byte, when written again', () => {
    expect(writeDxf(sampleDrawing())).toBe(text);
  });
});

describe('the layers', () => {
  it('are one an operation, a drill with its diameter, in the order of work', () => {
    expect(sampleDrawing().layers.map(({ name }) => name)).toEqual([
      'sheet-edge',
      'scribe',
      'drill-4mm',
      'drill-12.7mm',
      'drill-3.175mm',
      'countersink',
      'opening',
      'outline',
    ]);
  });

  it('carry the colour that the design gives, as true colour and as the nearest index', () => {
    const drawing = drawSheet(sampleSheet, { ...defaultColours, outline: '#FF0000', scribe: '#0000ff' });
    const layers = readDxf(writeDxf(drawing)).tables.layer.layers;
    expect(layers['outline']).toMatchObject({ colorIndex: 1 });
    expect(layers['scribe']).toMatchObject({ colorIndex: 5 });
    const tags = readTags(writeDxf(drawing));
    const at = tags.findIndex(([code, value], i) => code === 2 && value === 'outline' && tags[i - 1]![0] === 100);
    expect(tags.slice(at, at + 6).filter(([code]) => [2, 62, 420].includes(code))).toEqual([
      [2, 'outline'],
      [62, '1'],
      [420, String(0xff0000)],
    ]);
  });

  it('keep the default colours apart in a reader that knows only index colours', () => {
    const indices = Object.values(defaultColours).map(nearestIndex);
    expect(new Set(indices).size).toBe(indices.length);
    for (let index = 1; index < 250; index++) {
      for (const channel of Object.values(indexColour(index))) expect(channel).toBeLessThanOrEqual(255);
    }
  });

  it.each(['red', '#12345', '#1234567', '', '#GGGGGG'])('refuse %j as a colour', (colour) => {
    expect(() => writeDxf(drawSheet(sampleSheet, { ...defaultColours, outline: colour }))).toThrow(/is no colour/);
  });
});

describe('what a drawing makes of its input', () => {
  it('divides an arc of more than a half circle without moving it', () => {
    const drawn = sampleDrawing().entities.find(
      (entity): entity is DrawnPath => entity.kind === 'path' && entity.title === 'ring 1',
    )!;
    expect(drawn.vertices).toHaveLength(3);
    expect(drawn.vertices.every(({ bulge }) => Math.abs(bulge) <= 1)).toBe(true);
    // the arc of 300 degrees over a chord of 100 mm has radius 100 mm and bulges below its chord
    const radius = 100;
    const centre = { x: 1050, y: 700 - Math.sqrt(radius ** 2 - 50 ** 2) };
    expect(wideArc).toHaveLength(2);
    for (const { x, y } of drawn.vertices) expect(Math.hypot(x - centre.x, y - centre.y)).toBeCloseTo(radius, 9);
    expect(drawn.vertices[1]!.y).toBeCloseTo(centre.y - radius, 9);
  });

  it('draws what the tool runs round as a path, what it drills as a circle', () => {
    const on = (layer: string) => sampleDrawing().entities.filter((entity) => entity.layer === layer);
    expect(on('drill-4mm')).toEqual([{ kind: 'circle', layer: 'drill-4mm', x: 150, y: 650, diameter: 4 }]);
    expect(on('drill-12.7mm')).toMatchObject([{ kind: 'path', closed: true }]);
  });

  it('sets a part by itself 5 mm clear of the edges, text and all', () => {
    const drawing = drawPart(samplePart, defaultColours);
    expect(drawing.width).toBeCloseTo(130, 9);
    expect(drawing.height).toBeCloseTo(130, 9);
    expect(drawing.entities.find(({ kind }) => kind === 'circle')).toMatchObject({ x: 95, y: 85 });
    expect(drawing.layers.map(({ name }) => name)).toEqual([
      'scribe',
      'drill-4mm',
      'countersink',
      'opening',
      'outline',
    ]);
  });

  it('leaves a blank for the number of a copy', () => {
    const drawn = (text: string) =>
      drawPart({ ...samplePart, marks: [textMark(text, { x: 0, y: 0 }, 10)] }, defaultColours).entities;
    expect(drawn('RIB {n} OF 24')).toEqual(drawn('RIB _ OF 24'));
  });

  it('takes an offcut by its outline', () => {
    const edge = [
      { x: 0, y: 0, bulge: 0 },
      { x: 900, y: 0, bulge: 0 },
      { x: 0, y: 700, bulge: 0 },
    ];
    expect(drawSheet(sampleSheet, defaultColours, edge).entities[0]).toMatchObject({
      layer: 'sheet-edge',
      vertices: edge,
    });
  });

  it('refuses a drill without its diameter', () => {
    const operations = [
      {
        depth: 'through',
        operation: 'drill',
        part: 'rib',
        copy: 1,
        closed: true,
        vertices: [{ x: 1, y: 1, bulge: 0 }],
      },
    ] as const;
    expect(() =>
      drawSheet({ id: 's', width: 10, height: 10, process: { kind: 'hand', web: 5 }, operations }, defaultColours),
    ).toThrow(/drill of rib/);
  });

  it.each([NaN, Infinity, -Infinity])('writes no file with a place at %d', (x) => {
    const drawing = sampleDrawing();
    const entities = [{ kind: 'circle', layer: 'scribe', x, y: 0, diameter: 1 }] as const;
    expect(() => writeDxf({ ...drawing, entities })).toThrow(/cannot write/);
  });

  it('lets no text through that would begin a tag of its own', () => {
    const plain = writeDxf(sampleDrawing());
    const titled = writeDxf({ ...sampleDrawing(), title: hostileText });
    expect(titled.split('\n').slice(2)).toEqual(plain.split('\n').slice(2));
    expect(titled).toMatch(/^999\n[\x20-\x7e]*\n999\n/);
  });
});
