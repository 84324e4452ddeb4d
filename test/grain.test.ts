/** Grain from the part to the sheet: the sheet's grain runs along x, and a part is turned until its own does. */
import { describe, expect, it } from 'vitest';
import { prepare } from '../lib/index.js';
import { nestRequests } from '../lib/pipeline/nesting-request.js';
import { changed } from './helpers/changed.js';
import { designOf, fixture } from './helpers/fixtures.js';

function rotationsOf(design = fixture('press-house')) {
  const { parts } = prepare(design);
  const asked = nestRequests(design, parts).flatMap((request) => request.parts);
  return (id: string) => asked.find((part) => part.id === id)!.rotations;
}

/** Whether a direction of the part's own lies along the sheet's x axis, either way, when the part is turned. */
const alongSheet = (ownDeg: number, turnDeg: number): boolean =>
  Math.abs(Math.sin(((ownDeg + turnDeg) * Math.PI) / 180)) < 1e-9;

describe('a part with grain', () => {
  const plywood = changed('press-house', 'hardboard3: { kind: hardboard', 'hardboard3: { kind: plywood');

  it('along its length lies along the sheet, either way round', () => {
    const rotations = rotationsOf()('rib');
    expect(rotations).toHaveLength(2);
    for (const turn of rotations as number[]) expect(alongSheet(0, turn)).toBe(true);
  });

  it('across its length lies across the sheet, either way round', () => {
    const rotations = rotationsOf(designOf(plywood))('panel');
    expect(rotations).toHaveLength(2);
    for (const turn of rotations as number[]) expect(alongSheet(90, turn)).toBe(true);
  });

  it('lies as it likes on a sheet that has none', () => {
    // hardboard is felted from fibres that lie every way (EN 316)
    expect(rotationsOf()('panel')).toBe('any');
  });
});
