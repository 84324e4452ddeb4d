/**
 * Housings: the base of a rib stands in a groove that a router clears in the board, stopped at both ends, and its inner
 * end in grooves of the hub's layers. The groove's ends stay as round as the bit leaves them; the rib's base is straight
 * between them, and beside it the rib lies on the board, which sets its height. The depth of the groove does not.
 */
import { type Dish, housingSpan, minTabLength, type Span } from '../dish/index.js';
import type { Design } from '../design/index.js';
import { type Diagnostic, diagnostic } from '../diagnostic/index.js';
import { placeVertices } from '../geometry/index.js';
import type { Pocket } from '../part/index.js';
import { inUnits } from './blank.js';
import { grooveDepth, hubReach } from './hub-build.js';

function spanOf(design: Design, dish: Dish): Span {
  return housingSpan({
    ribThickness: dish.ribThickness,
    slotDepth: grooveDepth(design),
    fit: design.rib.fit,
    halfAngle: dish.layout.halfAngle,
    hubReach: hubReach(design, dish),
    toeRadius: design.rib.toeRadius,
    boardSize: design.board.size,
  });
}

/** The part of a rib's base that goes into its groove, as one length; none for other joints or without room. */
export function housedBase(design: Design, dish: Dish): Span[] {
  if (design.rib.joint !== 'housing') return [];
  const span = spanOf(design, dish);
  return span.to > span.from ? [span] : [];
}

/** The groove of one rib in the board, in the dish's plan: round ends beyond the base, on the face with the ribs. */
export function groovesOfRib(design: Design, dish: Dish, rotationDeg: number): Pocket[] {
  const half = (dish.ribThickness + design.rib.fit) / 2;
  return housedBase(design, dish).map(({ from, to }) => ({
    ring: placeVertices(
      [
        { x: from, y: -half, bulge: -1 },
        { x: from, y: half, bulge: 0 },
        { x: to, y: half, bulge: -1 },
        { x: to, y: -half, bulge: 0 },
      ],
      { x: 0, y: 0, rotationDeg, mirrored: false },
    ),
    depth: grooveDepth(design),
    from: 'front',
  }));
}

/** Whether the base of the ribs has room for a groove. */
export function housingProblems(design: Design, dish: Dish): Diagnostic[] {
  if (design.rib.joint !== 'housing') return [];
  const show = (mm: number) => inUnits(design, Math.round(10 * mm) / 10);
  const { from, to } = spanOf(design, dish);
  const min = minTabLength(dish.ribThickness);
  if (to - from >= min) return [];
  return [
    diagnostic(
      'rib-joint',
      ['rib', 'joint'],
      `the ribs' base has only ${show(Math.max(0, to - from))} for a groove, ${show(from)} to ${show(to)} from the axis; it needs ${show(min)}`,
      'use a larger board and rib.toeRadius, fewer ribs, or rib.joint: glued-cleat',
    ),
  ];
}
