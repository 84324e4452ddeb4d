/** From the input to the settings of the trace, and the areas that need no trace. */
import type { DishShape } from '../dish/index.js';
import { f64 } from '../geometry/typed-arrays.js';
import { caughtOf, lightOn, type SurfaceShares, takenUpOf } from './catch.js';
import { airAt } from './hourly.js';
import { panelPlanArea, type MidLine, midLine } from './mid-line.js';
import { axisElevation, placeVessel, type Solid } from './solid.js';
import { type SunDay, sunDay } from './sun-day.js';
import { meanSunRadius, sunShape } from './sun-shape.js';
import type { Rays, TraceSettings } from './trace.js';
import type { Air, OpticsInput } from './types.js';

/** Independent batches of every trace. */
const BATCHES = 16;
const RAD = Math.PI / 180;

/** Areas in plan, mm². They add up to the round aperture. */
export interface PlanAreas {
  readonly aperture: number;
  /** Between the round aperture and the straight outer edges of the panels. */
  readonly rim: number;
  /** Inside the inner ends of the panels. */
  readonly hub: number;
  readonly seams: number;
  /** Tape, inset and joints of the reflector strips. */
  readonly strips: number;
  readonly mirror: number;
}

export interface SetUp {
  readonly line: MidLine;
  readonly areas: PlanAreas;
  readonly day: SunDay | null;
  /** The moment that the figures hold for: noon at a site, else what the design names. */
  readonly irradianceWPerM2: number;
  /** Height of the sun, radians. */
  readonly sunElevation: number;
  readonly air: Air;
  /** The vessel as the dish sees it at that moment; null for the bare focus. */
  readonly solid: Solid | null;
  /** Plane square to the axis in which the spot is described: that of the base's middle, or the focus. */
  readonly planeHeight: number;
  /** Light that the mirror gives back, less the shade, as an area of full sun, mm². */
  readonly given: number;
  /** Everything as built; the number of rays is filled in by the caller. */
  readonly settings: Omit<TraceSettings, 'rays' | 'seed'>;
}

export function planAreas(shape: DishShape, line: MidLine, stripSeamShare: number): PlanAreas {
  const polygon = (apothem: number) => shape.layout.ribs.length * line.widthSlope * apothem * apothem;
  const panels = shape.layout.ribs.length * panelPlanArea(line);
  const aperture = Math.PI * shape.apertureRadius ** 2;
  return {
    aperture,
    rim: aperture - polygon(line.to),
    hub: polygon(line.from),
    seams: shape.layout.ribs.length * 2 * line.widthTaken * (line.to - line.from),
    strips: panels * stripSeamShare,
    mirror: panels * (1 - stripSeamShare),
  };
}

/** The vessel while the sun stands at a height and the dish's axis is off it. */
export function solidAt(
  { vessel, dish }: Pick<OpticsInput, 'vessel' | 'dish'>,
  sunElevation: number,
  off = 0,
  towards = 0,
): Solid | null {
  return vessel && placeVessel(vessel, dish.profile.focusHeight, axisElevation(sunElevation, off, towards));
}

/** Prepares the trace of a checked input. */
export function setUp(input: OpticsInput): SetUp {
  const { dish, vessel, sun, site } = input;
  const line = midLine(dish);
  const day = site === null ? null : sunDay(site, input.day, sun.irradianceWPerM2);
  const sunElevation = (day === null ? sun.elevationDeg : day.noonElevationDeg) * RAD;
  const pointing = sun.pointingErrorDeg * RAD;
  const areas = planAreas(dish, line, input.reflector.stripSeamShare);
  const noonHour = day?.noonHour ?? 12;
  return {
    line,
    areas,
    day,
    irradianceWPerM2: day === null ? (sun.irradianceWPerM2 ?? 0) : day.noonDirectWPerM2,
    sunElevation,
    air: airAt(input.day, noonHour),
    solid: solidAt(input, sunElevation, pointing, 0),
    planeHeight:
      dish.profile.focusHeight +
      (vessel?.mount === 'axis' ? vessel.offset : (vessel?.offset ?? 0) * Math.sin(sunElevation)),
    given: areas.mirror * input.reflector.reflectance * Math.cos(pointing),
    settings: {
      shape: dish,
      sun: sunShape(sun.shape, sun.circumsolarRatio, day?.angularRadius ?? meanSunRadius),
      slopeError: sun.slopeErrorMrad / 1000,
      specularity: sun.specularityMrad / 1000,
      edgeCurlMrad: sun.edgeCurlMrad,
      pointing,
      towards: 0,
      ribError: 0,
      ribShift: 0,
      tile: input.reflector.tile,
      batches: BATCHES,
    },
  };
}

/** Share of the mirror's light that the vessel takes up, batch by batch; 0 without one. */
export function takenUpShares(rays: Rays, solid: Solid | null, { vessel }: Pick<OpticsInput, 'vessel'>): Float64Array {
  return solid && vessel ? takenUpOf(lightOn(rays, solid), vessel) : new Float64Array(rays.batches);
}

/** Intercept: share of the unshaded light that meets the vessel, batch by batch. */
export function interceptOf(light: SurfaceShares): Float64Array {
  return caughtOf(light).map((one, i) => (one === 0 ? 0 : one / (1 - f64(light.shade, i))));
}

/** The intercept of rays; all of it at the bare focus. */
export function meetsVessel(rays: Rays, solid: Solid | null): Float64Array {
  return solid === null ? new Float64Array(rays.batches).fill(1) : interceptOf(lightOn(rays, solid));
}
