/** Limits of double precision at the size of a sheet. Not tolerances of the trade: nothing a user would set. */

/** Curves closer than this (mm) touch; well above the rounding of coordinates of some metres, far below 1 µm. */
export const TOUCH = 1e-9;

/** Ends of pieces closer than this (mm) are one corner. */
export const SAME_CORNER = 1e-7;
