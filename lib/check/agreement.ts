/** Whether the DXF and the SVG of a sheet hold the same, entity by entity. */
import { type ReadBack, type ReadBackPath, type ReadBackSheet } from './drawn.js';
import { distanceFrom, type ProofEdge, pointAlong } from './edge.js';
import { type FaultList, mm } from './faults.js';
import { agreementTolerance } from './limits.js';
import type { ProofPoint } from './types.js';

function byLayer(entities: readonly ReadBack[]): Map<string, ReadBack[]> {
  const layers = new Map<string, ReadBack[]>();
  for (const entity of entities) {
    const layer = layers.get(entity.layer);
    if (layer) layer.push(entity);
    else layers.set(entity.layer, [entity]);
  }
  return layers;
}

/** Whether the edge `part` runs along `whole` in the same direction. */
function runsAlong(part: ProofEdge, whole: ProofEdge): boolean {
  const near = ({ x, y }: ProofPoint): boolean => distanceFrom(whole, x, y) <= agreementTolerance;
  const from = Math.hypot(part.ax - whole.ax, part.ay - whole.ay);
  const to = Math.hypot(part.bx - whole.ax, part.by - whole.ay);
  return [0.25, 0.5, 0.75, 1].every((t) => near(pointAlong(part, t))) && (to > from || Math.abs(whole.sweep) > Math.PI);
}

/** The place at which two paths part; null when they do not. The SVG may divide an arc of the DXF into several. */
function parting(one: ReadBackPath, other: ReadBackPath): ProofPoint | null {
  const start = one.line.vertices[0]!;
  if (one.line.closed !== other.line.closed) return start;
  const steps = other.line.edges;
  let i = 0;
  for (const edge of one.line.edges) {
    const first = steps[i];
    if (!first || Math.hypot(first.ax - edge.ax, first.ay - edge.ay) > agreementTolerance)
      return { x: edge.ax, y: edge.ay };
    for (;;) {
      const step = steps[i];
      if (!step || !runsAlong(step, edge)) return { x: edge.ax, y: edge.ay };
      i += 1;
      if (Math.hypot(step.bx - edge.bx, step.by - edge.by) <= agreementTolerance) break;
    }
  }
  return i === steps.length ? null : start;
}

/** What differs, as the id of its message, by how much, and where. */
type Difference = {
  readonly id: 'pair-circle' | 'pair-path' | 'pair-kind';
  readonly off: string;
  readonly place: ProofPoint;
};

function difference(one: ReadBack, other: ReadBack): Difference | null {
  if (one.kind === 'circle' && other.kind === 'circle') {
    const off = Math.hypot(one.x - other.x, one.y - other.y);
    const size = Math.abs(one.diameter - other.diameter);
    if (off <= agreementTolerance && size <= agreementTolerance) return null;
    return { id: 'pair-circle', off: mm(Math.max(off, size)), place: one };
  }
  if (one.kind === 'path' && other.kind === 'path') {
    const place = parting(one, other);
    return place && { id: 'pair-path', off: '', place };
  }
  return { id: 'pair-kind', off: '', place: one.kind === 'circle' ? one : one.line.vertices[0]! };
}

const pageOf = ({ width, height }: ReadBackSheet): string => `${mm(width)} x ${mm(height)}`;

/** Reports where the SVG differs from the DXF by more than 2 µm, in what is there, or in its order. */
export function checkAgreement(dxf: ReadBackSheet, svg: ReadBackSheet, file: string, faults: FaultList): void {
  if (Math.abs(dxf.width - svg.width) > agreementTolerance || Math.abs(dxf.height - svg.height) > agreementTolerance)
    faults.add('pair-page', file, { svg: pageOf(svg), dxf: pageOf(dxf) });
  const turned = svg.entities.findIndex(({ layer }, i) => dxf.entities[i] && dxf.entities[i].layer !== layer);
  if (turned >= 0) {
    const [here = '', there = ''] = [svg.entities[turned]?.layer, dxf.entities[turned]?.layer];
    faults.add('pair-order', file, { line: turned + 1, svg: here, dxf: there });
  }
  const own = byLayer(svg.entities);
  const others = byLayer(dxf.entities);
  for (const layer of new Set([...own.keys(), ...others.keys()])) {
    const ours = own.get(layer) ?? [];
    const theirs = others.get(layer) ?? [];
    if (ours.length !== theirs.length) {
      faults.add('pair-count', file, { layer, svg: ours.length, dxf: theirs.length });
      continue;
    }
    theirs.forEach((entity, i) => {
      const found = difference(entity, ours[i]!);
      if (found) faults.add(found.id, file, { layer, off: found.off }, found.place);
    });
  }
}
