import type { Point } from './types.js';

/** Sum of two vectors (mm). */
export function add(a: Point, b: Point): Point {
  return { x: a.x + b.x, y: a.y + b.y };
}

/** The vector from b to a (mm). */
export function subtract(a: Point, b: Point): Point {
  return { x: a.x - b.x, y: a.y - b.y };
}

/** The vector, `factor` times as long. */
export function scale(a: Point, factor: number): Point {
  return { x: a.x * factor, y: a.y * factor };
}

/** Dot product (mm²). */
export function dot(a: Point, b: Point): number {
  return a.x * b.x + a.y * b.y;
}

/** Cross product (mm²): positive when b lies anticlockwise of a. */
export function cross(a: Point, b: Point): number {
  return a.x * b.y - a.y * b.x;
}

/** Distance of two points (mm). A root of squares: `Math.hypot` takes many times as long. */
export function distance(a: Point, b: Point): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  return Math.sqrt(dx * dx + dy * dy);
}

/** The point at `radius` (mm) from `centre` in the direction `angle` (radians, anticlockwise from +x). */
export function polar(radius: number, angle: number, centre: Point = { x: 0, y: 0 }): Point {
  return { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
}

/** The point turned about `centre` by `angle` (radians, anticlockwise). */
export function rotate(a: Point, angle: number, centre: Point = { x: 0, y: 0 }): Point {
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  const x = a.x - centre.x;
  const y = a.y - centre.y;
  return { x: centre.x + x * cos - y * sin, y: centre.y + x * sin + y * cos };
}

/** The point at the fraction t of the way from a to b. */
export function between(a: Point, b: Point, t: number): Point {
  return { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t };
}

/** The vector of length 1 in the direction of `a`. Throws RangeError for the zero vector, which has none. */
export function unit(a: Point): Point {
  const length = Math.hypot(a.x, a.y);
  if (length === 0) throw new RangeError('the zero vector has no direction');
  return { x: a.x / length, y: a.y / length };
}

/** The vector turned a quarter anticlockwise: the left-hand side of a direction of travel. */
export function leftOf(a: Point): Point {
  return { x: -a.y, y: a.x };
}
