/** Where fasteners end, by plain geometry; and faults of them that a builder would meet at the bench. */
import { describe, expect, it } from 'vitest';
import { type Assembly, assemble, type AssemblyFault, assemblyFaults } from '../../lib/assembly/index.js';
import type { Fastener, JointKind } from '../../lib/assembly/types.js';
import { prepare } from '../../lib/index.js';
import type { Part, PartKind } from '../../lib/part/index.js';
import type { Prepared } from '../../lib/pipeline/types.js';
import { changed } from '../helpers/changed.js';
import { designOf, fixtureNames, fixtureText } from '../helpers/fixtures.js';

/** The press house's dish on sheets of 900 mm, so that its board comes in segments. */
const segmented = changed('press-house', 'birch18, size: 2440 x 1220', 'birch18, size: 900 x 900');
const dishes = new Map<string, Prepared>([
  ...fixtureNames.map((name): [string, Prepared] => [name, prepare(designOf(fixtureText(name)))]),
  ['press-house in segments', prepare(designOf(segmented))],
]);
const demo = dishes.get('press-house')!;
const inSegments = dishes.get('press-house in segments')!;

function assembled({ design, dish, parts, cleatStart, splices }: Prepared, changedParts = parts): Assembly {
  return assemble({ design, dish, parts: changedParts, cleatStart, splices });
}

const ofJoint = (assembly: Assembly, joint: JointKind): Fastener[] =>
  assembly.fasteners.filter((one) => one.joint === joint);

/** Where the point of a fastener is. */
function tipOf({ entry, direction, item }: Fastener): readonly [number, number, number] {
  const length = item.length ?? 0;
  return [entry[0] + length * direction[0], entry[1] + length * direction[1], entry[2] + length * direction[2]];
}

function thicknessOf({ parts }: Prepared, kind: PartKind): number {
  return parts.find((part) => part.kind === kind)!.thickness;
}

/** Distance of a place in plan from the line through the axis in the direction of a rib, numbered from 1. */
function offRib({ dish }: Prepared, rib: number, [x, y]: readonly number[]): number {
  const turn = (2 * Math.PI * (rib - 1)) / dish.layout.ribs.length;
  return Math.abs(y! * Math.cos(turn) - x! * Math.sin(turn));
}

describe.each([...dishes])('%s: the points of its fasteners', (_, prepared) => {
  const all = assembled(prepared);
  const board = thicknessOf(prepared, 'board');

  it('of screws stay in the wood, 2 mm under its other face', () => {
    for (const one of ofJoint(all, 'cleat-to-board')) {
      expect(tipOf(one)[2]).toBeGreaterThan(2 - board - 1e-6);
      expect(tipOf(one)[2]).toBeLessThan(0);
    }
    for (const one of ofJoint(all, 'splice-to-board')) {
      expect(tipOf(one)[2]).toBeLessThan(-2 + 1e-6);
      expect(tipOf(one)[2]).toBeGreaterThan(-board);
    }
    const half = thicknessOf(prepared, 'rib') / 2;
    for (const one of ofJoint(all, 'cleat-to-rib')) {
      const { part } = one.through[0]!;
      expect(part.rib).toBeDefined();
      expect(offRib(prepared, part.rib!, tipOf(one))).toBeLessThan(half - 2 + 1e-6);
    }
  });

  it('of pins stay between the faces of the rib that their panel lies on', () => {
    const half = thicknessOf(prepared, 'rib') / 2;
    const count = prepared.dish.layout.ribs.length;
    for (const one of ofJoint(all, 'panel-to-rib')) {
      const bay = one.through[0]!.part.rib!;
      const off = [bay, (bay % count) + 1].map((rib) =>
        Math.max(offRib(prepared, rib, one.entry), offRib(prepared, rib, tipOf(one))),
      );
      expect(Math.min(...off)).toBeLessThan(half);
    }
  });

  it('of dowels and the bolt reach the underside of the board', () => {
    for (const one of ofJoint(all, 'hub-dowel')) expect(tipOf(one)[2]).toBeCloseTo(-board, 9);
    for (const one of ofJoint(all, 'hub-bolt'))
      if (one.item.length !== null) expect(tipOf(one)[2]).toBeLessThan(-board);
  });

  it('are as many on the stand as the design has holes', () => {
    expect(ofJoint(all, 'board-to-stand')).toHaveLength(prepared.design.board.mountingHoles);
  });
});

const faults = (prepared: Prepared, assembly: Assembly): AssemblyFault[] =>
  assemblyFaults(prepared.design, prepared.dish, assembly);

const ofParts = (kind: PartKind, change: (part: Part) => Part): AssemblyFault[] =>
  faults(
    demo,
    assembled(
      demo,
      demo.parts.map((part) => (part.kind === kind ? change(part) : part)),
    ),
  );

/** What is found when every fastener of a joint is changed. */
function ofFasteners(joint: JointKind, change: (one: Fastener) => Fastener): AssemblyFault[] {
  const all = assembled(demo);
  return faults(demo, {
    ...all,
    fasteners: all.fasteners.map((one) => (one.joint === joint ? change(one) : one)),
  });
}

const raised =
  (by: number) =>
  (one: Fastener): Fastener => ({ ...one, entry: [one.entry[0], one.entry[1], one.entry[2] + by] });

describe('a planted fault is found', () => {
  it('a screw that runs beside the hole that the cleat is drilled with', () => {
    expect(ofFasteners('cleat-to-rib', raised(0.5))).toContainEqual({
      kind: 'hole',
      joint: 'cleat-to-rib',
      part: 'cleat 1',
      off: expect.closeTo(0.5, 6) as number,
    });
  });

  it('a pilot so thin that the screw splits the wood or breaks', () => {
    // half of the 70 % of the root that the American Wood Council advises in softwood, root two thirds of the shank of 4
    const thin = (0.7 * ((2 / 3) * 4)) / 2;
    const found = ofParts('board', (part) => ({
      ...part,
      holes: part.holes.map((hole) => ({ ...hole, diameter: thin })),
    }));
    expect(found).toContainEqual(
      expect.objectContaining({ kind: 'hole-size', joint: 'cleat-to-board', part: 'board' }),
    );
  });

  it('a dowel that is loose in the board', () => {
    const found = ofParts('board', (part) => ({
      ...part,
      holes: part.holes.map((hole) =>
        hole.diameter === demo.design.hub.dowelDiameter ? { ...hole, diameter: hole.diameter + 0.5 } : hole,
      ),
    }));
    expect(found).toContainEqual(expect.objectContaining({ kind: 'hole-size', joint: 'hub-dowel', part: 'board' }));
  });

  it('a screw that is 1 mm in the board', () => {
    const length = thicknessOf(demo, 'cleat') + 1;
    const found = ofFasteners('cleat-to-board', (one) => ({ ...one, item: { ...one.item, length } }));
    expect(found).toContainEqual({
      kind: 'bite',
      joint: 'cleat-to-board',
      bite: expect.closeTo(1, 6) as number,
      needed: expect.any(Number) as number,
    });
  });

  it('a screw that ends 1 mm under the board’s lower face', () => {
    const length = thicknessOf(demo, 'cleat') + thicknessOf(demo, 'board') - 1;
    const found = ofFasteners('cleat-to-board', (one) => ({ ...one, item: { ...one.item, length } }));
    expect(found).toContainEqual(expect.objectContaining({ kind: 'length', joint: 'cleat-to-board', length }));
  });

  it('a screw 3 mm from the end of its cleat', () => {
    const found = ofParts('cleat', (part) => ({
      ...part,
      holes: part.holes.map((hole, i) => (i === 0 ? { ...hole, x: 3 } : hole)),
    }));
    expect(found).toContainEqual(
      expect.objectContaining({
        kind: 'edge',
        joint: 'cleat-to-board',
        part: 'cleat 1',
        wood: expect.closeTo(3, 6) as number,
      }),
    );
  });

  it('a screw 2 mm over the lower face of its cleat', () => {
    const found = ofParts('cleat', (part) => ({
      ...part,
      edgeHoles: part.edgeHoles.map((hole) => ({ ...hole, height: 2 })),
    }));
    expect(found).toContainEqual(
      expect.objectContaining({
        kind: 'edge',
        joint: 'cleat-to-rib',
        part: 'cleat 1',
        wood: expect.closeTo(2, 6) as number,
      }),
    );
  });

  it('pins that come out of the side of a rib', () => {
    expect(ofJoint(assembled(demo), 'panel-to-rib').length).toBeGreaterThan(0);
    // out along the arc, by nearly half of the rib's 12 mm
    const found = ofFasteners('panel-to-rib', (one) => {
      const [x, y, z] = one.entry;
      const r = Math.hypot(x, y);
      return { ...one, entry: [x - (5.5 * y) / r, y + (5.5 * x) / r, z] };
    });
    expect(found).toContainEqual(expect.objectContaining({ kind: 'edge', joint: 'panel-to-rib' }));
  });

  it('a hub without the hole for its bolt', () => {
    const found = ofParts('hub', (part) => ({ ...part, holes: part.holes.filter(({ x, y }) => Math.hypot(x, y) > 1) }));
    expect(found).toContainEqual({ kind: 'count', joint: 'hub-bolt', found: 0, wanted: 1 });
  });

  it('a cleat without its screws into the rib', () => {
    const found = ofParts('cleat', (part) => ({ ...part, edgeHoles: part.edgeHoles.slice(1) }));
    expect(found).toContainEqual(expect.objectContaining({ kind: 'count', joint: 'cleat-to-rib' }));
  });

  it('a board with its lines to the floor', () => {
    const all = assembled(demo);
    const over: Assembly = {
      ...all,
      placed: all.placed.map((one) =>
        one.form === 'plate' && one.part.kind === 'board'
          ? { ...one, frame: { origin: [0, 0, 0], x: [1, 0, 0], y: [0, -1, 0] } }
          : one,
      ),
    };
    expect(faults(demo, over)).toContainEqual({
      kind: 'mark',
      part: 'board',
      what: 'the face with its marks is hidden',
    });
  });

  it('a line for the cleat that crosses its place aslant', () => {
    const found = ofParts('rib', (part) => ({
      ...part,
      marks: part.marks.map((mark) =>
        mark.kind === 'line'
          ? { ...mark, vertices: mark.vertices.map((v, i) => (i === 0 ? v : { ...v, x: v.x + 3 })) }
          : mark,
      ),
    }));
    expect(found).toContainEqual(expect.objectContaining({ kind: 'mark', part: 'rib' }));
  });
});

describe('splice plates', () => {
  it('are screwed from below, their lines to the floor', () => {
    const all = assembled(inSegments);
    const screws = ofJoint(all, 'splice-to-board');
    expect(screws.length).toBeGreaterThan(0);
    for (const { entry, direction } of screws) {
      expect(entry[2]).toBeCloseTo(-2 * thicknessOf(inSegments, 'board'), 9);
      expect(direction[2]).toBeCloseTo(1, 12);
    }
  });
});
