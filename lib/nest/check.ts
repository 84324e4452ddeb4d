/** Refuses what cannot be nested, with what is wrong. */
import { contourFromPoints, type Polygon, simplicity } from '../geometry/index.js';
import { NestError } from './error.js';
import { ringArea } from './clipping.js';
import { withoutCollinear } from './shape.js';
import type { NestOptions, NestPart, NestStock } from './types.js';

/** Neighbouring edges meet within this (mm). */
const SAME_POINT = 1e-7;

function checkRing(ring: Polygon, id: string, what: string): void {
  if (ring.some(({ x, y }) => !Number.isFinite(x) || !Number.isFinite(y)))
    throw new NestError(
      'not-a-number',
      id,
      `${what} of ${id} has a corner that is not a number; give finite lengths in mm`,
    );
  const clean = withoutCollinear(ring);
  if (clean.length < 3 || Math.abs(ringArea(clean)) < 1e-9)
    throw new NestError(
      'zero-area',
      id,
      `${what} of ${id} encloses no area; it needs three corners that are not collinear`,
    );
  const simple = simplicity(contourFromPoints(clean), SAME_POINT);
  if (simple.kind !== 'simple') {
    const { x, y } = simple.place;
    throw new NestError(
      'self-crossing',
      id,
      `${what} of ${id} crosses or touches itself at ${x.toFixed(3)}, ${y.toFixed(3)}`,
    );
  }
}

function checkIds(ids: readonly string[], what: string): void {
  const seen = new Set<string>();
  for (const id of ids) {
    if (seen.has(id)) throw new NestError('duplicate-id', id, `${what} ${id} occurs twice; ids must be unique`);
    seen.add(id);
  }
}

function checkPart({ id, outline, openings, quantity, rotations }: NestPart): void {
  if (!Number.isInteger(quantity) || quantity < 0)
    throw new NestError('bad-quantity', id, `quantity of ${id} is ${quantity}; it must be an integer of 0 or more`);
  if (rotations !== 'any' && (rotations.length === 0 || rotations.some((angle) => !Number.isFinite(angle))))
    throw new NestError('no-rotation', id, `rotations of ${id} must be finite angles in degrees, at least one`);
  checkRing(outline, id, 'outline');
  for (const opening of openings) checkRing(opening, id, 'an opening');
}

function checkStock({ id, shape, margin, count, price, keepOuts }: NestStock): void {
  const lengths = shape.kind === 'offcut' ? [] : [shape.height, shape.kind === 'sheet' ? shape.width : shape.maxLength];
  if (
    lengths.some((length) => !(length > 0)) ||
    (shape.kind === 'sheet' && lengths.some((length) => length === Infinity))
  )
    throw new NestError('bad-stock', id, `stock ${id} must be larger than 0 in both directions`);
  if (!(margin >= 0 && margin < Infinity))
    throw new NestError('bad-stock', id, `margin of stock ${id} is ${margin}; it must be 0 mm or more`);
  if (!(count >= 0)) throw new NestError('bad-stock', id, `count of stock ${id} is ${count}; it must be 0 or more`);
  if (!(price >= 0 && price < Infinity))
    throw new NestError('bad-stock', id, `price of stock ${id} is ${price}; it must be 0 or more`);
  if (shape.kind === 'offcut') checkRing(shape.outline, id, 'outline');
  for (const ring of keepOuts) checkRing(ring, id, 'a keep-out');
}

/** @throws NestError for the first fault found */
export function checkRequest(parts: readonly NestPart[], stock: readonly NestStock[], options: NestOptions): void {
  if (!(options.spacing >= 0 && options.spacing < Infinity))
    throw new NestError('bad-spacing', 'spacing', `spacing is ${options.spacing}; it must be 0 mm or more`);
  checkIds(
    parts.map(({ id }) => id),
    'part',
  );
  checkIds(
    stock.map(({ id }) => id),
    'stock',
  );
  parts.forEach(checkPart);
  stock.forEach(checkStock);
}
