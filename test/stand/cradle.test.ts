/** The stand of a design: its lock, its parts as files, and what is refused. */
import { describe, expect, it } from 'vitest';
import { readDesign } from '../../lib/design/index.js';
import { buildCutFiles, prepare } from '../../lib/pipeline.js';
import { boughtFor, settingsOf } from '../../lib/stand/index.js';
import { holderShade, pipes } from '../../lib/hardware/index.js';
import { proveFolder } from '../../lib/check/index.js';
import { randomNester } from '../helpers/random-nester.js';
import { designOf, fixture } from '../helpers/fixtures.js';
import { preparedOn, standOn, textOn } from './on-stand.js';

const prepared = preparedOn('cider-yard', 'site: { latitude: 47.5, longitude: 9.5 }');
const stand = standOn(prepared);
const RAD = Math.PI / 180;

describe('the lock', () => {
  const side = stand.parts.find(({ id }) => id === 'stand-side')!;
  const arm = stand.parts.find(({ id }) => id === 'stand-arm')!;
  const { axis, baseTop, lock, tilt } = stand.cradle;
  const rows = settingsOf(stand);

  it('has a setting for every degree of the range, once', () => {
    expect(rows.map(({ sunDeg }) => Math.round(sunDeg * 1e6) / 1e6)).toEqual(
      Array.from(
        { length: Math.round((tilt.to - tilt.from) / RAD) + 1 },
        (_, i) => Math.round((90 - tilt.from / RAD - i) * 1e6) / 1e6,
      ),
    );
  });

  it('brings hole over hole at each setting, in the parts as they are cut', () => {
    const frameHoles = side.holes.filter(({ diameter }) => diameter === lock.hole).slice(0, lock.frame.length);
    const armHoles = arm.holes.filter(({ diameter }) => diameter === lock.hole).slice(0, lock.arm.length);
    for (const { sunDeg, hole, letter } of rows) {
      const angle = (90 - sunDeg) * RAD;
      const [one, other] = [frameHoles[hole]!, armHoles['abcdefghi'.indexOf(letter)]!];
      // the arm turns about the pipe: what hangs below swings away from the sun
      const down = other.y - axis;
      const x = other.x * Math.cos(angle) + down * Math.sin(angle);
      const y = down * Math.cos(angle) - other.x * Math.sin(angle);
      expect(Math.hypot(one.x - x, one.y + baseTop - axis - y)).toBeLessThan(1e-6);
    }
  });

  it('keeps wood round every hole: no two nearer than a shank and a half of each other', () => {
    for (const { holes } of [side, arm])
      holes.forEach((a, i) => {
        for (const b of holes.slice(i + 1))
          expect(Math.hypot(a.x - b.x, a.y - b.y) - (a.diameter + b.diameter) / 2).toBeGreaterThan(1.2 * lock.pin);
      });
  });
});

describe('the range', () => {
  it('follows the site: 90° less the latitude and the tilt of the earth’s axis, 23.44°, in whole degrees', () => {
    expect(90 - stand.cradle.tilt.from / RAD).toBeCloseTo(Math.ceil(90 - 47.5 + 23.44), 6);
    expect(90 - stand.cradle.tilt.to / RAD).toBeCloseTo(prepared.design.day.minElevation, 6);
  });

  it('is 15 to 90 degrees where no site is named', () => {
    const { tilt } = standOn(preparedOn('cider-yard')).cradle;
    expect([90 - tilt.to / RAD, 90 - tilt.from / RAD]).toEqual([expect.closeTo(15, 9), expect.closeTo(90, 9)]);
  });
});

describe('the demo on a stand', () => {
  const demo = preparedOn('press-house');
  const { values } = standOn(demo);

  it('is free through its range, stands, and keeps its aim', () => {
    expect(demo.problems).toEqual([]);
    expect(values.collisions).toEqual([]);
    expect(values.factor).toBeGreaterThanOrEqual(1.5);
    expect(values.takeDown).toBeGreaterThanOrEqual(12);
    expect(values.handN).toBeLessThanOrEqual(150);
  });

  it('hands the shade of its hanger to the optics', () => {
    const pipe = pipes.find(({ size }) => size === '3/4 in')!;
    const width = demo.design.vessel!.holderWidth;
    expect(demo.design.vessel).toMatchObject({ holderArms: 2 });
    // area of pipes and frame, by their cut lengths in the shopping list, over both arms from the vessel to the rim
    expect(width).toBe(holderShade(pipe, 280, 260, 750));
    const [frame, tube] = [2 * 40 * 340 + 2 * 30 * 280, 2 * 26.9 * (750 - 140 - 40)];
    expect(Math.abs(width - (frame + tube) / (2 * (750 - 130)))).toBeLessThan(1);
    expect(fixture('press-house').vessel).toMatchObject({ holderArms: 0, holderWidth: 20 });
  });

  it('keeps its straps out of the middle of the spot, and under the vessel', () => {
    const { strapsApart } = standOn(demo).holder!;
    // nine tenths of the demo’s light fall within 74 mm of the middle, by its forecast with usual care
    expect(strapsApart / 2 - 15).toBeGreaterThan(60);
    expect(strapsApart / 2 + 15).toBeLessThan(260 / 2);
  });

  it('is bought in one system of sizes', () => {
    const metric = boughtFor(standOn(demo), (mm) => `${Math.round(mm)} mm`, false).map(({ item }) => item);
    expect(metric.filter((item) => /\d in\b/.test(item))).toEqual([]);
    const inch = boughtFor(standOn(demo), (mm) => `${(mm / 25.4).toFixed(2)} in`, true).map(({ item }) => item);
    expect(inch.filter((item) => /\bM\d|\bDN\b|\d mm\b/.test(item))).toEqual([]);
  });

  it('has counterweights and ballast in its shopping list', () => {
    const list = boughtFor(standOn(demo), (mm) => `${Math.round(mm)} mm`, false).map(
      ({ item, count }) => `${count} x ${item}`,
    );
    expect(list.some((line) => line.includes(`${values.weights.each} kg together`))).toBe(true);
    expect(list).toContain(`${Math.ceil(values.ballastKg / 25)} x Sandbag of 25 kg`);
  });
});

describe('the sight', () => {
  const plate = (id: string) => {
    const found = prepared.assembly.placed.find(({ part }) => part.id === id);
    if (found?.form !== 'plate') throw new Error(`no ${id}`);
    return found;
  };
  const [rear, front] = [plate('stand-sight-rear'), plate('stand-sight-front')];

  it('has rings at the distance of its plates times the tangent of their angle', () => {
    const apart = front.frame.origin[2] - rear.frame.origin[2] - rear.part.thickness;
    const [note = ''] = rear.part.notes;
    const radii = /rings of ([\d., ]+) mm/.exec(note)![1]!.split(', ').map(Number);
    // tangents from a table (from memory): 0.008727, 0.017455, 0.034921
    expect(radii).toEqual([0.008727, 0.017455, 0.034921].map((tangent) => Number((apart * tangent).toFixed(1))));
  });

  it('lets a ray along the axis fall from the cross of the front plate into the middle of the opening', () => {
    const [opening] = rear.part.openings;
    const middle = opening!.reduce((sum, { y }) => sum + y / opening!.length, 0);
    const lines = front.part.marks.flatMap((mark) => (mark.kind === 'line' ? [mark.vertices] : []));
    expect(lines.flat().reduce((sum, { y }) => sum + y / lines.flat().length, 0)).toBeCloseTo(middle, 9);
    expect([front.frame.origin[0], front.frame.origin[1]]).toEqual([rear.frame.origin[0], rear.frame.origin[1]]);
    expect([front.frame.x, front.frame.y]).toEqual([rear.frame.x, rear.frame.y]);
  });

  it('stands on the arm’s end, out of the light of the mirror', () => {
    const arm = plate('stand-arm');
    const top = Math.max(...arm.part.outline.map(({ y }) => y));
    expect(rear.frame.origin[2]).toBeCloseTo(top, 9);
    expect(Math.hypot(rear.frame.origin[0], rear.frame.origin[1])).toBeGreaterThan(stand.cradle.rim);
  });
});

describe('bad input', () => {
  const findings = (...lines: string[]) => {
    const reading = readDesign(textOn('cider-yard', lines), 'yard.yaml');
    if (reading.kind === 'refused') throw new Error(reading.problems[0]?.message);
    return prepare(reading.design).problems.map(reading.locate);
  };

  it.each([
    ['stand: { highest: 20, lowest: 40 }', 'stand-range', 'stand.lowest'],
    ['stand: { holderWidth: 200 }', 'stand-holder', 'stand.holderWidth'],
    ['stand: { wind: 30 }', 'stand-ballast', 'stand.wind'],
    ['stand: { step: 0.5 }', 'stand-range', 'stand.step'],
    ['vessel: { diameter: 220, offset: 60 }', 'stand-holder', 'vessel.offset'],
    ['vessel: { kind: cavity, diameter: 150 }', null, null],
  ])('%s', (line, code, key) => {
    const found = findings(line).filter(({ severity }) => severity === 'error');
    if (code === null) expect(found).toEqual([]);
    else {
      expect(found.map((one) => [one.code, one.place?.path.join('.')])).toContainEqual([code, key]);
      expect(found[0]).toMatchObject({
        place: { file: 'yard.yaml', line: expect.any(Number) as number },
        remedy: expect.any(String) as string,
      });
    }
  });

  it('refuses other than four mounting holes, and ribs that leave them out of line', () => {
    const codes = (...lines: string[]) =>
      findings(...lines).map(({ code, place }) => `${code} ${place?.path.join('.') ?? ''}`);
    expect(codes('board: { material: ply15, mountingHoles: 6 }')).toContain('stand-mount board.mountingHoles');
    expect(
      prepare(designOf(textOn('cider-yard').replace('ribs: 16', 'ribs: 17'))).problems.map(({ code }) => code),
    ).toContain('stand-mount');
  });

  it('refuses sheets whose edges take no bolt, and bolts too thick for an edge', () => {
    const thin = (line: string) =>
      prepare(
        designOf(
          textOn('cider-yard', [line]).replace('materials:', 'materials:\n  ply8: { kind: plywood, thickness: 8 }'),
        ),
      ).problems;
    expect(thin('stand: { material: ply8 }').map(({ code, place }) => [code, place?.path.join('.')])).toContainEqual([
      'stand-mount',
      'stand.material',
    ]);
    const codes = findings('stand: { material: ply9 }', 'board: { material: ply15, mountingBolt: M8 }').map(
      ({ code }) => code,
    );
    expect(codes).toContain('stand-mount');
  });

  it('keeps arms off side frames by more spacers where their sheet is thin', () => {
    const text = textOn('cider-yard', ['stand: { baseMaterial: ply4 }'])
      .replace('materials:', 'materials:\n  ply4: { kind: plywood, thickness: 4 }')
      .replace('stock:', 'stock:\n  - { material: ply4, size: 2440 x 1220 }');
    const thin = prepare(designOf(text));
    expect(thin.problems).toEqual([]);
    // a head of 8 mm and 3 mm of play
    expect(standOn(thin).parts.find(({ id }) => id === 'stand-spacer')).toMatchObject({ quantity: 6, thickness: 4 });
  });

  it('says up to which wind the ballast at hand does, and keeps to it', () => {
    const [problem] = findings('stand: { wind: 30, maxBallast: 100 }').filter(({ code }) => code === 'stand-ballast');
    const wind = Number(/above ([\d.]+) m\/s/.exec(problem?.remedy ?? '')?.[1]);
    expect(findings(`stand: { wind: ${wind}, maxBallast: 100 }`)).toEqual([]);
  });
});

it('cuts, and its files prove right', async () => {
  const job = await buildCutFiles(designOf(textOn('cider-yard')), new Map(), randomNester(3));
  expect(job.problems.filter(({ severity }) => severity === 'error')).toEqual([]);
  const placed = job.sheets.flatMap(({ nested }) => nested.placed).filter(({ part }) => part.startsWith('stand-'));
  expect(placed).toHaveLength(stand.parts.reduce((sum, { quantity }) => sum + quantity, 0));
  expect(proveFolder(job.files).faults.map(({ message }) => message)).toEqual([]);
});
