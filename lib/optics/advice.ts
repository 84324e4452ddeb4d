/** What would do better, each with the values of its alternatives. */
import { clearRadius, type DishShape, radialLayout } from '../dish/index.js';
import { bestHeight, bestPlane } from './best-plane.js';
import { minRibs } from './closed-form.js';
import { estimate } from './estimate.js';
import { heatLoss, lossArea } from './heat.js';
import { type SetUp, setUp } from './set-up.js';
import { caughtShares, intercepts, shareRadius, squaredRadii } from './spot.js';
import { type Rays, trace } from './trace.js';
import { f64 } from '../geometry/typed-arrays.js';
import type { Estimate, OpticsInput } from './types.js';

export interface AdviceOptions {
  readonly seed: number;
  /** Rays for each alternative; 16384 when left out. */
  readonly rays?: number;
}

export interface RibAdvice {
  /** Fewest ribs of the alternatives with which the vessel gets all but a hundredth of what any of them gives it. */
  readonly best: number;
  /** Fewest ribs at which the flat width of the panels, a perfect sun and no errors granted, falls on the vessel. */
  readonly flatWidthFits: number;
  readonly alternatives: readonly {
    readonly ribs: number;
    readonly intercept: Estimate;
    readonly takenUpW: Estimate;
  }[];
}

export interface VesselAdvice {
  /** Diameter at which most heat stays in the load at `atC`. */
  readonly bestDiameter: number;
  readonly atC: number;
  readonly alternatives: readonly {
    readonly diameter: number;
    readonly takenUpW: Estimate;
    readonly lostW: number;
    readonly keptW: Estimate;
  }[];
}

export interface FocalAdvice {
  readonly bestFocalLength: number;
  /** Radius of 90 % in the best plane of each. */
  readonly alternatives: readonly { readonly focalLength: number; readonly radius90: Estimate }[];
}

export interface FigureAdvice {
  readonly alternatives: readonly {
    readonly figure: DishShape['figure'];
    /** With the vessel where the design puts it, and in the best plane of this figure. */
    readonly takenUpW: Estimate;
    readonly bestHeight: Estimate;
    readonly radius90: Estimate;
    readonly takenUpInBestPlaneW: Estimate;
  }[];
  /** What figure `panel` gains over `rib`, with the vessel where the design puts it, W. */
  readonly gainW: Estimate;
}

export interface Advice {
  readonly ribs: RibAdvice;
  readonly vessel: VesselAdvice;
  readonly focalLength: FocalAdvice;
  readonly figure: FigureAdvice;
}

/** Ribs and focal lengths that are looked at, as multiples of what the design or the closed form gives. */
const RIB_FACTORS = [0.5, 0.67, 0.8, 1, 1.25, 1.5, 2];
const FOCAL_RATIOS = [0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.55, 0.6, 0.7, 0.8, 0.9, 1, 1.2];
const DIAMETER_FACTORS = [0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1, 1.1, 1.25, 1.5, 1.75, 2];
const MAX_RIBS = 240;
/** A gain of less than this is not worth more ribs. */
const WORTH = 0.01;

/** The same dish with another number of ribs; the hub keeps its margin over the least radius. */
function withRibs(shape: DishShape, ribCount: number): DishShape {
  const margin = shape.innerRadius - clearRadius(shape.layout.ribs.length, shape.ribThickness);
  return {
    ...shape,
    layout: radialLayout(ribCount),
    innerRadius: Math.max(1, clearRadius(ribCount, shape.ribThickness) + margin),
  };
}

interface Looked {
  readonly set: SetUp;
  readonly rays: Rays;
  readonly squared: Float64Array;
  readonly takenUp: (height: number) => Float64Array;
}

function look(input: OpticsInput, options: AdviceOptions): Looked {
  const set = setUp(input);
  const rays = trace({ ...set.settings, rays: options.rays ?? 16_384, seed: options.seed });
  const watts =
    ((set.irradianceWPerM2 * set.areas.mirror) / 1e6) *
    Math.cos(set.settings.pointing) *
    input.reflector.reflectance *
    input.vessel.absorptance;
  return {
    set,
    rays,
    squared: squaredRadii(rays, set.vesselHeight),
    takenUp: (height) => caughtShares(rays, squaredRadii(rays, height), set.vesselRadius).map((share) => share * watts),
  };
}

function ribAdvice(input: OpticsInput, options: AdviceOptions): RibAdvice {
  const { dish, vessel } = input;
  const fits = minRibs(vessel.diameter / 2, dish.apertureRadius);
  const counts = [
    dish.layout.ribs.length,
    ...RIB_FACTORS.flatMap((factor) => [Math.round(fits * factor), Math.round(dish.layout.ribs.length * factor)]),
  ]
    .filter((ribs) => ribs >= 3 && ribs <= MAX_RIBS)
    // more ribs than have room on a hub of two thirds of the radius are no dish
    .filter(
      (ribs) => ribs === dish.layout.ribs.length || withRibs(dish, ribs).innerRadius < 0.66 * dish.apertureRadius,
    );
  const alternatives = [...new Set(counts)]
    .sort((a, b) => a - b)
    .map((ribs) => {
      const seen = look({ ...input, dish: withRibs(dish, ribs) }, options);
      return {
        ribs,
        intercept: estimate(intercepts(seen.rays, seen.squared, seen.set.vesselRadius)),
        takenUpW: estimate(seen.takenUp(seen.set.vesselHeight)),
      };
    });
  const max = Math.max(...alternatives.map(({ takenUpW }) => takenUpW.value));
  const best = alternatives.find(({ takenUpW }) => takenUpW.value >= (1 - WORTH) * max);
  return { best: best?.ribs ?? dish.layout.ribs.length, flatWidthFits: fits, alternatives };
}

function vesselAdvice(input: OpticsInput, options: AdviceOptions, radius90: number): VesselAdvice {
  const { dish, vessel, load, air } = input;
  const atC = load?.targetC ?? 100;
  const unit = Number.isFinite(radius90) ? 2 * radius90 : vessel.diameter;
  const diameters = [vessel.diameter, ...DIAMETER_FACTORS.map((factor) => Math.round((unit * factor) / 5) * 5)].filter(
    (diameter) => diameter > 0 && diameter <= dish.apertureRadius,
  );
  const alternatives = [...new Set(diameters)]
    .sort((a, b) => a - b)
    .map((diameter) => {
      const other = { ...vessel, diameter };
      const seen = look({ ...input, vessel: other }, options);
      const takenUpW = estimate(seen.takenUp(seen.set.vesselHeight));
      const area = lossArea(other, load?.massKg ?? 0, load?.densityKgPerM3 ?? 1000);
      const lostW = heatLoss(area, vessel.emittance, atC, air);
      return { diameter, takenUpW, lostW, keptW: { ...takenUpW, value: takenUpW.value - lostW } };
    });
  const best = alternatives.reduce((a, b) => (b.keptW.value > a.keptW.value ? b : a));
  return { bestDiameter: best.diameter, atC, alternatives };
}

function focalAdvice(input: OpticsInput, options: AdviceOptions): FocalAdvice {
  const { dish } = input;
  const lengths = [
    dish.profile.focusHeight,
    ...FOCAL_RATIOS.map((ratio) => Math.round((2 * dish.apertureRadius * ratio) / 5) * 5),
  ].filter((f) => f >= dish.apertureRadius / 2);
  const alternatives = [...new Set(lengths)]
    .sort((a, b) => a - b)
    .map((focalLength) => {
      const { rays } = look({ ...input, dish: { ...dish, profile: dish.profile.refocused(focalLength) } }, options);
      const squared = squaredRadii(rays, bestHeight(rays, 0.9, dish.apertureRadius));
      return { focalLength, radius90: shareRadius(rays, squared, 0.9, dish.apertureRadius) };
    });
  const best = alternatives.reduce((a, b) => (b.radius90.value < a.radius90.value ? b : a));
  return { bestFocalLength: best.focalLength, alternatives };
}

function figureAdvice(input: OpticsInput, options: AdviceOptions): FigureAdvice {
  const at = (figure: DishShape['figure']) => {
    const seen = look({ ...input, dish: { ...input.dish, figure } }, options);
    const here = seen.takenUp(seen.set.vesselHeight);
    const best = bestPlane(seen.rays, 0.9, input.dish.apertureRadius);
    const squared = squaredRadii(seen.rays, best.value);
    const alternative = {
      figure,
      takenUpW: estimate(here),
      bestHeight: best,
      radius90: shareRadius(seen.rays, squared, 0.9, input.dish.apertureRadius),
      takenUpInBestPlaneW: estimate(seen.takenUp(best.value)),
    };
    return { here, alternative };
  };
  const panel = at('panel');
  const rib = at('rib');
  const gained = panel.here.map((watts, i) => watts - f64(rib.here, i));
  return { alternatives: [panel.alternative, rib.alternative], gainW: estimate(gained) };
}

/**
 * Looks at the alternatives, each traced as it would be built, with the same waviness, vessel and sun. About a second.
 * @param input checked by `inputProblems`
 */
export function advise(input: OpticsInput, options: AdviceOptions): Advice {
  const { rays, squared } = look(input, options);
  const radius90 = shareRadius(rays, squared, 0.9, input.dish.apertureRadius).value;
  return {
    ribs: ribAdvice(input, options),
    vessel: vesselAdvice(input, options, radius90),
    focalLength: focalAdvice(input, options),
    figure: figureAdvice(input, options),
  };
}
