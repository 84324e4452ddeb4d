/** The ribs' top edges and the panels against the paraboloid of the design, by formulas of its own. */
import { mm } from '../faults.js';
import type { ProofPoint } from '../types.js';
import { type Built, crossings, outlineOf } from './built.js';
import { checkBattens } from './battens.js';
import { chordAt, chordOnRib, layerLength, type Shape, shapeOf } from './facing.js';
import { checkMirrors } from './mirror.js';
import type { Report } from './report.js';

/** Room for the arcs that are fitted, on top of what the design allows them, mm. */
const tolerance = 0.02;
const stations = 24;

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
  const length = layerLength(shape, shape.middle, from, to);
  const own = Math.max(...outline.map(({ x }) => x)) - Math.min(...outline.map(({ x }) => x));
  if (Math.abs(own - length) > 2 * limit) report('panel-length', { length: mm(own), wanted: mm(length) });
  let worst = { off: 0, at: 0 };
  for (let i = 1; i < stations; i++) {
    const u = from + ((to - from) * i) / stations;
    const x = layerLength(shape, shape.middle, from, u);
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
  const limit = tolerance + built.design.dish.arcTolerance;
  checkMirrors(built, shape, { from, to, limit }, report);
  checkBattens(built, shape, to, limit, report);
}
