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
          'Height of the focus above the vertex; with profile `spread`, height of the lit disc. Below a quarter of the aperture the focus is inside the rim.',
        above: 0,
        usual: [40, 12_000],
      }),
      profile: choice(profileKinds, 'paraboloid', {
        about:
          'Curve of the mirror: `paraboloid` focuses the light to a point; `spread` lights the underside of the vessel evenly, at a tenth of the brightness in the middle.',
        why: 'the smallest spot, so that a small vessel catches it',
      }),
      spreadRadius: lengthAuto({
        about:
          'Radius on the lit disc to which profile `spread` sends light from the rim; light from half way out goes to half of it, and so on.',
        auto: 'the largest that keeps light from the panels’ corners on the vessel',
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
        auto: '1/25 of the aperture, from 40 to 100 mm, and at least three times the thickness of the ribs: room for cleats and a driver under the panels',
        above: 0,
        max: 2000,
      }),
      arcTolerance: lengthOr(0.01, {
        about: 'Maximum deviation of the fitted arcs from the true curve.',
        why: 'a tenth of the repeatability of a good router',
        min: 0.0005,
        max: 0.5,
      }),
    },
  );
}
