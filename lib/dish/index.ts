export type * from './types.js';
export { type DevelopedChord, type DevelopedPanel, developedLength, developPanel } from './develop.js';
export { type Facet, crossingHeight, edgeOffsetAt, facetAt, facetOnRib, focusHeight, litRange } from './facet.js';
export { paraboloid } from './paraboloid.js';
export { bendRadius, offsetPoint, parallelLength, type Profile, rimAngle } from './profile.js';
export { type PlanFrame, radialLayout, type RibLayout, ribNumbers } from './rib-layout.js';
export { fitRibTop, ribTopHeight } from './rib-top.js';
export { clearRadius, cornerRadius, flatLength } from './set-back.js';
export { solveDish } from './solve.js';
