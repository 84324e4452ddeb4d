/**
 * The time of tool paths against a simulation that is written here for itself: it reads the written file, walks it in
 * steps of 0.05 mm and finds the fastest speed at every step by what the machine can gather and brake (the phase plane
 * of a trapezoid of speed over time). Single moves are held against the formulas of uniform acceleration.
 */
import { describe, expect, it } from 'vitest';
import type { RouterMachine } from '../../lib/machining/index.js';
import { secondsOf } from '../../lib/machining/motion-time.js';
import { randomRouterJob } from '../helpers/random-router.js';
import { machineData, routerData, shop, twoPlates } from '../helpers/router-sheets.js';
import { byDay, jobSeeds } from '../helpers/seeds.js';

const step = 0.25;
/** Steps of a piece, at least: letters have arcs of a millimetre. */
const minSteps = 6;

interface Piece {
  /** Place at a share of the piece. */
  readonly at: (share: number) => readonly number[];
  readonly length: number;
  readonly speed: number;
}

/** The file as pieces of path, and the seconds that it waits (G4). Between two runs of a spindle the machine stands. */
function piecesOf(
  text: string,
  travelSpeed: number,
  start: readonly number[],
): { runs: Piece[][]; waits: number; end: readonly number[] } {
  const unit = /\bG20\b/.test(text) ? 25.4 : 1;
  const runs: Piece[][] = [];
  let waits = 0;
  let motion = 'G0';
  let feed = 0;
  let at: readonly number[] | null = null;
  let last = start;
  let stands = true;
  let known: Record<string, number> = {};
  for (const line of text.split('\n').filter((one) => !/^[(%]/.test(one))) {
    const value = (letter: string): number | undefined => {
      const found = new RegExp(`(?:^|\\s)${letter}(-?[\\d.]+)`).exec(line)?.[1];
      return found === undefined ? undefined : Number(found);
    };
    if (/\bG4\b/.test(line)) {
      waits += value('P') ?? 0;
      continue;
    }
    if (/\bM3\b/.test(line)) {
      runs.push([]);
      at = null;
    }
    // what is moved while the spindle stands is a change of tool
    if (/\bM5\b/.test(line)) stands = true;
    if (/\bM3\b/.test(line)) stands = false;
    if (/\bM[56]\b|\bM0\b/.test(line)) known = {};
    motion = /\bG[0-3]\b/.exec(line)?.[0] ?? motion;
    feed = value('F') ?? feed;
    if (stands || !/[XYZ]/.test(line)) continue;
    for (const axis of ['X', 'Y', 'Z']) {
      const found = value(axis);
      if (found !== undefined) known[axis] = found * unit;
    }
    const { X, Y, Z } = known;
    if (X === undefined || Y === undefined || Z === undefined) continue;
    const to = [X, Y, Z];
    // a run begins above the place where the one before ended
    const [fx = 0, fy = 0, fz = 0] = at ?? [...last, Z];
    at = to;
    last = [X, Y];
    if (runs.length === 0) continue;
    const speed = (motion === 'G0' ? travelSpeed : feed * unit) / 60;
    const i = value('I');
    if (i === undefined) {
      const length = Math.hypot(X - fx, Y - fy, Z - fz);
      if (length > 0)
        runs.at(-1)!.push({ length, speed, at: (s) => [fx + s * (X - fx), fy + s * (Y - fy), fz + s * (Z - fz)] });
      continue;
    }
    const [cx, cy] = [fx + i * unit, fy + (value('J') ?? 0) * unit];
    const radius = Math.hypot(X - cx, Y - cy);
    const a = Math.atan2(fy - cy, fx - cx);
    const sense = motion === 'G2' ? -1 : 1;
    const turn = (((sense * (Math.atan2(Y - cy, X - cx) - a)) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
    runs.at(-1)!.push({
      length: Math.hypot(radius * turn, Z - fz),
      speed,
      at: (s) => [
        cx + radius * Math.cos(a + sense * s * turn),
        cy + radius * Math.sin(a + sense * s * turn),
        fz + s * (Z - fz),
      ],
    });
  }
  return { runs, waits, end: last };
}

/** Angle at b of the way from a over b to c. */
function turnAt(a: readonly number[], b: readonly number[], c: readonly number[]): number {
  const u = b.map((x, i) => x - a[i]!);
  const v = c.map((x, i) => x - b[i]!);
  const dot = u.reduce((sum, x, i) => sum + x * v[i]!, 0);
  return Math.acos(Math.max(-1, Math.min(1, dot / (Math.hypot(...u) * Math.hypot(...v)))));
}

/** Seconds of each file, run one after the other from the zero point. */
function simulated(files: ReadonlyMap<string, string>, machine: RouterMachine): number[] {
  let start: readonly number[] = [0, 0];
  return [...files.values()].map((text) => {
    const { runs, waits, end } = piecesOf(text, machine.travelSpeed, start);
    start = end;
    return waits + fastest(runs, machine);
  });
}

function fastest(runs: readonly (readonly Piece[])[], machine: RouterMachine): number {
  const { acceleration, pathMode, pathTolerance } = machine;
  let seconds = 0;
  for (const pieces of runs) {
    const places: (readonly number[])[] = [pieces[0]!.at(0)];
    const limits: number[] = [0];
    pieces.forEach(({ at, length, speed }, k) => {
      const count = Math.max(minSteps, Math.ceil(length / step));
      for (let n = 1; n <= count; n += 1) {
        places.push(at(n / count));
        // of a bend that is no corner: v² = a·r, r by the turn over the length
        const bend = n > 1 ? turnAt(at((n - 2) / count), at((n - 1) / count), at(n / count)) : 0;
        limits.push(Math.min(speed, bend > 1e-6 ? Math.sqrt((acceleration * length) / count / bend) : Infinity));
      }
      const next = pieces[k + 1];
      // a hair either side of the joint gives the directions
      const turn = next === undefined ? Math.PI : turnAt(at(1 - 1e-5), at(1), next.at(1e-5));
      const corner =
        pathMode === 'exact-stop' || next === undefined
          ? 0
          : turn <= Math.PI / 180
            ? Infinity
            : pathMode === 'exact'
              ? 0
              : Math.sqrt((acceleration * pathTolerance * Math.cos(turn / 2)) / (1 - Math.cos(turn / 2)));
      limits[limits.length - 1] = Math.min(limits.at(-1)!, corner, next?.speed ?? 0);
    });
    const gaps = places.slice(1).map((p, i) => Math.hypot(...p.map((x, axis) => x - places[i]![axis]!)));
    for (let i = 1; i < limits.length; i += 1)
      limits[i] = Math.min(limits[i]!, Math.sqrt(limits[i - 1]! ** 2 + 2 * acceleration * gaps[i - 1]!));
    for (let i = limits.length - 2; i >= 0; i -= 1)
      limits[i] = Math.min(limits[i]!, Math.sqrt(limits[i + 1]! ** 2 + 2 * acceleration * gaps[i]!));
    seconds += gaps.reduce((sum, gap, i) => sum + (2 * gap) / Math.max(1e-9, limits[i]! + limits[i + 1]!), 0);
  }
  return seconds;
}

describe('a single move from standstill to standstill', () => {
  const line = (length: number) => [{ kind: 'line' as const, to: { x: length, y: 0, z: 0 }, feed: 3000 }];
  const driving = { travelSpeed: 6000, acceleration: 500, corners: 'exact' as const };
  const start = { x: 0, y: 0, z: 0 };

  it('takes L/v + v/a where it reaches its speed, and 2·√(L/a) where it does not', () => {
    expect(secondsOf(start, line(100), driving)).toBeCloseTo(100 / 50 + 50 / 500, 12);
    expect(secondsOf(start, line(2), driving)).toBeCloseTo(2 * Math.sqrt(2 / 500), 12);
  });

  it('takes L/v without a limit', () => {
    expect(secondsOf(start, line(100), { ...driving, acceleration: Infinity })).toBeCloseTo(2, 12);
  });
});

describe('the time of a file', () => {
  it.each([
    ['as it is by default', {}],
    ['of a slow machine', { acceleration: 60 }],
    ['with exact stops', { pathMode: 'exact-stop' }],
    ['with rounded corners', { pathMode: 'continuous', pathTolerance: 0.05 }],
    ['in short lines', { arcs: 'lines', lineTolerance: 0.015 }],
    ['in inches, a file for each tool', { programUnits: 'in', toolChange: 'none' }],
  ] satisfies readonly (readonly [string, Partial<RouterMachine>])[])(
    '%s is within 5 %% of a simulation',
    (_, changes) => {
      const machine = machineData(changes);
      const { plan, files } = twoPlates({ data: routerData({ machine }) });
      const parts = simulated(files, machine);
      const sum = parts.reduce((all, one) => all + one, 0);
      expect(Math.abs(plan.cuttingSeconds / sum - 1)).toBeLessThan(0.05);
      if (files.size > 1)
        parts.forEach((one, i) => expect(Math.abs(plan.toolpath.runs[i]!.seconds / one - 1)).toBeLessThan(0.05));
    },
  );

  it.each(jobSeeds('motion-time', 1, byDay(4, 100)))('of random job %i too', (seed) => {
    const job = randomRouterJob(seed);
    const { plan, files } = shop(job);
    if (files.size === 0) return;
    const sum = simulated(files, job.data!.machine).reduce((all, one) => all + one, 0);
    expect(Math.abs(plan.cuttingSeconds / sum - 1)).toBeLessThan(0.05);
  });
});
