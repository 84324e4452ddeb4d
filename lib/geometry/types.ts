/**
 * The plain data that everything is made of. Lengths in mm, angles in radians, y up.
 */

export interface Point {
  readonly x: number;
  readonly y: number;
}

/**
 * A vertex of a contour or path. `bulge` belongs to the edge that starts here: 0 for a straight edge,
 * tan(sweep/4) for an arc, positive anticlockwise. An arc sweeps less than a full turn.
 */
export interface Vertex extends Point {
  readonly bulge: number;
}

/** A closed ring (the last vertex joins the first). Outer contours run anticlockwise, openings clockwise. */
export type Contour = readonly Vertex[];

/** An open run of edges; the bulge of the last vertex is 0 and has no meaning. */
export type Path = readonly Vertex[];

/** A closed ring of straight edges, without a repeated last point. */
export type Polygon = readonly Point[];

export interface Bounds {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** Rotated about the origin (mirrored first, x to -x, when `mirrored`), then moved by x, y. */
export interface Placement {
  readonly x: number;
  readonly y: number;
  readonly rotationDeg: number;
  readonly mirrored: boolean;
}

/** A curve fitted by arcs, with the largest measured distance between the two (mm). */
export interface FittedPath {
  readonly path: Path;
  readonly deviation: number;
}

/** A point or a direction in space. */
export type Vec3 = readonly [number, number, number];
