/** From the input to the settings of the trace, and the areas that need no trace. */
import type { DishShape } from '../dish/index.js';
import { panelPlanArea, type MidLine, midLine } from './mid-line.js';
import { type SunDay, sunDay } from './sun-day.js';
import { meanSunRadius, sunShape } from './sun-shape.js';
import type { TraceSettings } from './trace.js';
import type { OpticsInput } from './types.js';

/** Independent batches of every trace. */
const BATCHES = 16;

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
  readonly irradianceWPerM2: number;
  readonly vesselRadius: number;
  /** Of the vessel's underside above the vertex. */
  readonly vesselHeight: number;
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

/** Prepares the trace of a checked input. */
export function setUp(input: OpticsInput): SetUp {
  const { dish, vessel, sun, site } = input;
  const line = midLine(dish);
  const day = site === null ? null : sunDay(site);
  const vesselRadius = vessel.diameter / 2;
  const vesselHeight = dish.profile.focusHeight + vessel.offset;
  return {
    line,
    areas: planAreas(dish, line, input.reflector.stripSeamShare),
    day,
    irradianceWPerM2: day === null ? sun.irradianceWPerM2 : day.meanDirectWPerM2,
    vesselRadius,
    vesselHeight,
    settings: {
      shape: dish,
      sun: sunShape(sun.shape, sun.circumsolarRatio, day?.angularRadius ?? meanSunRadius),
      slopeError: sun.slopeErrorMrad / 1000,
      specularity: sun.specularityMrad / 1000,
      edgeCurlMrad: sun.edgeCurlMrad,
      pointing: (sun.pointingErrorDeg * Math.PI) / 180,
      ribError: 0,
      tile: input.reflector.tile,
      shade: { radius: vesselRadius, height: vesselHeight },
      batches: BATCHES,
    },
  };
}
