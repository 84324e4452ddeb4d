/** A dish that comes apart at the joints of its board: what lies on which segment, and whether a segment slides off. */
import load, { type Manifold, type ManifoldToplevel } from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import { type AssembledPlate, assemble, assemblyFaults } from '../../lib/assembly/index.js';
import { prepare } from '../../lib/index.js';
import type { Part } from '../../lib/part/index.js';
import { designOf, fixtureText } from '../helpers/fixtures.js';
import { plateSolid } from '../helpers/solids.js';

let library: ManifoldToplevel;
beforeAll(async () => {
  library = await load();
  library.setup();
});

const prepared = prepare(designOf(fixtureText('village-bakery')));
const { assembly, splices, dish, design, parts, cleatStart } = prepared;
const plates = assembly.placed.filter((one): one is AssembledPlate => one.form === 'plate');
const joints = splices.map(({ direction }) => direction);
const fullTurn = 2 * Math.PI;

/** Corners of a plate in plan. */
function corners({ part, frame }: AssembledPlate): { readonly x: number; readonly y: number }[] {
  const { origin, x, y } = frame;
  const z = [x[1] * y[2] - x[2] * y[1], x[2] * y[0] - x[0] * y[2]] as const;
  return part.outline.flatMap((v) =>
    [0, part.thickness].map((h) => ({
      x: origin[0] + v.x * x[0] + v.y * y[0] + h * z[0],
      y: origin[1] + v.x * x[1] + v.y * y[1] + h * z[1],
    })),
  );
}

/** Number of the segment, from 0, over which a place lies. */
function segmentAt({ x, y }: { readonly x: number; readonly y: number }): number {
  const turn = (angle: number): number => ((angle % fullTurn) + fullTurn) % fullTurn;
  const past = turn(Math.atan2(y, x) - joints[0]!);
  return joints.filter((joint) => turn(joint - joints[0]!) <= past).length - 1;
}

describe('the dish that comes apart', () => {
  it('has every rib and every cleat on one segment', () => {
    for (const plate of plates.filter(({ part }) => part.kind === 'rib' || part.kind === 'cleat'))
      expect(new Set(corners(plate).map(segmentAt)).size, `${plate.part.id} ${plate.copy}`).toBe(1);
  });

  it('has each plate screwed to one segment and bolted to the one before it, by two bolts or more', () => {
    const plain = assembly.fasteners.filter(({ joint }) => joint === 'splice-to-board' || joint === 'splice-bolt');
    for (const plate of plates.filter(({ part }) => part.kind === 'splice')) {
      const own = plain.filter(({ through }) => through[0]?.part === plate);
      const on = (joint: string) =>
        own.filter((one) => one.joint === joint).map(({ entry: [x, y] }) => segmentAt({ x, y }));
      expect(new Set(on('splice-to-board'))).toEqual(new Set([plate.copy - 1]));
      expect(new Set(on('splice-bolt'))).toEqual(new Set([(plate.copy + joints.length - 2) % joints.length]));
      expect(on('splice-bolt').length).toBeGreaterThanOrEqual(2);
    }
  });

  it('screws the panels over the joints, and pins the others', () => {
    const count = (joint: string) => assembly.fasteners.filter((one) => one.joint === joint).length;
    const each = count('panel-to-rib') / (dish.layout.ribs.length - joints.length);
    expect(Number.isInteger(each)).toBe(true);
    expect(count('panel-over-joint')).toBe(each * joints.length);
  });

  it('lets each segment slide outward with its ribs, once hub and panels over the joints are off (manifold-3d)', () => {
    const group = (segment: number): Manifold =>
      library.Manifold.union(
        plates.flatMap((plate) => {
          const mine =
            plate.part.kind === 'splice'
              ? plate.copy - 1 === segment
              : plate.part.kind !== 'hub' &&
                (plate.part.kind === 'board'
                  ? plate.part.id === `board-${segment + 1}`
                  : segmentAt(corners(plate)[0]!) === segment);
          return mine ? [plateSolid(library, plate)] : [];
        }),
      );
    const groups = joints.map((_, segment) => group(segment));
    const rest = library.Manifold.union(groups.slice(1));
    // segment 1 lies between its joint and the next
    const middle = (joints[0]! + joints[1]!) / 2;
    for (const off of [0, 5, 50, 300]) {
      const slid = groups[0]!.translate(off * Math.cos(middle), off * Math.sin(middle), 0);
      expect(slid.intersect(rest).volume(), `${off} mm`).toBeLessThan(1);
    }
    // straight up it does not go: its neighbour's plate is under it, and its own under its neighbour
    expect(groups[0]!.translate(0, 0, 5).intersect(rest).volume()).toBeGreaterThan(1000);
  });

  const faultsWith = (change: (part: Part) => Part) => {
    const changed = parts.map(change);
    return assemblyFaults(design, dish, assemble({ design, dish, parts: changed, cleatStart, splices }));
  };

  it('reports a hole for a tee nut that is 0.5 mm off, or missing', () => {
    const last = (part: Part) => part.holes.length - 1;
    const off = faultsWith((part) =>
      part.id === 'board-2'
        ? { ...part, holes: part.holes.map((one, i) => (i === last(part) ? { ...one, x: one.x + 0.5 } : one)) }
        : part,
    );
    expect(off).toContainEqual(expect.objectContaining({ kind: 'hole', joint: 'splice-bolt', part: 'board-2' }));
    const missing = faultsWith((part) => (part.id === 'board-2' ? { ...part, holes: part.holes.slice(0, -1) } : part));
    expect(missing).toContainEqual(expect.objectContaining({ kind: 'hole', joint: 'splice-bolt' }));
  });
});
