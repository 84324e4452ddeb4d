/** What cannot be built as asked: each by one clear message that names the key and what would do. */
import { diagnosticText, pathText } from '../../lib/diagnostic/index.js';
import { describe, expect, it } from 'vitest';
import { fixtureNames } from '../helpers/fixtures.js';
import { make } from './making.js';

type Change = readonly [string | RegExp, string];

const before = (section: string): Change => ['board: {', `${section}\nboard: {`];

const cases: readonly [string, readonly Change[], string, string, RegExp][] = [
  [
    'a cleat too short for its screws',
    [before('cleat: { length: 24 }')],
    'cleat-crowded',
    'cleat.length',
    /use 4\d mm or more, or fewer screws/,
  ],
  [
    'a cleat too narrow for a head',
    [before('cleat: { width: 12, headDiameter: 10 }')],
    'cleat-crowded',
    'cleat.width',
    /use 14 mm or more/,
  ],
  [
    'a head smaller than its screw',
    [before('cleat: { headDiameter: 3 }')],
    'screw-head',
    'cleat.headDiameter',
    /smaller than cleat\.screwDiameter \(4\.5 mm\)/,
  ],
  [
    'a cleat longer than the base',
    [
      ['size: 1180', 'size: 160'],
      ['rib: { material: birch12 }', 'rib: { material: birch12, joint: glued-cleat }'],
    ],
    'cleat-does-not-fit',
    'cleat.width',
    /longer than the rib's base/,
  ],
  [
    'a bolt as thick as the hub',
    [before('hub: { boltDiameter: 70 }')],
    'hub-bolt',
    'hub.boltDiameter',
    /use a smaller bolt or a larger hub\.radius/,
  ],
  [
    'mounting holes under the hub',
    [['size: 1180', 'size: 1180, mountingRadius: 55']],
    'mounting-holes',
    'board.mountingRadius',
    /must be between the hub and the edge of the board.*320 mm would fit/,
  ],
  [
    'mounting holes too wide for their bays',
    [['size: 1180', 'size: 1180, mountingDiameter: 40, mountingRadius: 150']],
    'mounting-holes',
    'board.mountingRadius',
    /would fit/,
  ],
  [
    'more mounting holes than bays',
    [['size: 1180', 'size: 1180, mountingHoles: 30']],
    'mounting-holes',
    'board.mountingHoles',
    /more than the 24 bays/,
  ],
  [
    'a seam as wide as the panel at the hub',
    [['panel: { material: hardboard3 }', 'panel: { material: hardboard3, gap: 10.5 }'], before('hub: { radius: 46 }')],
    'panel-narrow',
    'panel.gap',
    /hub\.radius of \d+ mm or more/,
  ],
  [
    'pins at the very edge',
    [['panel: { material: hardboard3 }', 'panel: { material: hardboard3, gap: 6, fixing: pins }']],
    'pin-edge',
    'panel.fixing',
    /use panel\.fixing: glue, ribs at least 1\d(\.\d)? mm thick/,
  ],
  [
    'dowels thicker than the hub has room for',
    [before('hub: { dowelDiameter: 26 }')],
    'hub-dowel',
    'hub.dowelDiameter',
    /use thinner dowels, a thinner bolt, a hub\.radius of \d+(\.\d)? mm or more, or hub\.dowels: 0/,
  ],
  [
    'an inset that eats the narrow end',
    [['reflector: { material: aluminium, finish: bright-anodised }', 'reflector: { material: aluminium, inset: 8 }']],
    'inset',
    'reflector.inset',
    /use at most [45](\.\d)? mm/,
  ],
];

describe('what does not fit is an error', () => {
  it.each(cases)('%s', (_, changes, code, key, message) => {
    const found = make('press-house', changes).problems.filter((problem) => problem.code === code);
    expect(found).toHaveLength(1);
    expect(found[0]!.severity).toBe('error');
    expect(pathText(found[0]!.place?.path ?? [])).toBe(key);
    expect(diagnosticText(found[0]!)).toMatch(message);
  });
});

describe('what is only unwise is a warning', () => {
  it.each<[string, readonly Change[], string, string]>([
    [
      'a rib whittled thin by its toe cut',
      [['rib: { material: birch12 }', 'rib: { material: birch12, rimHeight: 5 }']],
      'rib-thin',
      'rib.rimHeight',
    ],
    [
      'screws into the edge of thin plywood',
      [before('cleat: { material: hardboard3, ribScrews: 2 }')],
      'cleat-thin',
      'cleat.material',
    ],
  ])('%s', (_, changes, code, key) => {
    const found = make('press-house', changes).problems.filter((problem) => problem.code === code);
    expect(found).toHaveLength(1);
    expect(found[0]!.severity).toBe('warning');
    expect(pathText(found[0]!.place?.path ?? [])).toBe(key);
  });
});

describe('the fixtures', () => {
  it.each(fixtureNames)('%s can be built', (name) => {
    expect(make(name).problems.filter(({ severity }) => severity === 'error')).toEqual([]);
  });

  it('of birch has nothing to warn of', () => {
    expect(make('press-house').problems).toEqual([]);
  });
});
