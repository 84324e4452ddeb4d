import { describe, expect, it } from 'vitest';
import { cyclic, element } from '../../lib/geometry/index.js';

describe('checked reading of lists', () => {
  it('gives the element, or says which one is missing', () => {
    expect(element(['a', 'b'], 1)).toBe('b');
    expect(() => element(['a', 'b'], 2)).toThrow('no element 2 in a list of 2');
    expect(() => element(['a', 'b'], -1)).toThrow('no element -1 in a list of 2');
  });

  it('runs round a ring both ways', () => {
    expect([-4, -1, 0, 2, 3, 7].map((i) => cyclic(['a', 'b', 'c'], i))).toEqual(['c', 'c', 'a', 'c', 'a', 'b']);
    expect(() => cyclic([], 0)).toThrow(RangeError);
  });
});
