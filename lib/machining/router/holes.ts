/** Drilled holes, countersinks, bored holes and marks. */
import { edgesOf, edgesOfPath, element, type Point, type Vertex } from '../../geometry/index.js';
import { approachHeight } from './closed-cut.js';
import type { Cutting } from './feeds.js';
import type { Cut, Move } from './types.js';

/** Depth of the first, slow peck that gives the bit its place, mm; common practice, no source. */
const spotDepth = 1;
/** The bit comes back down at travel speed to this far above where it was, mm. */
const peckClearance = 0.5;

function down({ x, y }: Point, safeHeight: number): Move[] {
  return [
    { kind: 'rapid', to: { x, y, z: safeHeight } },
    { kind: 'rapid', to: { x, y, z: approachHeight } },
  ];
}

/** A drilled hole: spotted slowly, then in pecks, the bit drawn out between them so that it clears its chips. */
export function drillCut(title: string, at: Point, depth: number, cutting: Cutting, safeHeight: number): Cut {
  const { x, y } = at;
  const moves = down(at, safeHeight);
  const pecks = Math.max(1, Math.ceil((depth - spotDepth) / cutting.passDepth - 1e-9));
  const spot = Math.min(spotDepth, depth);
  moves.push({ kind: 'line', to: { x, y, z: -spot }, feed: Math.round(cutting.plunge / 2) });
  let last = spot;
  for (let i = 1; i <= pecks && last < depth; i += 1) {
    if (i > 1) {
      moves.push({ kind: 'rapid', to: { x, y, z: approachHeight } });
      moves.push({ kind: 'rapid', to: { x, y, z: peckClearance - last } });
    }
    last = spot + ((depth - spot) * i) / pecks;
    moves.push({ kind: 'line', to: { x, y, z: -last }, feed: cutting.plunge });
  }
  moves.push({ kind: 'rapid', to: { x, y, z: safeHeight } });
  return { title, moves };
}

/** A countersink: straight down with a V-bit that turns in place for a clean seat. */
export function countersinkCut(title: string, at: Point, depth: number, cutting: Cutting, safeHeight: number): Cut {
  const { x, y } = at;
  const moves = down(at, safeHeight);
  moves.push({ kind: 'line', to: { x, y, z: -depth }, feed: Math.round(cutting.plunge / 2) });
  moves.push({ kind: 'rapid', to: { x, y, z: safeHeight } });
  return { title, moves };
}

/** A line scribed at a small depth. */
export function markCut(
  title: string,
  vertices: readonly Vertex[],
  closed: boolean,
  depth: number,
  cutting: Cutting,
  safeHeight: number,
): Cut {
  const start = element(vertices, 0);
  const moves = down(start, safeHeight);
  moves.push({ kind: 'line', to: { x: start.x, y: start.y, z: -depth }, feed: cutting.plunge });
  for (const edge of closed ? edgesOf(vertices) : edgesOfPath(vertices)) {
    const to = { x: edge.to.x, y: edge.to.y, z: -depth };
    moves.push(
      edge.kind === 'straight'
        ? { kind: 'line', to, feed: cutting.feed }
        : { kind: 'arc', to, centre: edge.centre, clockwise: edge.sweep < 0, feed: cutting.feed },
    );
  }
  const end = moves.at(-1)!.to;
  moves.push({ kind: 'rapid', to: { x: end.x, y: end.y, z: safeHeight } });
  return { title, moves };
}
