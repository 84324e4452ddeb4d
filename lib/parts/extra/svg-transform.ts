/** The `transform` attribute and lengths of SVG (SVG 1.1, second edition, chapter 7). */
import type { Point } from '../../geometry/index.js';
import { ExtraFault, quoted } from './drawing.js';

/** x' = a·x + c·y + e, y' = b·x + d·y + f. */
export type Matrix = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

const identity: Matrix = [1, 0, 0, 1, 0, 0];

/** `outer` after `inner`. */
export function after(outer: Matrix, inner: Matrix): Matrix {
  const [a, b, c, d, e, f] = outer;
  const [g, h, i, j, k, l] = inner;
  return [a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * l + e, b * k + d * l + f];
}

export function movePoint([a, b, c, d, e, f]: Matrix, { x, y }: Point): Point {
  return { x: a * x + c * y + e, y: b * x + d * y + f };
}

/** A direction: turned and stretched, not moved. */
export function moveVector([a, b, c, d]: Matrix, { x, y }: Point): Point {
  return { x: a * x + c * y, y: b * x + d * y };
}

const numberText = '[-+]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][-+]?\\d{1,3})?';
const functionPattern = /([a-zA-Z]+)\s*\(([^()]*)\)/g;
const numberPattern = new RegExp(numberText, 'g');
const radians = Math.PI / 180;

function matrixOf(name: string, n: readonly number[]): Matrix | null {
  const [p = 0, q = 0, r = 0] = n;
  const count = n.length;
  if (name === 'matrix' && count === 6) return n as unknown as Matrix;
  if (name === 'translate' && (count === 1 || count === 2)) return [1, 0, 0, 1, p, q];
  if (name === 'scale' && (count === 1 || count === 2)) return [p, 0, 0, count === 1 ? p : q, 0, 0];
  if (name === 'skewX' && count === 1) return [1, 0, Math.tan(p * radians), 1, 0, 0];
  if (name === 'skewY' && count === 1) return [1, Math.tan(p * radians), 0, 1, 0, 0];
  if (name === 'rotate' && (count === 1 || count === 3)) {
    const [cos, sin] = [Math.cos(p * radians), Math.sin(p * radians)];
    return [cos, sin, -sin, cos, q - q * cos + r * sin, r - q * sin - r * cos];
  }
  return null;
}

/** @throws ExtraFault for a transform that cannot be read */
export function readTransform(text: string): Matrix {
  if (text.length > 10_000) throw new ExtraFault('extra-transform', 'its transform is too long');
  if (text.replace(functionPattern, '').replace(/[\s,]/g, '') !== '' && text.trim() !== 'none')
    throw new ExtraFault('extra-transform', `its transform ${quoted(text)} cannot be read`);
  let matrix = identity;
  for (const [whole, name = '', list = ''] of text.matchAll(functionPattern)) {
    const numbers = list.match(numberPattern)?.map(Number) ?? [];
    const rest = list.replace(numberPattern, '').replace(/[\s,]/g, '');
    const step = rest === '' ? matrixOf(name, numbers) : null;
    if (!step) throw new ExtraFault('extra-transform', `its transform ${quoted(whole)} cannot be read`);
    matrix = after(matrix, step);
  }
  return matrix;
}

/** Lengths of the units of CSS, in px: 96 px are an inch (CSS Values and Units Level 3, 5.2). */
const pxPer: Readonly<Record<string, number>> = {
  px: 1,
  in: 96,
  cm: 96 / 2.54,
  mm: 96 / 25.4,
  pt: 96 / 72,
  pc: 16,
};
const lengthPattern = new RegExp(`^(${numberText})\\s*([a-zA-Z]*|%)$`);

/** mm a px. */
export const mmPerPx = 25.4 / 96;

/** A length with its unit; null when it is none. */
export function readSvgLength(text: string): { readonly value: number; readonly unit: string } | null {
  const found = text.length > 100 ? null : lengthPattern.exec(text.trim());
  const value = Number(found?.[1]);
  return found && Number.isFinite(value) ? { value, unit: (found[2] ?? '').toLowerCase() } : null;
}

/** A length in px; null for a bare number, a share or a unit that depends on lettering. */
export function inPx(length: { readonly value: number; readonly unit: string }): number | null {
  const factor = Object.hasOwn(pxPer, length.unit) ? pxPer[length.unit] : undefined;
  return factor === undefined ? null : length.value * factor;
}
