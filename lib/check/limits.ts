/** Tolerances of the proof, mm, and bounds beyond which a file is not one of ours. */

/** Greatest difference between the swept cut and the nominal part. */
export const cutTolerance = 0.02;

/** Greatest difference between what the DXF, the SVG and the record say of the same line. */
export const agreementTolerance = 0.002;

/** By how much a computed greatest distance may stand above the true one: half a micrometre. */
export const measureSlack = 0.0005;

/** Edges shorter than this are no edges: a tenth of what the files' rounding could leave of a real one. */
export const shortestEdge = 0.0001;

/** No coordinate of ours is larger: a kilometre. */
export const farthest = 1e6;

/** More entities than any sheet of ours holds; more would only keep the reader busy. */
export const maxEntities = 200_000;

/** Faults of one kind that are reported one by one for a sheet. */
export const maxAlike = 10;
