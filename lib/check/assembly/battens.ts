/**
 * Battens over the seams by formulas of their own. A batten lies level across its rib on its lower edges, W/2 off the
 * rib's middle, where the panels' faces are as high as in the middle of their bay at u: r·cos α + (W/2)·sin α = u + c·sin ψ.
 */
import { mm } from '../faults.js';
import type { ProofPoint } from '../types.js';
import { axisTolerance, type Built, type BuiltPart, crossings, openingsOf, outlineOf, turned } from './built.js';
import type { Shape } from './facing.js';
import type { Report } from './report.js';

/** Wood over a screw's point, and the space between two battens at their inner ends, mm. */
const cover = 2;
const apart = 2;
/** Pieces into which the curve is divided. */
const pieces = 4000;

/** A place of the batten's underside in the plane of its rib: radius, height over the board, slope. */
interface Place {
  readonly r: number;
  readonly z: number;
  readonly slope: number;
}

function placeAt({ f, half, facing, base }: Shape, panel: number, width: number, u: number): Place {
  const psi = Math.atan(u / (2 * f));
  const mirror = facing - panel;
  return {
    r: (u + mirror * Math.sin(psi) - (width / 2) * Math.sin(half)) / Math.cos(half),
    z: base + (u * u) / (4 * f) - mirror * Math.cos(psi),
    slope: Math.atan((u / (2 * f)) * Math.cos(half)),
  };
}

/** Places along the batten from its inner end, by the length of its middle layer. */
function placesOf(built: Built, shape: Shape, batten: BuiltPart, to: number): { at: Place; length: number }[] {
  const panel = built.panel?.thickness ?? 0;
  const { battenWidth: width } = built.design.panel;
  const start = Math.max(built.start, ((width / 2) * Math.cos(shape.half) + apart / 2) / Math.sin(shape.half));
  const places: { at: Place; length: number }[] = [];
  let length = 0;
  let last: ProofPoint | null = null;
  for (let i = 0; i <= pieces; i++) {
    const at = placeAt(shape, panel, width, (to * i) / pieces);
    if (at.r < start) continue;
    const middle = {
      x: at.r - (batten.thickness / 2) * Math.sin(at.slope),
      y: at.z + (batten.thickness / 2) * Math.cos(at.slope),
    };
    // the piece before the first place is part of a step
    length += last === null ? (at.r - start) / Math.cos(at.slope) : Math.hypot(middle.x - last.x, middle.y - last.y);
    last = middle;
    places.push({ at, length });
  }
  return places;
}

/** Wood under a batten's upper face along a screw at a place, to where its point would come out of the rib, mm. */
function woodUnder({ rib, start }: Built, thickness: number, { r, z, slope }: Place): number {
  const axis = turned({ x: r - start, y: z }, -slope);
  const met = [outlineOf(rib), ...openingsOf(rib)]
    .flatMap((ring) =>
      crossings(
        ring.map((point) => turned(point, -slope)),
        axis.x,
      ),
    )
    .filter((y) => y < axis.y)
    .sort((a, b) => b - a);
  return thickness + axis.y - (met[1] ?? -Infinity);
}

/** @param to mid-line radius of the panels' outer ends @param limit how far lengths may be off, mm */
export function checkBattens(built: Built, shape: Shape, to: number, limit: number, report: Report): void {
  const { batten, design, fasteners } = built;
  if (design.panel.fixing !== 'battens') return;
  if (batten === null || batten.quantity !== built.turns.length) {
    report('batten-count', { count: batten?.quantity ?? 0, wanted: built.turns.length });
    return;
  }
  const outline = outlineOf(batten);
  const [length, width] = (['x', 'y'] as const).map((axis) => {
    const all = outline.map((point) => point[axis]);
    return Math.max(...all) - Math.min(...all);
  }) as [number, number];
  if (Math.abs(width - design.panel.battenWidth) > limit)
    report('batten-width', { width: mm(width), wanted: mm(design.panel.battenWidth) });
  const places = placesOf(built, shape, batten, to);
  const wanted = places.at(-1)?.length ?? 0;
  if (Math.abs(length - wanted) > 2 * limit) report('batten-length', { length: mm(length), wanted: mm(wanted) });
  const middle = (Math.max(...outline.map(({ y }) => y)) + Math.min(...outline.map(({ y }) => y))) / 2;
  const off = Math.max(0, ...batten.drills.map(({ y }) => Math.abs(y - middle)));
  if (off > axisTolerance) report('batten-hole', { off: mm(off) });
  const shallowest = batten.drills.reduce((min, { x }) => {
    const place = places.find((one) => one.length >= x);
    return place === undefined ? min : Math.min(min, woodUnder(built, batten.thickness, place.at));
  }, Infinity);
  for (const one of fasteners.filter(({ joint }) => joint === 'batten-to-rib')) {
    if (one.diameter > design.panel.gap + 1e-6)
      report('batten-gap', { diameter: mm(one.diameter), gap: mm(design.panel.gap) });
    if (one.length !== null && one.length > shallowest - cover + limit)
      report('screw-long', { joint: one.joint, length: mm(one.length), wood: mm(shallowest) });
  }
}
