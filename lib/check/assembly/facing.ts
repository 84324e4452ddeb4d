/** The facing by formulas of its own: where its chords lie on the ribs, and how long its layers are. */
import type { Built } from './built.js';

/** One chord of the facing by the radius u of its mid-line on the mirror. */
export interface Chord {
  /** Where it lies on the rib: radius and height over the board. */
  readonly radius: number;
  readonly height: number;
  readonly halfWidth: number;
}

export interface Shape {
  readonly f: number;
  readonly half: number;
  /** Facing: panel, glue and mirror. */
  readonly facing: number;
  /** From the mirror to the middle layer of the panel. */
  readonly middle: number;
  readonly gap: number;
  readonly base: number;
}

export function shapeOf({ design, panel, half }: Built): Shape | null {
  const { dish, materials, reflector } = design;
  if (dish.profile !== 'paraboloid' || dish.figure !== 'panel' || panel === null) return null;
  const sheet = reflector.material === undefined ? 0 : (materials[reflector.material]?.thickness ?? 0) + reflector.glue;
  return {
    f: dish.focalLength,
    half,
    facing: panel.thickness + sheet,
    middle: sheet + panel.thickness / 2,
    gap: design.panel.gap,
    base: dish.baseHeight,
  };
}

/**
 * A panel lies flat across its bay and slopes by ψ, tan ψ = u/2f. Its underside is the facing c below along the normal,
 * its edge cut square, o = g/2 + c·sin ψ·sin α off the rib's middle plane: there it touches the rib.
 */
export function chordAt({ f, half, facing, gap, base }: Shape, u: number): Chord {
  const psi = Math.atan(u / (2 * f));
  const off = gap / 2 + facing * Math.sin(psi) * Math.sin(half);
  return {
    radius: (u + facing * Math.sin(psi) - off * Math.sin(half)) / Math.cos(half),
    height: base + (u * u) / (4 * f) - facing * Math.cos(psi),
    halfWidth: u * Math.tan(half) - gap / 2 / Math.cos(half),
  };
}

/** Between which two values something comes about that is `below` it at first, by halving. */
export function halved(
  from: number,
  to: number,
  times: number,
  below: (value: number) => boolean,
): readonly [number, number] {
  let [low, high] = [from, to];
  for (let i = 0; i < times; i++) {
    const middle = (low + high) / 2;
    if (below(middle)) low = middle;
    else high = middle;
  }
  return [low, high];
}

/** The mid-line radius whose chord lies at a radius on the rib. */
export function chordOnRib(shape: Shape, radius: number): number {
  const [low, high] = halved(0, 2 * radius + 10, 60, (u) => chordAt(shape, u).radius < radius);
  return (low + high) / 2;
}

/** How fast a layer runs with u: the curve's own length, and what its bend adds below it. */
function rate({ f }: Shape, middle: number, u: number): number {
  const slope = u / (2 * f);
  const stretch = Math.sqrt(1 + slope * slope);
  return stretch * (1 + middle / (2 * f * stretch ** 3));
}

/** Length of a layer `middle` below the mirror from one mid-line radius to another, by Simpson's rule. */
export function layerLength(shape: Shape, middle: number, from: number, to: number): number {
  const steps = 200;
  const h = (to - from) / steps;
  let sum = 0;
  for (let i = 0; i <= steps; i++)
    sum += (i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2) * rate(shape, middle, from + i * h);
  return (sum * h) / 3;
}
