import { LengthError } from './length.js';

const anglePattern = /^([+-]?(?:\d+(?:\.\d*)?|\.\d+))\s*(deg|degrees?|°|rad|mrad)?$/i;

/**
 * Reads an angle: a number in degrees, or text such as `30 deg`, `30°`, `0.5 rad`, `5 mrad`.
 * @returns radians
 * @throws LengthError when it is not an angle
 */
export function parseAngle(source: number | string): number {
  const found = anglePattern.exec(String(source).trim());
  if (!found) throw new LengthError(`"${source}" is not an angle`, 'write 30, 30 deg, 0.5 rad or 5 mrad');
  const value = Number(found[1]);
  const unit = found[2]?.toLowerCase();
  if (unit === 'rad') return value;
  if (unit === 'mrad') return value / 1000;
  return (value * Math.PI) / 180;
}
