/** What the vessel gets of the focus. */
import { AimTraces, type Aim, aimOf, type AimDirection, quickTolerance } from './aim.js';
import { minRibs } from './closed-form.js';
import { estimate } from './estimate.js';
import { type Hanging, hangingFor } from './hanging.js';
import { interceptOf, type SetUp, solidAt } from './set-up.js';
import { absorptances, lightOn, type SurfaceShares } from './catch.js';
import type { Solid, Surface } from './solid.js';
import { fewer } from './spot.js';
import type { Rays } from './trace.js';
import type { Estimate, OpticsInput, Vessel } from './types.js';
import { type VesselMap, vesselMap } from './vessel-map.js';

/** The vessel at one height of the sun. */
export interface SunHeight {
  readonly elevationDeg: number;
  readonly takenUpW: number;
  readonly bySurfaceW: Readonly<Record<Surface, number>>;
  /** Angle off the sun that keeps 90 %, degrees. */
  readonly toleranceDeg: Readonly<Record<AimDirection, number>>;
  readonly best: Hanging | null;
}

export interface VesselForecast {
  readonly radius: number;
  readonly height: number;
  readonly offset: number;
  /** Share of the light that the mirror gives back that meets it. */
  readonly intercept: Estimate;
  /** Mean over the base, suns. */
  readonly meanOnBase: Estimate;
  readonly map: VesselMap;
  readonly hanging: Hanging | null;
  readonly aim: Aim;
  readonly bySunHeight: readonly SunHeight[];
  /** Fewest ribs at which the panels' flat width alone falls wholly on a disc as wide as the vessel. */
  readonly minRibs: number;
}

const RAD = Math.PI / 180;
/** Heights of the sun that are told, degrees. */
const HEIGHTS = [20, 30, 40, 50, 60, 75, 90];
/** Share of the searched rays with which heights of the vessel are compared. */
const COARSE = 1 / 4;

function atHeight(
  input: OpticsInput,
  vessel: Vessel,
  set: SetUp,
  traces: AimTraces,
  aim: Aim,
  elevationDeg: number,
): SunHeight {
  const elevation = elevationDeg * RAD;
  const rays = traces.rays('low', 0);
  const watts = (set.given * set.irradianceWPerM2) / 1e6 / Math.cos(set.settings.pointing);
  const solid = solidAt(input, elevation) as Solid;
  const shares = lightOn(rays, solid);
  const alpha = absorptances(vessel);
  const of = (surface: Surface) => estimate(shares[surface]).value * alpha[surface] * watts;
  const bySurfaceW = { base: of('base'), side: of('side'), lid: of('lid'), mouth: of('mouth') };
  const tolerance = (direction: AimDirection) =>
    quickTolerance(traces, direction, elevation, aim.toleranceDeg[direction].value);
  return {
    elevationDeg,
    takenUpW: Object.values(bySurfaceW).reduce((a, b) => a + b, 0),
    bySurfaceW,
    toleranceDeg: { low: tolerance('low'), high: tolerance('high'), aside: tolerance('aside') },
    best: hangingFor(input, set, fewer(rays, rays.count * COARSE), [
      { elevation, irradianceWPerM2: set.irradianceWPerM2, share: 1 },
    ]),
  };
}

/**
 * @param built the dish as built
 * @param light of it on the vessel
 * @param searched rays for searches
 */
export function vesselForecast(
  input: OpticsInput,
  vessel: Vessel,
  set: SetUp,
  built: Rays,
  light: SurfaceShares,
  traces: AimTraces,
  searched: number,
): VesselForecast {
  const solid = set.solid as Solid;
  const faceM2 = (Math.PI * solid.radius ** 2) / 1e6;
  const aim = aimOf(traces, set.sunElevation);
  const few = fewer(built, searched);
  const heights = vessel.mount === 'level' ? HEIGHTS : [HEIGHTS[HEIGHTS.length - 1] ?? 90];
  return {
    radius: solid.radius,
    height: solid.height,
    offset: vessel.offset,
    intercept: estimate(interceptOf(light)),
    meanOnBase: estimate(light.base.map((share) => (share * set.given) / 1e6 / faceM2)),
    map: vesselMap(built, solid, vessel, set.given),
    hanging: hangingFor(input, set, few, [
      { elevation: set.sunElevation, irradianceWPerM2: set.irradianceWPerM2, share: 1 },
    ]),
    aim,
    bySunHeight: heights.map((degrees) => atHeight(input, vessel, set, traces, aim, degrees)),
    minRibs: minRibs(solid.radius, input.dish.apertureRadius),
  };
}
