/** The cut of one closed ring: ramped roughing level by level, then a finishing pass along the edge. */
import { type ArcEdge, distance, element, type Point } from '../../geometry/index.js';
import { finishLead, type Lead, nearestLength, overlap } from './lead.js';
import { pointAt, type RingPath } from './ring.js';
import type { Cut, Move } from './types.js';
import { clearOfLifts, type Feeds, type Lift, walkMoves } from './walk.js';

/** Height above the sheet to which the tool comes down at travel speed, mm. */
export const approachHeight = 1;

export interface ClosedCut {
  readonly title: string;
  /** The path along the finished edge. */
  readonly finish: RingPath;
  readonly finishLifts: readonly Lift[];
  /** The path that leaves the allowance; null where there is no room for it. */
  readonly rough: RingPath | null;
  readonly roughLifts: readonly Lift[];
  /** What roughing leaves, mm; nothing without a rough path. */
  readonly allowance: number;
  readonly toolRadius: number;
  /** Whether the path runs into corners of the part, so that the edge is finished at every level. */
  readonly finishEach: boolean;
  /** Depths (z, below 0) from the first to the last. */
  readonly levels: readonly number[];
  /** Fall over run of the ramps. */
  readonly slope: number;
  readonly tabTop: number;
  readonly safeHeight: number;
  readonly feeds: Feeds;
}

/** The circle that a ring runs, if it is one. */
function circleOf(ring: RingPath): ArcEdge | null {
  const [first] = ring.edges;
  if (first?.kind !== 'arc') return null;
  const same = ring.edges.every((edge) => edge.kind === 'arc' && distance(edge.centre, first.centre) < 1e-6);
  return same ? first : null;
}

/**
 * The finishing pass of a circle: a half circle that touches both the roughed and the finished one leads from the one
 * to the other, so that the tool meets the allowance gradually however small the hole is; and back in the same way.
 */
function finishCircle(cut: ClosedCut, arc: ArcEdge, from: Point, z: number): Move[] {
  const { finish, feeds, tabTop } = cut;
  const out = distance(from, arc.centre);
  const touch = {
    x: arc.centre.x - ((from.x - arc.centre.x) * arc.radius) / out,
    y: arc.centre.y - ((from.y - arc.centre.y) * arc.radius) / out,
  };
  const centre = { x: (from.x + touch.x) / 2, y: (from.y + touch.y) / 2 };
  const half = (to: Point): Move => ({
    kind: 'arc',
    to: { x: to.x, y: to.y, z },
    centre,
    clockwise: arc.sweep < 0,
    feed: feeds.along,
  });
  const start = nearestLength(finish, touch);
  const walk = { from: start, to: start + finish.length, zFrom: z, zTo: z, levelFrom: start, lifts: [], tabTop };
  return [half(touch), ...walkMoves(finish, walk, feeds), half(from)];
}

/** The lead-in nearest to a place of the rough ring, at a depth. */
function leadAt(
  { finish, finishLifts, tabTop, allowance, toolRadius }: ClosedCut,
  rough: RingPath,
  place: number,
  z: number,
): Lead {
  return finishLead(finish, rough, pointAt(rough, place), finishLifts, tabTop - z, { left: allowance, toolRadius });
}

/** Whether the finished edge is cut at every level, as a single pass over the whole depth would cut too wide somewhere. */
function finishesEach(cut: ClosedCut, rough: RingPath, depth: number): boolean {
  if (cut.finishEach) return true;
  if (cut.finishLifts.length === 0 && circleOf(cut.finish) !== null) return false;
  return leadAt(cut, rough, 0, depth).lead === 0;
}

/** The lead-in nearest to a place of the rough ring; where its steps meet none, the one by which one pass was chosen. */
function leadFrom(cut: ClosedCut, rough: RingPath, from: number, z: number): Lead {
  const near = leadAt(cut, rough, from, z);
  if (near.lead > 0) return near;
  const known = leadAt(cut, rough, 0, z);
  return known.lead > 0 ? known : near;
}

/** A pass along the finished edge, in from the roughed wall and out to it again; ends at a length of the rough ring. */
function finishing(cut: ClosedCut, rough: RingPath, from: number, z: number, moves: Move[]): number {
  const { finish, finishLifts, tabTop, feeds } = cut;
  const circle = finishLifts.length === 0 ? circleOf(finish) : null;
  if (circle !== null) {
    moves.push(...finishCircle(cut, circle, pointAt(rough, from), z));
    return from;
  }
  const { start, lead } = leadFrom(cut, rough, from, z);
  // to get there the tool first follows the roughed wall
  const wall = nearestLength(rough, pointAt(finish, start));
  const along = (((wall - from) % rough.length) + rough.length) % rough.length;
  if (along > 0.01 && along < rough.length - 0.01) {
    const to = from + along;
    moves.push(
      ...walkMoves(rough, { from, to, zFrom: z, zTo: z, levelFrom: from, lifts: cut.roughLifts, tabTop }, feeds),
    );
  }
  const first = start + lead;
  // without a lead the pass could end within the spur of a corner
  const last = first + finish.length + (lead > 0 ? overlap : 0);
  moves.push({ kind: 'line', to: { ...pointAt(finish, first), z }, feed: feeds.along });
  moves.push(
    ...walkMoves(
      finish,
      { from: first, to: last, zFrom: z, zTo: z, levelFrom: first, lifts: finishLifts, tabTop },
      feeds,
    ),
  );
  const out = nearestLength(rough, pointAt(finish, last + lead));
  moves.push({ kind: 'line', to: { ...pointAt(rough, out), z }, feed: feeds.along });
  return out;
}

/**
 * The moves of a closed cut that enters at a length of its first ring. The tool ramps down along the path, so it
 * never plunges into solid material, and enters and leaves the finished edge from the roughed wall.
 */
export function closedCut(cut: ClosedCut, entry: number): Cut {
  const { rough, finish, feeds, tabTop, safeHeight } = cut;
  const ring = rough ?? finish;
  const lifts = rough === null ? cut.finishLifts : cut.roughLifts;
  // behind a tab the tool needs as much length as it has to come down
  const space = Math.max(0, tabTop - cut.levels.at(-1)!) + 1;
  let s = clearOfLifts(ring, lifts, entry, space);
  const start = pointAt(ring, s);
  const moves: Move[] = [
    { kind: 'rapid', to: { ...start, z: safeHeight } },
    { kind: 'rapid', to: { ...start, z: approachHeight } },
    { kind: 'line', to: { ...start, z: 0 }, feed: feeds.down },
  ];
  const last = cut.levels.length - 1;
  const each = last > 0 && rough !== null && finishesEach(cut, rough, element(cut.levels, last));
  let z = 0;
  cut.levels.forEach((level, i) => {
    const levelFrom = s + (z - level) / cut.slope;
    // the turn at full depth begins where the ramp ends
    const to = clearOfLifts(ring, lifts, levelFrom + ring.length, space);
    moves.push(...walkMoves(ring, { from: s, to, zFrom: z, zTo: level, levelFrom, lifts, tabTop }, feeds));
    s = to;
    z = level;
    if (rough === null || !(each || i === last)) return;
    const out = finishing(cut, rough, s, level, moves);
    s = clearOfLifts(rough, lifts, out, space);
    if (s > out)
      moves.push(...walkMoves(rough, { from: out, to: s, zFrom: z, zTo: z, levelFrom: out, lifts, tabTop }, feeds));
  });
  const end = moves.at(-1)!.to;
  moves.push({ kind: 'rapid', to: { x: end.x, y: end.y, z: safeHeight } });
  return { title: cut.title, moves };
}

/** Even levels from one pass depth down to `depth` (mm, positive), as z. */
export function levelsTo(depth: number, passDepth: number): number[] {
  const count = Math.max(1, Math.ceil(depth / passDepth - 1e-9));
  return Array.from({ length: count }, (_, i) => (-depth * (i + 1)) / count);
}
