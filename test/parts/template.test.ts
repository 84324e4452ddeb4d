import { diagnosticText } from '../../lib/diagnostic/index.js';
import { describe, expect, it } from 'vitest';
import { nearestOnContour } from '../../lib/geometry/index.js';
import { linesUp, type Part } from '../../lib/part/index.js';
import { guideOffset, makeTemplates } from '../../lib/parts/index.js';
import { dense, make, type Made, overlapArea, firstPart, areaOfRing, unionArea } from './making.js';

const templates = (made: Made): Part[] =>
  makeTemplates(made.design, made.dish, made.parts).filter(({ kind }) => kind === 'template');

describe('the rib template', () => {
  const made = make('press-house');
  const [template] = templates(made);
  const rib = firstPart(made, 'rib');

  it('is the rib itself for a bit with a bearing, with a tail past the inner end', () => {
    const corners = template!.outline;
    for (const { x, y } of rib.outline.slice(1))
      expect(Math.min(...corners.map((corner) => Math.hypot(corner.x - x, corner.y - y)))).toBeLessThan(1e-9);
    expect(Math.min(...corners.map(({ x }) => x))).toBe(-60);
    // the tail carries the curve on: no corner where the bearing enters the work
    const [end, inner, next] = [corners.at(-1)!, corners.at(-2)!, corners.at(-3)!];
    const first = Math.atan2(inner.y - end.y, inner.x - end.x);
    const after = Math.atan2(next.y - inner.y, next.x - inner.x);
    expect(Math.abs(after - first)).toBeLessThan(0.1);
    expect(first).toBeCloseTo(Math.atan2(51, 1100), 2);
  });

  it('has its registration holes where the rib has its pilots', () => {
    expect(template!.holes).toEqual(rib.holes);
  });

  it('shows the feed against the bit’s turning: inward along the curve, scribed face up', () => {
    const strokes = linesUp(template!);
    const arrow = strokes.find(({ vertices }) => vertices.length === 2 && vertices[0]!.x !== vertices[1]!.x)!;
    expect(arrow.vertices[1]!.x).toBeLessThan(arrow.vertices[0]!.x);
    const head = strokes.find(({ vertices }) => vertices.length === 3)!;
    expect(head.vertices[1]).toMatchObject({ x: arrow.vertices[1]!.x, y: arrow.vertices[1]!.y });
    for (const barb of [head.vertices[0]!, head.vertices[2]!]) expect(barb.x).toBeGreaterThan(arrow.vertices[1]!.x);
    expect(template!.notes.join(' ')).toContain('climb cut');
  });

  it('is found among the parts or not made', () => {
    expect(() => makeTemplates(made.design, made.dish, [])).toThrow(RangeError);
  });
});

describe('guide bushing', () => {
  // common practice, no source: a 17 mm bushing with an 8 mm bit stands 4.5 mm off, a 30 mm bushing with a 12 mm bit 9 mm
  it('stands off by half of what bushing and bit differ', () => {
    const { design } = make('press-house');
    const bushing = { ...design.template, guide: 'bushing' as const };
    expect(guideOffset(bushing)).toBe(4.5);
    expect(guideOffset({ ...bushing, bushingDiameter: 30, bitDiameter: 12 })).toBe(9);
    expect(guideOffset(design.template)).toBe(0);
  });

  it('makes the template smaller round the rib and its openings larger, by just that', () => {
    const made = make('press-house', [
      ['rib: { material: birch12 }', 'rib: { material: birch12, lightening: true }'],
      [
        'template: { material: mdf6, process: laser, bed: 900 x 600 }',
        'template: { material: mdf6, guide: bushing, tail: 0 }',
      ],
    ]);
    const [template] = templates(made);
    const rib = firstPart(made, 'rib');
    const ribRing = rib.outline;
    const points = dense(template!.outline, true, 100);
    for (const point of points) expect(nearestOnContour(ribRing, point).distance).toBeCloseTo(4.5, 5);
    const openings = (part: Part) => part.openings;
    expect(openings(template!)).toHaveLength(openings(rib).length);
    for (const opening of openings(template!)) {
      const size = Math.sqrt(-areaOfRing(dense(opening, true, 2000)) / Math.PI);
      const nearest = openings(rib)
        .map((other) => Math.sqrt(-areaOfRing(dense(other, true, 2000)) / Math.PI))
        .sort((a, b) => Math.abs(a + 4.5 - size) - Math.abs(b + 4.5 - size))[0]!;
      expect(size - nearest).toBeCloseTo(4.5, 3);
    }
  });

  it('that its bit does not fit is refused', () => {
    const made = make('press-house', [
      ['template: {', 'template: { guide: bushing, bushingDiameter: 8, bitDiameter: 8,'],
    ]);
    const [problem] = made.problems.filter(({ code }) => code === 'guide-bushing');
    expect(problem?.place?.path).toEqual(['template', 'bushingDiameter']);
    expect(templates(made)).toEqual([]);
  });
});

describe.each(['dovetail', 'finger'])('a template longer than the bed, %s joint', (joint) => {
  const bed = { width: 500, height: 320 };
  const made = make('press-house', [['bed: 900 x 600', `joint: ${joint}, bed: ${bed.width} x ${bed.height}`]]);
  const whole = templates(make('press-house'))[0]!;
  const pieces = templates(made);
  const rings = pieces.map((piece) => dense(piece.outline, true, 200));

  it('comes in two pieces', () => {
    expect(made.problems).toEqual([]);
    expect(pieces.map(({ id }) => id)).toEqual(['template-1', 'template-2']);
  });

  it('goes together to the whole but for the play of the joint (polyclip-ts)', () => {
    const areaInOnePiece = areaOfRing(dense(whole.outline, true, 200));
    const gap = areaInOnePiece - unionArea(rings);
    expect(gap).toBeGreaterThan(0);
    expect(gap).toBeLessThan(0.06 * 200);
    expect(overlapArea(rings[0]!, rings[1]!)).toBeLessThan(1e-6);
  });

  it('keeps the curve and the length: shoulders meet without play', () => {
    const box = (points: readonly { x: number }[]) => [
      Math.min(...points.map(({ x }) => x)),
      Math.max(...points.map(({ x }) => x)),
    ];
    expect(box(rings[0]!)[0]).toBe(-60);
    expect(box(rings[1]!)[1]).toBeCloseTo(box(dense(whole.outline, true))[1]!, 9);
    const shoulder = box(rings[1]!)[0]!;
    expect(pieces[0]!.outline.filter(({ x }) => Math.abs(x - shoulder) < 1e-9).length).toBeGreaterThanOrEqual(4);
    for (const piece of pieces)
      for (const { ring, from, to } of piece.edges.filter(({ role }) => role === 'optical')) {
        const run = [piece.outline, ...piece.openings][ring]!.slice(from, to + 2);
        for (const point of dense(run, false, 50))
          expect(nearestOnContour(whole.outline, point).distance).toBeLessThan(1e-9);
      }
    const optical = pieces.flatMap((piece) =>
      piece.edges.flatMap(({ from, to }) => {
        const run = piece.outline.slice(from, to + 2);
        return run.slice(1).map((v, i) => Math.hypot(v.x - run[i]!.x, v.y - run[i]!.y));
      }),
    );
    expect(optical.reduce((a, b) => a + b, 0)).toBeGreaterThan(740);
  });

  it('fits the bed, and relieves the joint’s corners', () => {
    for (const [i, piece] of pieces.entries()) {
      const fits = Array.from({ length: 720 }, (_, k) => (k * Math.PI) / 720).some((angle) => {
        const span = (f: (p: { x: number; y: number }) => number) => {
          const values = rings[i]!.map(f);
          return Math.max(...values) - Math.min(...values);
        };
        const w = span(({ x, y }) => x * Math.cos(angle) - y * Math.sin(angle));
        const h = span(({ x, y }) => x * Math.sin(angle) + y * Math.cos(angle));
        return w <= bed.width + 0.01 && h <= bed.height + 0.01;
      });
      expect(fits).toBe(true);
      expect(piece.seatCorners.length % 4).toBe(0);
      expect(piece.seatCorners.length).toBeGreaterThan(0);
    }
  });

  it('holds the pieces together lengthwise only with a dovetail', () => {
    const tongue = pieces[0]!.outline.filter(({ x }) => x > Math.max(...pieces[0]!.outline.map((v) => v.x)) - 1e-9);
    const [low, high] = [Math.min(...tongue.map(({ y }) => y)), Math.max(...tongue.map(({ y }) => y))];
    const count = tongue.length / 2;
    expect(Number.isInteger(count)).toBe(true);
    const neck = pieces[0]!.seatCorners
      .map(({ vertex }) => pieces[0]!.outline[vertex]!)
      .filter(({ x }) => x < tongue[0]!.x - 1);
    const necks = neck.map(({ y }) => y);
    if (joint === 'dovetail') {
      expect(low).toBeLessThan(Math.min(...necks) - 1);
      expect(high).toBeGreaterThan(Math.max(...necks) + 1);
    } else {
      expect(low).toBeCloseTo(Math.min(...necks), 9);
      expect(high).toBeCloseTo(Math.max(...necks), 9);
    }
  });
});

describe('a bed smaller than half the template', () => {
  it('is refused with the bed that would do', () => {
    const made = make('press-house', [['bed: 900 x 600', 'bed: 300 x 200']]);
    const [problem] = made.problems.filter(({ code }) => code === 'bed-too-small');
    expect(problem?.severity).toBe('error');
    expect(problem?.place?.path).toEqual(['template', 'bed']);
    expect(diagnosticText(problem!)).toContain('use a bed of about 418 mm x 308 mm or more');
    const larger = make('press-house', [['bed: 900 x 600', 'bed: 418 x 308']]);
    expect(larger.problems).toEqual([]);
  });
});
