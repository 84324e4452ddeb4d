/** What each value rests on, stated with it. */
import { standardPressure } from './atmosphere.js';
import { boardPoissonRatio } from './edge-curl.js';
import type { SetUp } from './set-up.js';
import type { Assumption, OpticsInput, Vessel } from './types.js';

const shapes: Readonly<Record<OpticsInput['sun']['shape'], string>> = {
  uniform: 'a disc of uniform brightness',
  'limb-darkened': 'a disc that darkens towards its edge',
  circumsolar: 'a darkening disc with a bright sky around it',
};

function irradianceAssumption({ sun, site, day }: OpticsInput, set: SetUp): Assumption {
  if (site === null)
    return {
      quantity: 'irradiance',
      assumption: `${set.irradianceWPerM2} W/m² of direct sun ${sun.elevationDeg}° high; a round value for a clear day is 800`,
      source: 'the design, sun.irradiance and sun.elevation',
    };
  const sky = `optical depth ${day.haze} of haze, ${day.waterVapour} mm of water vapour and 3 mm of ozone overhead, ${standardPressure(site.altitudeM).toFixed(0)} hPa`;
  return {
    quantity: 'irradiance',
    assumption:
      sun.irradianceWPerM2 === null
        ? `clear sky at the site, at noon: ${set.irradianceWPerM2.toFixed(0)} W/m², with ${sky}; haze takes more, cloud all of it`
        : `${set.irradianceWPerM2.toFixed(0)} W/m² at noon as stated in the design; the other hours in proportion to a clear sky with ${sky}`,
    source: 'Bird and Hulstrom, SERI/TR-642-761, 1981; pressure by ISO 2533',
  };
}

const kinds: Readonly<Record<Vessel['kind'], string>> = {
  pot: 'a pot with base, side and lid',
  plate: 'a plate',
  coil: 'a close-wound coil, treated as the closed cylinder around it',
  cavity: 'a cavity: light that enters its mouth is reflected about inside',
};

function spotAssumption({ sun, vessel }: OpticsInput, set: SetUp): Assumption {
  const aimed = sun.pointingErrorDeg === 0 ? 'aimed true' : `aimed ${sun.pointingErrorDeg}° below the sun`;
  const height = `${((set.sunElevation * 180) / Math.PI).toFixed(0)}°`;
  return {
    quantity: 'spot',
    assumption:
      vessel === null
        ? `the bare focus, ${aimed}; ribs exactly as designed`
        : `${kinds[vessel.kind]}, ${vessel.mount === 'level' ? `hung level under a sun ${height} high` : 'fixed to the dish’s axis'}, ${aimed}; ribs exactly as designed; what it reflects is lost, and direct sunlight on it is left out`,
    source: 'this program’s ray trace, checked against closed forms and a simple tracer',
  };
}

export function assumptions(input: OpticsInput, set: SetUp): Assumption[] {
  const { sun, site, vessel } = input;
  const mrad = (sun.shape === 'uniform' ? '4.65 mrad' : '4.65 mrad as published') + (site ? ', scaled to the day' : '');
  return [
    irradianceAssumption(input, set),
    {
      quantity: 'size of the sun',
      assumption: `${shapes[sun.shape]}, half-angle ${mrad}${sun.shape === 'circumsolar' ? `; ${(100 * sun.circumsolarRatio).toFixed(0)} % of the light from around the disc` : ''}`,
      source:
        sun.shape === 'uniform'
          ? 'usual in the literature on concentrators'
          : 'Buie, Monger and Dey, Solar Energy 74, 2003',
    },
    {
      quantity: 'waviness',
      assumption: `slope error of ${sun.slopeErrorMrad} mrad in each direction with usual workmanship (good ${sun.slopeErrorGoodMrad}, poor ${sun.slopeErrorPoorMrad}), spread of the reflection ${sun.specularityMrad} mrad, both normal`,
      source: 'the design, or the usual value for this mirror, from memory',
    },
    {
      quantity: 'curled edges',
      assumption:
        sun.edgeCurlMrad === null
          ? `panel bent to the dish and held down along both edges, Poisson’s ratio ${boardPoissonRatio}`
          : `edges turned by ${sun.edgeCurlMrad} mrad, growing evenly from the mid-line`,
      source:
        sun.edgeCurlMrad === null
          ? 'plate bending after Ashwell, Journal of the Royal Aeronautical Society 54, 1950'
          : 'the design, sun.edgeCurl',
    },
    spotAssumption(input, set),
    {
      quantity: 'power',
      assumption: `${input.reflector.name}: reflectance ${input.reflector.reflectance}${tiles(input)}${vessel ? `; absorptance ${vessel.baseAbsorptance} of the base and ${vessel.sideAbsorptance} of side and lid` : ''}; the same at every angle, clean surfaces`,
      source: input.reflector.source,
    },
    ...heatAssumptions(input, set),
    {
      quantity: 'workmanship errors',
      assumption: 'one at a time; each rib independent of its neighbours',
      source: 'an estimate by this program',
    },
  ];
}

function tiles({ reflector: { tile } }: OpticsInput): string {
  return tile > 0 ? `, in flat tiles of ${tile} mm along the panel` : '';
}

/** By the hour a value falls between those that the design names. */
const tenth = (value: number): string => String(Number(value.toFixed(1)));

function heatAssumptions({ load, vessel }: OpticsInput, { air }: SetUp): Assumption[] {
  if (vessel === null) return [];
  return [
    {
      quantity: 'heat losses',
      assumption: `${vessel.lid ? 'lid on' : 'no lid'}, wind ${tenth(air.windMPerS)} m/s at ${tenth(air.ambientC)} °C (2.8 + 3·v W/m²K), emittance ${vessel.emittance} towards surroundings at air temperature${vessel.insulation.thickness > 0 ? `, ${vessel.insulation.thickness} mm of insulation of ${vessel.insulation.conductivityWPerMK} W/mK` : ''}`,
      source: `Watmuff, Charters and Proctor, 1977, in Duffie and Beckman; Stefan and Boltzmann${vessel.lid ? '' : '; steam by the analogy of heat and mass transfer, Incropera and DeWitt'}`,
    },
    ...(load === null
      ? []
      : [
          {
            quantity: 'time to target',
            assumption: `the load at one temperature throughout, ${vessel.wall.massKg.toFixed(1)} kg of vessel warmed with it, steady sun`,
            source: `energy balance${load.filling === 'water' && load.heatCapacityJPerKgK === null ? '; heat of water by IAPWS R7-97' : ''}`,
          },
          {
            quantity: 'scorching',
            assumption:
              'the brightest cell of the map, ignoring heat conducted sideways in the wall; natural convection inside (Lloyd and Moran) and boiling (Jakob and Hawkins)',
            source: 'flux limits from memory, as makers of immersion heaters recommend',
          },
        ]),
    {
      quantity: 'standardised cooking power',
      assumption:
        '7 kg of water for each m² of aperture, lid on, ten-minute readings from 5 K above the air to 5 K below boiling at the site, scaled from direct irradiance',
      source: 'ASAE S580.1',
    },
  ];
}
