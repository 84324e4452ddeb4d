/** From a design to what the forecast takes. */
import type { Design } from '../design/index.js';
import type { DishShape } from '../dish/index.js';
import { standardPressure, waterBoilingC } from './atmosphere.js';
import { midLine, panelPlanArea } from './mid-line.js';
import type { OpticsInput } from './types.js';

/** The sections of a design that the forecast reads. */
export type OpticsDesign = Pick<Design, 'panel' | 'vessel' | 'load' | 'sun' | 'site' | 'reflector'>;

const DEFAULT_AMBIENT_C = 20;
const DEFAULT_WIND_M_PER_S = 2;

/**
 * The input of the forecast, or null when the design names no vessel.
 * @param stripSeamShare share of the panels' face without mirror, when the strips' layout is known; estimated from tape
 *   and inset when left out
 */
export function opticsInput(design: OpticsDesign, dish: DishShape, stripSeamShare?: number): OpticsInput | null {
  const { vessel, load, sun, site, reflector } = design;
  if (vessel === undefined) return null;
  return {
    dish,
    reflector: {
      reflectance: reflector.reflectance,
      stripSeamShare: stripSeamShare ?? edgeShare(design, dish),
    },
    vessel: {
      diameter: vessel.diameter,
      offset: vessel.offset,
      absorptance: vessel.absorptance,
      emittance: vessel.emittance,
    },
    load:
      load === undefined
        ? null
        : {
            massKg: load.mass,
            heatCapacityJPerKgK: load.heatCapacity,
            densityKgPerM3: load.density,
            startC: load.start,
            targetC: load.target,
            boilingPointC: load.boilingPoint ?? boilingOfWater(site?.altitude ?? 0),
          },
    air: { ambientC: load?.ambient ?? DEFAULT_AMBIENT_C, windMPerS: load?.wind ?? DEFAULT_WIND_M_PER_S },
    sun: {
      irradianceWPerM2: sun.irradiance,
      shape: sun.shape,
      circumsolarRatio: sun.circumsolarRatio,
      slopeErrorMrad: sun.slopeError,
      specularityMrad: sun.specularity,
      edgeCurlMrad: sun.edgeCurl ?? null,
      pointingErrorDeg: sun.pointingError,
    },
    site:
      site === undefined
        ? null
        : {
            latitudeDeg: site.latitude,
            longitudeDeg: site.longitude,
            date: site.date,
            altitudeM: site.altitude ?? 0,
            minElevationDeg: site.minElevation,
          },
  };
}

/** Boiling point of water at an altitude, in whole degrees: the weather alone moves it by half a degree. */
function boilingOfWater(altitudeM: number): number {
  return Math.round(waterBoilingC(standardPressure(altitudeM)));
}

/** What tape beyond the open seam, or the inset, covers along the panels' edges. */
function edgeShare({ reflector, panel }: OpticsDesign, dish: DishShape): number {
  const covered = Math.max(reflector.inset, (reflector.tape - panel.gap) / 2, 0);
  if (covered === 0) return 0;
  const line = midLine(dish);
  return Math.min(1, (2 * covered * (line.to - line.from)) / panelPlanArea(line));
}
