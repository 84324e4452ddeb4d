/** From a design to the input of the forecast. */
import type { Design } from '../design/index.js';
import type { DishShape } from '../dish/index.js';
import { standardPressure, waterBoilingC } from './atmosphere.js';
import { boils } from './filling.js';
import { midLine, panelPlanArea } from './mid-line.js';
import { careFactors, mirrorOfDesign } from './mirrors.js';
import type { Load, OpticsInput, Site, Vessel } from './types.js';
import { wallMaterial } from './wall.js';

/** The sections of a design that the forecast reads. */
export type OpticsDesign = Pick<
  Design,
  'materials' | 'panel' | 'vessel' | 'load' | 'sun' | 'site' | 'day' | 'reflector'
>;

/** A round value for a clear day, where neither an irradiance nor a site is given. */
const USUAL_IRRADIANCE = 800;

function vesselOf(vessel: NonNullable<OpticsDesign['vessel']>): Vessel {
  const { heatCapacityJPerKgK, conductivityWPerMK } = wallMaterial(vessel.wall);
  return {
    kind: vessel.kind,
    mount: vessel.mount,
    diameter: vessel.diameter,
    height: vessel.height,
    offset: vessel.offset,
    opening: vessel.opening,
    baseAbsorptance: vessel.baseAbsorptance,
    sideAbsorptance: vessel.sideAbsorptance,
    emittance: vessel.emittance,
    lid: vessel.lid,
    wall: { thickness: vessel.wallThickness, massKg: vessel.wallMass, heatCapacityJPerKgK, conductivityWPerMK },
    insulation: { thickness: vessel.insulation, conductivityWPerMK: vessel.insulationConductivity },
    holder: { arms: vessel.holderArms, width: vessel.holderWidth },
  };
}

function loadOf(load: NonNullable<OpticsDesign['load']>, altitudeM: number): Load {
  return {
    filling: load.filling,
    massKg: load.mass,
    heatCapacityJPerKgK: load.heatCapacity ?? null,
    densityKgPerM3: load.density,
    startC: load.start,
    targetC: load.target,
    boilingPointC: load.boilingPoint ?? (boils(load.filling) ? boilingOfWater(altitudeM) : null),
    maxFluxWPerM2: load.maxFlux === undefined ? null : 1000 * load.maxFlux,
  };
}

/** The clock nearest to the sun's own time, hours ahead of UTC. */
const zoneOf = (longitudeDeg: number): number => Math.round(longitudeDeg / 15);

function siteOf(site: NonNullable<OpticsDesign['site']>): Site {
  return {
    latitudeDeg: site.latitude,
    longitudeDeg: site.longitude,
    altitudeM: site.altitude ?? 0,
    timeZone: site.timeZone ?? zoneOf(site.longitude),
  };
}

/**
 * The input of the forecast; without a vessel that of the bare focus.
 * @param stripSeamShare share of the panels' face without mirror, when the strips' layout is known; estimated from tape,
 *   battens and inset when left out
 */
export function opticsInput(design: OpticsDesign, dish: DishShape, stripSeamShare?: number): OpticsInput {
  const { vessel, load, sun, site, day } = design;
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
    vessel: vessel === undefined ? null : vesselOf(vessel),
    load: load === undefined ? null : loadOf(load, site?.altitude ?? 0),
    sun: {
      irradianceWPerM2: sun.irradiance ?? (site === undefined ? USUAL_IRRADIANCE : null),
      elevationDeg: sun.elevation,
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
    site: site === undefined ? null : siteOf(site),
    day: {
      date: day.date,
      minElevationDeg: day.minElevation,
      startHour: day.start ?? null,
      ambientC: day.ambient,
      windMPerS: day.wind,
      haze: day.haze,
      waterVapour: day.waterVapour,
      humidity: day.humidity,
    },
  };
}

/** Boiling point of water at an altitude, in whole degrees: the weather alone moves it by half a degree. */
function boilingOfWater(altitudeM: number): number {
  return Math.round(waterBoilingC(standardPressure(altitudeM)));
}

/** What tape or battens beyond the open seam, or the inset, cover along the panels' edges. */
function edgeShare({ reflector, panel }: OpticsDesign, dish: DishShape): number {
  const batten = panel.fixing === 'battens' ? panel.battenWidth - panel.gap : 0;
  const covered = Math.max(reflector.inset, (reflector.tape - panel.gap) / 2, batten / 2, 0);
  if (covered === 0) return 0;
  const line = midLine(dish);
  return Math.min(1, (2 * covered * (line.to - line.from)) / panelPlanArea(line));
}
