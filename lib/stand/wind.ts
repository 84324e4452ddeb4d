/**
 * Wind on a tilted dish, as EN 1991-1-4 has it for plates, coefficients from memory: signboards (7.4.3) from a slope of
 * 30 degrees upward, monopitch canopies (table 7.6, greatest net pressure of the overall force) below, both with the
 * force acting a quarter of the width off the middle. Newton, millimetres, radians.
 */

import { type Table, tableAt } from '../geometry/index.js';

/** kg/m³ (EN 1991-1-4, 4.5). */
const airDensity = 1.25;

/** Velocity pressure, N/m² (EN 1991-1-4, equation 4.10): half the density times the square of the speed (m/s). */
export const windPressure = (speed: number): number => (airDensity / 2) * speed ** 2;

/** Slope of the plate in degrees, and the greatest of the net coefficients, up or down: canopies below 30°, then signboards. */
const overall: Table = [
  [0, 0.5],
  [5, 0.7],
  [10, 0.9],
  [15, 1.1],
  [20, 1.3],
  [25, 1.6],
  [30, 1.8],
];
/** Side of the dish and the stand, edge-on: a closed bluff shape (common practice, no source). */
const bluff = 1.3;

/** Coefficient of the force square to the aperture, for a slope of the aperture against the level. */
export function plateCoefficient(slope: number): number {
  return tableAt(overall, (Math.abs(slope) * 180) / Math.PI);
}

export interface DishFace {
  readonly radius: number;
  /** From the rim to the vertex, for the side view. */
  readonly depth: number;
}

/** Area of the aperture, m². */
const apertureArea = ({ radius }: DishFace): number => Math.PI * radius ** 2 * 1e-6;
/** Of the dish from the side, m²: a segment of a parabola. */
const sideArea = ({ radius, depth }: DishFace): number => (2 / 3) * 2 * radius * depth * 1e-6;

/** Force square to the aperture, N, by its slope against the level. */
export const plateForce = (face: DishFace, slope: number, speed: number): number =>
  plateCoefficient(slope) * windPressure(speed) * apertureArea(face);

/** Level force on the dish from its side, N. */
export const sideForce = (face: DishFace, speed: number): number => bluff * windPressure(speed) * sideArea(face);
