/** Runs of points as short path data: whole units, relative, nothing that the eye would miss. */
import { element, type Point } from '../../geometry/index.js';

/** Distance from the line through two points, or from the one where both are the same. */
function offLine(a: Point, b: Point): (p: Point) => number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const size = Math.hypot(dx, dy);
  return size < 1e-9
    ? (p) => Math.hypot(p.x - a.x, p.y - a.y)
    : (p) => Math.abs(dx * (p.y - a.y) - dy * (p.x - a.x)) / size;
}

/** The run with the points left out that lie within `tolerance` of what remains (Douglas and Peucker 1973). */
export function simplified(points: readonly Point[], tolerance: number): Point[] {
  const keep = new Uint8Array(points.length);
  const stack: [number, number][] = [[0, points.length - 1]];
  keep[0] = 1;
  keep[points.length - 1] = 1;
  for (let span = stack.pop(); span; span = stack.pop()) {
    const [from, to] = span;
    let [worst, at] = [tolerance, -1];
    const offOf = offLine(element(points, from), element(points, to));
    for (let i = from + 1; i < to; i += 1) {
      const off = offOf(element(points, i));
      if (off > worst) [worst, at] = [off, i];
    }
    if (at < 0) continue;
    keep[at] = 1;
    stack.push([from, at], [at, to]);
  }
  return points.filter((_, i) => keep[i] === 1);
}

/** Joins what touches: runs from end to end through all pieces that share their ends. */
export function chained(pieces: readonly (readonly [Point, Point])[]): Point[][] {
  const name = ({ x, y }: Point): string => `${Math.round(4 * x)} ${Math.round(4 * y)}`;
  const at = new Map<string, number[]>();
  pieces.forEach((piece, i) => {
    for (const end of piece) at.set(name(end), [...(at.get(name(end)) ?? []), i]);
  });
  const used = new Uint8Array(pieces.length);
  const goOn = (run: Point[]): void => {
    for (;;) {
      const end = element(run, run.length - 1);
      const next = at.get(name(end))?.find((i) => used[i] === 0);
      if (next === undefined) return;
      used[next] = 1;
      const [a, b] = element(pieces, next);
      run.push(name(a) === name(end) ? b : a);
    }
  };
  return pieces.flatMap(([a, b], i) => {
    if (used[i] === 1) return [];
    used[i] = 1;
    const run = [a, b];
    goOn(run);
    run.reverse();
    goOn(run);
    return [run];
  });
}

const round = (value: number): number => Math.round(value);

/** Path data of a run. */
export function pathOf(points: readonly Point[], closed: boolean): string {
  const first = points[0];
  if (first === undefined) return '';
  let [x, y] = [round(first.x), round(first.y)];
  let text = `M${x} ${y}`;
  let command = '';
  for (const point of points.slice(1)) {
    const [dx, dy] = [round(point.x) - x, round(point.y) - y];
    if (dx === 0 && dy === 0) continue;
    text += `${command === 'l' ? (dx < 0 ? '' : ' ') : 'l'}${dx}${dy < 0 ? '' : ' '}${dy}`;
    command = 'l';
    x += dx;
    y += dy;
  }
  if (command === '') return '';
  return closed ? `${text}z` : text;
}
