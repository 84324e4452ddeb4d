import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sideOfContour, signedArea, simplicity } from '../../lib/geometry/index.js';
import { dxf, measures, parts, polyline, read, svg } from './extra-drawings.js';
import { holds } from '../helpers/seeds.js';

const textOf = (file: string): string => readFileSync(new URL(`../../fixtures/extra/${file}`, import.meta.url), 'utf8');
const drawings = ['bracket.dxf', 'trivet.svg'].map(textOf);

/** One digit for another: the drawing mostly stays one, of another shape. */
const wrongDigit = fc.record({
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  length: fc.constant(1),
  put: fc.integer({ min: 0, max: 9 }).map(String),
});

/** A slip of a disk, a program or a hand: something dropped, doubled, swapped or put in. */
const slip = fc.record({
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  length: fc.integer({ min: 0, max: 40 }),
  put: fc.oneof(
    fc.constantFrom(
      '',
      '0',
      '-1',
      '1e308',
      '1e999',
      'NaN',
      '-',
      '\n',
      '\n0\n',
      '<',
      '/>',
      '"',
      '\u0000',
      '\uFEFF',
      'é',
    ),
    fc.string({ maxLength: 12 }),
    fc.double().map(String),
  ),
});

function mutate(text: string, slips: readonly { at: number; length: number; put: string }[]): string {
  return slips.reduce((now, { at, length, put }) => {
    const near = Math.floor(at * now.length);
    // a digit is put in a digit's place
    const digits = /^\d$/.test(put) && length === 1 ? now.slice(near).search(/\d/) : 0;
    const from = near + Math.max(0, digits);
    return now.slice(0, from) + put + now.slice(from + length);
  }, text);
}

describe.each(drawings.map((text, i) => [i === 0 ? 'DXF' : 'SVG', text]))('a mutated %s', (_, text) => {
  it('gives sound parts or a message, never a crash', () => {
    let refused = 0;
    let taken = 0;
    holds(
      fc.property(fc.array(fc.oneof(slip, wrongDigit, wrongDigit), { minLength: 1, maxLength: 3 }), (slips) => {
        const { parts: made, problems } = read(mutate(text, slips));
        const errors = problems.filter(({ severity }) => severity === 'error');
        expect(made.length === 0).toBe(errors.length > 0);
        for (const { message } of errors) expect(message).toMatch(/^extra\[1\], own\.dxf: .{8}/s);
        if (errors.length > 0) refused += 1;
        else taken += 1;
        for (const { outline, openings, holes } of made) {
          expect(signedArea(outline)).toBeGreaterThan(0);
          for (const ring of [outline, ...openings]) expect(simplicity(ring, 1e-6).kind).toBe('simple');
          for (const opening of openings) {
            expect(signedArea(opening)).toBeLessThan(0);
            expect(sideOfContour(outline, opening[0]!, 0)).toBe('inside');
          }
          for (const { x, y } of holes) expect(sideOfContour(outline, { x, y }, 0)).toBe('inside');
        }
      }),
      { numRuns: 600 },
    );
    expect(refused).toBeGreaterThan(20);
    expect(taken).toBeGreaterThan(20);
  });
});

/** Corners round a middle in order of their angle: a ring that cannot cross itself. */
const star = fc.array(fc.integer({ min: 20, max: 100 }), { minLength: 3, maxLength: 14 }).map((radii) =>
  radii.map((r, i): [number, number] => {
    const angle = (2 * Math.PI * i) / radii.length;
    return [r * Math.cos(angle), r * Math.sin(angle)];
  }),
);
const turn = fc.record({
  angle: fc.double({ min: 0, max: 360, noNaN: true }),
  x: fc.integer({ min: -1000, max: 1000 }),
  y: fc.integer({ min: -1000, max: 1000 }),
  scale: fc.double({ min: 0.2, max: 5, noNaN: true }),
});

describe('an outline stays itself', () => {
  it('however it is turned, moved, scaled and begun, in DXF and in SVG', () => {
    holds(
      fc.property(star, turn, fc.nat(13), (corners, { angle, x, y, scale }, first) => {
        const plain = measures(parts(dxf(polyline(corners)))[0]!);
        const [cos, sin] = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)];
        const from = first % corners.length;
        const begun = [...corners.slice(from), ...corners.slice(0, from)];
        const moved = begun.map(([px, py]): [number, number] => [
          scale * (px * cos - py * sin) + x,
          scale * (px * sin + py * cos) + y,
        ]);
        const points = begun.map((corner) => corner.join(',')).join(' ');
        const transform = `translate(${x} ${y}) rotate(${angle}) scale(${scale})`;
        const drawn = [dxf(polyline(moved)), svg(`<polygon transform="${transform}" points="${points}"/>`)];
        for (const text of drawn) {
          const { area, length } = measures(parts(text)[0]!);
          expect(area / (plain.area * scale ** 2)).toBeCloseTo(1, 8);
          expect(length / (plain.length * scale)).toBeCloseTo(1, 8);
        }
      }),
      { numRuns: 200 },
    );
  });
});
