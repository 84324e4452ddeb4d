/** Offsets of a paraboloid of f 226 cm, in cm: Pavlovic and Stefanovic, Journal of Solar Energy 2015, article 326536, table 1. */
export const publishedOffsets = [
  [31.67, 1.12],
  [63.33, 4.43],
  [95.0, 9.97],
  [126.6, 17.78],
  [158.3, 27.7],
  [190.0, 39.9],
] as const;
