/** A board larger than its sheets: segments that make up the whole, joints that miss what stands there. */
import { diagnosticText } from '../../lib/diagnostic/index.js';
import { linesUp } from '../../lib/part/index.js';
import { describe, expect, it } from 'vitest';
import { dense, make, type Made, overlapArea, firstPart, areaOfRing, turn, unionArea } from './making.js';

const round = () => make('table-top');
const thirds = () => make('table-top', [[/ply5, size: 600 x 400/, 'ply5, size: 480 x 330']]);
const square = () =>
  make('hand-cut-inch', [
    ['material: ply, size: 8 ft x 4 ft', 'material: ply, size: 4 ft x 30'],
    ['size: 40', 'size: 46'],
  ]);
const odd = () => make('table-top', [['ribs: 18', 'ribs: 19']]);

const cases: readonly [string, () => Made][] = [
  ['a round board in halves', round],
  ['a round board in thirds or more', thirds],
  ['a square board', square],
  ['a board for an odd number of ribs', odd],
];

describe.each(cases)('%s', (_, making) => {
  const made = making();
  const { design, dish } = made;
  const segments = made.parts.filter(({ kind }) => kind === 'board');
  const rings = segments.map((segment) => dense(segment.outline, true, 400));

  it('is made of segments', () => {
    expect(segments.length).toBeGreaterThan(1);
    expect(segments.map(({ id }) => id)).toEqual(segments.map((__, i) => `board-${i + 1}`));
    expect(made.problems.filter(({ severity }) => severity === 'error')).toEqual([]);
  });

  it('is whole when they are put together, without overlap (polyclip-ts)', () => {
    const half = design.board.size / 2;
    // the sagitta of the chords that stand for the rim is what is missing from a true circle
    const wanted = design.board.shape === 'round' ? Math.PI * half * half : 4 * half * half;
    const share = unionArea(rings) / wanted;
    expect(share).toBeLessThan(1 + 1e-9);
    expect(share).toBeGreaterThan(1 - 1e-4);
    rings.forEach((ring, i) => {
      expect(areaOfRing(ring)).toBeGreaterThan(0);
      for (const other of rings.slice(i + 1)) expect(overlapArea(ring, other)).toBeLessThan(1e-2);
    });
  });

  it('fits its sheets, turned as need be', () => {
    const sheets = design.stock.flatMap(({ material, size, margin }) =>
      material === design.board.material && size
        ? [{ width: size.width - 2 * margin, height: size.height - 2 * margin }]
        : [],
    );
    for (const ring of rings) {
      const fits = Array.from({ length: 720 }, (__, i) => (i * Math.PI) / 720).some((angle) => {
        const turned = ring.map((point) => turn(point, angle));
        const span = (values: number[]) => Math.max(...values) - Math.min(...values);
        const [w, h] = [span(turned.map(({ x }) => x)), span(turned.map(({ y }) => y))];
        return sheets.some((sheet) => w <= sheet.width + 0.01 && h <= sheet.height + 0.01);
      });
      expect(fits).toBe(true);
    }
  });

  it('has every hole once, each well inside its segment, and no joint under a rib', () => {
    const holes = segments.flatMap(({ holes }) => holes);
    const screws = dish.layout.ribs.length * design.cleat.perRib * design.cleat.downScrews;
    // each screw of a plate has its pilot
    const plate = made.parts.find(({ kind }) => kind === 'splice')!;
    const plated = plate.quantity * plate.holes.length;
    expect(holes).toHaveLength(screws + plated + design.board.mountingHoles + design.hub.dowels);
    // the joints are the straight edges that start at the axis
    const joints = segments.map((segment) => {
      const corners = segment.outline;
      const at = corners.findIndex(({ x, y }) => Math.hypot(x, y) < 1e-6);
      const next = corners[(at + 1) % corners.length]!;
      return Math.atan2(next.y, next.x);
    });
    for (const joint of joints) {
      for (const hole of holes) {
        const { x, y } = turn(hole, -joint);
        // the dowels stand too near the axis to keep as far off as a screw
        const far = hole.diameter === design.hub.dowelDiameter ? design.hub.dowelDiameter : 8;
        if (x > 0) expect(Math.abs(y)).toBeGreaterThan(far - 1e-9);
      }
      for (let k = 0; k < dish.layout.ribs.length; k++) {
        // the rib's inner end is where it comes closest to a line through the axis
        const off = joint - (2 * Math.PI * k) / dish.layout.ribs.length;
        const along = Math.cos(off) > 0;
        if (along)
          expect(dish.innerRadius * Math.abs(Math.sin(off))).toBeGreaterThan(
            (dish.ribThickness / 2) * Math.abs(Math.cos(off)) - 1e-6,
          );
      }
    }
  });

  it('scribes nothing outside a segment', () => {
    segments.forEach((segment, i) => {
      for (const contour of linesUp(segment)) {
        const points = dense(contour.vertices, contour.closed, 8);
        if (contour.closed) {
          expect(Math.abs(overlapArea(points, rings[i]!) - areaOfRing(points))).toBeLessThan(0.05);
        } else
          for (const { x, y } of points) {
            const tiny = [
              { x: x - 0.01, y: y - 0.01 },
              { x: x + 0.01, y: y - 0.01 },
              { x: x + 0.01, y: y + 0.01 },
              { x: x - 0.01, y: y + 0.01 },
            ];
            expect(overlapArea(tiny, rings[i]!)).toBeGreaterThan(0);
          }
      }
    });
  });

  it('has a plate for every joint, its screws on both sides of it', () => {
    const plate = firstPart(made, 'splice');
    expect(plate.quantity).toBe(segments.length);
    const sides = plate.holes.map(({ y }) => y - design.board.spliceWidth / 2);
    expect(sides.filter((y) => y > 10)).toHaveLength(plate.holes.length / 2);
    expect(sides.filter((y) => y < -10)).toHaveLength(plate.holes.length / 2);
  });
});

describe('a board that no number of segments saves', () => {
  it('is refused by name', () => {
    const made = make('table-top', [[/ply5, size: 600 x 400/, 'ply5, size: 240 x 200']]);
    const [problem] = made.problems.filter(({ code }) => code === 'board-too-large');
    expect(problem?.place?.path).toEqual(['board', 'size']);
    expect(diagnosticText(problem!)).toContain('250 mm long');
  });
});
