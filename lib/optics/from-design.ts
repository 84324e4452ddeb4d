/** From a design to what the forecast takes. */
import type { Design } from '../design/index.js';
import type { DishShape } from '../dish/index.js';
import { standardPressure, waterBoilingC } from './atmosphere.js';
import { careFactors, mirrorOfDesign } from './mirrors.js';
import { midLine, panelPlanArea } from './mid-line.js';
import type { OpticsInput } from './types.js';

/** The sections of a design that the forecast reads. */
export type OpticsDesign = Pick<Design, 'materials' | 'panel' | 'vessel' | 'load' | 'sun' | 'site' | 'reflector'>;

const DEFAULT_AMBIENT_C = 20;
const DEFAULT_WIND_M_PER_S = 2;

/**
 * The input of the forecast, or null when the design names no vessel.
 * @param stripSeamShare share of the panels' face without mirror, when the strips' layout is known; estimated from tape
 *   and inset when left out
 */
export function opticsInput(design: OpticsDesign, dish: DishShape, stripSeamShare?: number): OpticsInput | null {
  const { vessel, load, sun, site } = design;
  if (vessel === undefined) return null;
  const mirror = mirrorOfDesign(design);
  return {
    dish,
    reflector: {
      name: mirror.name,
      source: mirror.source,
      reflectance: mirror.reflectance,
      tile: mirror.tile,
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
      slopeErrorMrad: mirror.slopeErrorMrad,
      slopeErrorGoodMrad: sun.slopeErrorGood ?? careFactors.good * mirror.slopeErrorMrad,
      slopeErrorPoorMrad: sun.slopeErrorPoor ?? careFactors.poor * mirror.slopeErrorMrad,
      specularityMrad: mirror.specularityMrad,
      edgeCurlMrad: sun.edgeCurl ?? null,
      pointingErrorDeg: sun.pointingError,
      parkedAngleDeg: sun.parkedAngle ?? null,
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
