import { diagnosticText } from '../../lib/diagnostic/index.js';
import { describe, expect, it } from 'vitest';
import { facetAt, ribTopHeight } from '../../lib/dish/index.js';
import { linesUp, type Part } from '../../lib/part/index.js';
import { makeGauges, makeTemplates } from '../../lib/parts/index.js';
import { dense, make, type Made, overlapArea, firstPart, turn } from './making.js';

function gauge(made: Made, id: string): Part {
  const part = makeGauges(made.design, made.dish).find((one) => one.id === id);
  if (!part) throw new Error(`no gauge ${id}`);
  return part;
}

/** Points of a gauge's curve, from the inner end to the rim. */
function curveOf(part: Part) {
  const { from, to } = part.edges.find(({ role }) => role === 'optical')!;
  return dense(part.outline.slice(from, to + 2), false, 100);
}

describe.each(['panel', 'rib'] as const)('gauges, figure %s', (figure) => {
  const made = make('press-house', [['dish:\n', `dish:\n  figure: ${figure}\n`]]);
  const { dish } = made;
  const within = made.design.dish.arcTolerance + 1e-6;

  it('fit the bare rib', () => {
    for (const { x, y } of curveOf(gauge(made, 'gauge-rib')))
      expect(Math.abs(y - dish.baseHeight - ribTopHeight(dish, x))).toBeLessThan(2 * within);
  });

  it('fit the middle of a panel', () => {
    for (const { x, y } of curveOf(gauge(made, 'gauge-panel'))) {
      const height = figure === 'panel' ? (x * x) / (4 * 550) : facetAt(dish, x).z;
      expect(Math.abs(y - dish.baseHeight - height)).toBeLessThan(2 * within);
    }
  });

  it('fit the mirror along a rib: points of its edges in space, half the gap off the rib’s middle', () => {
    const curve = curveOf(gauge(made, 'gauge-seam'));
    for (let i = 0; i <= 50; i++) {
      const u = dish.litFrom + ((dish.litTo - dish.litFrom) * i) / 50;
      // the edge's point, seen along the rib: its foot on the rib's line lies √(u² + w² − (g/2)²) from the axis
      const w = (u * Math.sin(dish.layout.halfAngle) - dish.seamGap / 2) / Math.cos(dish.layout.halfAngle);
      const along = Math.sqrt(u * u + w * w - (dish.seamGap / 2) ** 2);
      const height = dish.baseHeight + facetAt(dish, u).z;
      const near = curve.reduce((best, p) => (Math.abs(p.x - along) < Math.abs(best.x - along) ? p : best));
      const slope = u / 1100;
      expect(Math.abs(near.y + slope * (along - near.x) - height)).toBeLessThan(0.03);
    }
  });

  it('lie above the curve, with windows that leave its edge whole', () => {
    for (const id of ['gauge-rib', 'gauge-panel', 'gauge-seam']) {
      const part = gauge(made, id);
      const curve = curveOf(part);
      const windows = part.openings;
      expect(windows.length).toBeGreaterThan(4);
      for (const window of windows) {
        const ring = dense(window, true, 60);
        expect(Math.abs(overlapArea([...ring].reverse(), dense(part.outline, true, 60)))).toBeGreaterThan(500);
        const apart = Math.min(...ring.map((p) => Math.min(...curve.map((q) => Math.hypot(p.x - q.x, p.y - q.y)))));
        expect(apart).toBeGreaterThan(7.9);
      }
    }
  });
});

describe('a rim-to-rim gauge', () => {
  const made = make('press-house', [['bed: 900 x 600', 'gauge: rim-to-rim']]);

  it('is the same on both sides of the axis and clears the hub between', () => {
    const part = gauge(made, 'gauge-panel');
    const corners = part.outline;
    for (const { x, y } of corners)
      expect(Math.min(...corners.map((other) => Math.hypot(other.x + x, other.y - y)))).toBeLessThan(1e-9);
    const bridge = corners.filter(({ x }) => Math.abs(x) < made.dish.litFrom + 1e-6).map(({ y }) => y);
    expect(Math.max(...bridge)).toBeGreaterThan(made.dish.baseHeight + 20);
    expect(part.edges).toHaveLength(2);
  });

  it('is refused for an odd number of ribs', () => {
    const odd = make('press-house', [
      ['ribs: 24', 'ribs: 23'],
      ['bed: 900 x 600', 'gauge: rim-to-rim'],
    ]);
    const [problem] = odd.problems.filter(({ code }) => code === 'gauge');
    expect(problem?.place?.path).toEqual(['template', 'gauge']);
    expect(diagnosticText(problem!)).toContain('use template.gauge: vertex-to-rim');
  });
});

describe('focal stick', () => {
  it('reaches from the hub to the vessel', () => {
    const made = make('press-house', [['vessel: { diameter: 260 }', 'vessel: { diameter: 260, offset: 25 }']]);
    const stick = gauge(made, 'focal-stick').outline;
    const length = Math.max(...stick.map(({ x }) => x)) - Math.min(...stick.map(({ x }) => x));
    // board to vertex 60, vertex to focus 550, 25 further; four layers of 12 below it
    expect(length).toBeCloseTo(60 + 550 + 25 - 48, 6);
    const mark = linesUp(gauge(made, 'focal-stick')).find(
      ({ vertices }) => vertices.length === 2 && vertices[0]!.x === vertices[1]!.x,
    );
    expect(mark?.vertices[0]!.x).toBeCloseTo(length - 25, 6);
  });
});

describe('focal stick and foot', () => {
  const made = make('press-house');
  const [stick, foot] = ['focal-stick', 'focal-stick-foot'].map((id) => gauge(made, id));
  const widthAt = (part: Part, x: number, y: number): boolean =>
    overlapArea(dense(part.outline, true), [
      { x: x - 0.01, y: y - 0.01 },
      { x: x + 0.01, y: y - 0.01 },
      { x: x + 0.01, y: y + 0.01 },
      { x: x - 0.01, y: y + 0.01 },
    ]) > 1e-5;

  it('go into each other: on the axis no height belongs to both, and none above the bolt to neither', () => {
    const half = stick!.thickness / 2;
    for (let x = 0.5; x < 100; x += 1) {
      // each blade fills the thickness of the other, seen along it
      const own = [stick, foot].map((part) => [-half, 0, half].some((y) => widthAt(part!, x, y)));
      expect(own.filter(Boolean).length, `at ${x} mm`).toBeLessThan(2);
      if (x > 2 * made.design.hub.boltDiameter + 1 && Math.abs(x - 60) > 0.6)
        expect(own.filter(Boolean).length, `at ${x} mm`).toBe(1);
    }
  });

  it('stand on the hub inside the ribs, clear of the bolt and its washer', () => {
    for (const part of [stick!, foot!]) {
      const onHub = part.outline.filter(({ x }) => x === 0).map(({ y }) => Math.abs(y));
      expect(Math.max(...onHub)).toBeLessThan(made.dish.innerRadius);
      expect(Math.max(...onHub)).toBeGreaterThan(20);
      // a washer for M8 is 16 mm across (ISO 7089)
      expect(Math.min(...onHub)).toBeGreaterThan(8);
    }
  });
});

describe('rim spacer', () => {
  it.each([
    ['press-house', 1],
    ['press-house', 2],
    ['table-top', 1],
    ['hand-cut-inch', 1],
    ['hand-cut-inch', 2],
  ] as const)('of %s, number %d, is lowered over two ribs and holds them at their rim ends', (name, number) => {
    const made = make(name);
    const { dish } = made;
    const spacer = gauge(made, `rim-spacer-${number}`);
    const notches = [
      [2, 3],
      [6, 7],
    ].map((corners) => corners.map((corner) => spacer.outline[corner]!.x));
    const rib = (side: number) => {
      const half = dish.ribThickness / 2;
      return [
        { x: dish.apertureRadius - 100, y: -half },
        { x: dish.apertureRadius, y: -half },
        { x: dish.apertureRadius, y: half },
        { x: dish.apertureRadius - 100, y: half },
      ].map((point) => turn(point, side * dish.layout.halfAngle));
    };
    const ribs = [-1, 1].map(rib);
    // the bar in plan, its outer face where the farther corner of both rim ends is
    const first = Math.min(...ribs.flatMap((ring) => [ring[1]!.x, ring[2]!.x]));
    // the second stands half a millimetre behind the first
    const outer = number === 1 ? first : first - spacer.thickness - 0.5;
    const inner = outer - spacer.thickness;
    ribs.forEach((ring, k) => {
      const [from, to] = notches[k]!;
      const wood = (a: number, b: number) => [
        { x: inner, y: a },
        { x: outer, y: a },
        { x: outer, y: b },
        { x: inner, y: b },
      ];
      // no wood of the bar beside the notch is where the rib is
      expect(overlapArea(ring, wood(to!, to! + 20))).toBeLessThan(1e-6);
      expect(overlapArea(ring, wood(from! - 20, from!))).toBeLessThan(1e-6);
      // and no more play than 0.3 mm, square to the rib
      expect(overlapArea(ring, wood(to! - 0.17, to! + 20))).toBeGreaterThan(0);
      expect(overlapArea(ring, wood(from! - 20, from! + 0.17))).toBeGreaterThan(0);
    });
  });
});

describe('jigs', () => {
  const made = make('press-house');
  const jigs = makeTemplates(made.design, made.dish, made.parts).filter(({ kind }) => kind === 'jig');
  const jig = (id: string) => jigs.find((one) => one.id === id)!;

  it('prick every rib’s direction', () => {
    const holes = jig('jig-hub').holes.filter(({ x, y }) => Math.hypot(x, y) > 1);
    const turns = holes.map(({ x, y }) => ((Math.atan2(y, x) * 180) / Math.PI + 360) % 360).sort((a, b) => a - b);
    turns.forEach((angle, k) => {
      expect(angle).toBeCloseTo(15 * k, 9);
    });
    expect(turns).toHaveLength(24);
  });

  it('drill the board where the board’s own pattern has its holes', () => {
    const board = firstPart(made, 'board').holes;
    for (const { x, y, diameter } of jig('jig-board').holes.filter((hole) => hole.y > 0)) {
      expect(diameter).toBe(made.design.board.pilotDiameter);
      expect(Math.min(...board.map((hole) => Math.hypot(hole.x - x, hole.y - y)))).toBeLessThan(1e-9);
    }
  });

  it('drill the cleats as the cleats are drilled', () => {
    const places = (part: Part) => part.holes.map(({ x, y, diameter }) => ({ x, y, diameter }));
    expect(places(jig('jig-cleat'))).toEqual(places(firstPart(made, 'cleat')));
  });
});
