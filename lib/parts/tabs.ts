/** Tabs of the ribs through slots of the board. They go in from above, flush with the board's lower face or short of it. */
import { contourFromPoints, type Contour, placeVertices } from '../geometry/index.js';
import { type Dish, minTabLength, type Span, tabLength, tabSpan, type TabSpanSource } from '../dish/index.js';
import type { Design } from '../design/index.js';
import { type Diagnostic, diagnostic } from '../diagnostic/index.js';
import { inUnits, thicknessOf } from './blank.js';
import { hubReach } from './hub-build.js';

/** Greatest distance between the middles of two tabs, mm: common practice, no source. */
const tabSpacing = 250;

function sourceOf(design: Design, dish: Dish): TabSpanSource {
  return {
    ribThickness: dish.ribThickness,
    slotDepth: thicknessOf(design, design.board.material),
    fit: design.rib.fit,
    halfAngle: dish.layout.halfAngle,
    hubReach: hubReach(design, dish),
    toeRadius: design.rib.toeRadius,
    boardSize: design.board.size,
  };
}

/** The tabs of a rib in order outward: one near each end of its base, others evenly between; none for other joints. */
export function tabPlaces(design: Design, dish: Dish): Span[] {
  if (design.rib.joint !== 'tab-slot') return [];
  const span = tabSpan(sourceOf(design, dish));
  const { from, to } = span;
  const length = tabLength(span);
  if (length === 0) return [];
  const gaps = Math.max(1, Math.ceil((to - from - length) / tabSpacing));
  return Array.from({ length: gaps + 1 }, (_, i) => {
    const start = from + ((to - from - length) * i) / gaps;
    return { from: start, to: start + length };
  });
}

/** How far a tab goes into the board, mm: short of its lower face by the play, so that the board lies flat. */
export function tabDepth(design: Design): number {
  return thicknessOf(design, design.board.material) - design.rib.fit;
}

/** The slots of one rib in the board, clockwise, in the dish's plan. */
export function slotsOfRib(design: Design, dish: Dish, rotationDeg: number): Contour[] {
  const half = (dish.ribThickness + design.rib.fit) / 2;
  const play = design.rib.fit / 2;
  return tabPlaces(design, dish).map(({ from, to }) =>
    placeVertices(
      contourFromPoints([
        { x: from - play, y: -half },
        { x: from - play, y: half },
        { x: to + play, y: half },
        { x: to + play, y: -half },
      ]),
      { x: 0, y: 0, rotationDeg, mirrored: false },
    ),
  );
}

/** Whether the base of the ribs has room for tabs, and the board for their play. */
export function tabProblems(design: Design, dish: Dish): Diagnostic[] {
  if (design.rib.joint !== 'tab-slot') return [];
  const show = (mm: number) => inUnits(design, Math.round(10 * mm) / 10);
  const source = sourceOf(design, dish);
  const { from, to } = tabSpan(source);
  const min = minTabLength(dish.ribThickness);
  const problems: Diagnostic[] = [];
  if (tabLength({ from, to }) < min)
    problems.push(
      diagnostic(
        'rib-joint',
        ['rib', 'joint'],
        `the ribs' base has only ${show(Math.max(0, to - from))} for tabs, ${show(from)} to ${show(to)} from the axis; two of ${show(min)} need ${show(4 * min)}`,
        'use a larger board and rib.toeRadius, fewer ribs, or rib.joint: glued-cleat',
      ),
    );
  if (tabDepth(design) < source.slotDepth / 2)
    problems.push(
      diagnostic(
        'rib-joint',
        ['rib', 'fit'],
        `a play of ${inUnits(design, design.rib.fit)} leaves tabs of only ${show(Math.max(0, tabDepth(design)))} in a board of ${inUnits(design, source.slotDepth)}`,
        'use a smaller rib.fit or a thicker board',
      ),
    );
  return problems;
}
