import { choice, group, keysIn, integer } from '../keys.js';
import type { LengthUnit } from '../../units/index.js';

export const profileKinds = ['paraboloid', 'spread'] as const;
export type ProfileKind = (typeof profileKinds)[number];

export function dishSection(unit: LengthUnit) {
  const { length, lengthAuto, lengthOr } = keysIn(unit);
  return group(
    { about: 'The optical shape.' },
    {
      aperture: length({ about: 'Diameter across the rib ends.', min: 50, max: 20_000, usual: [120, 12_000] }),
      focalLength: length({
        about:
          'Height of the focus above the vertex; with profile `spread` that of the disc that is lit. Below a quarter of the aperture the focus lies inside the rim.',
        above: 0,
        usual: [40, 12_000],
      }),
      profile: choice(profileKinds, 'paraboloid', {
        about:
          'Curve of the mirror: `paraboloid` brings the light to a point, `spread` lights the underside of the vessel evenly, for a tenth of the brightness in the middle.',
        why: 'the smallest spot, which the smallest vessel catches',
      }),
      spreadRadius: lengthAuto({
        about:
          'Radius on the lit disc to which profile `spread` sends the light of the rim; the light of half the radius goes to half of it, and so on.',
        auto: 'what the width of the panels leaves of the vessel',
        above: 0,
      }),
      ribs: integer({
        about: 'Number of ribs. More ribs make narrower flat panels and a smaller spot.',
        min: 3,
        max: 240,
      }),
      figure: choice(['panel', 'rib'], 'panel', {
        about:
          'What lies on the true parabola: the mid-line of each panel (`panel`), or the rib edge itself as in plain hand work (`rib`).',
        why: 'with `panel` every mid-line focuses at the focal length',
      }),
      baseHeight: lengthAuto({
        about: 'Height of the vertex above the backer board.',
        auto: 'a twenty-fifth of the aperture, from 40 to 100 mm, and three times the thickness of the ribs at least: room for cleats and a driver under the panels',
        above: 0,
        max: 2000,
      }),
      arcTolerance: lengthOr(0.01, {
        about: 'Greatest distance between a true curve and the arcs that stand for it.',
        why: 'a tenth of what a good router repeats to',
        min: 0.0005,
        max: 0.5,
      }),
    },
  );
}
