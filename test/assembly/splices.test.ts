/** Joints of a board in segments: pilots under the splice plates, screws that stay in the wood, seams that are closed. */
import { describe, expect, it } from 'vitest';
import { type Assembly, assemble, assemblyFaults } from '../../lib/assembly/index.js';
import { checkAssembly } from '../../lib/check/assembly/index.js';
import type { Part } from '../../lib/part/index.js';
import { prepare } from '../../lib/pipeline.js';
import { cutOf, designOf, fixtureText } from '../helpers/fixtures.js';

const glued = prepare(designOf(fixtureText('village-bakery').replace('splice: bolted, ', '')));
const bolted = prepare(designOf(fixtureText('village-bakery')));

const faults = (
  made: typeof glued,
  change = (part: Part): Part => part,
  move = (assembly: Assembly): Assembly => assembly,
) => assemblyFaults(made.design, made.dish, move(assemble({ ...made, parts: made.parts.map(change) })));

const gapsOf = (found: ReturnType<typeof faults>): number[] =>
  found.flatMap((one) => (one.kind === 'gap' ? [one.gap] : []));

describe.each([
  ['glued', glued],
  ['bolted', bolted],
] as const)('a board in segments that are %s', (_, made) => {
  const pilot = made.design.board.pilotDiameter;
  const screws = made.assembly.fasteners.filter(({ joint }) => joint === 'splice-to-board');

  it('goes together', () => {
    expect(faults(made)).toEqual([]);
  });

  it('has a pilot for every screw of a plate, 3 shanks or more from those of the cleats', () => {
    expect(screws.length).toBeGreaterThan(0);
    const cleats = made.assembly.fasteners.filter(({ joint }) => joint === 'cleat-to-board');
    for (const { entry, item, through } of screws) {
      expect(through.map(({ part, passage }) => [part.part.kind, passage])).toEqual([
        ['splice', 'clearance'],
        ['board', 'pilot'],
      ]);
      for (const other of cleats)
        expect(Math.hypot(entry[0] - other.entry[0], entry[1] - other.entry[1])).toBeGreaterThanOrEqual(
          3 * item.diameter,
        );
    }
  });

  it('is refused with a pilot 0.5 mm off', () => {
    const found = faults(made, (part) =>
      part.id === 'board-1'
        ? {
            ...part,
            holes: part.holes.map((hole) => (hole.diameter === pilot ? { ...hole, x: hole.x + 0.5 } : hole)),
          }
        : part,
    );
    const [off] = found.flatMap((one) => (one.kind === 'hole' && one.joint === 'splice-to-board' ? [one] : []));
    expect(off?.part).toBe('board-1');
    expect(off?.off).toBeCloseTo(0.5, 6);
  });

  it('is refused with a pilot missing', () => {
    const found = faults(made, (part) =>
      part.id === 'board-1' ? { ...part, holes: part.holes.filter(({ diameter }) => diameter !== pilot) } : part,
    );
    expect(found).toContainEqual(expect.objectContaining({ kind: 'hole', joint: 'splice-to-board' }));
  });

  it('is refused with screws 3 mm too long', () => {
    const long = (assembly: Assembly): Assembly => ({
      ...assembly,
      fasteners: assembly.fasteners.map((one) =>
        one.joint === 'splice-to-board' ? { ...one, item: { ...one.item, length: one.wood - 2 + 3 } } : one,
      ),
    });
    expect(faults(made, undefined, long)).toContainEqual(
      expect.objectContaining({ kind: 'length', joint: 'splice-to-board' }),
    );
  });

  it('is refused with a seam that is open by 0.2 mm', () => {
    const found = faults(made, (part) => {
      if (part.id !== 'board-1') return part;
      const [axis, begins] = part.outline;
      const long = Math.hypot(begins!.x, begins!.y);
      const back = ({ x, y, bulge }: Part['outline'][number]) => ({
        x: x - (0.2 * begins!.y) / long,
        y: y + (0.2 * begins!.x) / long,
        bulge,
      });
      return { ...part, outline: [back(axis!), back(begins!), ...part.outline.slice(2)] };
    });
    const gaps = gapsOf(found);
    expect(Math.max(...gaps)).toBeCloseTo(0.2, 2);
  });

  it('is refused with a plate or a cleat that stays 0.2 mm off the board', () => {
    for (const [kind, by] of [
      ['splice', -0.2],
      ['cleat', 0.2],
    ] as const) {
      const off = (assembly: Assembly): Assembly => ({
        ...assembly,
        placed: assembly.placed.map((one) =>
          one.form === 'plate' && one.part.kind === kind && one.copy === 1
            ? {
                ...one,
                frame: { ...one.frame, origin: [one.frame.origin[0], one.frame.origin[1], one.frame.origin[2] + by] },
              }
            : one,
        ),
      });
      expect(Math.max(...gapsOf(faults(made, undefined, off)))).toBeCloseTo(0.2, 6);
    }
  });
});

describe('the files of a board in segments', () => {
  it('are refused for a splice screw 3 mm too long', async () => {
    const record = JSON.parse(String((await cutOf('village-bakery')).files.get('job.json'))) as {
      fasteners: { joint: string; length: number }[];
    };
    expect(checkAssembly(record)).toEqual([]);
    // plate and board of 18 mm: 34 mm at most
    record.fasteners.find(({ joint }) => joint === 'splice-to-board')!.length = 34 + 3;
    expect(checkAssembly(record).map(({ id }) => id)).toContain('screw-long');
  });
});
