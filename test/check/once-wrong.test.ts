/** Random jobs in which the proof once found a true fault of the planner. */
import { describe, expect, it } from 'vitest';
import { verify } from '../../lib/check/index.js';
import { makeRandom } from '../helpers/jobs.js';
import { failedJobs } from '../helpers/once-failed.js';

describe('jobs that once came out wrong', () => {
  it.each(failedJobs['whole jobs'] ?? [])('seed $seed: $why', async ({ seed }) => {
    const made = await makeRandom(seed);
    if (made.kind === 'refused') throw new Error(made.messages.join('; '));
    expect(verify(made.files).faults.map(({ message }) => message)).toEqual([]);
  });
});
