import { describe, expect, it } from 'vitest';
import { radialLayout } from '../../lib/dish/index.js';
import { textsUp, type Part } from '../../lib/part/index.js';
import { makeTemplates } from '../../lib/parts/index.js';
import { make, firstPart } from './making.js';

/** Direction from the axis to the middle of a label, degrees anticlockwise from x, 0 to 360. */
function labelDirection(part: Part, text: string): number {
  const label = textsUp(part).find((one) => one.text === text)!;
  return ((Math.atan2(label.y, label.x) * 180) / Math.PI + 360) % 360;
}

describe('grain', () => {
  it('runs along the ribs, and across the panels', () => {
    // wood is many times as stiff along its grain as across it (Forest Products Laboratory, Wood Handbook, chapter on
    // mechanical properties; from memory): a rib has to be stiff along its length, a panel has to bend along it
    const made = make('press-house');
    expect(firstPart(made, 'rib').grain).toBe('along');
    expect(firstPart(made, 'panel').grain).toBe('across');
  });

  it('is let go where the part would fit no sheet with it', () => {
    // a rib of 699 mm does not lie along a sheet of 600 mm, but across it
    const rib = make('press-house', [['birch12, size: 2440 x 1220', 'birch12, size: 600 x 1220']]);
    expect(firstPart(rib, 'rib').grain).toBe('any');
    // a panel of some 750 mm lies across no sheet of 600 mm
    const panel = make('press-house', [['hardboard3, size: 2440 x 1220', 'hardboard3, size: 2440 x 600']]);
    expect(firstPart(panel, 'panel').grain).toBe('any');
  });
});

describe('numbers of the ribs', () => {
  const made = make('press-house');

  it('go round anticlockwise as seen from above, rib 1 along x, on the board', () => {
    // 24 ribs are the hours of a day on a dial: 15° each
    for (let rib = 1; rib <= 24; rib++) {
      const off = labelDirection(firstPart(made, 'board'), String(rib)) - 15 * (rib - 1);
      // on the anticlockwise side of the line, where no cleat stands
      const turn = ((off + 540) % 360) - 180;
      expect(turn).toBeGreaterThan(0);
      expect(turn).toBeLessThan(7.5);
    }
  });

  it('stand at the same directions on the hub template, on the same side of its lines', () => {
    const jig = makeTemplates(made.design, made.dish, made.parts).find(({ id }) => id === 'jig-hub')!;
    for (let rib = 1; rib <= 24; rib++) {
      const turn = ((labelDirection(jig, String(rib)) - 15 * (rib - 1) + 540) % 360) - 180;
      expect(turn).toBeGreaterThan(0);
      expect(turn).toBeLessThan(7.5);
    }
  });
});

describe('layout of ribs', () => {
  it('spreads ribs evenly, each bay half way between its two', () => {
    const { ribs, bays, halfAngle, halfPitch } = radialLayout(12);
    // the hours of a clock: 30° apart
    expect(ribs.map(({ rotationDeg }) => rotationDeg)).toEqual([0, 30, 60, 90, 120, 150, 180, 210, 240, 270, 300, 330]);
    expect(bays.map(({ rotationDeg }) => rotationDeg)).toEqual([
      15, 45, 75, 105, 135, 165, 195, 225, 255, 285, 315, 345,
    ]);
    expect(halfAngle).toBeCloseTo(0.261799387799, 12);
    expect(halfPitch).toBe(0);
  });
});
