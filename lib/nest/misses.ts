/**
 * Near misses: packings in which little overlapped when a search gave up. A fresh start from one of them, two pieces
 * exchanged, often gets further than one from nothing (in the manner of Elkeran, European Journal of Operational
 * Research 231, 2013, from memory).
 */
import { element, type Random } from '../geometry/index.js';
import type { Packing } from './packing.js';
import { f64, i32 } from '../geometry/typed-arrays.js';

/** Two pieces of different kinds change places, the larger ones sooner. */
function swap(packing: Packing, random: Random): void {
  const n = packing.pieces.length;
  if (n < 2) return;
  // pieces are in order of size
  const one = Math.floor(random.real() ** 2 * n);
  let two = one;
  for (let tries = 0; tries < 20; tries++) {
    two = Math.floor(random.real() ** 1.5 * n);
    if (element(packing.pieces, two).kind !== element(packing.pieces, one).kind) break;
  }
  const centre = (i: number): readonly [number, number, number] => {
    const { shape } = packing.orientation(i);
    return [f64(packing.x, i) + shape.width / 2, f64(packing.y, i) + shape.height / 2, i32(packing.sheet, i)];
  };
  const [a, b] = [centre(one), centre(two)];
  for (const [i, [x, y, sheet]] of [
    [one, b],
    [two, a],
  ] as const) {
    const { shape } = packing.orientation(i);
    packing.x[i] = x - shape.width / 2;
    packing.y[i] = y - shape.height / 2;
    packing.sheet[i] = sheet;
  }
}

export class Misses {
  /** The nearest first. */
  #kept: { readonly total: number; readonly packing: Packing }[] = [];

  constructor(private readonly random: Random) {}

  /** Keeps a copy of a packing with the sum of depths that was left. */
  add(total: number, packing: Packing): void {
    this.#kept.push({ total, packing: packing.copy() });
    this.#kept.sort((a, b) => a.total - b.total);
  }

  /** Makes a packing one of the misses, the nearer sooner, with two pieces exchanged; false when there are none. */
  changed(packing: Packing): boolean {
    const { length } = this.#kept;
    if (length === 0) return false;
    const pick = Math.min(length - 1, Math.floor(Math.abs(this.random.real() + this.random.real() - 1) * length));
    packing.assign(element(this.#kept, pick).packing);
    swap(packing, this.random);
    return true;
  }

  forget(): void {
    this.#kept = [];
  }
}
