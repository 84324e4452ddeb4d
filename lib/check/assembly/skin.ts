/** The ribs' top edges and the panels against the paraboloid of the design, by formulas of its own. */
import { mm } from '../faults.js';
import type { ProofPoint } from '../types.js';
import { type Built, crossings, outlineOf } from './built.js';
import type { Report } from './report.js';

/** Room for the arcs that are fitted, on top of what the design allows them, mm. */
const tolerance = 0.02;
const stations = 24;

/** One chord of the facing by the radius u of its mid-line on the mirror. */
interface Chord {
  /** Where it lies on the rib: radius and height over the board. */
  readonly radius: number;
  readonly height: number;
  readonly halfWidth: number;
}

interface Shape {
  readonly f: number;
  readonly half: number;
  /** Facing: panel, glue and mirror. */
  readonly facing: number;
  /** From the mirror to the middle layer of the panel. */
  readonly middle: number;
  readonly gap: number;
  readonly base: number;
}

function shapeOf({ design, panel, half }: Built): Shape | null {
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
function chordAt({ f, half, facing, gap, base }: Shape, u: number): Chord {
  const psi = Math.atan(u / (2 * f));
  const off = gap / 2 + facing * Math.sin(psi) * Math.sin(half);
  return {
    radius: (u + facing * Math.sin(psi) - off * Math.sin(half)) / Math.cos(half),
    height: base + (u * u) / (4 * f) - facing * Math.cos(psi),
    halfWidth: u * Math.tan(half) - gap / 2 / Math.cos(half),
  };
}

/** The mid-line radius whose chord lies at a radius on the rib, by halving. */
function chordOnRib(shape: Shape, radius: number): number {
  let [low, high] = [0, 2 * radius + 10];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (chordAt(shape, middle).radius < radius) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** How fast the middle layer of the panel runs with u: the curve's own length, and what its bend adds below it. */
function rate({ f, middle }: Shape, u: number): number {
  const slope = u / (2 * f);
  const stretch = Math.sqrt(1 + slope * slope);
  return stretch * (1 + middle / (2 * f * stretch ** 3));
}

/** Length of the middle layer from one mid-line radius to another, by Simpson's rule. */
function layer(shape: Shape, from: number, to: number): number {
  const steps = 200;
  const h = (to - from) / steps;
  let sum = 0;
  for (let i = 0; i <= steps; i++)
    sum += (i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2) * rate(shape, from + i * h);
  return (sum * h) / 3;
}

function ribCurve(built: Built, shape: Shape, from: number, to: number, report: Report): void {
  const outline = outlineOf(built.rib);
  let worst = { off: 0, radius: 0 };
  for (let i = 1; i < stations; i++) {
    const u = from + ((to - from) * i) / stations;
    const { radius, height } = chordAt(shape, u);
    const top = crossings(outline, radius - built.start).at(-1) ?? -Infinity;
    // square to the edge
    const off = Math.abs(top - height) * Math.cos(Math.atan(u / (2 * shape.f)));
    if (off > worst.off) worst = { off, radius };
  }
  if (worst.off > tolerance + built.design.dish.arcTolerance)
    report('rib-curve', { off: mm(worst.off), radius: mm(worst.radius) });
}

function panelWidth(built: Built, shape: Shape, from: number, to: number, report: Report): void {
  if (built.panel === null) return;
  const outline: ProofPoint[] = outlineOf(built.panel);
  const limit = tolerance + built.design.dish.arcTolerance;
  const length = layer(shape, from, to);
  const own = Math.max(...outline.map(({ x }) => x)) - Math.min(...outline.map(({ x }) => x));
  if (Math.abs(own - length) > 2 * limit) report('panel-length', { length: mm(own), wanted: mm(length) });
  let worst = { off: 0, at: 0 };
  for (let i = 1; i < stations; i++) {
    const u = from + ((to - from) * i) / stations;
    const x = layer(shape, from, u);
    const across = crossings(outline, x);
    const { halfWidth } = chordAt(shape, u);
    for (const side of [-(across[0] ?? Infinity), across.at(-1) ?? Infinity])
      if (Math.abs(side - halfWidth) > Math.abs(worst.off)) worst = { off: side - halfWidth, at: x };
  }
  if (worst.off > limit) report('panel-wide', { off: mm(worst.off), at: mm(worst.at) });
  if (worst.off < -limit) report('panel-narrow', { off: mm(-worst.off), at: mm(worst.at) });
}

export function checkSkin(built: Built, report: Report): void {
  const shape = shapeOf(built);
  if (shape === null) return;
  const from = chordOnRib(shape, built.start);
  const to = chordOnRib(shape, built.design.dish.aperture / 2);
  ribCurve(built, shape, from, to, report);
  panelWidth(built, shape, from, to, report);
}
