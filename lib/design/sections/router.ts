/** Machining data for tool paths. */
import { group, keysIn } from '../keys.js';
import type { LengthUnit } from '../../units/index.js';

export function routerSection(unit: LengthUnit) {
  const { lengthOr } = keysIn(unit);
  return group(
    { about: 'Data for router tool paths.' },
    {
      safeHeight: lengthOr(10, { about: 'Height above the sheet for travel.', above: 0, most: 200 }),
    },
  );
}
