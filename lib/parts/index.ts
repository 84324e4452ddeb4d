export { makeParts } from './make.js';
export { heightOnPath, markOut, type MarkingOut } from './marking-out.js';
export { makeReflectors, mirrorStarts, stripSeamShare } from './reflector.js';
export { type Cover, coverOf } from './cover.js';
export { makeGauges } from './gauge.js';
export { guideOffset, makeTemplates } from './template.js';
export { chordAtLength } from './chord.js';
export { pinPlaces } from './panel.js';
export { panelFixing } from './panel-fixing.js';
export { hubHeights, takesRibs } from './hub-build.js';
export { type CleatStart, cleatPlaces } from './plan.js';
export type { SplicePlace } from './splices.js';
export { type ThicknessRange, thicknessRanges } from './tolerance.js';
export { withFittingLabels } from './labels.js';
export { type ExtraSource, readExtras } from './extra.js';
export {
  type SourceDrawing as ExtraDrawing,
  ExtraFault,
  placeText,
  type ReadingOptions,
  RunList,
} from './extra/drawing.js';
export { splicePilots } from './splices.js';
export { battenFixedAt, battenFixing, battenOver, hasBattens } from './battens.js';
