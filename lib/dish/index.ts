export type * from './types.js';
export { type DevelopedChord, type DevelopedPanel, developedLength, developPanel } from './develop.js';
export { type Facet, crossingHeight, facetAt, facetOnRib, litRange } from './facet.js';
export { parabolaHeight, parallelLength, paraboloidArea, profileLength, rimAngle, slopeAngle } from './paraboloid.js';
export { fitRibTop, ribTopHeight } from './rib-top.js';
export { clearRadius, cornerRadius, flatLength } from './set-back.js';
export { solveDish } from './solve.js';
