/** What carries, turns and tilts the dish, and holds its vessel. */
import type { LengthUnit } from '../../units/index.js';
import { choice, choiceAuto, group, keysIn, numberAuto, numberOr, textAuto } from '../keys.js';

const standKinds = ['cradle', 'none'] as const;
const axisPlaces = ['focus', 'balance'] as const;
const holderKinds = ['hanger', 'none'] as const;

const axisKey = choice(axisPlaces, 'focus', {
  about:
    'Where the dish tilts: about its focus, so that the vessel stays where it is and counterweights may be needed; or about the centre of gravity of dish and vessel, so that it needs none and is lower, but the vessel moves.',
});

function holderKeys(unit: LengthUnit) {
  const { lengthAuto } = keysIn(unit);
  return {
    holder: choiceAuto(holderKinds, {
      about: 'A hanger of flat steel at the focus, which stays level at every tilt; or none.',
      auto: 'a hanger for a level vessel, none for one that is fixed to the dish',
    }),
    holderWidth: lengthAuto({
      about: 'Inside width of the hanger’s frame, around the vessel.',
      auto: 'the vessel’s diameter plus 20 mm',
      above: 0,
    }),
  };
}

export function standSection(unit: LengthUnit) {
  const { lengthOr, lengthAuto } = keysIn(unit);
  return group(
    { about: 'What carries, turns and tilts the dish, and holds its vessel. If it is left out, no stand is made.' },
    {
      kind: choice(standKinds, 'cradle', {
        about:
          'A cradle: two side frames between which the dish tilts about a pipe through its focus or its centre of gravity, on a base that turns on castors about a pivot in its middle; or none.',
      }),
      axis: axisKey,
      material: textAuto({
        about: 'Name of the material of side frames, arms and beams, from `materials`.',
        auto: 'the material of the board',
      }),
      baseMaterial: textAuto({
        about: 'Name of the material of the base and the small parts, from `materials`.',
        auto: 'the material of the ribs',
      }),
      lowest: numberAuto({
        about: 'Lowest height of the sun to which the dish can be tilted.',
        unit: 'deg',
        auto: '`day.minElevation`',
        min: 5,
        max: 89,
      }),
      highest: numberAuto({
        about: 'Greatest height of the sun to which the dish can be tilted.',
        unit: 'deg',
        auto: 'that of the year’s highest sun at the site, rounded up to a whole degree; 90 without a site',
        min: 6,
        max: 90,
      }),
      step: numberOr(1, {
        about: 'Angle between the tilts at which the dish can be locked.',
        unit: 'deg',
        why: 'the sun moves by a degree in four minutes',
        min: 0.5,
        max: 3,
      }),
      handForce: numberOr(150, {
        about: 'Maximum force at the rim that a person may need to tilt the dish; counterweights take the rest.',
        unit: 'N',
        why: 'an easy pull with both arms (common practice, no source)',
        min: 20,
        max: 400,
      }),
      wind: numberOr(12, {
        about: 'Gusts that the dish must withstand, covered or uncovered; they decide the ballast.',
        unit: 'm/s',
        why: 'the upper end of a fresh breeze with gusts, 5 to 6 on the Beaufort scale; above it the dish is taken down',
        min: 3,
        max: 40,
      }),
      workingWind: numberOr(5, {
        about: 'Wind in which the dish must hold its aim.',
        unit: 'm/s',
        why: 'a gentle breeze, 3 on the Beaufort scale',
        min: 0,
        max: 20,
      }),
      maxBallast: numberOr(150, {
        about: 'Maximum ballast available.',
        unit: 'kg',
        why: 'six sandbags of 25 kg',
        min: 0,
        max: 5000,
      }),
      castor: lengthOr(100, { about: 'Height of a castor from the ground to the base.', min: 30, max: 300 }),
      foot: lengthAuto({
        about: 'Depth of a side frame’s foot, from its middle to its end.',
        auto: '23 % of the aperture, at least 180 mm',
        min: 180,
        max: 3000,
      }),
      ...holderKeys(unit),
    },
  );
}
