/** Times the ray trace and the forecast; one JSON line a case: what, size (rays), seconds (minimum of the runs), result. */
import { type DishShape, paraboloid, radialLayout } from '../../lib/dish/index.js';
import { advise, forecast, type OpticsInput } from '../../lib/optics/index.js';
import { withShade } from '../../lib/optics/catch.js';
import { estimate } from '../../lib/optics/estimate.js';
import { disc } from '../../lib/optics/solid.js';
import { intercepts, squaredRadii } from '../../lib/optics/spot.js';
import { sunShape } from '../../lib/optics/sun-shape.js';
import { trace, type TraceSettings } from '../../lib/optics/trace.js';

const RUNS = 5;

function report(what: string, size: number, run: () => number): void {
  let figure = run();
  let seconds = Infinity;
  for (let i = 0; i < RUNS; i++) {
    const start = performance.now();
    figure = run();
    seconds = Math.min(seconds, (performance.now() - start) / 1000);
  }
  console.log(
    JSON.stringify({ what, size, seconds: Number(seconds.toPrecision(4)), figure: Number(figure.toPrecision(8)) }),
  );
}

/** The press-house dish of the fixtures. */
const dish: DishShape = {
  figure: 'panel',
  profile: paraboloid(550),
  layout: radialLayout(24),
  apertureRadius: 750,
  ribThickness: 12,
  panelThickness: 3,
  reflectorThickness: 0.3,
  facingThickness: 3.3,
  seamGap: 2,
  baseHeight: 60,
  innerRadius: 51,
};

const input: OpticsInput = {
  dish,
  reflector: { name: 'a mirror', source: 'the bench', reflectance: 0.85, tile: 0, stripSeamShare: 0 },
  vessel: {
    kind: 'pot',
    mount: 'level',
    diameter: 260,
    height: 272,
    offset: 0,
    opening: 0,
    baseAbsorptance: 0.9,
    sideAbsorptance: 0.9,
    emittance: 0.9,
    lid: true,
    wall: { thickness: 1, massKg: 2.6, heatCapacityJPerKgK: 500, conductivityWPerMK: 16 },
    insulation: { thickness: 0, conductivityWPerMK: 0.04 },
    holder: { arms: 0, width: 0 },
  },
  load: {
    filling: 'juice',
    massKg: 12,
    heatCapacityJPerKgK: null,
    densityKgPerM3: 1050,
    startC: 12,
    targetC: 78,
    boilingPointC: 100,
    maxFluxWPerM2: null,
  },
  sun: {
    irradianceWPerM2: null,
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
  site: { latitudeDeg: 47, longitudeDeg: 11, altitudeM: 600, timeZone: 1 },
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

/** Runs all cases; the result is the intercept of a 120 mm vessel, the watts taken up, or the least number of ribs. */
export function benchOptics(): void {
  const settings: TraceSettings = {
    shape: dish,
    sun: sunShape('uniform', 0),
    slopeError: 3e-3,
    specularity: 1e-3,
    edgeCurlMrad: null,
    pointing: 0,
    towards: 0,
    ribError: 0,
    ribShift: 0,
    tile: 0,
    rays: 1_000_000,
    batches: 16,
    seed: 1,
  };
  const intercept = (pointing: number) => {
    const rays = withShade(trace({ ...settings, pointing }), disc(130, 550));
    return estimate(intercepts(rays, squaredRadii(rays, 550), 60)).value;
  };
  report('trace, aimed true', 1_000_000, () => intercept(0));
  report('trace, aimed 1° off the sun', 1_000_000, () => intercept(Math.PI / 180));
  report('forecast', 262_144, () => forecast(input, { seed: 1 }).power.takenUpW.value);
  report('advice', 16_384, () => advise(input, { seed: 1 })?.ribs.best ?? NaN);
}
