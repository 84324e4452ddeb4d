import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { circle, clockwise, type Contour, type Point, rectangle, signedArea } from '../../lib/geometry/index.js';
import { type CutOperation, inCuttingOrder, machine, type Process } from '../../lib/machining/index.js';
import { shortRoute, type RouteStop, travelLength } from '../../lib/machining/travel.js';
import { holds } from '../helpers/seeds.js';
import { throughHole } from '../../lib/part/index.js';
import { plainPart } from '../helpers/plain-part.js';

const router: Process = { kind: 'router', toolDiameter: 6, web: 4, relief: 'none' };
const origin: Point = { x: 0, y: 0 };

function ring(operation: 'outline' | 'opening', part: string, vertices: Contour, copy = 1): CutOperation {
  return { operation, part, copy, closed: true, vertices, depth: 'through' };
}

function drill(part: string, x: number, y: number, diameter = 6): CutOperation {
  return {
    operation: 'drill',
    part,
    copy: 1,
    closed: false,
    vertices: [{ x, y, bulge: 0 }],
    diameter,
    depth: 'through',
  };
}

const names = (operations: readonly CutOperation[]): string[] =>
  operations.map((one) => `${one.operation} ${one.part}`);

describe('cutting order', () => {
  it('is drills, countersinks, scribes, openings, outlines', () => {
    const operations: CutOperation[] = [
      ring('outline', 'a', rectangle(0, 0, 100, 100)),
      ring('opening', 'a', clockwise(rectangle(30, 30, 60, 60))),
      {
        operation: 'scribe',
        part: 'a',
        copy: 1,
        closed: false,
        vertices: [
          { x: 1, y: 1, bulge: 0 },
          { x: 9, y: 9, bulge: 0 },
        ],
        depth: 0.3,
      },
      { ...drill('a', 10, 10, 11), operation: 'countersink', depth: 2.5 },
      drill('a', 10, 10),
    ];
    expect(inCuttingOrder(operations).map((one) => one.operation)).toEqual([
      'drill',
      'countersink',
      'scribe',
      'opening',
      'outline',
    ]);
  });

  it('takes small rings before large ones and one bit after the other', () => {
    const operations = [
      ring('outline', 'board', rectangle(0, 0, 1000, 1000)),
      ring('outline', 'rib', rectangle(1010, 0, 1200, 500)),
      ring('outline', 'cleat', rectangle(2000, 1000, 2040, 1020)),
      drill('board', 5, 5, 8),
      drill('board', 900, 900, 4),
      drill('board', 20, 20, 8),
    ];
    const ordered = inCuttingOrder(operations);
    expect(ordered.slice(0, 3).map((one) => one.diameter)).toEqual([4, 8, 8]);
    expect(names(ordered.slice(3))).toEqual(['outline cleat', 'outline rib', 'outline board']);
  });

  it('cuts a part that lies in another’s opening free before that opening', () => {
    const operations = [
      ring('outline', 'frame', rectangle(0, 0, 500, 500)),
      ring('opening', 'frame', clockwise(rectangle(50, 50, 450, 450))),
      ring('outline', 'inner', rectangle(100, 100, 400, 400)),
      ring('opening', 'inner', clockwise(circle({ x: 250, y: 250 }, 100))),
      ring('outline', 'innermost', circle({ x: 250, y: 250 }, 50)),
      ring('outline', 'beside', rectangle(600, 0, 620, 20)),
      ring('opening', 'beside', clockwise(circle({ x: 610, y: 10 }, 5))),
    ];
    const ordered = names(inCuttingOrder(operations));
    const before = (a: string, b: string): void => expect(ordered.indexOf(a)).toBeLessThan(ordered.indexOf(b));
    before('outline innermost', 'opening inner');
    before('opening inner', 'outline inner');
    before('outline inner', 'opening frame');
    before('opening frame', 'outline frame');
    before('opening beside', 'outline beside');
  });

  it('loses nothing, and cuts every part free last, whatever lies on the sheet', () => {
    const part = fc.record({
      x: fc.integer({ min: 0, max: 9 }),
      y: fc.integer({ min: 0, max: 4 }),
      openings: fc.integer({ min: 0, max: 2 }),
      drills: fc.integer({ min: 0, max: 4 }),
    });
    holds(
      fc.property(fc.array(part, { minLength: 1, maxLength: 12 }), (parts) => {
        const operations = parts.flatMap(({ x, y, openings, drills }, copy): CutOperation[] => [
          ring('outline', 'p', rectangle(200 * x, 200 * y, 200 * x + 100 + copy, 200 * y + 90), copy),
          ...Array.from({ length: openings }, (_, k) =>
            ring('opening', 'p', clockwise(circle({ x: 200 * x + 30 + 40 * k, y: 200 * y + 40 }, 8 + k)), copy),
          ),
          ...Array.from({ length: drills }, (_, k) => ({ ...drill('p', 200 * x + 5 + 9 * k, 200 * y + 70), copy })),
        ]);
        const ordered = inCuttingOrder(operations);
        expect(new Set(ordered)).toEqual(new Set(operations));
        parts.forEach((_, copy) => {
          const own = ordered.filter((one) => one.copy === copy);
          expect(own.findIndex((one) => one.operation === 'outline')).toBe(own.length - 1);
        });
      }),
    );
  });

  it('is the order that machine gives', () => {
    const frame = plainPart('frame', rectangle(0, 0, 300, 300), {
      openings: [clockwise(rectangle(40, 40, 260, 260))],
      holes: [throughHole({ x: 20, y: 20 }, 6)],
    });
    const cleat = plainPart('cleat', rectangle(0, 0, 60, 30), {
      holes: [{ ...throughHole({ x: 15, y: 15 }, 6), depth: 10 }],
    });
    const place = { copy: 1, rotationDeg: 0, mirrored: false };
    const [sheet] = machine(
      [
        {
          stock: 'ply',
          width: 600,
          height: 400,
          margin: 10,
          placed: [
            { ...place, part: 'frame', x: 10, y: 10 },
            { ...place, part: 'cleat', x: 100, y: 100 },
          ],
        },
      ],
      [frame, cleat],
      router,
      { compensated: true },
    );
    expect(names(sheet!.operations)).toEqual([
      'drill frame',
      'drill cleat',
      'outline cleat',
      'opening frame',
      'outline frame',
    ]);
    expect(signedArea(sheet!.operations[3]!.vertices)).toBeLessThan(0);
  });
});

describe('the way between cuts', () => {
  const point = fc.record({ x: fc.integer({ min: 0, max: 500 }), y: fc.integer({ min: 0, max: 300 }) });

  /** Least length over all orders and senses, by trying them all. */
  function shortest(stops: readonly RouteStop[], start: Point): number {
    let min = Infinity;
    const walk = (left: readonly RouteStop[], at: Point, length: number): void => {
      if (left.length === 0) min = Math.min(min, length);
      left.forEach((stop, i) => {
        const rest = left.filter((_, k) => k !== i);
        for (const [a, b] of [
          [stop.from, stop.to],
          [stop.to, stop.from],
        ] as const) {
          walk(rest, b, length + Math.hypot(a.x - at.x, a.y - at.y));
        }
      });
    };
    walk(stops, start, 0);
    return min;
  }

  it('is within a tenth of the shortest there is, for a handful of stops', () => {
    let ours = 0;
    let best = 0;
    holds(
      fc.property(fc.array(fc.tuple(point, point), { minLength: 1, maxLength: 5 }), (ends) => {
        const stops = ends.map(([from, to]) => ({ from, to }));
        const found = travelLength(stops, shortRoute(stops, origin), origin);
        const min = shortest(stops, origin);
        expect(found).toBeGreaterThan(min - 1e-6);
        ours += found;
        best += min;
      }),
      { numRuns: 60 },
    );
    expect(ours).toBeLessThan(1.1 * best);
  });

  it('visits every stop once', () => {
    holds(
      fc.property(fc.array(fc.tuple(point, point), { maxLength: 60 }), (ends) => {
        const stops = ends.map(([from, to]) => ({ from, to }));
        const order = shortRoute(stops, origin).map((leg) => leg.stop);
        expect([...order].sort((a, b) => a - b)).toEqual(stops.map((_, i) => i));
      }),
    );
  });

  it('through a grid of holes is as long as rows back and forth', () => {
    const stops = Array.from({ length: 400 }, (_, k) => {
      const at = { x: 10 * (k % 20), y: 10 * Math.floor(k / 20) };
      return { from: at, to: at };
    });
    // 399 steps of 10 mm are the least possible; a tenth more is allowed
    expect(travelLength(stops, shortRoute(stops, origin), origin)).toBeLessThan(3990 * 1.1);
  });

  it('through thousands of holes is near the shortest tour', () => {
    const stops = Array.from({ length: 1500 }, (_, k) => {
      const at = { x: (k * 7919) % 2400, y: (k * 104729) % 1200 };
      return { from: at, to: at };
    });
    const length = travelLength(stops, shortRoute(stops, origin), origin);
    // a random tour through n points in area A is about 0.7124·√(nA) at best (Beardwood, Halton and Hammersley 1959,
    // constant from Johnson and McGeoch, both from memory)
    expect(length).toBeLessThan(1.25 * 0.7124 * Math.sqrt(1500 * 2400 * 1200));
  });
});
