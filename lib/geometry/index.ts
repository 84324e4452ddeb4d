export type * from './types.js';
export { add, between, cross, distance, dot, leftOf, polar, rotate, scale, subtract, unit } from './point.js';
export {
  type ArcEdge,
  type Edge,
  type StraightEdge,
  arcThrough,
  bulgeOfSweep,
  edgeArc,
  edgeLength,
  pointOnEdge,
  tangentOnEdge,
  turnAbout,
} from './arc.js';
export {
  anticlockwise,
  bounds,
  boundsOfAll,
  circle,
  clockwise,
  contourFromPoints,
  edgeBounds,
  edgesOf,
  edgesOfPath,
  pathLength,
  perimeter,
  rectangle,
  regularPolygon,
  reversed,
  signedArea,
} from './contour.js';
export { vecAdd, vecCross, vecDot, vecTimes, vecUnit } from './vec3.js';
export { type Axes, commandedPath, commandedPoint } from './axes.js';
export { cyclic, element } from './element.js';
export { type Random, randomFrom } from './random.js';
export { type Table, tableAt } from './table.js';
export { convexHull } from './hull.js';
export { placePoint, placeVertices } from './transform.js';
export { type FlattenSide, flatten, flattenPath } from './flatten.js';
export { fillet } from './fillet.js';
export { type Curve } from './sampled-curve.js';
export { fitArcs } from './arc-fit.js';
export {
  type Closest,
  type Nearest,
  boxDistance,
  closestOfContours,
  nearestOnContour,
  nearestOnEdge,
} from './distance.js';
export { type Contact, type Intersection, intersectEdges } from './intersect.js';
export { type Side, sideOfContour } from './inside.js';
export { type Simplicity, simplicity } from './simple.js';
export { offsetContour, offsetRegion, offsetRings } from './offset.js';
export { intersectPolygons, polygonArea, subtractPolygons, unionPolygons } from './boolean.js';
export { type BoxIndex, indexBoxes } from './box-index.js';
export { hasStrokes, strokeText, strokeTextWidth } from './stroke-font.js';
export type { GlyphSource } from './stroke-glyphs.js';
export { unswept } from './unswept.js';
export { pointWithin } from './point-within.js';
export { turnBetween } from './parallel.js';
export type { NearestOnContour, NearestOnEdge } from './distance.js';
