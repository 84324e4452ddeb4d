/** Left, right, above and below in the steps of the book, against where the parts lie in space. */
import { beforeAll, describe, expect, it } from 'vitest';
import { assemble } from '../../lib/assembly/index.js';
import { bookOf } from '../../lib/public/book.js';
import { type Job, prepare } from '../../lib/index.js';
import { designOf, fixtureText, jobOf } from '../helpers/fixtures.js';

describe('the book', () => {
  let job: Job;
  beforeAll(async () => {
    job = await jobOf('press-house');
  });

  it('puts the cleat on the side of the rib on which it stands, as seen from the hub', () => {
    const { design, dish, parts, cleatStart, splices } = prepare(job.design);
    const { placed } = assemble({ design, dish, parts, cleatStart, splices });
    const cleat = placed.find((one) => one.form === 'plate' && one.part.kind === 'cleat' && one.rib === 1);
    if (cleat?.form !== 'plate') throw new Error('no cleat');
    // rib 1 runs along x, outward: who looks along x with z up has y on the left
    const middle = cleat.part.outline.reduce(
      (sum, { x, y }) =>
        sum + (cleat.frame.origin[1] + x * cleat.frame.x[1] + y * cleat.frame.y[1]) / cleat.part.outline.length,
      0,
    );
    const side = middle > 0 ? 'left' : 'right';
    const words = bookOf(job)
      .replace(/<[^>]*>/g, ' ')
      .replace(/\s+/g, ' ');
    expect(words).toMatch(
      new RegExp(`on the rib(?:'|&#39;)s scribed face, which is the ${side} one as seen from the hub`),
    );
  });

  it('puts the screwed half of a splice plate under the edge of the segment that it is screwed to', () => {
    const prepared = prepare(designOf(fixtureText('village-bakery')));
    const angleOf = ([x, y]: readonly number[]): number => Math.atan2(y!, x!);
    const sides = prepared.splices.map(({ direction }) => {
      const near = (angle: number): number => Math.atan2(Math.sin(angle - direction), Math.cos(angle - direction));
      const screws = prepared.assembly.fasteners
        .filter(({ joint }) => joint === 'splice-to-board')
        .map(({ entry }) => near(angleOf(entry)))
        .filter((angle) => Math.abs(angle) < Math.PI / 4);
      expect(screws.length).toBeGreaterThan(1);
      // screws beyond the joint, anticlockwise: who looks outward from the axis has that segment on the left of the joint,
      // and the joint is its right edge
      return screws.every((angle) => angle > 0) ? 'right' : screws.every((angle) => angle < 0) ? 'left' : 'neither';
    });
    expect(new Set(sides).size).toBe(1);
    const words = bookOf({ ...prepared, sheets: null })
      .replace(/<[^>]*>/g, ' ')
      .replace(/\s+/g, ' ');
    expect(words).toContain(`under the ${sides[0]} edge of each, as seen from the axis with the face up`);
  });
});
