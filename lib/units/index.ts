export { parseLength, LengthError, type LengthUnit, lengthUnits, mmPer } from './length.js';
export { parseAngle } from './angle.js';
export { formatLength, formatFraction, type Fraction, nearestFraction } from './format.js';
export { parseSize, parseUsualSize, type Size } from './size.js';
export { isBare, refuseOtherUnit, type UsualRange } from './usual.js';
