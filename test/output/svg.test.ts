import { Resvg } from '@resvg/resvg-js';
import { XMLParser } from 'fast-xml-parser';
import { SaxesParser } from 'saxes';
import { svgPathProperties } from 'svg-path-properties';
import { describe, expect, it } from 'vitest';
import { defaultColours } from '../../lib/design/index.js';
import { pathLength, perimeter } from '../../lib/geometry/index.js';
import { drawPart, drawSheet, type DrawnPath, escapeXml, writeSvg } from '../../lib/output/index.js';
import { hostileText, sampleDrawing, samplePart, sampleSheet } from '../helpers/drawings.js';

interface Svg {
  readonly svg: {
    readonly '@width': string;
    readonly '@height': string;
    readonly '@viewBox': string;
    readonly title: string;
    readonly desc: string;
    readonly g: readonly {
      readonly '@class': string;
      readonly '@stroke': string;
      readonly path?: readonly { readonly '@d': string; readonly title?: string }[];
      readonly circle?: readonly { readonly '@cx': string; readonly '@cy': string; readonly '@r': string }[];
    }[];
  };
}

const read = (text: string): Svg['svg'] =>
  (
    new XMLParser({
      ignoreAttributes: false,
      attributeNamePrefix: '@',
      isArray: (name) => ['g', 'path', 'circle'].includes(name),
    }).parse(text) as Svg
  ).svg;

/** Throws where the text is not well-formed XML, by a parser that follows the specification. */
function wellFormed(text: string): void {
  const parser = new SaxesParser({ xmlns: true });
  parser.on('error', (error) => {
    throw error;
  });
  parser.write(text).close();
}

const isPath = (entity: { kind: string }): entity is DrawnPath => entity.kind === 'path';

describe('a sheet as SVG', () => {
  const drawing = sampleDrawing();
  const text = writeSvg(drawing);
  const svg = read(text);

  it('is well-formed', () => {
    wellFormed(text);
  });

  // Scalable Vector Graphics 1.1 (W3C 2011), 7.2 and 7.7: with equal viewBox and size one user unit is one mm
  it('has its size in mm and a view box to match', () => {
    expect(svg['@width']).toBe('1200.5mm');
    expect(svg['@height']).toBe('900mm');
    expect(svg['@viewBox']).toBe('0 0 1200.5 900');
  });

  it('has a group for each run of one operation, in cutting order, each in its colour', () => {
    const layers = drawing.entities.map(({ layer }) => layer);
    const runs = layers.filter((layer, i) => layer !== layers[i - 1]);
    expect(runs.length).toBeGreaterThan(new Set(runs).size);
    expect(svg.g.map((group) => group['@class'])).toEqual(runs);
    for (const group of svg.g)
      expect(group['@stroke']).toBe(drawing.layers.find(({ name }) => name === group['@class'])?.colour);
    expect(text).not.toMatch(/transform|style|id=|fill="(?!none")/);
  });

  it('says what to do along the lines of each colour', () => {
    for (const { name, colour } of drawing.layers) expect(svg.desc).toContain(`${name} ${colour}: `);
    expect(svg.desc).toMatch(/order of the file/);
  });

  it('names each part once, on its outline', () => {
    const titled = svg.g.flatMap((group) => (group.path ?? []).map(({ title }) => [group['@class'], title]));
    expect(titled.filter(([, title]) => title !== undefined)).toEqual([
      ['outline', 'board 1'],
      ['outline', 'rib 2'],
      ['outline', 'ring 1'],
    ]);
  });

  it('has paths as long as their contours, and through their corners, by an independent measure', () => {
    let measured = 0;
    const drawn = drawing.entities.filter(isPath);
    for (const group of svg.g) {
      (group.path ?? []).forEach((path) => {
        const { closed, vertices } = drawn[measured]!;
        const properties = new svgPathProperties(path['@d']);
        const length = closed ? perimeter(vertices) : pathLength(vertices);
        expect(Math.abs(properties.getTotalLength() - length)).toBeLessThan(1e-5 * length);
        // each corner at its own distance along the path, y turned over
        let run = 0;
        vertices.forEach((vertex, k) => {
          const at = properties.getPointAtLength(run);
          expect(Math.hypot(at.x - vertex.x, 900 - at.y - vertex.y)).toBeLessThan(5e-3);
          const next = vertices[k + 1];
          if (next) run += pathLength([vertex, { ...next, bulge: 0 }]);
        });
        measured++;
      });
    }
    expect(measured).toBe(drawn.length);
  });

  // SVG 1.1, F.6.5: the centre of an arc follows from its ends, radius and flags
  it('bends every arc about its own centre within 1 µm', () => {
    const drawn = drawing.entities.filter(isPath).find(({ title }) => title === 'rib 2')!;
    const data = svg.g.at(-1)!.path![0]!['@d'];
    const commands = [...data.matchAll(/([MLA])([^MLAZ]*)/g)].map(([, letter, numbers]) => ({
      letter,
      numbers: numbers!.trim().split(/\s+/).map(Number),
    }));
    let arcs = 0;
    commands.forEach(({ letter, numbers }, i) => {
      if (letter !== 'A') return;
      const from = commands[i - 1]!.numbers.slice(-2) as [number, number];
      const [r, , , , sweep, x, y] = numbers as [number, number, number, number, number, number, number];
      const half = Math.hypot(x - from[0], y - from[1]) / 2;
      const sagitta = r - Math.sqrt(r * r - half * half);
      const vertex = drawn.vertices[i - 1]!;
      expect(Math.abs(sagitta - Math.abs(vertex.bulge) * half)).toBeLessThan(1e-3);
      expect(sweep).toBe(vertex.bulge > 0 ? 0 : 1);
      arcs++;
    });
    expect(arcs).toBeGreaterThan(5);
  });

  // SVG 2, 8.12: the property is not inherited, so that a group cannot state it for its shapes
  it('asks for lines that show at any zoom, on every shape', () => {
    const shapes = [...text.matchAll(/<(?:path|circle) [^>]*>/g)].map(([tag]) => tag);
    expect(shapes.length).toBeGreaterThan(5);
    expect(shapes.filter((tag) => !tag.includes('vector-effect="non-scaling-stroke"'))).toEqual([]);
  });

  it('shows things where they lie when another program draws it', () => {
    // one pixel a mm; the board lies upper left, the rib at the bottom
    const bold = text.replace('stroke-width="0.5"', 'stroke-width="5"');
    const image = new Resvg(bold, { fitTo: { mode: 'width', value: 1200 }, background: 'white' }).render();
    expect([image.width, image.height]).toEqual([1200, 900]);
    const at = (x: number, y: number) => {
      const start = 4 * (Math.floor(900 - y) * image.width + Math.floor(x));
      return `#${[0, 1, 2].map((k) => image.pixels[start + k]!.toString(16).padStart(2, '0')).join('')}`.toUpperCase();
    };
    expect(at(300, 590)).toBe(defaultColours.outline);
    expect(at(520, 700)).toBe(defaultColours.outline);
    // opening: on the circle all round, nothing within
    for (const angle of [0.3, 1.9, 3.5, 5.1])
      expect(at(400 + 50 * Math.cos(angle), 700 + 50 * Math.sin(angle))).toBe(defaultColours.opening);
    expect(at(400, 700)).toBe('#FFFFFF');
    // the arc of 300 degrees, below its chord
    expect(at(1050, 700 - 100 * Math.sin(Math.PI / 3) - 100)).toBe(defaultColours.outline);
    expect(at(1050, 700 + 13)).toBe('#FFFFFF');
    // rib: the base, and its end that stands up at the rim
    expect(at(400, 0.5)).toBe(defaultColours.outline);
    expect(at(745, 100)).toBe(defaultColours.outline);
    expect(at(110, 100)).toBe('#FFFFFF');
  });
});

describe('hostile names', () => {
  it('stay text', () => {
    const part = { ...samplePart, name: hostileText };
    const text = writeSvg(drawPart(part, defaultColours));
    wellFormed(text);
    expect(text).not.toContain('<script');
    const sheet = {
      ...sampleSheet,
      id: hostileText,
      operations: sampleSheet.operations.map((one) => ({ ...one, part: hostileText })),
    };
    wellFormed(writeSvg(drawSheet(sheet, defaultColours)));
  });

  // Extensible Markup Language (XML) 1.0, fifth edition, production 2 (Char) and 2.4
  it.each([
    ['a < b & c > d', 'a &lt; b &amp; c &gt; d'],
    [`"it's"`, '&quot;it&#39;s&quot;'],
    ['\u0000\u0008\u000b\u001f\ufffe\uffff\ud800x', '\ufffd\ufffd\ufffd\ufffd\ufffd\ufffd\ufffdx'],
    ['tab\there 🌞 ø', 'tab\there 🌞 ø'],
    [']]>', ']]&gt;'],
    ['&amp;', '&amp;amp;'],
  ])('%j is written as %j', (text, escaped) => {
    expect(escapeXml(text)).toBe(escaped);
  });
});
