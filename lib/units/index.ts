export { inInches, parseLength, unitNamed, LengthError, type LengthUnit, lengthUnits, mmPer } from './length.js';
export { parseAngle } from './angle.js';
export { formatLength, formatFraction, nearestFraction } from './format.js';
export { parseSize, parseUsualSize, type Size } from './size.js';
export { wrapped } from './wrap.js';
export { refuseOtherUnit, type UsualRange } from './usual.js';
export { formatArea, formatMass, proseIn, reachIn } from './prose.js';
export { commaSlip } from './slips.js';
export { nearestDrill } from './drills.js';
