import { diagnosticText } from '../../lib/diagnostic/index.js';
import { describe, expect, it } from 'vitest';
import { readExtras } from '../../lib/parts/index.js';
import { arc, circleDrawing, extraDesign, dxf, fault, line, polyline, read, svg } from './extra-drawings.js';

describe('a fault names the file, the line of the entity, the place and what would do', () => {
  it.each([
    [
      'open polyline',
      dxf(
        polyline(
          [
            [1, 2],
            [50, 2],
            [50, 40],
          ],
          false,
        ),
      ),
      /own\.dxf: the LWPOLYLINE in line \d+ at \(1, 2\) is open: it begins at \(1, 2\) and ends at \(50, 40\), 62\.01 mm apart; close/,
    ],
    [
      'open arc',
      dxf(arc(0, 0, 10, 0, 180)),
      /ARC in line.* is open: it begins at \(10, 0\) and ends at \(-10, 0\), 20 mm apart/,
    ],
    [
      'open path',
      svg('<path id="wing" d="M10 20H60V70"/>'),
      /the <path id="wing"> in line 1 is open: it begins at \(10, 20\) and ends at \(60, 70\)/,
    ],
    [
      'crossing',
      dxf(
        polyline([
          [0, 0],
          [40, 40],
          [40, 0],
          [0, 40],
        ]),
      ),
      /crosses or touches itself at \(20, 20\)/,
    ],
    [
      'crossing in an SVG',
      svg('<polygon points="0,0 40,40 40,0 0,40"/>'),
      /<polygon> in line 1 crosses or touches itself at \(20, 20\)/,
    ],
    [
      'touching at a corner',
      dxf(
        polyline([
          [0, 0],
          [40, 0],
          [40, 40],
          [20, 0],
          [0, 40],
        ]),
      ),
      /touches itself at \(20, 0\)/,
    ],
    [
      'no area',
      dxf(
        polyline([
          [0, 0],
          [40, 0],
          [20, 0],
        ]),
      ),
      /encloses nothing at \(0, 0\)/,
    ],
    [
      'no size',
      dxf(circleDrawing(5, 6, 0)),
      /CIRCLE in line \d+ at \(5, 6\) cannot be used: its radius is not above 0/,
    ],
    ['no number', dxf(circleDrawing(5, 6, 3).replace('40 3', '40 nan')), /line \d+ should be a number, not "nan"/],
    ['infinity', dxf(circleDrawing(5, 6, 3).replace('40 3', '40 1e999')), /line \d+ should be a number/],
    ['too far', dxf(circleDrawing(1e12, 6, 3)), /not a number within 100 km/],
    ['larger than 100 m', dxf(circleDrawing(0, 0, 60), 6), /larger than 100 m; check the unit/],
    ['no unit', dxf(circleDrawing(0, 0, 60), 0), /states no unit \(\$INSUNITS is 0 or missing\)/],
    ['no header', dxf(circleDrawing(0, 0, 60), null), /states no unit/],
    ['an odd unit', dxf(circleDrawing(0, 0, 60), 3), /\$INSUNITS 3/],
    [
      'drawn twice',
      dxf([circleDrawing(0, 0, 60), circleDrawing(0, 0, 60)].join('\n')),
      /the same outline drawn twice; delete one/,
    ],
    [
      'crossing one another',
      dxf([circleDrawing(0, 0, 50), circleDrawing(60, 0, 50)].join('\n')),
      /meet at \(30, -?40\); draw outlines with a gap between them/,
    ],
    [
      'a line drawn twice',
      dxf([line(0, 0, 9, 0), line(9, 0, 0, 9), line(0, 9, 0, 0), line(9, 0, 5, 0)].join('\n')),
      /3 lines end at \(9, 0\) \(the LINE in line/,
    ],
    ['not flat', dxf(`${line(0, 0, 9, 0)}\n31 5`), /differ in height/],
    ['tilted', dxf(`${circleDrawing(0, 0, 9)}\n210 1\n220 0\n230 1`), /does not lie in the plane/],
    ['a solid', dxf('0 3DFACE\n8 0\n10 1\n20 2'), /3DFACE in line \d+ at \(1, 2\) is not supported/],
    [
      'wrong count',
      dxf(
        polyline([
          [0, 0],
          [9, 0],
          [0, 9],
        ]).replace('90 3', '90 4'),
      ),
      /states 4 vertices but has 3/,
    ],
    ['cut short', dxf(circleDrawing(0, 0, 60)).slice(0, -4), /cut short/],
    ['binary', 'AutoCAD Binary DXF\r\n\u001a\u0000', /binary DXF; save it as an ASCII/],
    ['empty', ' \n', /the file is empty/],
    ['nothing drawn', dxf(''), /no closed outline/],
    ['prose', 'Dear Sir or Madam', /line 1 should be a DXF group code, not "Dear Sir/],
    ['a web page', '<html><body/></html>', /begins with <html>, not <svg>/],
    ['broken XML', svg('<g>'), /not well-formed XML/],
    ['entities', `<!DOCTYPE svg [<!ENTITY a "aaaa">]>${svg('<path d="&a;"/>')}`, /declares entities in a DOCTYPE/],
    ['bad path data', svg('<path d="M0 0 L x"/>'), /path data cannot be read/],
    [
      'bad transform',
      svg('<rect width="1" height="1" transform="rotate(a)"/>'),
      /its transform "rotate\(a\)" cannot be read/,
    ],
    ['a spline of fit points', dxf('0 SPLINE\n8 0\n70 8\n71 3\n11 0\n21 0\n31 0'), /only by the points/],
    [
      'a spline without knots',
      dxf('0 SPLINE\n8 0\n70 8\n71 3\n10 0\n20 0\n10 1\n20 0\n10 1\n20 1\n10 0\n20 1'),
      /0 knots instead of 8/,
    ],
  ])('%s', (_, text, message) => {
    expect(fault(text)).toMatch(message);
  });

  it('stands at the key of the file', () => {
    expect(read(dxf('')).problems[0]?.place).toEqual({ path: ['extra', 0, 'file'] });
  });

  it('is told for the first ten only', () => {
    const open = Array.from({ length: 30 }, (_, k) => line(0, 20 * k, 50, 20 * k)).join('\n');
    const { problems } = read(dxf(open));
    expect(problems).toHaveLength(11);
    expect(diagnosticText(problems.at(-1)!)).toMatch(/20 more/);
  });

  it('a file that nobody read', () => {
    const extra = [{ file: 'gone.svg', material: 'birch12', quantity: 1, unit: undefined }];
    expect(readExtras({ ...extraDesign, extra }, new Map()).problems[0]?.code).toBe('extra-missing');
  });
});

describe('hostile drawings end soon', () => {
  const many = (count: number, of: (k: number) => string): string =>
    Array.from({ length: count }, (_, k) => of(k)).join('');
  const zigzag = many(1900, (k) => `L${k * 10} ${(k % 2) * 1000}`);
  const spline = (points: number): string =>
    `0 SPLINE\n8 0\n71 3\n${many(points + 4, (k) => `40 ${k}\n`)}${many(points, (k) => `10 ${(k * 7919) % 1000}\n20 ${(k * 104_729) % 1000}\n`)}`;
  it.each([
    ['9 MB of nothing', `0\n${'a'.repeat(9e6)}`],
    ['a million lines of nothing', '0\n'.repeat(1e6)],
    ['100 000 circles', dxf(many(100_000, (k) => `${circleDrawing(k * 5, 0, 1)}\n`))],
    ['10 000 loose lines', dxf(many(10_000, (k) => `${line(k, 0, k + 0.5, 3)}\n`))],
    ['10 000 lines from one place', dxf(many(10_000, (k) => `${line(0, 0, k, 3)}\n`))],
    ['5 000 circles round one centre', dxf(many(5_000, (k) => `${circleDrawing(0, 0, k + 1)}\n`))],
    ['300 rings round one centre', dxf(many(300, (k) => `${circleDrawing(0, 0, k + 1)}\n`))],
    ['300 times one circle', dxf('0 CIRCLE\n8 0\n10 0\n20 0\n40 9\n'.repeat(300))],
    ['slanted teeth', svg(`<path transform="rotate(44)" d="M0 0${zigzag}L19000 5000L0 5000Z"/>`)],
    ['a polyline of 100 000 vertices', dxf(polyline(Array.from({ length: 100_000 }, (_, k) => [k, k % 7] as const)))],
    ['a wild spline', dxf(spline(1900))],
    ['a longer spline', dxf(spline(20_000))],
    ['20 000 cusps', svg(`<path d="M0 0${many(5000, (k) => `C100 100 0 100 100 ${k}`)}Z"/>`)],
    ['long path data', svg(`<path d="M0 0${'l1 1'.repeat(62_000)}Z"/>`)],
    ['too long path data', svg(`<path d="M0 0${'l1 1'.repeat(500_000)}Z"/>`)],
    ['deep groups', svg(`${'<g>'.repeat(100_000)}${'</g>'.repeat(100_000)}`)],
    ['many elements', svg('<g/>'.repeat(500_000))],
    ['a huge ellipse', dxf('0 ELLIPSE\n8 0\n10 0\n20 0\n11 99999999\n21 0\n40 0.000001')],
    ['a tiny ellipse', dxf('0 ELLIPSE\n8 0\n10 0\n20 0\n11 0.00000001\n21 0\n40 0.5')],
    ['long transforms', svg(`<g transform="${'scale(2)'.repeat(1200)}"><rect width="1" height="1"/></g>`)],
    ['spaces', svg(`<polygon points="${' '.repeat(300_000)}x"/>`)],
    ['digits', svg(`<g transform="${'1'.repeat(9_000)}"><rect width="${'1'.repeat(300_000)}" height="1"/></g>`)],
  ])('%s', (_, text) => {
    const { parts: made, problems } = read(text);
    expect(made.length + problems.length).toBeGreaterThan(0);
  });
});
