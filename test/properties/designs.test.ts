/** What must hold for every design that a person could write. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readDesign } from '../../lib/design/index.js';
import { type CutSheet, machine } from '../../lib/machining/index.js';
import { prepare } from '../../lib/pipeline.js';
import type { Prepared } from '../../lib/pipeline/types.js';
import { proofEdges } from '../../lib/check/edge.js';
import { EdgeSet } from '../../lib/check/edge-set.js';
import { farthestFrom } from '../../lib/check/deviation.js';
import { designIn } from '../helpers/random-design.js';
import { holds } from '../helpers/seeds.js';

const runs = 3;
const night = 200;
const seeds = fc.integer({ min: 1, max: 1_000_000 });

/** A micrometre: what the project asks of a design in another unit. */
const sameLength = 0.001;

interface Point {
  readonly x: number;
  readonly y: number;
}

/** Every ring and line of a part. */
const linesOf = ({ outline, openings, marks }: Prepared['parts'][number]) => [
  ...[outline, ...openings].map((vertices) => ({ vertices, closed: true })),
  ...marks.flatMap((mark) => (mark.kind === 'line' ? [mark] : [])),
];

function prepared(text: string): Prepared | null {
  const reading = readDesign(text);
  return reading.kind === 'refused' ? null : prepare(reading.design);
}

describe('random designs', () => {
  it('are refused with named problems or solved', () => {
    holds(
      fc.property(seeds, (one) => {
        const reading = readDesign(designIn('mm', one));
        const problems = reading.kind === 'refused' ? reading.problems : prepare(reading.design).problems;
        for (const { code, message } of problems) {
          expect(code).not.toBe('');
          // says what is wrong and what would do
          expect(message.length).toBeGreaterThan(20);
        }
        if (reading.kind === 'refused') expect(problems.some(({ severity }) => severity === 'error')).toBe(true);
      }),
      { numRuns: runs * 2, night },
    );
  });

  it('give the same parts in inch, centimetre and millimetre, to a micrometre', () => {
    let compared = 0;
    holds(
      fc.property(seeds, (one) => {
        const mm = prepared(designIn('mm', one));
        for (const unit of ['cm', 'in'] as const) {
          const other = prepared(designIn(unit, one));
          expect(other === null).toBe(mm === null);
          if (!mm || !other) return;
          const counts = ({ parts }: Prepared) => parts.map(({ id, quantity }) => [id, quantity]);
          expect(counts(other)).toEqual(counts(mm));
          mm.parts.forEach((part, i) => {
            const twin = other.parts[i]!;
            compared += 1;
            linesOf(part).forEach(({ vertices, closed }, k) => {
              const edges = proofEdges(vertices, closed);
              const others = proofEdges(linesOf(twin)[k]?.vertices ?? [], closed);
              expect(farthestFrom(edges, new EdgeSet(others), 1).max, part.id).toBeLessThan(sameLength);
              expect(farthestFrom(others, new EdgeSet(edges), 1).max, part.id).toBeLessThan(sameLength);
            });
            part.holes.forEach(({ x, y }, k) => {
              const hole = twin.holes[k];
              expect(Math.hypot(x - (hole?.x ?? NaN), y - (hole?.y ?? NaN)), part.id).toBeLessThan(sameLength);
            });
          });
        }
      }),
      { numRuns: runs, night },
    );
    expect(compared).toBeGreaterThan(runs);
  });

  it('are cut alike wherever and however a part lies', () => {
    const placements = fc.record({
      x: fc.double({ min: -3000, max: 3000, noNaN: true }),
      y: fc.double({ min: -3000, max: 3000, noNaN: true }),
      rotationDeg: fc.double({ min: 0, max: 360, noNaN: true }),
      mirrored: fc.boolean(),
    });
    let compared = 0;
    holds(
      fc.property(seeds, placements, (one, placement) => {
        const job = prepared(designIn('mm', one));
        if (!job || job.problems.some(({ severity }) => severity === 'error')) return;
        const angle = (-placement.rotationDeg * Math.PI) / 180;
        const back = ({ x, y }: Point): Point => {
          const [dx, dy] = [x - placement.x, y - placement.y];
          const px = dx * Math.cos(angle) - dy * Math.sin(angle);
          return { x: placement.mirrored ? -px : px, y: dx * Math.sin(angle) + dy * Math.cos(angle) };
        };
        for (const { process, parts: wanted } of job.requests) {
          const own = job.parts.filter(({ id }) => wanted.some((each) => each.id === id));
          const cutAt = (at: typeof placement): CutSheet['operations'] => {
            const placed = own.map(({ id }) => ({ part: id, copy: 1, ...at }));
            const sheet = { stock: 's', width: 1, height: 1, margin: 0, placed };
            return machine([sheet], own, process, { compensated: process.kind !== 'hand' })[0]!.operations;
          };
          const points = (operations: CutSheet['operations'], part: string, map: (point: Point) => Point): Point[] =>
            operations.flatMap((operation) => (operation.part === part ? operation.vertices.map(map) : []));
          const straight = cutAt({ x: 0, y: 0, rotationDeg: 0, mirrored: false });
          const moved = cutAt(placement);
          for (const { id } of own) {
            const theirs = points(straight, id, (point) => point);
            const ours = points(moved, id, back);
            expect(ours.length).toBe(theirs.length);
            // the order of cutting is free, so each point looks for its like
            for (const { x, y } of ours) {
              const off = theirs.reduce((min, point) => Math.min(min, Math.hypot(point.x - x, point.y - y)), Infinity);
              expect(off, id).toBeLessThan(1e-6);
            }
            compared += 1;
          }
        }
      }),
      { numRuns: runs, night },
    );
    expect(compared).toBeGreaterThan(runs / 2);
  });
});
