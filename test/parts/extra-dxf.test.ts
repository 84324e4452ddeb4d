import { diagnosticText } from '../../lib/diagnostic/index.js';
import { describe, expect, it } from 'vitest';
import { bounds } from '../../lib/geometry/index.js';
import { drawPart, writeDxf } from '../../lib/output/index.js';
import { defaultColours } from '../../lib/design/index.js';
import { arc, circleDrawing, dxf, fault, line, measures, parts, polyline, read } from './extra-drawings.js';

const square = polyline([
  [0, 0],
  [100, 0],
  [100, 80],
  [0, 80],
]);

describe('outlines of a DXF', () => {
  it('are parts at true size from their lower left corner, so many of each', () => {
    const [part, ...more] = parts(
      dxf(
        polyline([
          [500, -40],
          [600, -40],
          [600, 40],
          [500, 40],
        ]),
      ),
    );
    expect(more).toEqual([]);
    expect(part).toMatchObject({ id: 'extra-1-1', kind: 'extra', name: 'own 1', quantity: 2, thickness: 12 });
    expect(part?.file).toBe('own.dxf');
    expect(bounds(part!.outline)).toEqual({ minX: 0, minY: 0, maxX: 100, maxY: 80 });
    expect(measures(part!).area).toBe(8000);
  });

  it.each([
    [1, 25.4],
    [2, 304.8],
    [4, 1],
    [5, 10],
    [6, 1000],
  ])('in $INSUNITS %i are %f mm a unit (DXF Reference, HEADER variables)', (code, mm) => {
    const [part] = parts(dxf(circleDrawing(3, 4, 2), code));
    expect(measures(part!).area).toBeCloseTo(Math.PI * (2 * mm) ** 2, 6);
  });

  it('keep the arcs of polylines', () => {
    // a slot: two half circles of radius 20 and straights of 60; area 60·40 + π·20²
    const [part] = parts(
      dxf(
        polyline([
          [0, 0],
          [60, 0, 1],
          [60, 40],
          [0, 40, 1],
        ]),
      ),
    );
    expect(measures(part!)).toMatchObject({ edges: 4 });
    expect(measures(part!).area).toBeCloseTo(2400 + Math.PI * 400, 9);
    expect(measures(part!).length).toBeCloseTo(120 + Math.PI * 40, 9);
  });

  it('keep an arc of more than half a circle', () => {
    // a full circle less the segment of a 90 degree chord: r²/2 (θ − sin θ) with θ = 3π/2, chord closed
    const bulge = Math.tan((1.5 * Math.PI) / 4);
    const [part] = parts(
      dxf(
        polyline(
          [
            [0, 0],
            [30, 0, -bulge],
          ].map(([x, y, b]) => [x!, y!, b ?? 0] as const),
        ),
      ),
    );
    const radius = 30 / Math.SQRT2;
    expect(measures(part!).area).toBeCloseTo((radius ** 2 / 2) * (1.5 * Math.PI + 1), 8);
  });

  it('are joined of lines and arcs drawn in any order and sense', () => {
    const pieces = [line(60, 40, 0, 40), arc(60, 20, 20, 270, 90), line(0, 0, 60, 0), arc(0, 20, 20, 90, 270)];
    for (let turn = 0; turn < 4; turn++) {
      const order = [...pieces.slice(turn), ...pieces.slice(0, turn)];
      const [part] = parts(dxf(order.join('\n')));
      expect(measures(part!).area).toBeCloseTo(2400 + Math.PI * 400, 6);
    }
  });

  it('are joined over gaps of up to a hundredth of a millimetre, no further', () => {
    const triangle = (gap: number) => dxf([line(0, 0, 50, 0), line(50, 0, 0, 50), line(0, 50, 0, gap)].join('\n'));
    expect(measures(parts(triangle(0.009))[0]!).area).toBeCloseTo(1250, 0);
    expect(fault(triangle(0.02))).toMatch(
      /LINE in line \d+ at \(0, 50\) with 2 more is open: it begins at .*0\.02 mm apart; close the outline|LINE in line \d+.* with 2 more is open.*0\.02 mm apart/,
    );
  });

  it('come from polylines of the old style', () => {
    const vertex = (x: number, y: number, bulge = 0) => `0 VERTEX\n8 0\n10 ${x}\n20 ${y}\n42 ${bulge}`;
    const old = `0 POLYLINE\n8 0\n66 1\n70 1\n${vertex(0, 0)}\n${vertex(60, 0, 1)}\n${vertex(60, 40)}\n${vertex(0, 40, 1)}\n0 SEQEND`;
    expect(measures(parts(dxf(old))[0]!).area).toBeCloseTo(2400 + Math.PI * 400, 9);
  });

  it('come from ellipses, within the tolerance', () => {
    const text = dxf('0 ELLIPSE\n8 0\n10 5\n20 5\n11 60\n21 0\n40 0.5\n41 0\n42 6.283185307179586');
    const [part] = parts(text);
    expect(Math.abs(measures(part!).area - Math.PI * 60 * 30)).toBeLessThan(0.01 * 300);
    expect(part!.fitDeviation).toBeGreaterThan(0);
    expect(part!.fitDeviation).toBeLessThanOrEqual(0.01);
  });

  it('seen from below are mirrored, arcs and all (DXF Reference, extrusion direction)', () => {
    const below = '210 0\n220 0\n230 -1';
    const slot = polyline([
      [0, 0],
      [60, 0, 0.5],
      [60, 40],
      [10, 40],
    ]);
    const above = parts(dxf(slot))[0]!;
    const mirror = parts(dxf(`${slot}\n${below}`))[0]!;
    expect(measures(mirror).area).toBeCloseTo(measures(above).area, 9);
    expect(bounds(mirror.outline).maxX).toBeCloseTo(bounds(above.outline).maxX, 9);
  });

  it('within one another are openings, and parts again within those', () => {
    const rings = [
      circleDrawing(50, 40, 35),
      circleDrawing(50, 40, 30),
      circleDrawing(50, 40, 15),
      circleDrawing(50, 40, 2),
    ];
    const made = parts(dxf([square, ...rings].join('\n')));
    // plate less 35, ring 35... : depths 0 to 4
    expect(made.map((part) => [part.openings.length, part.holes.length])).toEqual([
      [1, 0],
      [1, 0],
      [0, 0],
    ]);
    expect(measures(made[0]!).area).toBeCloseTo(8000 - Math.PI * 35 ** 2, 6);
    expect(measures(made[1]!).area).toBeCloseTo(Math.PI * (30 ** 2 - 15 ** 2), 6);
    expect(measures(made[2]!).area).toBeCloseTo(Math.PI * 4, 6);
  });

  it('have small round holes drilled', () => {
    const [part] = parts(dxf([square, circleDrawing(10, 20, 2)].join('\n')));
    expect(part!.holes).toEqual([{ x: 10, y: 20, diameter: 4, depth: 'through', from: 'front' }]);
    expect(part!.openings).toEqual([]);
  });

  it('written by our own writer come back the same', () => {
    const made = parts(
      dxf(
        [
          polyline([
            [0, 0],
            [60, 0, 0.7],
            [60, 40],
            [0, 40],
          ]),
          circleDrawing(30, 20, 12),
        ].join('\n'),
      ),
    )[0]!;
    const back = parts(writeDxf(drawPart({ ...made, holes: [] }, defaultColours)));
    const bySize = [...back].sort((a, b) => measures(b).area - measures(a).area);
    expect(measures(bySize[0]!).area).toBeCloseTo(measures(made).area, 3);
    expect(measures(bySize[0]!).length).toBeCloseTo(measures(made).length, 4);
  });
});

describe('what is no outline', () => {
  it.each([
    ['text', '0 TEXT\n8 0\n10 0\n20 0\n40 5\n1 hello', /1 x TEXT left out; turn text into outlines/],
    ['a hatch', '0 HATCH\n8 0\n10 0\n20 0', /HATCH left out/],
  ])('is left out with a word: %s', (_, entity, message) => {
    const { parts: made, problems } = read(dxf(`${square}\n${entity}`));
    expect(made).toHaveLength(1);
    expect(problems.map(({ severity }) => severity)).toEqual(['warning']);
    expect(diagnosticText(problems[0]!)).toMatch(message);
  });

  it('is left out on a frozen layer', () => {
    const tables = '0 SECTION\n2 TABLES\n0 TABLE\n2 LAYER\n0 LAYER\n2 old\n70 1\n62 7\n0 ENDTAB\n0 ENDSEC';
    const text = dxf(`${square}\n${circleDrawing(500, 0, 9).replace('8 0', '8 old')}`);
    const withLayer = text.replace('0\nENDSEC\n', `0\nENDSEC\n${tables.replace(/^(\d+) /gm, '$1\n')}\n`);
    const { parts: made, problems } = read(withLayer);
    expect(made).toHaveLength(1);
    expect(diagnosticText(problems[0]!)).toMatch(/1 entities on layers that are off or frozen/);
  });

  it('is a block, which must be exploded', () => {
    expect(fault(dxf(`${square}\n0 INSERT\n8 0\n2 HANDLE\n10 7\n20 9`))).toMatch(
      /extra\[1\], own\.dxf: the INSERT in line \d+ at \(7, 9\) is block "HANDLE"; explode blocks/,
    );
  });
});
