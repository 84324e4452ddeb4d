/** Walks along a ring at a depth that changes evenly or is held up by tabs. */
import { directionAt, pointAt, type RingPath, type Stretch, runsBetween, turnOf } from './ring.js';
import type { Move } from './types.js';

/** A stretch of a ring, by lengths along it, where the tool stays above the tabs. `to` may pass a full turn. */
export interface Lift {
  readonly from: number;
  readonly to: number;
}

export interface Feeds {
  readonly along: number;
  readonly down: number;
  /** The fastest that the tool may go up or down, however its path slopes. */
  readonly z: number;
}

/** A walk from `from` to `to`: down evenly from `zFrom` until `levelFrom`, then level at `zTo`. */
export interface Walk {
  readonly from: number;
  readonly to: number;
  readonly zFrom: number;
  readonly zTo: number;
  readonly levelFrom: number;
  readonly lifts: readonly Lift[];
  /** Height over tabs. */
  readonly tabTop: number;
}

/** Steeper descents (rise over run) go at the feed for plunging. */
const steep = 0.2;
const hair = 1e-6;

/** Depth without tabs. */
function baseZ({ from, zFrom, zTo, levelFrom }: Walk, s: number): number {
  if (s >= levelFrom || levelFrom <= from) return zTo;
  return zFrom + ((zTo - zFrom) * (s - from)) / (levelFrom - from);
}

/** Lifts as lengths of this walk, one for each turn that it makes. */
function liftsOf(ring: RingPath, walk: Walk): Lift[] {
  const drop = Math.max(0, walk.tabTop - Math.min(walk.zFrom, walk.zTo));
  return walk.lifts.flatMap((lift) => {
    const found: Lift[] = [];
    const first = Math.floor((walk.from - lift.to - drop) / ring.length);
    for (let k = first; lift.from + k * ring.length < walk.to; k += 1) {
      const moved = { from: lift.from + k * ring.length, to: lift.to + k * ring.length };
      if (moved.to + drop > walk.from) found.push(moved);
    }
    return found;
  });
}

function liftedZ(walk: Walk, lifts: readonly Lift[], s: number): number {
  let z = baseZ(walk, s);
  // behind a tab the tool comes down at 45°
  for (const { from, to } of lifts) if (s >= from) z = Math.max(z, s <= to ? walk.tabTop : walk.tabTop - (s - to));
  return z;
}

/** The length at which a tool that comes down at 45° from the end of a lift meets the ramp, or the level behind it. */
function downAgain({ from, zFrom, zTo, levelFrom, tabTop }: Walk, to: number): number {
  const fall = levelFrom > from ? (zTo - zFrom) / (levelFrom - from) : 0;
  const onRamp = (tabTop + to - zFrom + fall * from) / (1 + fall);
  return fall > -1 && onRamp < levelFrom ? onRamp : to + tabTop - zTo;
}

/** The feed along a slope (fall over run) at which the tool goes down as fast as it may. */
function feedOnSlope(fall: number, z: number): number {
  return fall === 0 ? Infinity : (z * Math.hypot(1, fall)) / Math.abs(fall);
}

/** A run of the ring as a move. */
function moveOf(run: Stretch, z: number, feed: number): Move {
  const to = { x: run.to.x, y: run.to.y, z };
  return run.arc === null
    ? { kind: 'line', to, feed }
    : { kind: 'arc', to, centre: run.arc.centre, clockwise: run.arc.sweep < 0, feed };
}

/** The moves of a walk; the tool stands at its start already, at `zFrom`. Up to a tab the tool goes straight. */
export function walkMoves(ring: RingPath, walk: Walk, feeds: Feeds): Move[] {
  const lifts = liftsOf(ring, walk).filter(() => walk.tabTop > Math.min(walk.zFrom, walk.zTo) + hair);
  const breaks = new Set<number>([walk.levelFrom, walk.to]);
  for (const { from, to } of lifts) breaks.add(from).add(to).add(downAgain(walk, to));
  const stops = [...breaks].filter((s) => s > walk.from + hair && s <= walk.to).sort((a, b) => a - b);
  const moves: Move[] = [];
  let s = walk.from;
  let z = walk.zFrom;
  for (const stop of stops) {
    if (stop - s < hair) continue;
    const above = liftedZ(walk, lifts, s + hair / 10);
    if (above > z + 1e-4) {
      moves.push({ kind: 'line', to: { ...pointAt(ring, s), z: above }, feed: Math.min(feeds.along, feeds.z) });
      z = above;
    }
    const end = liftedZ(walk, lifts, stop - hair / 10);
    const fall = (z - end) / (stop - s);
    const feed = Math.floor(Math.min(fall > steep ? feeds.down : feeds.along, feedOnSlope(fall, feeds.z)));
    let gone = 0;
    for (const run of runsBetween(ring, s, stop)) {
      gone += run.length;
      moves.push(moveOf(run, z + ((end - z) * gone) / (stop - s), feed));
    }
    z = end;
    s = stop;
  }
  return moves;
}

/** The first length at or after `s` that is clear of tabs, and of the way down behind them. */
export function clearOfLifts(ring: RingPath, lifts: readonly Lift[], s: number, space: number): number {
  let at = s;
  for (let tries = 0; tries <= 2 * lifts.length; tries += 1) {
    const turn = turnOf(ring, at);
    const inside = lifts.flatMap(({ from, to }) =>
      [0, ring.length, -ring.length].flatMap((shift) =>
        turn > from + shift - space && turn < to + shift + space ? [to + shift + space - turn] : [],
      ),
    );
    if (inside.length === 0) return at;
    at += Math.max(...inside) + hair;
  }
  return at;
}

/** Turn from the direction at one length to that at another, radians, to the left positive. */
export function turnBetween(ring: RingPath, s: number, other: number): number {
  const a = directionAt(ring, s);
  const b = directionAt(ring, other);
  return Math.atan2(a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y);
}
