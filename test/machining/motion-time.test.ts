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

type Place = readonly [number, number, number];

/** Value of a word of a line, in the unit of the file. */
function wordOf(line: string, letter: string): number | undefined {
  const found = new RegExp(`(?:^|\\s)${letter}(-?[\\d.]+)`).exec(line)?.[1];
  return found === undefined ? undefined : Number(found);
}

function straightPiece([fx, fy, fz]: Place, [x, y, z]: Place, speed: number): Piece {
  const at = (s: number) => [fx + s * (x - fx), fy + s * (y - fy), fz + s * (z - fz)];
  return { at, speed, length: Math.hypot(x - fx, y - fy, z - fz) };
}

function roundPiece([fx, fy, fz]: Place, [x, y, z]: Place, i: number, j: number, sense: number, speed: number): Piece {
  const [cx, cy] = [fx + i, fy + j];
  const radius = Math.hypot(x - cx, y - cy);
  const a = Math.atan2(fy - cy, fx - cx);
  const full = 2 * Math.PI;
  const turn = (((sense * (Math.atan2(y - cy, x - cx) - a)) % full) + full) % full;
  const at = (s: number) => {
    const angle = a + sense * s * turn;
    return [cx + radius * Math.cos(angle), cy + radius * Math.sin(angle), fz + s * (z - fz)];
  };
  return { at, speed, length: Math.hypot(radius * turn, z - fz) };
}

/** A file walked line by line: pieces of path, and the seconds that it waits (G4). */
class Walked {
  readonly runs: Piece[][] = [];
  waits = 0;
  readonly #unit: number;
  readonly #travelSpeed: number;
  #motion = 'G0';
  #feed = 0;
  #known: Partial<Record<'X' | 'Y' | 'Z', number>> = {};
  #at: Place | null = null;
  #stands = true;

  constructor(
    text: string,
    travelSpeed: number,
    public end: readonly [number, number],
  ) {
    this.#unit = /\bG20\b/.test(text) ? 25.4 : 1;
    this.#travelSpeed = travelSpeed;
    for (const line of text.split('\n')) if (!/^[(%]/.test(line)) this.#take(line);
  }

  #take(line: string): void {
    if (/\bG4\b/.test(line)) {
      this.waits += wordOf(line, 'P') ?? 0;
      return;
    }
    // what is moved while the spindle stands is a change of tool
    if (/\bM[056]\b/.test(line)) {
      this.#stands = true;
      this.#known = {};
    }
    if (/\bM3\b/.test(line)) {
      this.#stands = false;
      this.runs.push([]);
      this.#at = null;
    }
    this.#motion = /\bG[0-3]\b/.exec(line)?.[0] ?? this.#motion;
    this.#feed = wordOf(line, 'F') ?? this.#feed;
    if (!this.#stands && /[XYZ]/.test(line)) this.#move(line);
  }

  #move(line: string): void {
    for (const axis of ['X', 'Y', 'Z'] as const) {
      const found = wordOf(line, axis);
      if (found !== undefined) this.#known[axis] = found * this.#unit;
    }
    const { X, Y, Z } = this.#known;
    if (X === undefined || Y === undefined || Z === undefined) return;
    // a run begins above the place where the one before ended
    const from: Place = this.#at ?? [...this.end, Z];
    const to: Place = [X, Y, Z];
    this.#at = to;
    this.end = [X, Y];
    const speed = (this.#motion === 'G0' ? this.#travelSpeed : this.#feed * this.#unit) / 60;
    const [i, j] = [wordOf(line, 'I'), wordOf(line, 'J') ?? 0];
    const piece =
      i === undefined
        ? straightPiece(from, to, speed)
        : roundPiece(from, to, i * this.#unit, j * this.#unit, this.#motion === 'G2' ? -1 : 1, speed);
    if (piece.length > 0) this.runs.at(-1)!.push(piece);
  }
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
  let start: readonly [number, number] = [0, 0];
  return [...files.values()].map((text) => {
    const { runs, waits, end } = new Walked(text, machine.travelSpeed, start);
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
