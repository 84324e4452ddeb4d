/** What each value rests on, stated with it. */
import { standardPressure } from './atmosphere.js';
import { boardPoissonRatio } from './edge-curl.js';
import type { SetUp } from './set-up.js';
import type { Assumption, OpticsInput } from './types.js';

const shapes: Readonly<Record<OpticsInput['sun']['shape'], string>> = {
  uniform: 'a disc of even brightness',
  'limb-darkened': 'a disc that darkens towards its edge',
  circumsolar: 'a darkening disc with a bright sky around it',
};

export function assumptions(input: OpticsInput, set: SetUp): Assumption[] {
  const { sun, site, vessel } = input;
  const { dish } = input;
  const rimAbove = dish.profile.height(dish.apertureRadius) > set.vesselHeight;
  const mrad = (sun.shape === 'uniform' ? '4.65 mrad' : '4.65 mrad as published') + (site ? ', scaled to the day' : '');
  return [
    site === null
      ? {
          quantity: 'irradiance',
          assumption: `${sun.irradianceWPerM2} W/m² of direct sun; the default of 800 is a round value for a clear day`,
          source: 'the design, sun.irradiance',
        }
      : {
          quantity: 'irradiance',
          assumption: `clear sky at the site, mean over the hours with the sun above ${site.minElevationDeg}°: ${set.irradianceWPerM2.toFixed(0)} W/m², with little haze (optical depth 0.1), 15 mm of water vapour and 3 mm of ozone overhead, ${standardPressure(site.altitudeM).toFixed(0)} hPa; haze takes more, cloud all`,
          source: 'Bird and Hulstrom, SERI/TR-642-761, 1981; pressure of the standard atmosphere, ISO 2533',
        },
    {
      quantity: 'size of the sun',
      assumption: `${shapes[sun.shape]}, half-angle ${mrad}${sun.shape === 'circumsolar' ? `; ${(100 * sun.circumsolarRatio).toFixed(0)} % of the light from around the disc` : ''}`,
      source:
        sun.shape === 'uniform'
          ? 'usual in the literature of concentrators'
          : 'Buie, Monger and Dey, Solar Energy 74, 2003',
    },
    {
      quantity: 'waviness',
      assumption: `slope error of ${sun.slopeErrorMrad} mrad in each direction with usual care (good ${sun.slopeErrorGoodMrad}, poor ${sun.slopeErrorPoorMrad}), spread of the reflection ${sun.specularityMrad} mrad, both normal`,
      source: 'the design, or the usual for this mirror: an estimate from memory, not a measurement',
    },
    {
      quantity: 'curled edges',
      assumption:
        sun.edgeCurlMrad === null
          ? `panel bent to the dish and held down along both edges, Poisson’s ratio ${boardPoissonRatio}`
          : `edges turned by ${sun.edgeCurlMrad} mrad, growing evenly from the mid-line`,
      source:
        sun.edgeCurlMrad === null
          ? 'plate bending after Ashwell, Journal of the Royal Aeronautical Society 54, 1950, with held edges'
          : 'the design, sun.edgeCurl',
    },
    {
      quantity: 'spot',
      assumption: `level disc, lit from below${rimAbove ? ' and, by the mirror above it, from above, which a vessel takes on its side' : ''}; ${sun.pointingErrorDeg === 0 ? 'aimed true' : `aimed ${sun.pointingErrorDeg}° off the sun`}; ribs true to the file`,
      source: 'ray trace of this program, held against closed forms',
    },
    {
      quantity: 'power',
      assumption: `${input.reflector.name}: reflectance ${input.reflector.reflectance}${tiles(input)}; absorptance ${vessel.absorptance}; both the same at every angle, and clean; what the hub and the vessel’s side catch is left out`,
      source: input.reflector.source,
    },
    ...heatAssumptions(input),
    {
      quantity: 'pointing',
      assumption: 'the sun moves by 15° an hour at most, so 4 minutes a degree at least',
      source: 'one turn of the earth a day',
    },
    {
      quantity: 'one mm of rib error',
      assumption:
        'each rib by itself deviates by 1 mm (standard deviation) as one wave along its length, and tilts the panels across',
      source: 'an estimate of this program',
    },
  ];
}

function tiles({ reflector: { tile } }: OpticsInput): string {
  return tile > 0 ? `, in flat tiles of ${tile} mm along the panel` : '';
}

function heatAssumptions({ load, vessel, air }: OpticsInput): Assumption[] {
  return [
    {
      quantity: 'heat losses',
      assumption: `${load === null ? 'both faces of a disc' : 'closed cylinder a fifth higher than its content, lid on'}, wind ${air.windMPerS} m/s at ${air.ambientC} °C (2.8 + 3·v W/m²K), emittance ${vessel.emittance} towards surroundings as warm as the air`,
      source: 'Watmuff, Charters and Proctor, 1977, in Duffie and Beckman; radiation by Stefan and Boltzmann',
    },
    ...(load === null
      ? []
      : [
          {
            quantity: 'time to target',
            assumption:
              'the load at one temperature throughout, nothing evaporates, the vessel’s own heat left out, steady sun',
            source: 'energy balance',
          },
        ]),
    {
      quantity: 'standardised cooking power',
      assumption:
        '7 kg of water for each m² of aperture, readings of ten minutes from 5 K above the air to 5 K below boiling at the place’s altitude, scaled from direct irradiance',
      source: 'ASAE S580.1',
    },
  ];
}
