/** Whether the parts of a sheet keep clear of each other and of the edge. */
import type { ClosestPoint } from './edge-distance.js';
import { EdgeSet } from './edge-set.js';
import { type FaultList, mm } from './faults.js';
import { agreementTolerance } from './limits.js';
import { nameOf, type Nominal } from './nominal.js';
import { holds, overlapOf, type Solid } from './overlap.js';
import { gap, inside, type Line, lineOf } from './ring.js';
import type { ProofPoint } from './types.js';

/** Where two parts come nearest to each other, if nearer than `within`. */
function nearestBetween(a: Solid, b: Solid, within: number): ClosestPoint | null {
  const [few, many] = a.edges.edges.length <= b.edges.edges.length ? [a, b] : [b, a];
  let best: ClosestPoint | null = null;
  for (const edge of few.edges.edges) {
    const min: number = best?.distance ?? within;
    if (gap(edge, many.box) < min) best = many.edges.nearestWithin(edge, min) ?? best;
  }
  return best;
}

/** Whether a part lies on the material of another, by one point of its outline, if their edges do not meet. */
function overlaps(a: Solid, b: Solid): boolean {
  const edge = a.outlines[0]?.edges[0];
  if (edge === undefined) return false;
  const place = { x: edge.ax, y: edge.ay };
  return holds(b, place);
}

/** A place on both of two parts, of which the edges are at least `required` apart; null where there is none. */
function sharedPlace(a: Solid, b: Solid, required: number): ProofPoint | null {
  // edges that may meet have to be followed; else one point decides
  if (required <= agreementTolerance) return overlapOf(a, b);
  return overlaps(a, b) || overlaps(b, a) ? { x: a.box.minX, y: a.box.minY } : null;
}

/**
 * Least distance between two parts, null with fewer than two; n² in the number of parts, by their boxes. Parts nearer
 * than `required`, or on each other, are a fault.
 */
export function minSpacing(
  nominals: readonly Nominal[],
  required: number,
  file: string,
  faults: FaultList,
): number | null {
  let min = Infinity;
  nominals.forEach((a, i) => {
    for (const b of nominals.slice(i + 1)) {
      const apart = gap(a.box, b.box);
      const within = Math.max(required, min);
      if (apart >= within) continue;
      const near = nearestBetween(a, b, within);
      if (near) min = Math.min(min, near.distance);
      if (near !== null && near.distance < required - agreementTolerance)
        faults.add(
          'spacing',
          file,
          { part: nameOf(a), other: nameOf(b), apart: mm(near.distance), wanted: mm(required) },
          near,
        );
      else if (apart === 0) {
        const place = sharedPlace(a, b, required);
        if (place !== null) faults.add('overlap', file, { part: nameOf(a), other: nameOf(b) }, place);
      }
    }
  });
  return min === Infinity ? null : min;
}

/** Reports parts that come nearer than `required` to a clamp, a knot or whatever else the stock keeps them off. */
export function checkKeepOuts(
  nominals: readonly Nominal[],
  keepOuts: readonly (readonly ProofPoint[])[],
  required: number,
  file: string,
  faults: FaultList,
): void {
  for (const corners of keepOuts) {
    const ring = lineOf(
      corners.map(({ x, y }) => ({ x, y, bulge: 0 })),
      true,
    );
    const solid: Solid = { box: ring.box, edges: new EdgeSet(ring.edges), outlines: [ring], openings: [] };
    for (const nominal of nominals) {
      if (gap(nominal.box, solid.box) >= required) continue;
      const near = nearestBetween(nominal, solid, required);
      const place = near ?? { x: ring.box.minX, y: ring.box.minY };
      const on = overlaps(nominal, solid) || overlaps(solid, nominal);
      if (on) faults.add('keep-out-on', file, { part: nameOf(nominal) }, place);
      else if (near !== null && near.distance < required - agreementTolerance)
        faults.add(
          'keep-out-near',
          file,
          { part: nameOf(nominal), apart: mm(near.distance), wanted: mm(required) },
          near,
        );
    }
  }
}

/** Least distance of a part from the edge of the sheet; a part nearer than the margin, or outside, is a fault. */
export function minMargin(
  nominals: readonly Nominal[],
  sheetEdge: Line,
  margin: number,
  file: string,
  faults: FaultList,
): number | null {
  const around = new EdgeSet(sheetEdge.edges);
  let min = Infinity;
  for (const nominal of nominals) {
    for (const { edges } of nominal.outlines) {
      const first = edges[0]!;
      const outside = !inside(sheetEdge.edges, { x: first.ax, y: first.ay });
      let near: ClosestPoint = { x: first.ax, y: first.ay, distance: around.nearestTo(first.ax, first.ay).distance };
      for (const edge of edges) near = around.nearestWithin(edge, near.distance) ?? near;
      const distance = outside ? -near.distance : near.distance;
      min = Math.min(min, distance);
      if (distance >= margin - agreementTolerance) continue;
      const part = nameOf(nominal);
      if (outside) faults.add('margin-outside', file, { part, wanted: mm(margin) }, near);
      else faults.add('margin-near', file, { part, apart: mm(distance), wanted: mm(margin) }, near);
    }
  }
  return min === Infinity ? null : min;
}
