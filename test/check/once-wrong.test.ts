/** Random jobs in which the proof once found a true fault of the planner. */
import { describe, expect, it } from 'vitest';
import { verify } from '../../lib/check/index.js';
import { makeRandom } from '../helpers/jobs.js';

describe('jobs that once came out wrong', () => {
  it.each([
    [3005, 'the finishing pass slanted out through a tab'],
    [1283, 'tabs from opposite sides of a cut ran into one'],
  ])('seed %i: %s', async (seed) => {
    const made = await makeRandom(seed);
    if (made.kind === 'refused') throw new Error(made.messages.join('; '));
    expect(verify(made.files).faults.map(({ message }) => message)).toEqual([]);
  });
});
