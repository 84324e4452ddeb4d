/** Lengths written without a unit that are implausible in the unit of the file, but plausible in another. */
import { formatLength } from './format.js';
import { LengthError, type LengthUnit, lengthUnits } from './length.js';

/** What is usual for a kind of length, mm: from, to. A length with a unit of its own is taken whatever it is. */
export type UsualRange = readonly [from: number, to: number];

const inRange = (lengths: readonly number[], [from, to]: UsualRange): boolean =>
  lengths.every((length) => length >= from && length <= to);

/** Whether a text names no unit; the x of a size and the e of a power of ten are none. */
function isBare(source: number | string): boolean {
  return (
    typeof source === 'number' ||
    !/[a-z"″'′]/i.test(source.replace(/\d[eE][+-]?\d/g, '0').replace(/\d\s*[xX]\s*(?=[\d.])/g, ''))
  );
}

/**
 * Refuses a bare length that another unit would make usual.
 * @param read the lengths (mm) of the source, were its unit the given one
 * @param unit in which bare numbers are read here
 * @throws LengthError of kind `wrong-unit` with every reading
 */
export function refuseOtherUnit(
  source: number | string,
  read: (unit: LengthUnit) => readonly number[],
  unit: LengthUnit,
  usual: UsualRange,
): void {
  if (!isBare(source)) return;
  const here = read(unit);
  if (inRange(here, usual)) return;
  const others = lengthUnits.filter((other) => inRange(read(other), usual));
  if (others.length === 0) return;
  const text = (name: LengthUnit) =>
    read(name)
      .map((mm) => formatLength(mm, name, 4))
      .join(' x ');
  const metric = unit === 'mm' ? '' : ` (${here.map((mm) => formatLength(mm, 'mm')).join(' x ')})`;
  const readings = others.map(text).join(' or ');
  throw new LengthError(
    `"${source}" without a unit means ${text(unit)}${metric} here, which is implausible; ${readings} would be usual`,
    `write the unit with it: ${[...others, unit].map(text).join(', or ')}`,
    'wrong-unit',
  );
}
