/**
 * The forecast against dishes that were built and measured (fixtures/measured): what the papers do not say is taken at
 * both ends of what is likely, all ends are combined, and the measured value must lie in the range that this leaves.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { estimate } from '../../lib/optics/estimate.js';
import { fluxMap } from '../../lib/optics/flux-map.js';
import { balanceOf, type Heat } from '../../lib/optics/heat-forecast.js';
import type { OpticsInput } from '../../lib/optics/index.js';
import type { DishShape } from '../../lib/dish/index.js';
import { bestHeight } from '../../lib/optics/best-plane.js';
import { withShade } from '../../lib/optics/catch.js';
import { setUp, takenUpShares } from '../../lib/optics/set-up.js';
import { trace } from '../../lib/optics/trace.js';
import { dishOf, inputOf, smoothDish } from './dishes.js';

interface Settings {
  readonly apertureRadius: number;
  readonly focalLength: number;
  readonly ribs: number | 'smooth';
  readonly irradiance: number;
  readonly reflectance: number;
  readonly absorptance: number;
  readonly slopeError: number;
  readonly diameter: number;
  readonly innerRadius?: number;
  readonly specularity?: number;
  readonly sunShape?: OpticsInput['sun']['shape'];
  readonly wind?: number;
  readonly mass?: number;
  readonly heatCapacity?: number;
  readonly startC?: number;
  readonly targetC?: number;
  readonly simmer?: number;
  readonly rays?: number;
  readonly share?: number;
}

interface Case {
  readonly id: string;
  readonly source: string;
  readonly fixed: Partial<Settings>;
  readonly assumed: {
    readonly [Key in keyof Settings]?: {
      readonly values: readonly Settings[Key][];
    };
  };
  readonly measured: readonly {
    readonly quantity: keyof typeof quantities;
    readonly statement: string;
    readonly value: number;
    /** How finely it is stated, to either side. */
    readonly within: number;
    /** Range of the forecast, written down so that it can be read; the test holds it against the forecast. */
    readonly forecast: readonly [number, number];
  }[];
}

const cases = JSON.parse(
  readFileSync(new URL('../../fixtures/measured/dishes.json', import.meta.url), 'utf8'),
) as readonly Case[];

const shapes = new Map<string, DishShape>();

/** The dish, made once for settings that differ in what it is not about. */
function dishFor({ apertureRadius, focalLength, ribs, innerRadius = 1 }: Settings): DishShape {
  const shape = { apertureRadius, focalLength, innerRadius };
  const key = JSON.stringify({ ...shape, ribs });
  const built =
    shapes.get(key) ??
    (ribs === 'smooth'
      ? smoothDish(shape)
      : dishOf({ ...shape, ribCount: ribs, figure: 'rib', seamGap: 0, facingThickness: 1 }));
  shapes.set(key, built);
  return built;
}

function inputFor(settings: Settings): OpticsInput {
  const { mass, heatCapacity = 4186 } = settings;
  return inputOf({
    dish: dishFor(settings),
    reflector: { reflectance: settings.reflectance },
    vessel: {
      diameter: settings.diameter,
      // a closed pot a fifth higher than its content, hung with the axis
      height: mass === undefined ? 0 : ((1.2 * mass) / 1000 / (Math.PI * (settings.diameter / 2000) ** 2)) * 1000,
      baseAbsorptance: settings.absorptance,
      sideAbsorptance: settings.absorptance,
    },
    load:
      mass === undefined
        ? null
        : {
            massKg: mass,
            heatCapacityJPerKgK: heatCapacity,
            startC: settings.startC ?? 25,
            targetC: settings.targetC ?? 95,
          },
    day: { ambientC: [[0, settings.startC ?? 25]], windMPerS: [[0, settings.wind ?? 2]] },
    sun: {
      irradianceWPerM2: settings.irradiance,
      shape: settings.sunShape ?? 'uniform',
      slopeErrorMrad: settings.slopeError,
      specularityMrad: settings.specularity ?? 1,
      edgeCurlMrad: 0,
    },
  });
}

type Part = Pick<Heat, 'warming' | 'stagnationC' | 'cooking'> & {
  readonly incomingW: number;
  readonly peakSuns: number;
};
const made = new Map<string, Part>();

/** What the forecast says of these quantities, without all else; made once for settings that it does not look at. */
function partOf(settings: Settings): Part {
  const key = JSON.stringify({ ...settings, simmer: null });
  const known = made.get(key);
  if (known) return known;
  const input = inputFor(settings);
  const set = setUp(input);
  const built = trace({ ...set.settings, rays: settings.rays ?? 1024, seed: 1 });
  const watts = (set.irradianceWPerM2 * set.given) / 1e6;
  const takenUpW = estimate(takenUpShares(built, set.solid, input).map((share) => share * watts));
  const shaded = withShade(built, set.solid);
  const { solid, planeHeight, given } = set;
  const part = {
    ...balanceOf(input, input.vessel!, set, takenUpW),
    incomingW: (set.irradianceWPerM2 * set.areas.aperture) / 1e6,
    peakSuns: fluxMap(shaded, planeHeight, 1.4 * solid!.radius, given, input.dish.layout.ribs.length, true).peak.value,
  };
  made.set(key, part);
  return part;
}

const quantities = {
  /** Standardised cooking power as a share of the sunlight on the aperture at the standard's 700 W/m². */
  cookingShare: (settings: Settings) => {
    // the standard's load, 7 kg for each m² of aperture, gives the pot its height
    const mass = 7 * Math.PI * (settings.apertureRadius / 1000) ** 2;
    const { cooking, incomingW } = partOf({ ...settings, mass });
    return cooking.kind === 'fitted' ? cooking.powerW / ((incomingW * 700) / settings.irradiance) : NaN;
  },
  /** Until the boil, and at the boil until done; never, where that is out of reach. */
  cookedMinutes: (settings: Settings) => {
    const { warming } = partOf(settings);
    return (warming.kind === 'reached' ? warming.minutes.value : Infinity) + (settings.simmer ?? 0);
  },
  stagnationC: (settings: Settings) => partOf(settings).stagnationC.value,
  peakSuns: (settings: Settings) => partOf(settings).peakSuns,
  /** Plane of the least circle that holds a share of the light. */
  bestPlane: (settings: Settings) => {
    const rays = trace({
      ...setUp(inputFor(settings)).settings,
      rays: settings.rays ?? 2048,
      seed: 1,
    });
    return bestHeight(rays, settings.share ?? 0.9, settings.apertureRadius);
  },
};

/** Every combination of the ends. */
function corners({ fixed, assumed }: Case): Settings[] {
  return Object.entries(assumed).reduce(
    (all, [key, { values }]) => all.flatMap((one) => values.map((value) => ({ ...one, [key]: value }))),
    [fixed as Settings],
  );
}

describe.each(cases)('$id', (dish) => {
  it.each(
    dish.measured.map((one) => ({
      ...one,
      min: one.forecast[0],
      max: one.forecast[1],
    })),
  )('measured: $statement; forecast: $quantity of $min to $max', ({ quantity, value, within, min, max }) => {
    const values = corners(dish).map(quantities[quantity]);
    const [from, to] = [Math.min(...values), Math.max(...values)];
    expect(value + within).toBeGreaterThan(from);
    expect(value - within).toBeLessThan(to);
    // the range in the file is the forecast's own, rounded
    expect(Math.abs(min / from - 1)).toBeLessThan(0.01);
    expect(Math.abs(max / to - 1)).toBeLessThan(0.01);
  });
});
