/** Whether things are cut in an order that a machine can follow: what is cut free moves and cannot be cut again. */
import type { Drawn, DrawnPath } from './drawn.js';
import type { FaultList } from './faults.js';
import type { Matches, RingCut } from './match.js';
import { inside } from './ring.js';

const nameOf = ({ nominal }: RingCut): string => `${nominal.part} ${nominal.copy}`;

/**
 * Every hole, opening and mark of a part comes before its outline, and a part that lies in the opening of another
 * before that opening. The order is that of the file.
 */
export function checkOrder(matches: Matches, entities: readonly Drawn[], file: string, faults: FaultList): void {
  const turn = new Map<Drawn, number>(entities.map((entity, i) => [entity, i]));
  const first = (paths: readonly DrawnPath[]): number => Math.min(...paths.map((path) => turn.get(path) ?? 0));
  const last = (paths: readonly DrawnPath[]): number => Math.max(...paths.map((path) => turn.get(path) ?? 0));
  const outlines = matches.rings.filter(({ operation, paths }) => operation === 'outline' && paths.length > 0);
  const freed = new Map(
    outlines.map((cut) => [cut.nominal, first(cut.paths.filter(({ layer }) => layer === 'outline'))]),
  );

  for (const cut of matches.rings) {
    if (cut.operation === 'outline' || cut.paths.length === 0) continue;
    const free = freed.get(cut.nominal);
    const what = cut.operation === 'scribe' ? 'a scribed line' : cut.operation === 'hole' ? 'a hole' : 'an opening';
    if (free !== undefined && last(cut.paths) > free)
      faults.add('order', file, `${what} of ${nameOf(cut)} comes after its outline`);
  }
  for (const { nominal, circle } of matches.holes)
    if ((turn.get(circle) ?? 0) > (freed.get(nominal) ?? Infinity))
      faults.add('order', file, `a hole of ${nominal.part} ${nominal.copy} comes after its outline`, circle);

  for (const opening of matches.rings) {
    if (opening.operation !== 'opening' || opening.paths.length === 0) continue;
    const { minX, minY, maxX, maxY } = opening.ring.box;
    for (const other of outlines) {
      const edge = other.ring.edges[0]!;
      if (other.nominal === opening.nominal || edge.ax < minX || edge.ax > maxX || edge.ay < minY || edge.ay > maxY)
        continue;
      if (inside(opening.ring.edges, { x: edge.ax, y: edge.ay }) && last(other.paths) > first(opening.paths))
        faults.add('order', file, `${nameOf(other)} lies in an opening of ${nameOf(opening)}, which is cut first`, {
          x: edge.ax,
          y: edge.ay,
        });
    }
  }
}
