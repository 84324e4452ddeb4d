/** Lettering on placed parts: readable as it lies, and none in mirror writing. */
import { describe, expect, it } from 'vitest';
import { strokeText } from '../lib/geometry/index.js';
import type { Part } from '../lib/parts/index.js';
import { sheetMarks } from '../lib/pipeline/sheet-marks.js';

const label = { text: 'L{n}', x: 10, y: 5, height: 8, angle: 0 };
const parts = new Map([['rib', { id: 'rib', labels: [label] } as unknown as Part]]);

function marks(rotationDeg: number, mirrored: boolean) {
  const placed = [{ part: 'rib', copy: 3, x: 100, y: 50, rotationDeg, mirrored }];
  return sheetMarks({ stock: 'ply', width: 500, height: 500, placed, usedLength: 500, offcut: null }, parts);
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
});
