/**
 * Distances of fasteners beside those of EN 1995-1-1:2004: 8.3.1.3 (3) asks for 3 d from an unloaded edge of plywood,
 * table 8.2 for 5 d from an unloaded edge and (5 + 5·|cos α|)·d along the grain of thin nails in holes that are not
 * predrilled, for (4 + |cos α|)·d in predrilled ones (all from memory; the 5 d and 10 d of nails agree with what
 * carpenters' tables print for wood of up to 420 kg/m³).
 */
import { describe, expect, it } from 'vitest';
import { type Assembly, assemble, assemblyProblems, belowCode, codeDistances } from '../../lib/assembly/index.js';
import { prepare } from '../../lib/index.js';
import type { Part, PartKind } from '../../lib/part/index.js';
import type { Prepared } from '../../lib/pipeline/types.js';
import { designOf, fixtureText } from '../helpers/fixtures.js';

const press = prepare(designOf(fixtureText('press-house')));

function changedKind(prepared: Prepared, kind: PartKind, change: (part: Part) => Part): Assembly {
  const { design, dish, cleatStart, splices } = prepared;
  const parts = prepared.parts.map((part) => (part.kind === kind ? change(part) : part));
  return assemble({ design, dish, parts, cleatStart, splices });
}

const find = (assembly: Assembly, joint: string, part: string, what: string) =>
  codeDistances(assembly).find((one) => one.joint === joint && one.part === part && one.what === what)!;

describe('the press house', () => {
  // screws of 4 mm through cleats of 80 x 36 x 18 mm, four at even steps
  it.each([
    ['cleat-to-rib', 'cleat', 'edge', 18 / 2 / 4, 3],
    ['cleat-to-rib', 'rib', 'edge', 18 / 2 / 4, 3],
    ['cleat-to-board', 'cleat', 'edge', 80 / 8 / 4, 3],
    ['cleat-to-board', 'cleat', 'spacing', 80 / 2 / 4, 5],
    ['cleat-to-rib', 'rib', 'spacing', 80 / 2 / 4, 5],
  ])('%s in the %s: %s', (joint, part, what, shanks, asked) => {
    const found = find(press.assembly, joint, part, what);
    expect(found.shanks).toBeCloseTo(shanks, 6);
    expect(found.distance).toBeCloseTo(4 * shanks, 6);
    expect(found.asked).toBe(asked);
  });

  it('has its pins nearer to the face of a rib than nails of a joint that carries', () => {
    const pin = find(press.assembly, 'panel-to-rib', 'rib', 'edge');
    expect(pin.asked).toBe(5);
    expect(pin.boring).toBe('driven');
    // a pin of 1.2 mm in a rib of 12 mm has 6 mm at most
    expect(pin.distance).toBeLessThan(6);
    expect(pin.shanks).toBeCloseTo(pin.distance / 1.2, 9);
    expect(find(press.assembly, 'panel-to-rib', 'rib', 'spacing').asked).toBe(10);
  });

  it('is told where it stays below, by how much, and why that does', () => {
    const below = belowCode(press.assembly);
    expect(below.map(({ what }) => what)).toEqual(['edge', 'edge', 'edge', 'edge']);
    for (const { words } of below)
      expect(words).toMatch(/\d shank diameters from .*, [35] by EN 1995-1-1; enough, as /);
    // the furthest below comes first: 5 less 2.5
    expect(below[0]!.words).toMatch(/^pins or staples of the panels: 2\.5 shank diameters/);
  });
});

describe('other distances', () => {
  const holed = (x: number) =>
    changedKind(press, 'cleat', (part) => ({
      ...part,
      holes: part.holes.map((hole, i) => (i === 0 ? { ...hole, x } : hole)),
    }));

  it('are not told where they keep to the code', () => {
    // 12 mm is 3 shanks of 4 mm
    const words = belowCode(holed(12)).map((one) => one.words);
    expect(words.filter((one) => one.startsWith('screws down through the cleats'))).toEqual([]);
    expect(belowCode(holed(11.9)).map((one) => one.words)).toContainEqual(
      expect.stringMatching(
        /^screws down through the cleats: 3\.0 shank diameters from an edge or face of the cleat, 3 by EN 1995/,
      ),
    );
  });

  const severities = (assembly: Assembly) =>
    assemblyProblems(press.design, press.dish, assembly).flatMap(({ code, severity }) =>
      code === 'edge-distance' ? [severity] : [],
    );

  it('are warned of below a shank and a half, and refused below one', () => {
    expect(severities(holed(6.1))).toEqual([]);
    expect(severities(holed(5.9))).toEqual(['warning']);
    expect(severities(holed(3.9))).toEqual(['error']);
  });

  it('between two screws are held against five shanks', () => {
    const other = press.parts.find(({ kind }) => kind === 'cleat')!.holes[1]!.x;
    expect(belowCode(holed(other - 19)).map((one) => one.words)).toContainEqual(
      expect.stringMatching(/^screws down through the cleats: 4\.8 shank diameters from each other, 5 by EN 1995/),
    );
  });

  const bakery = (gap: number) =>
    prepare(designOf(fixtureText('village-bakery').replace('gap: 3', `gap: ${gap}`))).assembly;

  it('of screws that are driven beside a narrow seam, without glue, ask for holes', () => {
    const found = find(bakery(2), 'panel-over-joint', 'rib', 'edge');
    expect(found.shanks).toBeLessThan(1.5);
    expect(belowCode(bakery(2)).map((one) => one.words)).toContainEqual(
      expect.stringMatching(/^screws of the panels over joints: 1\.2 shank diameters .* drill each hole first/),
    );
  });

  it('of screws through a seam that is wide enough are half the rib: three shanks, of the four of table 8.6', () => {
    const found = find(bakery(3), 'panel-over-joint', 'rib', 'edge');
    // a rib of 15 mm, a screw of 2.5 mm
    expect(found.shanks).toBeCloseTo(3, 6);
    // EN 1995-1-1, table 8.6, from memory: a2,CG of a screw that is pulled, and a1
    expect(found.asked).toBe(4);
    expect(find(bakery(3), 'panel-over-joint', 'rib', 'spacing').asked).toBe(7);
    for (const { joint, direction, through } of bakery(3).fasteners) {
      const rib = through[1]?.part;
      if (joint !== 'panel-over-joint' || rib?.form !== 'plate') continue;
      // in the plane of the rib
      const { x, y } = rib.frame;
      const front = [x[1] * y[2] - x[2] * y[1], x[2] * y[0] - x[0] * y[2], x[0] * y[1] - x[1] * y[0]];
      expect(direction.reduce((sum, one, i) => sum + one * front[i]!, 0)).toBeCloseTo(0, 9);
    }
  });
});
