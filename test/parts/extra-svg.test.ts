import { diagnosticText } from '../../lib/diagnostic/index.js';
import { svgPathProperties } from 'svg-path-properties';
import { describe, expect, it } from 'vitest';
import { bounds, type Bounds } from '../../lib/geometry/index.js';
import type { Part } from '../../lib/part/index.js';
import { fault, measures, parts, read, svg } from './extra-drawings.js';

/** Length and area of a path by an independent library: chords between many of its points. */
function independent(data: string): { length: number; area: number } {
  const path = new svgPathProperties(data);
  const length = path.getTotalLength();
  const count = 4000;
  let area = 0;
  let last = path.getPointAtLength(0);
  for (let k = 1; k <= count; k++) {
    const next = path.getPointAtLength((length * k) / count);
    area += (last.x * next.y - next.x * last.y) / 2;
    last = next;
  }
  return { length, area: Math.abs(area) };
}

const size = ({ minX, minY, maxX, maxY }: Bounds) => [maxX - minX, maxY - minY];
const first = (body: string, attributes?: string, unit?: number) => parts(svg(body, attributes), unit)[0]!;

describe('paths of an SVG', () => {
  it.each([
    ['lines', 'M10 10H110V60L60 90 10 60z'],
    ['relative lines after a closed part', 'm10,10 h100 v50 h-100 z'],
    ['cubic Béziers', 'M20 60C20 10 120 10 120 60S20 140 20 60Z'],
    ['an S-shaped outline', 'M20 60C60 -20 100 140 140 60L140 100C100 180 60 20 20 100Z'],
    ['quadratic Béziers', 'M10 80Q60 -10 110 80T170 90L170 150L10 150Z'],
    ['circular arcs', 'M20 60A40 40 0 0 1 100 60A40 25 0 0 1 20 60Z'],
    ['turned elliptic arcs', 'M20 60A50 25 30 1 0 100 60A50 25 30 0 0 20 60Z'],
    ['arcs too small for their ends', 'M20 60A5 3 20 0 1 100 60Z'],
    ['a tight bend', 'M20 20C90 20 91 21 90 22L20 90Z'],
  ])('are as long and as large as an independent library says: %s', (_, data) => {
    const part = first(`<path d="${data}"/>`);
    const expected = independent(data);
    const { length, area } = measures(part);
    expect(Math.abs(length - expected.length)).toBeLessThan(2e-4 * expected.length);
    // 0.01 mm along the whole outline is the most that the tolerance allows
    expect(Math.abs(area - expected.area)).toBeLessThan(0.01 * expected.length);
    expect(part.fitDeviation).toBeLessThanOrEqual(0.01);
  });

  it('stay within the tolerance of the curve, looked at from every arc', () => {
    const data = 'M20 60C60 -20 100 140 140 60L140 100C100 180 60 20 20 100Z';
    const path = new svgPathProperties(data);
    const box = bounds(first(`<path d="${data}"/>`).outline);
    const length = path.getTotalLength();
    const points = Array.from({ length: 20_001 }, (_, k) => path.getPointAtLength((length * k) / 20_000));
    const left = Math.min(...points.map(({ x }) => x));
    const low = Math.max(...points.map(({ y }) => y));
    expect(box.maxX).toBeCloseTo(Math.max(...points.map(({ x }) => x)) - left, 1);
    for (const vertex of first(`<path d="${data}"/>`).outline) {
      const [x, y] = [vertex.x + left, low - vertex.y];
      const nearest = points.reduce((min, p) => Math.min(min, Math.hypot(p.x - x, p.y - y)), Infinity);
      expect(nearest).toBeLessThan(0.03);
    }
  });

  it('hold openings in the same path', () => {
    const part = first('<path d="M0 0H100V100H0Z M20 20H80V80H20Z"/>');
    expect(measures(part).area).toBe(10_000 - 3600);
  });
});

describe('shapes of an SVG (SVG 1.1, chapter 9)', () => {
  it.each([
    ['<rect x="5" y="5" width="60" height="40"/>', 2400],
    ['<rect width="60" height="40" rx="10"/>', 2400 - (4 - Math.PI) * 100],
    ['<rect width="60" height="40" rx="90" ry="90"/>', Math.PI * 30 * 20],
    ['<circle cx="50" cy="50" r="30"/>', Math.PI * 900],
    ['<ellipse cx="50" cy="50" rx="30" ry="10"/>', Math.PI * 300],
    ['<polygon points="0,0 60,0 60,40 0,40"/>', 2400],
    ['<polygon points="0 0 60-0 60 40"/>', 1200],
    ['<polyline points="0,0 60,0 60,40 0,0"/>', 1200],
    ['<line x1="0" y1="0" x2="60" y2="0"/><polyline points="60,0 60,40 0,0"/>', 1200],
  ])('%s encloses %f mm²', (body, area) => {
    expect(Math.abs(measures(first(body)).area - area)).toBeLessThan(1);
  });

  it('have round corners and circles exact', () => {
    expect(measures(first('<circle cx="50" cy="50" r="30"/>')).area).toBeCloseTo(Math.PI * 900, 8);
    expect(measures(first('<rect width="60" height="40" rx="10"/>')).area).toBeCloseTo(2400 - (4 - Math.PI) * 100, 8);
  });
});

describe('the unit of an SVG', () => {
  const box = '<rect width="10" height="20"/>';
  it.each([
    ['width="200mm" height="200mm" viewBox="0 0 200 200"', 1],
    ['width="200mm" height="200mm" viewBox="0 0 100 100"', 2],
    ['width="20cm" viewBox="0 0 200 200"', 1],
    ['width="4in" height="4in" viewBox="0 0 4 4"', 25.4],
    ['width="72pt" height="72pt" viewBox="0 0 72 72"', 25.4 / 72],
    ['width="960px" height="960px"', 25.4 / 96],
    ['width="200mm" height="100mm"', 25.4 / 96],
  ])('%s makes it %f mm (CSS Values and Units Level 3, 5.2)', (attributes, mm) => {
    const [width, height] = size(bounds(first(box, attributes).outline));
    expect(width).toBeCloseTo(10 * mm, 9);
    expect(height).toBeCloseTo(20 * mm, 9);
  });

  it.each(['', 'width="200" height="200"', 'width="100%" height="100%" viewBox="0 0 10 10"'])(
    'must be there: <svg %s>',
    (attributes) => {
      expect(fault(svg(box, attributes))).toMatch(/no unit.*`unit: 1 mm`/);
      expect(size(bounds(first(box, attributes, 2.5).outline))).toEqual([25, 50]);
    },
  );

  it('given in the design wins, with a word', () => {
    const { parts: made, problems } = read(svg(box), 25.4);
    expect(size(bounds(made[0]!.outline))[0]).toBeCloseTo(254, 9);
    expect(problems.map(({ severity }) => severity)).toEqual(['warning']);
  });

  it('must be the same across and down', () => {
    expect(fault(svg(box, 'width="200mm" height="100mm" viewBox="0 0 200 200"'))).toMatch(/make them agree/);
  });
});

describe('transforms', () => {
  const shape = '<path d="M0 0H60V40L20 60Z"/>';
  const plain = measures(first(shape));

  it.each([
    ['translate(30 40)', 1],
    ['rotate(33)', 1],
    ['rotate(33, 50, 20)', 1],
    ['scale(2)', 4],
    ['scale(-1 1)', 1],
    ['matrix(0 1 -1 0 80 5)', 1],
    ['skewX(20)', 1],
    ['translate(5) rotate(-20) scale(1.5 0.5)', 0.75],
  ])('%s times the area by %f', (transform, factor) => {
    expect(measures(first(`<g transform="${transform}">${shape}</g>`)).area).toBeCloseTo(plain.area * factor, 6);
  });

  it('of nested groups follow one another, as if written in one', () => {
    const nested = `<g transform="translate(10 5)"><g transform="rotate(30)">${shape.replace('/>', ' transform="scale(1.2 0.7)"/>')}</g></g>`;
    const flat = `<g transform="translate(10 5) rotate(30) scale(1.2 0.7)">${shape}</g>`;
    const shapeOf = ({ outline, openings }: Part) => ({ outline, openings });
    expect(shapeOf(first(nested))).toEqual(shapeOf(first(flat)));
  });

  it('leave circles circles, and make ellipses of them where they stretch', () => {
    const turned = first('<g transform="rotate(30) scale(2)"><circle r="10"/></g>');
    expect(measures(turned)).toMatchObject({ edges: 2 });
    const stretched = first('<g transform="rotate(30) scale(2 1)"><circle r="10"/></g>');
    expect(Math.abs(measures(stretched).area - Math.PI * 200)).toBeLessThan(0.5);
  });

  it('leave the picture the right way up', () => {
    // a wide foot below (y down), a narrow top: in the part the foot is at y = 0
    const { outline } = first('<polygon points="20,0 40,0 60,50 0,50"/>');
    const foot = outline.filter(({ y }) => Math.abs(y) < 1e-9).map(({ x }) => x);
    expect(Math.max(...foot) - Math.min(...foot)).toBe(60);
  });
});

describe('what is not drawn', () => {
  const box = '<rect width="10" height="20"/>';
  it.each([
    `<defs>${box}</defs>`,
    `<clipPath>${box}</clipPath>`,
    `<g display="none">${box}</g>`,
    `<g style="fill:red;display: none">${box}</g>`,
    '<title>a rectangle</title>',
    '<n:view xmlns:n="urn:other"><n:rect width="9"/></n:view>',
  ])('is left out: %s', (extra) => {
    expect(parts(svg(`${box}${extra}`))).toHaveLength(1);
  });

  it('is text, with a word', () => {
    const { parts: made, problems } = read(svg(`${box}<text><tspan>hello</tspan><textPath>round</textPath></text>`));
    expect(made).toHaveLength(1);
    expect(diagnosticText(problems[0]!)).toMatch(/1 x text left out; turn text into paths/);
  });

  it.each([
    ['<use href="#a"/>', /<use> in line 1 cannot be used: it is not supported; turn copies into separate paths/],
    ['<image href="a.png"/>', /trace the picture/],
    ['<svg width="5mm"/>', /drawing within a drawing/],
    ['<style>.a{transform:scale(2)}</style>', /<style> moves, hides or shapes/],
    ['<rect width="5" height="5" style="transform:scale(3)"/>', /moved by its style/],
  ])('is an error where it would be missed: %s', (body, message) => {
    expect(fault(svg(`${box}${body}`))).toMatch(message);
  });
});
