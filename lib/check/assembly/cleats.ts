/**
 * The cleats as a builder sets them: against the face of the rib that is scribed, their middle on its line, their screws
 * down into the board and sideways into the rib.
 */
import { mm } from '../faults.js';
import type { ProofPoint } from '../types.js';
import {
  axisTolerance,
  type Built,
  type BuiltPart,
  nearestDrill,
  outlineOf,
  overlapTolerance,
  turned,
  uprightLines,
} from './built.js';
import type { Report } from './report.js';

interface Cleats {
  readonly part: BuiltPart;
  readonly length: number;
  readonly width: number;
  /** Radius of the inner ends. */
  readonly from: number;
  /** Sides of the rib on which they stand: -1 right of it as seen from the hub, 1 left. */
  readonly sides: readonly (1 | -1)[];
}

/** Where the cleats stand, read off the rib's scribed lines: one row for each. */
function standing({ design, rib, start, scribedOnBack }: Built, part: BuiltPart, report: Report): Cleats[] {
  const ring = outlineOf(part);
  const [length, width] = [Math.max(...ring.map(({ x }) => x)), Math.max(...ring.map(({ y }) => y))];
  const lines = uprightLines(rib);
  if (lines.length === 0) report('cleat-line', {});
  const scribed = scribedOnBack ? 1 : -1;
  return lines.map(({ x }) => ({
    part,
    length,
    width,
    from: start + x - length / 2,
    sides: design.cleat.perRib === 2 ? [scribed, scribed === 1 ? -1 : 1] : [scribed],
  }));
}

/** A place of the cleat in the plan of rib 1: on the right the block lies turned half round. */
function inPlan({ length, from }: Cleats, thickness: number, side: 1 | -1, { x, y }: ProofPoint): ProofPoint {
  return side === -1 ? { x: from + length - x, y: -thickness / 2 - y } : { x: from + x, y: thickness / 2 + y };
}

function screws({ design, rib, boards, turns, start }: Built, cleats: Cleats, report: Report): void {
  const { part, sides, width } = cleats;
  const guides = uprightLines(part).filter(({ low, high }) => high - low > 0.9 * width);
  const { downScrews, ribScrews } = design.cleat;
  if (part.drills.length !== downScrews || guides.length !== ribScrews)
    report('cleat-screws', { down: part.drills.length, sideways: guides.length, wanted: downScrews + ribScrews });
  const drills = boards.flatMap((board) => board.drills);
  for (const side of sides) {
    for (const hole of part.drills) {
      const own = inPlan(cleats, rib.thickness, side, hole);
      turns.forEach((angle, k) => {
        const { off, diameter } = nearestDrill(drills, turned(own, angle));
        if (off > axisTolerance || diameter >= hole.diameter) report('board-pilot', { rib: k + 1, off: mm(off) });
      });
    }
    for (const { x } of guides) {
      const { x: radius } = inPlan(cleats, rib.thickness, side, { x, y: 0 });
      const { off } = nearestDrill(rib.drills, { x: radius - start, y: part.thickness / 2 });
      if (off > axisTolerance) report('rib-pilot', { off: mm(off) });
    }
  }
}

type Ring = readonly ProofPoint[];

/** How deep two convex rings run into each other; negative where they stand apart. */
function depth(a: Ring, b: Ring): number {
  let min = Infinity;
  for (const ring of [a, b])
    ring.forEach((p, i) => {
      const q = ring[(i + 1) % ring.length] ?? p;
      const size = Math.hypot(q.x - p.x, q.y - p.y);
      if (size < 1e-9) return;
      const [nx, ny] = [(q.y - p.y) / size, (p.x - q.x) / size];
      const along = (other: Ring) => other.map(({ x, y }) => x * nx + y * ny);
      const [of, to] = [along(a), along(b)];
      min = Math.min(min, Math.min(Math.max(...of) - Math.min(...to), Math.max(...to) - Math.min(...of)));
    });
  return min;
}

/** Cleats against the hub, the next ribs and their cleats; all ribs are alike, so those of rib 1 stand for all. */
function overlaps({ hub, rib, design, turns, start }: Built, cleats: Cleats, report: Report): void {
  const half = rib.thickness / 2;
  const plan = (side: 1 | -1): Ring =>
    [
      { x: 0, y: 0 },
      { x: cleats.length, y: 0 },
      { x: cleats.length, y: cleats.width },
      { x: 0, y: cleats.width },
    ].map((corner) => inPlan(cleats, rib.thickness, side, corner));
  const ribPlan: Ring = [
    { x: start, y: -half },
    { x: design.dish.aperture / 2, y: -half },
    { x: design.dish.aperture / 2, y: half },
    { x: start, y: half },
  ];
  const others: { readonly name: string; readonly ring: Ring }[] = [
    { name: 'the hub', ring: outlineOf(hub) },
    ...[1, turns.length - 1].flatMap((k) => {
      const turn = (ring: Ring) => ring.map((point) => turned(point, turns[k] ?? 0));
      return [
        { name: `rib ${k + 1}`, ring: turn(ribPlan) },
        ...cleats.sides.map((side) => ({ name: `the cleat of rib ${k + 1}`, ring: turn(plan(side)) })),
      ];
    }),
  ];
  for (const side of cleats.sides)
    for (const { name, ring } of others) {
      const into = depth(plan(side), ring);
      if (into > overlapTolerance) report('cleat-overlap', { other: name, depth: mm(into) });
    }
}

export function checkCleats(built: Built, report: Report): void {
  if (built.cleat === null) return;
  for (const cleats of standing(built, built.cleat, report)) {
    screws(built, cleats, report);
    overlaps(built, cleats, report);
  }
}
