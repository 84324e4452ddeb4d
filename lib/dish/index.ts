export type * from './types.js';
export { type BattenCurve, battenCurve, type SheetChord } from './batten-curve.js';
export {
  bestStart,
  type CleatBase,
  endOfBase,
  jointPasses,
  maxStart,
  planClearance,
  screwFromJoint,
  startFrom,
} from './cleat-rows.js';
export { type DevelopedPanel, developPanel } from './develop.js';
export { type Facet, crossingHeight, edgeOffsetAt, facetAt, facetOnRib, litRange, pinFromEdge } from './facet.js';
export { paraboloid } from './paraboloid.js';
export { bendRadius, offsetPoint, parallelLength, type Profile, rimAngle } from './profile.js';
export { type PlanFrame, radialLayout, ribNumbers } from './rib-layout.js';
export { fitRibTop, ribTopHeight } from './rib-top.js';
export { clearRadius, cornerRadius, flatLength } from './set-back.js';
export { minHeightOverDiscs, minSlottedRadius, noseLength, slottedReach, upperDiscHeight } from './slotted-hub.js';
export { solveDish } from './solve.js';
export { spread } from './spread.js';
export { housingSpan, minTabLength, type Span, tabLength, tabSpan, type TabSpanSource } from './tab-span.js';
