/** Times arc fitting and offsets; one JSON line a case: what, size, seconds (minimum of the runs), result. */
import { type Contour, type Curve, fitArcs, offsetContour, signedArea, simplicity } from '../../lib/geometry/index.js';

const RUNS = 7;

/** Least time of several runs after one to warm up, and the result of the last run. */
function time(run: () => number): { seconds: number; result: number } {
  let result = run();
  let seconds = Infinity;
  for (let i = 0; i < RUNS; i++) {
    const start = performance.now();
    result = run();
    seconds = Math.min(seconds, (performance.now() - start) / 1000);
  }
  return { seconds, result };
}

function report(what: string, size: number, run: () => number): void {
  const { seconds, result } = time(run);
  console.log(
    JSON.stringify({ what, size, seconds: Number(seconds.toPrecision(4)), result: Number(result.toPrecision(8)) }),
  );
}

/** Numbers between 0 and 1 that are the same in every run (linear congruence, Numerical Recipes, from memory). */
function numbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 1664525 + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

/** Simple rings of `edges` edges with bends and bays. */
function rings(count: number, edges: number): Contour[] {
  const next = numbers(2);
  const list: Contour[] = [];
  while (list.length < count) {
    const ring = Array.from({ length: edges }, (_, k) => {
      const angle = (2 * Math.PI * k) / edges;
      const radius = 220 + 60 * Math.sin(5 * angle) + (1200 / edges) * next();
      return {
        x: radius * Math.cos(angle),
        y: radius * Math.sin(angle),
        bulge: next() < 0.5 ? 0 : 0.4 * (next() - 0.5),
      };
    });
    if (simplicity(ring, 1e-6).kind === 'simple') list.push(ring);
  }
  return list;
}

function parabola(f: number, from: number, to: number): Curve {
  return { from, to, at: (u) => ({ x: u, y: (u * u) / (4 * f) }), tangent: (u) => ({ x: 1, y: u / (2 * f) }) };
}

/** Runs all cases; the result is the number of arcs, or the area of the offset in mm². */
export function benchGeometry(): void {
  for (const tolerance of [0.1, 0.01, 0.001]) {
    report(`arc fit to ${tolerance} mm`, 1, () => fitArcs(parabola(550, 160, 750), tolerance).path.length - 1);
  }
  for (const [count, edges] of [
    [200, 100],
    [20, 1000],
  ] as const) {
    const list = rings(count, edges);
    for (const distance of [3, -3, -20]) {
      report(`offset of ${count} rings of ${edges} edges by ${distance} mm`, count * edges, () =>
        list.reduce((sum, ring) => sum + offsetContour(ring, distance).reduce((s, r) => s + signedArea(r), 0), 0),
      );
    }
  }
}
