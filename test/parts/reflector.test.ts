import { diagnosticText } from '../../lib/diagnostic/index.js';
import { describe, expect, it } from 'vitest';
import { makeReflectors, stripSeamShare } from '../../lib/parts/index.js';
import { bendAllowance, flatHem } from '../../lib/parts/hem.js';
import { linesUp } from '../../lib/part/index.js';
import { dense, make, overlapArea, firstPart, areaOfRing, unionArea } from './making.js';

const withReflector = (keys: string) =>
  make('press-house', [
    ['reflector: { material: aluminium, finish: bright-anodised }', `reflector: { material: aluminium, ${keys} }`],
  ]);

describe('the strip', () => {
  it('is shorter than its panel by half of both thicknesses times the turn', () => {
    const made = withReflector('hem: 0');
    const { dish } = made;
    const ends = (id: string) => firstPart(made, id).outline.map(({ x }) => x);
    const [panel, strip] = [Math.max(...ends('panel')), Math.max(...ends('reflector'))];
    const turn = Math.atan(dish.litTo / 1100) - Math.atan(dish.litFrom / 1100);
    expect(panel - strip).toBeCloseTo((0.3 + 1.5 - 0.15) * turn, 9);
  });

  it('stands back by the inset on all sides', () => {
    const [whole, inset] = [
      firstPart(withReflector('hem: 0'), 'reflector'),
      firstPart(withReflector('inset: 4'), 'reflector'),
    ];
    const outer = dense(whole.outline, true, 2000);
    const inner = inset.outline.map(({ x, y }) => ({ x: x + 4, y }));
    for (const { x, y } of inner.filter((point) => point.y > 0)) {
      const apart = Math.min(...outer.map((q) => Math.hypot(q.x - x, q.y - y)));
      expect(Math.abs(apart - 4)).toBeLessThan(0.05);
    }
    expect(Math.max(...inner.map(({ x }) => x))).toBeCloseTo(Math.max(...outer.map(({ x }) => x)) - 4, 6);
    expect(Math.min(...inner.map(({ x }) => x))).toBeCloseTo(4, 6);
  });

  it('is left out when the panel itself reflects', () => {
    const made = make('press-house', [['reflector: { material: aluminium, finish: bright-anodised }\n', '']]);
    expect(made.parts.filter(({ kind }) => kind === 'reflector')).toEqual([]);
    expect(stripSeamShare(made.design, made.dish)).toBe(0);
  });

  it('that no roll is wide enough for is refused, with the rows that would do', () => {
    const made = make('press-house', [['rollWidth: 600', 'rollWidth: 150']]);
    const [problem] = made.problems.filter(({ code }) => code === 'strip-does-not-fit');
    expect(problem?.severity).toBe('error');
    expect(problem?.place?.path).toEqual(['reflector', 'layout']);
    expect(diagnosticText(problem!)).toMatch(/reflector\.layout: rows, which needs 7 rows of/);
    // and they do
    const rows = make('press-house', [
      ['rollWidth: 600', 'rollWidth: 150'],
      [
        'reflector: { material: aluminium, finish: bright-anodised }',
        'reflector: { material: aluminium, layout: rows }',
      ],
    ]);
    expect(rows.problems).toEqual([]);
    expect(rows.parts.filter(({ kind }) => kind === 'reflector')).toHaveLength(7);
  });
});

describe('rows', () => {
  const made = make('press-house', [
    ['rollWidth: 600', 'rollWidth: 200'],
    [
      'reflector: { material: aluminium, finish: bright-anodised }',
      'reflector: { material: aluminium, layout: rows, overlap: 12, hem: 10 }',
    ],
  ]);
  const rows = made.parts.filter(({ kind }) => kind === 'reflector');
  const heightOf = (i: number): number => Math.max(...rows[i]!.outline.map(({ x }) => x));

  it('fit the roll inside its margin, as few as may be', () => {
    const usable = 200 - 2 * made.design.process.margin;
    rows.forEach((_, i) => {
      expect(heightOf(i)).toBeLessThanOrEqual(usable + 1e-6);
    });
    const whole = Math.max(...firstPart(made, 'panel').outline.map(({ x }) => x));
    expect((rows.length - 1) * (usable - 12) + 12).toBeLessThan(whole + 30);
  });

  it('lap each other by the overlap and cover what one strip would (polyclip-ts)', () => {
    const [strip] = makeReflectors(
      { ...made.design, reflector: { ...made.design.reflector, layout: 'strip' } },
      made.dish,
    );
    const height = heightOf(0);
    const laid = rows.map((row, i) =>
      dense(row.outline, true, 50).map(({ x, y }) => ({ x: x + i * (height - 12), y })),
    );
    const whole = dense(strip!.outline, true, 200);
    expect(Math.abs(unionArea(laid) / areaOfRing(whole) - 1)).toBeLessThan(1e-4);
    const last = rows.length - 1;
    expect(heightOf(last)).toBeCloseTo(height, 6);
    laid.slice(1).forEach((row, i) => {
      const before = laid[i]!;
      const lap = overlapArea(row, before);
      const width = 2 * Math.max(...before.map(({ y }) => y));
      expect(lap).toBeGreaterThan(12 * (width - 6));
      expect(lap).toBeLessThan(12 * width);
    });
  });

  it('that lap as far as the roll is wide are refused by their key', () => {
    const bad = make('press-house', [
      ['rollWidth: 600', 'rollWidth: 200'],
      [
        'reflector: { material: aluminium, finish: bright-anodised }',
        'reflector: { material: aluminium, layout: rows, overlap: 190 }',
      ],
    ]);
    const [problem] = bad.problems.filter(({ code }) => code === 'rows-do-not-fit');
    expect(problem?.place?.path).toEqual(['reflector', 'overlap']);
    expect(diagnosticText(problem!)).toContain('190 mm');
  });

  it('cannot lap by less than nothing', () => {
    expect(() =>
      make('press-house', [
        [
          'reflector: { material: aluminium, finish: bright-anodised }',
          'reflector: { material: aluminium, overlap: -1 }',
        ],
      ]),
    ).toThrow(/reflector\.overlap is -1 mm/);
  });
});

describe('the hem', () => {
  it('is there by default on sheet metal, which cuts, and on nothing else', () => {
    expect(make('press-house').design.reflector.hem).toBe(10);
    expect(make('table-top').design.reflector.hem).toBe(0);
    expect(withReflector('inset: 4').design.reflector.hem).toBe(0);
  });

  it('takes up the bends of a handbook', () => {
    // Machinery's Handbook, bending sheet metal, from memory: L = 0.64·T + 1.57·R, here 1/16 in on 1/8 in
    expect(bendAllowance(0.0625, 0.125)).toBeCloseTo(0.23625, 6);
  });

  it('folds round the panel’s edge to the width that was asked for', () => {
    const [width, over, thickness] = [15, 3, 0.3];
    const { past, folds } = flatHem(width, over, thickness);
    // walked along the neutral layer: bend, upright, bend, and back under to the hem's edge
    const bend = bendAllowance(thickness, thickness);
    const [first, second] = folds;
    expect(first).toBeCloseTo(-thickness + bend / 2, 12);
    expect(second - first).toBeCloseTo(bend + over - 2 * thickness, 12);
    expect(past - second).toBeCloseTo(bend / 2 + width - thickness, 12);
    // a sheet without thickness just goes round
    expect(flatHem(15, 3, 1e-9).past).toBeCloseTo(18, 6);
  });

  it('lengthens the strip and is marked by its fold lines', () => {
    const [plain, hemmed] = [
      firstPart(withReflector('hem: 0'), 'reflector'),
      firstPart(withReflector('hem: 15'), 'reflector'),
    ];
    const long = (part: typeof plain) => Math.max(...part.outline.map(({ x }) => x));
    expect(long(hemmed) - long(plain)).toBeCloseTo(flatHem(15, 3, 0.3).past, 9);
    const scribes = linesUp(hemmed);
    expect(scribes).toHaveLength(2);
    for (const { vertices } of scribes) {
      expect(vertices[0]!.x).toBeGreaterThan(long(plain) - 1);
      expect(vertices[0]!.x).toBeLessThan(long(hemmed) - 10);
    }
  });
});

describe('what seams cost', () => {
  it('is the share of a fine grid over the panel that lies under tape or beside the strip', () => {
    for (const keys of ['tape: 30', 'inset: 5', 'tape: 30, inset: 5']) {
      const { design, dish } = withReflector(keys);
      const [cos, sin] = [Math.cos(dish.layout.halfAngle), Math.sin(dish.layout.halfAngle)];
      const { inset, tape } = design.reflector;
      let panel = 0;
      let mirror = 0;
      const step = 0.25;
      for (let u = dish.litFrom + step / 2; u < dish.litTo; u += step)
        for (let w = step / 2; w < u * Math.tan(dish.layout.halfAngle); w += step) {
          const offPlane = u * sin - w * cos;
          if (offPlane < dish.seamGap / 2) continue;
          panel++;
          const fromEdge = offPlane - dish.seamGap / 2;
          const slope = (r: number) => Math.hypot(1, r / (2 * dish.profile.focusHeight));
          const fromEnds = Math.min((u - dish.litFrom) * slope(dish.litFrom), (dish.litTo - u) * slope(dish.litTo));
          if (offPlane >= tape / 2 && fromEdge >= inset && fromEnds >= inset) mirror++;
        }
      expect(Math.abs(stripSeamShare(design, dish) - (1 - mirror / panel))).toBeLessThan(1e-3);
    }
  });

  it('is nothing without tape and inset', () => {
    const { design, dish } = make('press-house');
    expect(stripSeamShare(design, dish)).toBe(0);
  });
});
