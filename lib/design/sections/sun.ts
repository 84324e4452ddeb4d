/** The sun and the care of the work. */
import { choice, group, numberAuto, numberOr } from '../keys.js';

export function sunSection() {
  return group(
    { about: 'The sun, and how accurately the dish is built and aimed.' },
    {
      irradiance: numberAuto({
        about: 'Direct irradiance at the dish (at noon, if there is a site); replaces the clear-sky value.',
        unit: 'W/m²',
        auto: 'the clear sky of the site; without a site 800, a round value for a clear day',
        above: 0,
        max: 1400,
      }),
      elevation: numberOr(45, {
        about:
          'Height of the sun above the horizon, used if there is no site; under a level vessel it sets the tilt of the dish.',
        unit: 'deg',
        why: 'the middle of the day in middle latitudes',
        above: 0,
        max: 90,
      }),
      shape: choice(['uniform', 'limb-darkened', 'circumsolar'], 'uniform', {
        about: 'How the brightness varies across the sun’s disc.',
      }),
      circumsolarRatio: numberOr(0.05, {
        about: 'Share of the light that comes from around the disc, for shape `circumsolar`.',
        min: 0,
        max: 0.8,
      }),
      slopeError: numberAuto({
        about: 'Waviness of the reflector with usual care, one standard deviation in each direction.',
        unit: 'mrad',
        auto: 'by reflector.finish: 4 to 6 mrad for hand work on thin board, from memory',
        min: 0,
        max: 100,
      }),
      slopeErrorGood: numberAuto({
        about: 'The same with good care: ribs true to the template, panels and mirror laid without bumps.',
        unit: 'mrad',
        auto: 'half of slopeError, from memory',
        min: 0,
        max: 100,
      }),
      slopeErrorPoor: numberAuto({
        about: 'The same with poor care.',
        unit: 'mrad',
        auto: 'twice slopeError, from memory',
        min: 0,
        max: 200,
      }),
      specularity: numberAuto({
        about: 'Spread of the reflection itself, one standard deviation.',
        unit: 'mrad',
        auto: 'by reflector.finish and state: 0.5 mrad for glass to 50 mrad for crinkled foil',
        min: 0,
        max: 100,
      }),
      edgeCurl: numberAuto({
        about: 'Extra slope at the edges of a bent panel, growing evenly from the mid-line; 0 for none.',
        unit: 'mrad',
        auto: 'worked out from the panel’s thickness, width and bend: a few mrad, because the edges of a bent sheet curl the other way',
        min: 0,
        max: 100,
      }),
      pointingError: numberOr(0, {
        about: 'Angle by which the dish is aimed off the sun.',
        unit: 'deg',
        min: 0,
        max: 20,
      }),
      parkedAngle: numberAuto({
        about:
          'Smallest angle between axis and sun over the day while the dish is parked; at 90 or more the mirror is dark.',
        unit: 'deg',
        auto: 'lying on its back: 90 deg less the sun’s height at noon; without a site, parking is not reported',
        min: 0,
        max: 180,
      }),
    },
  );
}
