import { diagnosticText } from '../../lib/diagnostic/index.js';
import { describe, expect, it } from 'vitest';
import { readDesign } from '../../lib/design/index.js';
import { changed } from '../helpers/changed.js';
import { designOf, fixture, fixtureNames, fixtureText } from '../helpers/fixtures.js';

function faults(text: string) {
  const reading = readDesign(text);
  if (reading.kind === 'design') throw new Error('the design was taken');
  return reading.problems;
}

describe('a design file', () => {
  it.each(fixtureNames)('%s is taken without a problem', (name) => {
    expect(readDesign(fixtureText(name))).toMatchObject({ kind: 'design', problems: [] });
  });

  it('has its lengths in mm, whatever they were written in', () => {
    const inch = fixture('hand-cut-inch');
    // 1 in = 25.4 mm exactly (NIST SP 811)
    expect(inch.dish.aperture).toBeCloseTo(52 * 25.4, 9);
    expect(inch.materials['ply']?.thickness).toBeCloseTo((15 / 32) * 25.4, 9);
    expect(inch.stock[0]?.size?.width).toBeCloseTo(8 * 304.8, 9);
  });

  it('names the defaults that were taken', () => {
    const { defaults } = fixture('press-house');
    expect(defaults).toContain('hub.radius');
    expect(defaults).toContain('dish.figure');
    expect(defaults).not.toContain('dish.aperture');
  });

  it('lets ribs clear each other: 24 ribs of 12 mm need 45.6 mm', () => {
    // t/(2·tan(π/N)), a chord of a regular polygon
    expect(fixture('press-house').hub.radius).toBe(Math.ceil(12 / (2 * Math.tan(Math.PI / 24)) + 5));
  });

  it('rounds a worked-out size alike in inches and millimetres', () => {
    const mm = designOf(changed('press-house', 'aperture: 1500', 'aperture: 1524'));
    const inch = designOf(
      changed('press-house', 'aperture: 1500', 'aperture: 60 in').replace('focalLength: 550', 'focalLength: 0.55 m'),
    );
    expect(inch.board).toEqual(mm.board);
    expect(inch.rib.rimHeight).toBe(mm.rib.rimHeight);
    expect(inch.hub).toEqual(mm.hub);
  });
});

describe('a faulty design file', () => {
  it('says of a missing key what it has to be: a length, a number, one of a few words', () => {
    const coupon =
      'machine: { calibration: { materials: { birch12: { date: 2026-05-01, thickness: 12, width: 6 } } } }';
    const texts = [
      changed('press-house', '  aperture: 1500\n', ''),
      changed('press-house', '  ribs: 24\n', ''),
      `${fixtureText('press-house')}\n${coupon}\n`,
    ];
    expect(texts.map((text) => diagnosticText(faults(text)[0]!))).toEqual([
      expect.stringMatching(/dish\.aperture is missing; it needs one length/),
      expect.stringMatching(/dish\.ribs is missing; it needs one whole number/),
      expect.stringMatching(/birch12\.cutBy is missing; it needs one of router, laser/),
    ]);
  });

  it('names an unknown key with its line and the nearest known key', () => {
    const text = changed('press-house', '  aperture: 1500', '  aperture: 1500\n  apperture: 3');
    const line = text.split('\n').findIndex((row) => row.includes('apperture')) + 1;
    expect(faults(text)).toMatchObject([{ code: 'unknown-key', place: { line } }]);
    expect(diagnosticText(faults(text)[0]!)).toContain('did you mean aperture?');
  });

  it('gives every fault at once, each with its line', () => {
    const found = faults('dish: { aperture: -5, focalLength: x, ribs: 2.5 }\nmaterials: {}\nunits: parsec\n');
    expect(found.length).toBeGreaterThanOrEqual(5);
    for (const problem of found) expect(problem.place?.line).toBeGreaterThan(0);
  });

  it.each([
    ['a length of zero', 'aperture: 1500', 'aperture: 0', /dish\.aperture is 0 mm; it must be at least/],
    [
      'a kerf finer than any beam',
      /process: .*/,
      'process: { kind: laser, kerf: 0.002 }',
      /process\.kerf is 0\.002 mm; it must be 0 or at least 0\.01 mm/,
    ],
    ['a negative length', 'focalLength: 550', 'focalLength: -550', /dish\.focalLength is -550 mm; it must be above 0/],
    ['a rim steeper than 70 degrees', 'focalLength: 550', 'focalLength: 136', /use at least 137 mm/],
    [
      'more ribs than the set-back allows',
      /aperture: 1500\n(.*)\n {2}ribs: 24/,
      'aperture: 1000\n$1\n  ribs: 230',
      /use fewer or thinner ribs/,
    ],
    [
      'a facing too thick for the ribs',
      'panel: { material: hardboard3 }',
      'panel: { material: hardboard3, gap: 14 }',
      /would not reach the ribs/,
    ],
    ['a hub too small', /panel: \{/, 'hub: { radius: 30 }\npanel: {', /clear each other from 45\.57 mm/],
    ['an unknown material', 'rib: { material: birch12 }', 'rib: { material: birch21 }', /did you mean birch12\?/],
    ['stock without a size', 'size: 900 x 600, ', '', /one of size, outline and rollWidth/],
    ['a target below the start', 'target: 78', 'target: 8', /not above load\.start/],
    ['a vessel larger than the dish', 'diameter: 260', 'diameter: 2600', /larger than the aperture/],
    ['a word for a choice', 'shape: round', 'shape: oval', /must be one of round, square/],
    ['text for a number', 'ribs: 24', 'ribs: many', /must be one whole number/],
    ['a list for a section', 'panel: { material: hardboard3 }', 'panel: [1, 2]', /must be a section of keys/],
  ])('is refused for %s', (_, from, to, message) => {
    const found = faults(changed('press-house', from, to));
    expect(found.map(diagnosticText).join('\n')).toMatch(message);
    expect(found[0]?.place?.line).toBeGreaterThan(0);
  });

  it.each([
    ['nothing', ''],
    ['a comment alone', '# nothing here'],
    ['a list', '- 1\n- 2'],
    ['broken YAML', 'dish: [1, 2'],
    ['a repeated key', 'name: a\nname: b'],
    ['bytes', 'a\0b'],
    ['deep brackets', '['.repeat(5000)],
    ['deep lists', '- '.repeat(5000)],
    ['deep indents', Array.from({ length: 3000 }, (_, i) => `${' '.repeat(i)}a:`).join('\n')],
    ['an alias bomb', 'a: &a [x,x]\nb: &b [*a,*a]\nc: [*b,*b]'],
    ['a large file', `# ${'x'.repeat(1_000_001)}`],
    ['odd numbers', 'dish: { aperture: .inf, focalLength: .nan, ribs: 1e999 }'],
    ['names of the language', '__proto__: { a: 1 }\nconstructor: 2'],
  ])('of %s gets a message and no more', (_, text) => {
    for (const problem of faults(text)) expect(diagnosticText(problem).length).toBeGreaterThan(10);
  });
});
