/**
 * The same text for places that are rounded to the same: an integer takes less time to write than a decimal.
 * @param perMm steps in a millimetre to which they are rounded
 */
export const placeName = (x: number, y: number, perMm: number): string =>
  `${Math.round(x * perMm)},${Math.round(y * perMm)}`;
