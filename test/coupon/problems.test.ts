/** What `check` says of the error that is left after calibration: each limit from both sides. */
import { describe, expect, it } from 'vitest';
import { calibrationProblems, prepare } from '../../lib/index.js';
import { designOf, type FixtureName, fixtureText } from '../helpers/fixtures.js';

/** Codes and keys of what is found, with a calibration of one material and of the axes. */
function found(name: FixtureName, kind: 'router' | 'laser', material: string, values: string, axes = ''): string[] {
  const measured = `{ cutBy: ${kind}, date: 2026-05-01, ${values} }`;
  const text = `${fixtureText(name)}\nmachine: { kind: ${kind}, calibration: { ${axes} materials: { ${material}: ${measured} } } }\n`;
  return calibrationProblems(prepare(designOf(text))).map(({ code, place }) => `${code} ${place?.path.at(-1)}`);
}

const laser = (values: string, axes?: string) =>
  found('classroom', 'laser', 'ply3', `thickness: 3, width: 0.16, ${values}`, axes);
const router = (values: string) => found('press-house', 'router', 'birch12', values);
const bit = 'thickness: 12, width: 6.02, toolDiameter: 6';

describe('what is left after calibration', () => {
  // tabs have 0.1 mm of play, of which the error may take half; twice the standard uncertainty covers it
  it.each([
    [0.024, []],
    [0.026, ['calibration-joint widthUncertainty']],
  ])('of the width of a slot is held against its play: %d mm', (uncertainty, problems) => {
    expect(laser(`widthUncertainty: ${uncertainty}`)).toEqual(problems);
  });

  it('of the axes is held against the play of the outermost slots', () => {
    const board = prepare(designOf(fixtureText('classroom'))).design.board.size;
    // two parts, each off by so many mm a metre over half the board, at twice the uncertainty
    const limit = 0.05 / (2 * Math.SQRT2 * (board / 2000));
    const axes = (perM: number) => `axes: { cutBy: laser, date: 2026-05-01, scaleUncertaintyMmPerM: ${perM} },`;
    expect(laser('widthUncertainty: 0', axes(0.98 * limit))).toEqual([]);
    expect(laser('widthUncertainty: 0', axes(1.02 * limit))).toEqual(['calibration-joint axes']);
  });

  it('of a coupon of another bit or thickness is not taken as known', () => {
    expect(router(bit)).toEqual([]);
    expect(router('thickness: 12, width: 6.4, toolDiameter: 6.35')).toEqual(['calibration-other toolDiameter']);
    expect(router('thickness: 10.5, width: 6.02, toolDiameter: 6')).toEqual([]);
    expect(router('thickness: 10.4, width: 6.02, toolDiameter: 6')).toEqual(['calibration-other thickness']);
  });

  it('of bored holes is held against the play of a dowel', () => {
    expect(router(`${bit}, bore: 0.05, boreUncertainty: 0.09`)).toEqual([]);
    expect(router(`${bit}, bore: 0.05, boreUncertainty: 0.11`)).toEqual(['calibration-joint boreUncertainty']);
  });

  it('of the depth is held against the cut into the spoil board', () => {
    // 0.3 mm of it: too shallow by 0.15 is through with an uncertainty of 0.07, and not of 0.08
    expect(router(`${bit}, depth: -0.15, depthUncertainty: 0.07`)).toEqual([]);
    expect(router(`${bit}, depth: -0.15, depthUncertainty: 0.08`)).toEqual(['calibration-joint depth']);
  });
});
