/** What can be said of the lines of a drawing without knowing the parts. */
import { type Drawn, drillDiameter, layerKind, type Sheet } from './drawn.js';
import { pointAt } from './edge.js';
import { type FaultList, mm } from './faults.js';
import { agreementTolerance, shortestEdge } from './limits.js';

/** Same for the same line however it is run: its vertices and the middles of its edges, to a micrometre. */
function fingerprint(entity: Drawn): string {
  const rounded = (x: number, y: number) => `${Math.round(x * 1000)},${Math.round(y * 1000)}`;
  if (entity.kind === 'circle')
    return `${entity.layer} ${rounded(entity.x, entity.y)} ${Math.round(entity.diameter * 1000)}`;
  const { edges, closed, vertices } = entity.line;
  const points = [...vertices, ...edges.map((edge) => pointAt(edge, 0.5))].map(({ x, y }) => rounded(x, y));
  return `${entity.layer} ${String(closed)} ${points.sort().join(' ')}`;
}

/** Layers known, cuts closed, no edge without length, nothing twice, circles of the size that their layer says. */
export function checkLines({ entities }: Sheet, file: string, faults: FaultList): void {
  const seen = new Set<string>();
  const unknown = new Set<string>();
  for (const entity of entities) {
    const kind = layerKind(entity.layer);
    const place = entity.kind === 'circle' ? entity : entity.line.vertices[0]!;
    if (kind === null && !unknown.has(entity.layer)) {
      unknown.add(entity.layer);
      faults.add('layer', file, `layer ${JSON.stringify(entity.layer.slice(0, 60))} stands for no operation`);
    }
    const print = fingerprint(entity);
    if (seen.has(print)) faults.add('duplicate', file, `a line on layer ${entity.layer} stands twice`, place);
    seen.add(print);
    if (entity.kind === 'circle') {
      if (kind !== null && kind !== 'drill' && kind !== 'countersink')
        faults.add('layer', file, `a circle stands on layer ${entity.layer}`, place);
      if (kind === 'drill' && Math.abs(drillDiameter(entity.layer) - entity.diameter) > agreementTolerance)
        faults.add('drill', file, `a circle of ${mm(entity.diameter)} stands on layer ${entity.layer}`, place);
      continue;
    }
    if (!entity.line.closed && kind !== 'scribe')
      faults.add('open-contour', file, `a path on layer ${entity.layer} is not closed`, place);
    for (const edge of entity.line.edges)
      if (edge.length < shortestEdge)
        faults.add('zero-length', file, `a path on layer ${entity.layer} has an edge without length`, {
          x: edge.ax,
          y: edge.ay,
        });
  }
}
