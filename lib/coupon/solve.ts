/**
 * From readings to what the machine does. The paths of a coupon stand half the width w0 off the true edges, and were
 * sent through the correction that was known; the machine makes mx of a true length of 1 along X and my along Y, and
 * takes away the width w. So of a length L, to first order in what is unknown,
 *   outside  m = mx (L + w0) - w,   inside  m = mx (L - w0) + w,
 *   bored    m = (mx + my)/2 (d - w0 - b0) + w + b,
 * which is linear in mx, my, w and b: least squares gives them with their covariance u² (JᵀJ)⁻¹ (JCGM 100:2008, GUM,
 * H.3 for a fit, 5.1.2 and 5.2.2 for what follows from it). The standard uncertainty u of a reading is that of a step of
 * the callipers, a rectangular distribution (GUM 4.3.7, F.2.2.1), with that of the callipers themselves; where the
 * readings scatter more, it is what they scatter.
 */
import { element } from '../geometry/index.js';
import type { Coupon, Reading } from './types.js';

/** A reading with what was measured; those that could not be taken are left out. */
export interface Measured {
  readonly reading: Reading;
  readonly value: number;
}

export interface Estimate {
  readonly value: number;
  /** Standard uncertainty (k = 1). */
  readonly uncertainty: number;
}

/** What the machine does, as the calibrated values of a design have it. */
export interface Solved {
  readonly width: Estimate;
  readonly bore: Estimate | null;
  readonly drilled: Estimate | null;
  readonly depth: Estimate | null;
  /** What the machine makes of a length of 1, and how far its y axis leans towards +x. */
  readonly scaleX: Estimate;
  readonly scaleY: Estimate;
  readonly lean: Estimate;
  /** Greatest difference between a reading and what all of them together come to. */
  readonly worst: { readonly id: string; readonly off: number };
}

/** Largest permissible error of callipers up to 150 mm, mm: ISO 13385-1, from memory. */
const calliperError = 0.02;

/** Standard uncertainty of a reading with callipers of a step, mm. */
export function readingUncertainty(step: number): number {
  return Math.hypot(step / Math.sqrt(12), calliperError / Math.sqrt(3) / 2);
}

interface Row {
  readonly id: string;
  readonly factors: readonly number[];
  readonly value: number;
}

/** The inverse of a small symmetric matrix, by elimination with pivots. @throws RangeError where it has none */
function inverse(matrix: readonly (readonly number[])[]): number[][] {
  const size = matrix.length;
  const rows = matrix.map((row, i) => [...row, ...Array.from({ length: size }, (_, k) => (k === i ? 1 : 0))]);
  for (let i = 0; i < size; i += 1) {
    const pivot = rows.reduce(
      (best, row, k) => (k >= i && Math.abs(row[i] ?? 0) > Math.abs(element(rows, best)[i] ?? 0) ? k : best),
      i,
    );
    [rows[i], rows[pivot]] = [element(rows, pivot), element(rows, i)];
    const head = element(element(rows, i), i);
    if (Math.abs(head) < 1e-12) throw new RangeError('the readings do not determine all values');
    rows[i] = element(rows, i).map((value) => value / head);
    for (let k = 0; k < size; k += 1) {
      if (k === i) continue;
      const factor = element(element(rows, k), i);
      rows[k] = element(rows, k).map((value, c) => value - factor * element(element(rows, i), c));
    }
  }
  return rows.map((row) => row.slice(size));
}

interface Fit {
  readonly values: readonly number[];
  /** (JᵀJ)⁻¹ */
  readonly spread: readonly (readonly number[])[];
  readonly residuals: readonly number[];
}

/** Linear least squares. */
function fitOf(rows: readonly Row[], unknowns: number): Fit {
  const product = (a: number, b: number): number =>
    rows.reduce((sum, { factors }) => sum + element(factors, a) * element(factors, b), 0);
  const indices = Array.from({ length: unknowns }, (_, i) => i);
  const spread = inverse(indices.map((a) => indices.map((b) => product(a, b))));
  const right = indices.map((a) => rows.reduce((sum, { factors, value }) => sum + element(factors, a) * value, 0));
  const values = spread.map((row) => row.reduce((sum, one, k) => sum + one * element(right, k), 0));
  const residuals = rows.map(
    ({ factors, value }) =>
      value - factors.slice(0, unknowns).reduce((sum, one, k) => sum + one * element(values, k), 0),
  );
  return { values, spread, residuals };
}

/** A reading as a row over mx - 1, my - 1, w and b; null for those that are none of a length. */
function rowOf({ reading, value }: Measured, { width, bore }: Coupon['cut']): Row | null {
  const { id, measure, nominal } = reading;
  if (measure.kind === 'outside' || measure.kind === 'inside') {
    const side = measure.kind === 'outside' ? 1 : -1;
    const path = nominal + side * width;
    const along = measure.axis === 'x' ? [path, 0] : [0, path];
    return { id, factors: [...along, -side, 0], value: value - path };
  }
  if (measure.kind !== 'bored') return null;
  const path = nominal - width - bore;
  return { id, factors: [path / 2, path / 2, 1, 1], value: value - path };
}

/** Mean of what readings of a kind differ from what they should be. */
function meanOver(measured: readonly Measured[], kind: 'drilled' | 'depth', u: number): Estimate | null {
  const over = measured
    .filter(({ reading }) => reading.measure.kind === kind)
    .map(({ reading, value }) => value - reading.nominal);
  if (over.length === 0) return null;
  const value = over.reduce((sum, one) => sum + one, 0) / over.length;
  const scatter =
    over.length < 2 ? 0 : Math.sqrt(over.reduce((sum, one) => sum + (one - value) ** 2, 0) / (over.length - 1));
  return { value, uncertainty: Math.max(u, scatter) / Math.sqrt(over.length) };
}

/** How far the square leans: the difference of its diagonals, over twice its sides. */
function leanOf(
  measured: readonly Measured[],
  sides: { readonly x: number; readonly y: number },
  u: number,
): Estimate | null {
  const diagonal = (rising: boolean): number | undefined =>
    measured.find(({ reading: { measure } }) => measure.kind === 'diagonal' && measure.rising === rising)?.value;
  const [rising, falling] = [diagonal(true), diagonal(false)];
  if (rising === undefined || falling === undefined) return null;
  const value = (rising ** 2 - falling ** 2) / (4 * sides.x * sides.y);
  return { value, uncertainty: (Math.hypot(rising, falling) * u) / (2 * sides.x * sides.y) };
}

/**
 * What the readings of a coupon come to.
 * @param step of the callipers, mm
 * @throws RangeError where too few readings are given for the axes or the width
 */
export function solve({ cut }: Coupon, measured: readonly Measured[], step: number): Solved {
  const floor = readingUncertainty(step);
  const rows = measured.flatMap((one) => rowOf(one, cut) ?? []);
  const bored = measured.some(({ reading }) => reading.measure.kind === 'bored');
  // without a bored hole its unknown is left out
  const unknowns = bored ? 4 : 3;
  const { values, spread, residuals } = fitOf(rows, unknowns);
  const free = rows.length - unknowns;
  const scatter = free > 0 ? Math.sqrt(residuals.reduce((sum, one) => sum + one * one, 0) / free) : 0;
  const u = Math.max(floor, scatter);
  const of = (index: number): Estimate => ({
    value: element(values, index),
    uncertainty: u * Math.sqrt(element(element(spread, index), index)),
  });
  const [x, y, w] = [of(0), of(1), of(2)];
  const size = (axis: Estimate): number => (1 + axis.value) * (100 + cut.width) - w.value;
  const leaning = leanOf(measured, { x: size(x), y: size(y) }, u);
  if (leaning === null) throw new RangeError('both diagonals are needed');
  const { axes } = cut;
  const [mx, my] = [1 + x.value, 1 + y.value];
  // the lean of the part is ml/my, and A = M A0: what the machine does is what it did to a path that was corrected
  const lean = axes.scaleY * leaning.value * my + mx * axes.lean;
  const worst = residuals.reduce((best, one, i) => (Math.abs(one) > Math.abs(element(residuals, best)) ? i : best), 0);
  return {
    width: w,
    bore: bored ? of(3) : null,
    drilled: meanOver(measured, 'drilled', floor),
    depth: meanOver(measured, 'depth', floor),
    scaleX: { value: mx * axes.scaleX, uncertainty: x.uncertainty },
    scaleY: { value: my * axes.scaleY, uncertainty: y.uncertainty },
    lean: { value: lean, uncertainty: leaning.uncertainty },
    worst: { id: element(rows, worst).id, off: element(residuals, worst) },
  };
}

/**
 * The reading that the others contradict, with what they make of it: the one without which the rest agree best; null
 * where none stands off by more than `limit`.
 */
export function contradiction(
  coupon: Coupon,
  measured: readonly Measured[],
  limit: number,
): { readonly id: string; readonly expected: number } | null {
  const rows = measured.flatMap((one) => rowOf(one, coupon.cut) ?? []);
  const unknowns = rows.some(({ factors }) => factors[3] === 1) ? 4 : 3;
  if (rows.length <= unknowns) return null;
  const tried = rows.flatMap((row, i) => {
    try {
      const { values, residuals } = fitOf(
        rows.filter((_, k) => k !== i),
        unknowns,
      );
      const by = row.factors.reduce((sum, one, k) => sum + one * (values[k] ?? 0), 0);
      return [{ row, off: row.value - by, rest: Math.max(...residuals.map(Math.abs)) }];
    } catch {
      // the only reading of its kind cannot be missed
      return [];
    }
  });
  const [first] = [...tried].sort((a, b) => a.rest - b.rest || Math.abs(b.off) - Math.abs(a.off));
  if (first === undefined || Math.abs(first.off) <= limit) return null;
  const nominal = measured.find(({ reading }) => reading.id === first.row.id);
  return { id: first.row.id, expected: (nominal?.value ?? 0) - first.off };
}
