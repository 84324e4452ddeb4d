/** The time of `--seconds` over all that is nested. Common practice, no source: arithmetic by hand. */
import { describe, expect, it } from 'vitest';
import { TimeLeft } from '../../cli/nest/time-left.js';
import { nestAll } from '../../lib/pipeline/nest-all.js';
import { prepare } from '../../lib/pipeline.js';
import { fixture } from '../helpers/fixtures.js';
import { randomNester } from '../helpers/random-nester.js';

describe('the time for several searches', () => {
  it('is shared by what is still to be done, and what one leaves over is for those after it', () => {
    let clock = 5000;
    const time = new TimeLeft(60, () => clock);
    expect(time.for(0.5)).toBe(30);
    // it was done after 10 s
    clock += 10_000;
    expect(time.for(0.8)).toBeCloseTo(40, 9);
    clock += 40_000;
    expect(time.for(1)).toBeCloseTo(10, 9);
    clock += 15_000;
    expect(time.for(1)).toBe(0);
  });

  it('begins with the first search, not before', () => {
    let clock = 0;
    const time = new TimeLeft(20, () => clock);
    clock += 7000;
    expect(time.for(1)).toBe(20);
  });
});

describe('requests nested one after the other', () => {
  const { requests } = prepare(fixture('press-house'));
  const plain = randomNester(1);
  const sharesOf = async (again?: number) => {
    const shares: number[] = [];
    await nestAll(
      requests,
      (parts, stock, options, share) => (shares.push(share), plain(parts, stock, options, share)),
      again,
    );
    return shares;
  };
  const pieces = requests.map(({ parts }) => parts.reduce((sum, { quantity }) => sum + quantity, 0));

  it('are told their share of what is left, by pieces; the last takes the rest', async () => {
    expect(requests.length).toBeGreaterThan(1);
    const shares = await sharesOf();
    expect(shares.at(-1)).toBe(1);
    // the products of what each leaves are the shares of the whole
    let left = 1;
    const whole = pieces.reduce((sum, one) => sum + one, 0);
    shares.forEach((share, i) => {
      expect(left * share).toBeCloseTo((pieces[i] ?? 0) / whole, 12);
      left *= 1 - share;
    });
  });

  it('leave as much again for each stock that is tried after them', async () => {
    const [once, again] = [await sharesOf(), await sharesOf(1)];
    expect(again[0]).toBeCloseTo((once[0] ?? 0) / 2, 12);
    expect(again.at(-1)).toBeLessThan(0.5);
  });
});
