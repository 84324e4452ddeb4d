/** Pockets: each in its place, cleared to its depth over its whole floor, and no deeper anywhere. */
import { farthestFrom } from '../deviation.js';
import { mm } from '../faults.js';
import { nameOf, type Nominal, type NominalPocket } from '../nominal.js';
import { gap, inside } from '../ring.js';
import { EdgeSet } from '../edge-set.js';
import type { ProofPoint } from '../types.js';
import { edgeTolerance, type Pass, within } from './edges.js';
import type { HeightField } from './field.js';
import type { Findings } from './findings.js';
import { placeOn } from './level.js';
import type { Motion } from './types.js';

/** Step of the places at which the floor is looked at, mm: that of the field. */
const step = 1;
/** How far from its edge the floor is looked at, mm: the grid rounds its cells. */
const fromEdge = 1;

const middleOf = ({ ring: { box } }: NominalPocket): ProofPoint => ({
  x: (box.minX + box.maxX) / 2,
  y: (box.minY + box.maxY) / 2,
});

const boxAt = ({ x, y }: ProofPoint) => ({ minX: x, maxX: x, minY: y, maxY: y });

/** The deepest place that an end mill reaches within a pocket; null where none goes in. */
function deepest(
  { ring }: NominalPocket,
  motions: readonly Motion[],
): { readonly depth: number; readonly motion: Motion } | null {
  let found: { readonly depth: number; readonly motion: Motion } | null = null;
  for (const motion of motions) {
    if (motion.rapid || motion.tool.kind !== 'mill') continue;
    const depth = -Math.min(motion.from.z, motion.to.z);
    if (depth <= (found?.depth ?? 0)) continue;
    const place = placeOn(motion, 0.5);
    if (gap(ring.box, boxAt(place)) <= 0 && inside(ring.edges, place)) found = { depth, motion };
  }
  return found;
}

/** A place of the floor over which material stands; null where there is none. */
function standing({ ring, depth }: NominalPocket, edge: EdgeSet, field: HeightField): ProofPoint | null {
  const { minX, minY, maxX, maxY } = ring.box;
  for (let y = Math.ceil(minY) + step / 2; y < maxY; y += step)
    for (let x = Math.ceil(minX) + step / 2; x < maxX; x += step) {
      const place = { x, y };
      if (field.at(place) <= edgeTolerance - depth || !inside(ring.edges, place)) continue;
      if (edge.nearestTo(x, y).distance > fromEdge) return place;
    }
  return null;
}

/** Proves all pockets of the sheet; returns the greatest error of an edge. */
export function checkPockets(
  nominals: readonly Nominal[],
  motions: readonly Motion[],
  passes: readonly Pass[],
  field: HeightField,
  file: string,
  findings: Findings,
): number {
  let worst = 0;
  for (const nominal of nominals)
    for (const pocket of nominal.pockets) {
      const { ring, depth } = pocket;
      const part = nameOf(nominal);
      const place = middleOf(pocket);
      const found = deepest(pocket, motions);
      const own = passes.filter(
        ({ edge }) => gap(ring.box, edge) <= 0 && inside(ring.edges, { x: edge.ax, y: edge.ay }),
      );
      const set = within(own, -depth + edgeTolerance);
      const radius = own[0]?.radius;
      if (found === null || set === null || radius === undefined) {
        findings.add('pocket-missing', file, { part }, { place });
        continue;
      }
      if (Math.abs(found.depth - depth) > edgeTolerance)
        findings.add(
          'pocket-depth',
          found.motion.file,
          { part, depth: mm(found.depth), wanted: mm(depth) },
          { line: found.motion.line, place },
        );
      const off = Math.max(0, farthestFrom(ring.edges, set, Infinity).max - radius);
      worst = Math.max(worst, off);
      if (off > edgeTolerance) findings.add('pocket-off', file, { part, off: mm(off) }, { place });
      const left = standing(pocket, new EdgeSet(ring.edges), field);
      if (left !== null) findings.add('pocket-floor', file, { part }, { place: left });
    }
  return worst;
}
