/**
 * A number in plain decimal notation (never an exponent), rounded to `digits` decimals, trailing zeros dropped: the
 * root of every format's number formatter, and the only place where a drawing's numbers are rounded.
 * @throws RangeError for what is not a finite number below 1e15 in size: no file is better than a wrong one
 */
export function decimal(value: number, digits: number): string {
  if (!(Math.abs(value) < 1e15)) throw new RangeError(`cannot write ${value} into a file`);
  const text = value.toFixed(digits);
  const short = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return short === '-0' ? '0' : short;
}
