/** What would do better, each with the values of its alternatives. */
import { withShade } from './catch.js';
import { clearRadius, type DishShape, radialLayout } from '../dish/index.js';
import { bestHeight, bestPlane } from './best-plane.js';
import { minRibs } from './closed-form.js';
import { estimate } from './estimate.js';
import { strikes } from './hanging.js';
import { bodyOf, dryLoss } from './heat.js';
import { meetsVessel, type SetUp, setUp, takenUpShares } from './set-up.js';
import { shareRadius, squaredRadii } from './spot.js';
import { type Rays, trace } from './trace.js';
import { f64 } from '../geometry/typed-arrays.js';
import type { Estimate, OpticsInput, Vessel } from './types.js';

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
  /** Focal length nearest to the design's with which the vessel takes up all but a hundredth of the most. */
  readonly bestFocalLength: number;
  /** With the radius of 90 % in the best plane of each. */
  readonly alternatives: readonly {
    readonly focalLength: number;
    readonly takenUpW: Estimate;
    readonly radius90: Estimate;
  }[];
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

/** An input with something in the focus. */
type WithVessel = OpticsInput & { readonly vessel: Vessel };

interface Looked {
  readonly set: SetUp;
  readonly rays: Rays;
  /** What is taken up with the vessel as the design hangs it, or raised along the axis; W, batch by batch. */
  readonly takenUp: (raised?: number) => Float64Array;
}

function look(input: WithVessel, options: AdviceOptions): Looked {
  const set = setUp(input);
  const rays = trace({ ...set.settings, rays: options.rays ?? 16_384, seed: options.seed });
  const watts = (set.irradianceWPerM2 * set.given) / 1e6;
  return {
    set,
    rays,
    takenUp: (raised = 0) => {
      const solid = set.solid && { ...set.solid, baseZ: set.solid.baseZ + raised };
      return takenUpShares(rays, solid, input).map((share) => share * watts);
    },
  };
}

function ribAdvice(input: WithVessel, options: AdviceOptions): RibAdvice {
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
        intercept: estimate(meetsVessel(seen.rays, seen.set.solid)),
        takenUpW: estimate(seen.takenUp()),
      };
    });
  const max = Math.max(...alternatives.map(({ takenUpW }) => takenUpW.value));
  const best = alternatives.find(({ takenUpW }) => takenUpW.value >= (1 - WORTH) * max);
  return { best: best?.ribs ?? dish.layout.ribs.length, flatWidthFits: fits, alternatives };
}

/** The vessel in another width: a pot with a load keeps its room. */
function widened(vessel: Vessel, diameter: number, holds: boolean): Vessel {
  const height = holds && vessel.kind === 'pot' ? vessel.height * (vessel.diameter / diameter) ** 2 : vessel.height;
  return { ...vessel, diameter, height, opening: (vessel.opening * diameter) / vessel.diameter };
}

/** A pot higher than so many diameters is no pot. */
const MAX_SLENDERNESS = 2;

function vesselAdvice(input: WithVessel, options: AdviceOptions, radius90: number): VesselAdvice {
  const { dish, vessel, load } = input;
  const unit = Number.isFinite(radius90) ? 2 * radius90 : vessel.diameter;
  const diameters = [vessel.diameter, ...DIAMETER_FACTORS.map((factor) => Math.round((unit * factor) / 5) * 5)].filter(
    (diameter) => diameter > 0 && diameter <= dish.apertureRadius,
  );
  const atC = load?.targetC ?? 100;
  const alternatives = [...new Set(diameters)]
    .sort((a, b) => a - b)
    .map((diameter) => widened(vessel, diameter, load !== null))
    .filter(
      (other) =>
        other.diameter === vessel.diameter || vessel.kind !== 'pot' || other.height <= MAX_SLENDERNESS * other.diameter,
    )
    .flatMap((other) => {
      const seen = look({ ...input, vessel: other }, options);
      if (other.diameter !== vessel.diameter && seen.set.solid && strikes(seen.set.solid, dish)) return [];
      const takenUpW = estimate(seen.takenUp());
      const lostW = dryLoss(bodyOf(other, false), atC, seen.set.air);
      return [{ diameter: other.diameter, takenUpW, lostW, keptW: { ...takenUpW, value: takenUpW.value - lostW } }];
    });
  const best = alternatives.reduce((a, b) => (b.keptW.value > a.keptW.value ? b : a));
  return { bestDiameter: best.diameter, atC, alternatives };
}

/** Focal lengths within what the tool makes: the focus not inside the rim, mm. */
const FOCAL_LIMITS = { min: 40, max: 12_000 };

function focalAdvice(input: WithVessel, options: AdviceOptions): FocalAdvice {
  const { dish } = input;
  const lengths = [
    dish.profile.focusHeight,
    ...FOCAL_RATIOS.map((ratio) => Math.round((2 * dish.apertureRadius * ratio) / 5) * 5).filter(
      (f) => f >= dish.apertureRadius / 2 && f >= FOCAL_LIMITS.min && f <= FOCAL_LIMITS.max,
    ),
  ];
  const alternatives = [...new Set(lengths)]
    .sort((a, b) => a - b)
    .flatMap((focalLength) => {
      const shape = { ...dish, profile: dish.profile.refocused(focalLength) };
      const { set, rays, takenUp } = look({ ...input, dish: shape }, options);
      const mine = focalLength === dish.profile.focusHeight;
      if (!mine && set.solid && strikes(set.solid, shape)) return [];
      const shaded = withShade(rays, set.solid);
      const squared = squaredRadii(shaded, bestHeight(shaded, 0.9, dish.apertureRadius));
      return [
        {
          focalLength,
          takenUpW: estimate(takenUp()),
          radius90: shareRadius(shaded, squared, 0.9, dish.apertureRadius),
        },
      ];
    });
  const max = Math.max(...alternatives.map(({ takenUpW }) => takenUpW.value));
  const far = ({ focalLength }: { readonly focalLength: number }) => Math.abs(focalLength - dish.profile.focusHeight);
  const best = alternatives
    .filter(({ takenUpW }) => takenUpW.value >= (1 - WORTH) * max)
    .reduce((a, b) => (far(b) < far(a) ? b : a));
  return { bestFocalLength: best.focalLength, alternatives };
}

function figureAdvice(input: WithVessel, options: AdviceOptions): FigureAdvice {
  const at = (figure: DishShape['figure']) => {
    const seen = look({ ...input, dish: { ...input.dish, figure } }, options);
    const here = seen.takenUp();
    const shaded = withShade(seen.rays, seen.set.solid);
    const best = bestPlane(shaded, 0.9, input.dish.apertureRadius);
    const squared = squaredRadii(shaded, best.value);
    const alternative = {
      figure,
      takenUpW: estimate(here),
      bestHeight: best,
      radius90: shareRadius(shaded, squared, 0.9, input.dish.apertureRadius),
      takenUpInBestPlaneW: estimate(seen.takenUp(best.value - seen.set.planeHeight)),
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
 * @returns null for the bare focus: without a vessel nothing is better than anything
 */
export function advise(input: OpticsInput, options: AdviceOptions): Advice | null {
  if (input.vessel === null) return null;
  const mine: WithVessel = { ...input, vessel: input.vessel };
  const { rays, set } = look(mine, options);
  const shaded = withShade(rays, set.solid);
  const squared = squaredRadii(shaded, set.planeHeight);
  const radius90 = shareRadius(shaded, squared, 0.9, input.dish.apertureRadius).value;
  return {
    ribs: ribAdvice(mine, options),
    vessel: vesselAdvice(mine, options, radius90),
    focalLength: focalAdvice(mine, options),
    figure: figureAdvice(mine, options),
  };
}
