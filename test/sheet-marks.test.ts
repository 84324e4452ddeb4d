/** Lettering on placed parts: readable as it lies, and none in mirror writing. */
import { describe, expect, it } from 'vitest';
import { strokeText } from '../lib/geometry/index.js';
import { circle } from '../lib/geometry/index.js';
import { textMark } from '../lib/part/index.js';
import { plainPart } from './helpers/plain-part.js';
import { sheetMarks } from '../lib/pipeline/sheet-marks.js';

const label = textMark('L{n}', { x: 10, y: 5 }, 8);
const rib = plainPart('rib', circle({ x: 0, y: 0 }, 50), { marks: [label] });

function marks(rotationDeg: number, mirrored: boolean, part = rib) {
  const placed = [{ part: 'rib', copy: 3, x: 100, y: 50, rotationDeg, mirrored }];
  return sheetMarks({ placed }, new Map([['rib', part]]));
}

describe('lettering on a sheet', () => {
  it.each([0, 90, 200])('is turned by %i degrees with its part, and names the copy', (degrees) => {
    const angle = (degrees * Math.PI) / 180;
    const plain = strokeText('L3', { x: 10, y: 5 }, 8, 0);
    const found = marks(degrees, false);
    expect(found).toHaveLength(plain.length);
    found.forEach(({ part, copy, vertices }, i) => {
      expect([part, copy]).toEqual(['rib', 3]);
      vertices.forEach(({ x, y }, k) => {
        const at = plain[i]?.[k] ?? { x: NaN, y: NaN };
        expect(x).toBeCloseTo(100 + at.x * Math.cos(angle) - at.y * Math.sin(angle), 9);
        expect(y).toBeCloseTo(50 + at.x * Math.sin(angle) + at.y * Math.cos(angle), 9);
      });
    });
  });

  it('is left out where it would stand in mirror writing', () => {
    expect(marks(0, true)).toEqual([]);
  });

  it('on the back is readable where the back is up, and left out where the front is', () => {
    const turned = { ...rib, up: 'back' as const, marks: [{ ...label, face: 'back' as const }] };
    const found = marks(0, true, turned);
    const plain = strokeText('L3', { x: 10, y: 5 }, 8, 0);
    // strokes of mirrored parts run from their other end, so that a set of points is compared
    const points = (strokes: readonly { readonly x: number; readonly y: number }[], dx: number, dy: number) =>
      strokes.map(({ x, y }) => `${(x + dx).toFixed(6)} ${(y + dy).toFixed(6)}`).sort();
    expect(
      points(
        found.flatMap(({ vertices }) => vertices),
        0,
        0,
      ),
    ).toEqual(points(plain.flat(), 100, 50));
    expect(marks(0, false, turned)).toEqual([]);
  });
});
