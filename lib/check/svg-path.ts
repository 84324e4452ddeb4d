/** Path data of an SVG (SVG 1.1, second edition, chapter 8.3), as far as lines and circular arcs go. */
import type { Vertex } from '../geometry/index.js';
import { Unreadable } from './drawn.js';
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
  if (half > r * (1 + radiusRounding)) throw new Unreadable(`an arc of radius ${r} cannot span ${2 * half}`);
  const angle = 2 * Math.asin(Math.min(1, half / r));
  const sweep = large ? 2 * Math.PI - angle : angle;
  return (positive ? 1 : -1) * Math.tan(sweep / 4);
}

/**
 * One subpath of absolute lines and circular arcs, as the file has it: y down, bulges positive from x towards y.
 * @throws Unreadable for anything else: relative commands, curves, ellipses, more than one subpath
 */
export function readPathData(data: string): PathData {
  // the lengths are added up: one pattern over the whole of a long path could take long to fail
  const pieces = [...data.matchAll(numberOrCommand)];
  const taken = pieces.reduce((sum, [piece]) => sum + piece.length, 0);
  const blank = data.length - data.replace(/[\s,]/g, '').length;
  if (taken + blank !== data.length)
    throw new Unreadable('a path holds something else than M, L, H, V, A, Z and numbers');
  const vertices: { x: number; y: number; bulge: number }[] = [];
  let closed = false;
  let i = 0;
  const number = (): number => {
    const value = Number(pieces[i]?.[2]);
    i += 1;
    if (!(Math.abs(value) <= farthest)) throw new Unreadable('a path lacks a number, or holds one beyond a kilometre');
    return value;
  };
  const flag = (): boolean => {
    const value = number();
    if (value !== 0 && value !== 1) throw new Unreadable('a flag of an arc is neither 0 nor 1');
    return value === 1;
  };
  let command = '';
  while (i < pieces.length) {
    if (closed) throw new Unreadable('a path goes on after it was closed');
    const letter = pieces[i]?.[1];
    if (letter !== undefined) {
      command = letter;
      i += 1;
    } else if (command === 'M') {
      command = 'L';
    }
    const last = vertices.at(-1);
    if ((command === 'M') !== (last === undefined)) throw new Unreadable('a path must have one M, at its start');
    if (command === 'Z') {
      closed = true;
    } else if (command === 'M' || last === undefined) {
      vertices.push({ x: number(), y: number(), bulge: 0 });
    } else if (command === 'A') {
      const rx = number();
      const ry = number();
      number();
      const large = flag();
      const positive = flag();
      if (rx !== ry || !(rx > 0)) throw new Unreadable('an arc of a path is not circular');
      const end = { x: number(), y: number() };
      last.bulge = bulgeOf(last, end, rx, large, positive);
      vertices.push({ ...end, bulge: 0 });
    } else {
      const x = command === 'V' ? last.x : number();
      vertices.push({ x, y: command === 'H' ? last.y : number(), bulge: 0 });
    }
  }
  const first = vertices[0];
  const last = vertices.at(-1);
  // an arc back to the start is written out, then closed: the ring has that point once
  if (
    closed &&
    first !== undefined &&
    last !== undefined &&
    vertices.length > 2 &&
    first.x === last.x &&
    first.y === last.y
  )
    vertices.pop();
  if (vertices.length < 2) throw new Unreadable('a path has fewer than two points');
  return { vertices, closed };
}
