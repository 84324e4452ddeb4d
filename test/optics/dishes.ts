/** Dishes for the tests of the forecast. Invented. */
import type { DishShape } from '../../lib/dish/index.js';
import { type ShapeChange, shapeWith } from '../dish/shapes.js';
import type { OpticsInput, Vessel } from '../../lib/optics/index.js';
import type { TraceSettings } from '../../lib/optics/trace.js';

/** The press-house dish of the fixtures. */
export const dishOf = (change: ShapeChange = {}): DishShape => shapeWith({ facingThickness: 3.3, ...change });

/** A dish of so many panels, without seams, that it is as good as smooth. */
export function smoothDish(change: ShapeChange = {}): DishShape {
  return dishOf({
    ribCount: 20_000,
    seamGap: 0,
    facingThickness: 1e-6,
    panelThickness: 1e-6,
    reflectorThickness: 0,
    ...change,
  });
}

/** A point sun and no errors. */
export function perfect(shape: DishShape, change: Partial<TraceSettings> = {}): TraceSettings {
  return {
    shape,
    sun: null,
    slopeError: 0,
    specularity: 0,
    edgeCurlMrad: 0,
    pointing: 0,
    towards: 0,
    ribError: 0,
    ribShift: 0,
    tile: 0,
    rays: 262_144,
    batches: 16,
    seed: 1,
    ...change,
  };
}

/** A disc across the axis: a vessel without a side. */
export function discOf(diameter: number): Vessel {
  return {
    kind: 'pot',
    mount: 'axis',
    diameter,
    height: 0,
    offset: 0,
    opening: 0,
    baseAbsorptance: 0.9,
    sideAbsorptance: 0.9,
    emittance: 0.9,
    lid: true,
    wall: { thickness: 1, massKg: 0, heatCapacityJPerKgK: 500, conductivityWPerMK: 16 },
    insulation: { thickness: 0, conductivityWPerMK: 0.04 },
    holder: { arms: 0, width: 20 },
  };
}

/** An input with some sections changed. */
export function inputOf(
  change: { [Key in keyof OpticsInput]?: Partial<NonNullable<OpticsInput[Key]>> | null } = {},
): OpticsInput {
  const whole: OpticsInput = {
    dish: dishOf(),
    reflector: { name: 'a mirror', source: 'invented', reflectance: 0.85, tile: 0, stripSeamShare: 0 },
    vessel: discOf(260),
    load: {
      filling: 'water',
      massKg: 12,
      heatCapacityJPerKgK: 4186,
      densityKgPerM3: 1000,
      startC: 12,
      targetC: 78,
      boilingPointC: 100,
      maxFluxWPerM2: null,
    },
    sun: {
      irradianceWPerM2: 800,
      elevationDeg: 45,
      shape: 'uniform',
      circumsolarRatio: 0.05,
      slopeErrorMrad: 3,
      slopeErrorGoodMrad: 1.5,
      slopeErrorPoorMrad: 6,
      specularityMrad: 1,
      edgeCurlMrad: null,
      pointingErrorDeg: 0,
      parkedAngleDeg: null,
    },
    site: null,
    day: {
      date: '2026-06-21',
      minElevationDeg: 15,
      startHour: null,
      ambientC: [[0, 20]],
      windMPerS: [[0, 2]],
      haze: 0.1,
      waterVapour: 15,
      humidity: 0.5,
    },
  };
  const merged = Object.entries(change).map(([key, value]) => {
    const before = whole[key as keyof OpticsInput];
    return [key, value === null ? null : { ...before, ...value }];
  });
  return { ...whole, ...(Object.fromEntries(merged) as Partial<OpticsInput>) };
}
