import { describe, expect, it } from 'vitest';
import { onCircle } from '../../lib/optics/circle.js';

describe('onCircle', () => {
  // ECMAScript's Math, by the engine's own library
  it('has the cosine and the sine of every turn', () => {
    const count = 40_001;
    const turns = Float64Array.from({ length: count }, (_, i) => i / (count - 1));
    const [cosines, sines] = [new Float64Array(count), new Float64Array(count)];
    onCircle(turns, count, cosines, sines);
    const off = turns.reduce((max, turn, i) => {
      const angle = 2 * Math.PI * turn;
      return Math.max(
        max,
        Math.abs((cosines[i] ?? NaN) - Math.cos(angle)),
        Math.abs((sines[i] ?? NaN) - Math.sin(angle)),
      );
    }, 0);
    // Math's own argument is rounded by 2⁻⁵¹ near one turn
    expect(off).toBeLessThan(2 ** -50);
  });

  it('meets the axes exactly and leaves what lies beyond the count', () => {
    const turns = Float64Array.of(0, 0.25, 0.5, 0.75, 0.1);
    const [cosines, sines] = [new Float64Array(5), new Float64Array(5)];
    onCircle(turns, 4, cosines, sines);
    expect(Array.from(cosines, (x) => x + 0)).toEqual([1, 0, -1, 0, 0]);
    expect(Array.from(sines, (y) => y + 0)).toEqual([0, 1, 0, -1, 0]);
  });
});
