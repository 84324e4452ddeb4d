/** Path data of an SVG (SVG 1.1, second edition, chapter 8.3), as far as lines and circular arcs go. */
import type { Vertex } from '../geometry/index.js';
import { unreadable } from './drawn.js';
import { farthest } from './limits.js';

const numberOrCommand = /([MLHVAZ])|([-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?)/g;

/** By how much rounding may leave a radius short of half its chord, as a share. */
const radiusRounding = 1e-4;

interface PathData {
  readonly vertices: readonly Vertex[];
  readonly closed: boolean;
}

/** Bulge, y still down, of an arc of radius `r` from `a` to `b`. */
function bulgeOf(a: Vertex, b: { x: number; y: number }, r: number, large: boolean, positive: boolean): number {
  const half = Math.hypot(b.x - a.x, b.y - a.y) / 2;
  if (half > r * (1 + radiusRounding)) throw unreadable('path-arc-span', { radius: r, chord: 2 * half });
  const angle = 2 * Math.asin(Math.min(1, half / r));
  const sweep = large ? 2 * Math.PI - angle : angle;
  return (positive ? 1 : -1) * Math.tan(sweep / 4);
}

/** Reads a path's letters and numbers one after the other. */
class PathReader {
  readonly #pieces: readonly RegExpExecArray[];
  #at = 0;

  /** @throws Unreadable for what is neither */
  constructor(data: string) {
    // the lengths are added up: one pattern over the whole of a long path could take long to fail
    this.#pieces = [...data.matchAll(numberOrCommand)];
    const taken = this.#pieces.reduce((sum, [piece]) => sum + piece.length, 0);
    const blank = data.length - data.replace(/[\s,]/g, '').length;
    if (taken + blank !== data.length) throw unreadable('path-data', {});
  }

  get done(): boolean {
    return this.#at >= this.#pieces.length;
  }

  /** The letter that comes next, if one does. */
  letter(): string | undefined {
    const letter = this.#pieces[this.#at]?.[1];
    if (letter !== undefined) this.#at += 1;
    return letter;
  }

  number(): number {
    const value = Number(this.#pieces[this.#at]?.[2]);
    this.#at += 1;
    if (!(Math.abs(value) <= farthest)) throw unreadable('path-number', {});
    return value;
  }

  flag(): boolean {
    const value = this.number();
    if (value !== 0 && value !== 1) throw unreadable('path-flag', {});
    return value === 1;
  }
}

/** The bulge of a circular arc from `from`, and where it ends. */
function readArc(reader: PathReader, from: Vertex): { readonly bulge: number; readonly end: Vertex } {
  const rx = reader.number();
  const ry = reader.number();
  // how far the ellipse is turned does not matter for a circle
  reader.number();
  const large = reader.flag();
  const positive = reader.flag();
  if (rx !== ry || !(rx > 0)) throw unreadable('path-ellipse', {});
  const end = { x: reader.number(), y: reader.number(), bulge: 0 };
  return { bulge: bulgeOf(from, end, rx, large, positive), end };
}

/** Whether the last point is the first again: an arc back to the start is written out, then closed. */
function endsAtStart(vertices: readonly Vertex[]): boolean {
  const first = vertices[0];
  const last = vertices.at(-1);
  return vertices.length > 2 && first?.x === last?.x && first?.y === last?.y;
}

/**
 * One subpath of absolute lines and circular arcs, as the file has it: y down, bulges positive from x towards y.
 * @throws Unreadable for anything else: relative commands, curves, ellipses, more than one subpath
 */
export function readPathData(data: string): PathData {
  const reader = new PathReader(data);
  const vertices: { x: number; y: number; bulge: number }[] = [];
  let closed = false;
  let command = '';
  while (!reader.done) {
    if (closed) throw unreadable('path-after-close', {});
    // numbers that follow without a letter go on with the last one, after M as lines
    command = reader.letter() ?? (command === 'M' ? 'L' : command);
    const last = vertices.at(-1);
    if ((command === 'M') !== (last === undefined)) throw unreadable('path-start', {});
    if (command === 'Z') {
      closed = true;
    } else if (last === undefined) {
      vertices.push({ x: reader.number(), y: reader.number(), bulge: 0 });
    } else if (command === 'A') {
      const { bulge, end } = readArc(reader, last);
      last.bulge = bulge;
      vertices.push({ ...end });
    } else {
      const x = command === 'V' ? last.x : reader.number();
      vertices.push({ x, y: command === 'H' ? last.y : reader.number(), bulge: 0 });
    }
  }
  // the ring has that point once
  if (closed && endsAtStart(vertices)) vertices.pop();
  if (vertices.length < 2) throw unreadable('path-short', {});
  return { vertices, closed };
}
