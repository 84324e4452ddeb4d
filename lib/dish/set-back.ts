/** How close to the axis ribs of a given thickness can start. */

/** Radius from which `ribCount` ribs of thickness t clear each other: t/(2·tan α), α = π/N. */
export function clearRadius(ribCount: number, ribThickness: number): number {
  return ribThickness / (2 * Math.tan(Math.PI / ribCount));
}

/** Radius of the circle on which the outer corners of ribs starting there lie: t/(2·sin α). */
export function cornerRadius(ribCount: number, ribThickness: number): number {
  return ribThickness / (2 * Math.sin(Math.PI / ribCount));
}

/** Length of one flat of an N-sided hub of the given apothem: 2·r·tan α. */
export function flatLength(ribCount: number, apothem: number): number {
  return 2 * apothem * Math.tan(Math.PI / ribCount);
}
