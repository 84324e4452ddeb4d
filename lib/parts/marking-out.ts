/** Marking out a rib by hand: heights above its base at even steps, as a rule shows them. */
import { edgesOfPath, element, type Path, pointOnEdge } from '../geometry/index.js';
import { nearestFraction } from '../units/index.js';

/** The rule at hand: read to `division` mm, or to 1/`under` inch (a power of two). */
export type Rule = { readonly unit: 'mm'; readonly division: number } | { readonly unit: 'in'; readonly under: number };

export interface RuleMark {
  /** Along the base from the inner end, mm; a reading of the rule, exactly. */
  readonly x: number;
  /** True height above the base there, mm. */
  readonly height: number;
  /** The nearest reading of the rule, mm. */
  readonly marked: number;
}

export interface MarkingOut {
  readonly rule: Rule;
  readonly step: number;
  readonly marks: readonly RuleMark[];
  /** Greatest distance between the curve and the straight lines from mark to mark, mm. */
  readonly sag: number;
  /** Greatest size of `marked` less `height`, mm. */
  readonly rounding: number;
  /** The sag that would do, and the largest handy step that keeps to it. */
  readonly sagLimit: number;
  readonly advisedStep: number;
  /** The sag at the advised step: above the limit when even the finest handy step does not keep to it. */
  readonly advisedSag: number;
}

/**
 * Height (y) of a path over x, exact on its arcs.
 * @param path runs towards +x throughout; no arc of it turns back
 * @returns throws RangeError for x before the path's start or past its end
 */
export function heightOnPath(path: Path): (x: number) => number {
  const edges = edgesOfPath(path);
  return (x) => {
    const edge = edges.find(({ from, to }) => x >= from.x && x <= to.x);
    if (edge === undefined) throw new RangeError(`the path has no height at x = ${x}`);
    if (edge.kind === 'straight') {
      const run = edge.to.x - edge.from.x;
      return run === 0 ? edge.to.y : edge.from.y + ((edge.to.y - edge.from.y) * (x - edge.from.x)) / run;
    }
    const { centre, radius } = edge;
    const rise = Math.sqrt(Math.max(0, radius ** 2 - (x - centre.x) ** 2));
    return pointOnEdge(edge, 0.5).y < centre.y ? centre.y - rise : centre.y + rise;
  };
}

/** Least distance that the rule shows, mm. */
function divisionOf(rule: Rule): number {
  return rule.unit === 'mm' ? rule.division : 25.4 / rule.under;
}

function reading(mm: number, rule: Rule): number {
  return rule.unit === 'mm'
    ? Math.round(mm / rule.division) * rule.division
    : mm + nearestFraction(mm, rule.under).error;
}

const TRIALS = 16;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** Greatest distance between the curve and its chord from `a` to `b`, mm: by trial points, then golden section. */
function sagBetween(height: (x: number) => number, a: number, b: number): number {
  const slope = (height(b) - height(a)) / (b - a);
  const off = (x: number) => Math.abs(height(x) - height(a) - slope * (x - a));
  const trials = Array.from({ length: TRIALS + 1 }, (_, i) => a + ((b - a) * i) / TRIALS);
  const best = trials.reduce((max, x, i) => (off(x) > off(element(trials, max)) ? i : max), 0);
  let low = element(trials, Math.max(0, best - 1));
  let high = element(trials, Math.min(TRIALS, best + 1));
  while (high - low > 1e-4 * (b - a)) {
    const left = high - GOLDEN * (high - low);
    const right = low + GOLDEN * (high - low);
    if (off(left) > off(right)) high = right;
    else low = left;
  }
  // what stands upright over the chord is nearer to it by the cosine of its slope
  return off((low + high) / 2) / Math.hypot(1, slope);
}

/** Where the marks stand: readings of the rule, at the steps and at the far end. */
function places(length: number, step: number, division: number): number[] {
  const whole = (mm: number) => Math.round(mm / division) * division;
  const last = Math.floor(length / division + 1e-9) * division;
  const steps = Array.from({ length: Math.floor(last / step + 1e-9) + 1 }, (_, i) => whole(i * step));
  const end = steps.at(-1) ?? 0;
  return (last - end > division / 2 ? [...steps, last] : steps).map((x) => Math.min(x, length));
}

function greatestSag(height: (x: number) => number, at: readonly number[]): number {
  return at.slice(1).reduce((max, x, i) => Math.max(max, sagBetween(height, element(at, i), x)), 0);
}

/** Handy steps, coarse and fine, mm. */
const handySteps = { mm: [5, 1], in: [25.4 / 4, 25.4 / 16] } as const;

/**
 * The largest handy step (multiples of 5 mm or 1/4 in, else of 1 mm or 1/16 in) that keeps the sag within the limit.
 * When not even the finest does, that one is returned.
 */
function adviseStep(sagAt: (step: number) => number, length: number, sagLimit: number, rule: Rule): number {
  for (const unit of handySteps[rule.unit]) {
    let count = 0;
    while ((count + 1) * unit <= length && sagAt((count + 1) * unit) <= sagLimit) count++;
    if (count > 0) return count * unit;
  }
  return handySteps[rule.unit][1];
}

/**
 * The marks of a curve over a base, at every step and at the last reading of the rule before the far end.
 * @param height height above the base at x, mm, for x from 0 to `length`
 * @param options `step` and `sagLimit` in mm
 * @throws RangeError when length, step, sag limit or the rule's division is not above 0, an inch is not halved
 *   over and over, or the step is finer than the rule
 */
export function markOut(
  height: (x: number) => number,
  length: number,
  options: { readonly step: number; readonly sagLimit: number; readonly rule: Rule },
): MarkingOut {
  const { step, sagLimit, rule } = options;
  const division = divisionOf(rule);
  for (const [name, value] of Object.entries({ length, step, 'sag limit': sagLimit, 'rule division': division })) {
    if (!(value > 0 && value < Infinity))
      throw new RangeError(`marking out: the ${name} must be above 0, not ${value}`);
  }
  if (rule.unit === 'in' && !Number.isInteger(Math.log2(rule.under)))
    throw new RangeError(
      `marking out: no rule is divided in 1/${rule.under} in; give a power of two, such as 32 or 64`,
    );
  if (step < division)
    throw new RangeError(
      `marking out: the step of ${step} mm is finer than the rule, which is divided in ${division} mm`,
    );
  const at = places(length, step, division);
  const sagAt = (distance: number) => greatestSag(height, places(length, distance, division));
  const advisedStep = adviseStep(sagAt, length, sagLimit, rule);
  const marks = at.map((x): RuleMark => ({ x, height: height(x), marked: reading(height(x), rule) }));
  return {
    rule,
    step,
    marks,
    sag: greatestSag(height, at),
    rounding: marks.reduce((max, mark) => Math.max(max, Math.abs(mark.marked - mark.height)), 0),
    sagLimit,
    advisedStep,
    advisedSag: sagAt(advisedStep),
  };
}
