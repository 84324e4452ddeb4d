/** What can be said of the lines of a drawing without knowing the parts. */
import { type ReadBack, drillDiameter, layerKind, type ReadBackSheet } from './drawn.js';
import { pointAlong } from './edge.js';
import { type FaultList, mm } from './faults.js';
import { agreementTolerance, shortestEdge } from './limits.js';

/** Same for the same line however it is run: its vertices and the middles of its edges, to a micrometre. */
function fingerprint(entity: ReadBack): string {
  const rounded = (x: number, y: number) => `${Math.round(x * 1000)},${Math.round(y * 1000)}`;
  if (entity.kind === 'circle')
    return `${entity.layer} ${rounded(entity.x, entity.y)} ${Math.round(entity.diameter * 1000)}`;
  const { edges, closed, vertices } = entity.line;
  const points = [...vertices, ...edges.map((edge) => pointAlong(edge, 0.5))].map(({ x, y }) => rounded(x, y));
  return `${entity.layer} ${String(closed)} ${points.sort().join(' ')}`;
}

/** Layers known, cuts closed, no edge without length, nothing twice, circles of the size that their layer names. */
export function checkLines({ entities }: Pick<ReadBackSheet, 'entities'>, file: string, faults: FaultList): void {
  const seen = new Set<string>();
  const unknown = new Set<string>();
  for (const entity of entities) {
    const { layer } = entity;
    const kind = layerKind(layer);
    const place = entity.kind === 'circle' ? entity : entity.line.vertices[0]!;
    if (kind === null && !unknown.has(entity.layer)) {
      unknown.add(entity.layer);
      faults.add('layer-unknown', file, { layer: JSON.stringify(entity.layer.slice(0, 60)) });
    }
    const print = fingerprint(entity);
    if (seen.has(print)) faults.add('line-twice', file, { layer }, place);
    seen.add(print);
    if (entity.kind === 'circle') {
      if (kind !== null && kind !== 'drill' && kind !== 'countersink')
        faults.add('layer-circle', file, { layer }, place);
      if (kind === 'drill' && Math.abs(drillDiameter(entity.layer) - entity.diameter) > agreementTolerance)
        faults.add('circle-size', file, { diameter: mm(entity.diameter), layer }, place);
      continue;
    }
    if (!entity.line.closed && kind !== 'scribe') faults.add('path-open', file, { layer }, place);
    for (const edge of entity.line.edges)
      if (edge.length < shortestEdge) faults.add('edge-short', file, { layer }, { x: edge.ax, y: edge.ay });
  }
}
