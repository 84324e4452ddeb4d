/** The forecast of a prepared design, with what it finds wrong. */
import { type Design, shapeOf } from '../design/index.js';
import { type Diagnostic, hasError } from '../diagnostic/index.js';
import { solveDish } from '../dish/index.js';
import {
  type Advice,
  advise,
  burnMaps,
  type BurnResult,
  type Forecast,
  forecast,
  forecastProblems,
  inputProblems,
  opticsInput,
  type OpticsInput,
  type Parked,
  parkedPlace,
  startOfDay,
} from '../optics/index.js';
import { stripSeamShare } from '../parts/index.js';
import type { Prepared } from './types.js';

export interface Forecasting {
  /** Of the bare focus when the design names no vessel. Null when the optics cannot be computed, as without a mirror. */
  readonly forecast: Forecast | null;
  readonly problems: readonly Diagnostic[];
}

/** What the light needs of a prepared design. */
export type Lit = Pick<Prepared, 'design' | 'dish'>;

/** A design with its solved shape: all that the light asks of it. */
export const litOf = (design: Design): Lit => ({
  design,
  dish: solveDish(shapeOf(design), design.dish.arcTolerance),
});

/** Where a dish on a stand is parked; null without a stand or a site. */
export function parkedOf({ stand, site, day }: Design): Parked | null {
  const start = startOfDay(day.date);
  if (stand === undefined || site === undefined || Number.isNaN(start)) return null;
  return parkedPlace({ latitudeDeg: site.latitude, longitudeDeg: site.longitude }, stand.lowest, start);
}

export function inputOf({ design, dish }: Lit): OpticsInput {
  const input = opticsInput(design, dish, stripSeamShare(design, dish));
  if (design.sun.parkedAngle !== undefined) return input;
  // a stand parks the dish where the sun stays furthest off
  return { ...input, sun: { ...input.sun, parkedAngleDeg: parkedOf(design)?.angleDeg ?? null } };
}

/**
 * Traces the dish as it will be built. The seed is the nest's: one design, one forecast.
 * @param rays fewer for a quick look; the usual number when left out
 */
export function forecastOf(prepared: Lit, rays?: number): Forecasting {
  const input = inputOf(prepared);
  const wrong = inputProblems(input);
  if (hasError(wrong)) return { forecast: null, problems: wrong };
  const made = forecast(input, { seed: prepared.design.nest.seed, ...(rays === undefined ? {} : { rays }) });
  return { forecast: made, problems: [...wrong, ...forecastProblems(input, made)] };
}

/**
 * Where it burns round the dish. Ask the problems of the forecast first.
 * @param rays fewer for a quick look; the usual number when left out
 */
export function burnOf(prepared: Lit, rays?: number): BurnResult {
  return burnMaps(inputOf(prepared), prepared.design.nest.seed, rays);
}

/** What would do better; null without a vessel. Ask the problems of the forecast first. */
export function adviceOf(prepared: Lit): Advice | null {
  const input = inputOf(prepared);
  return advise(input, { seed: prepared.design.nest.seed });
}

/**
 * What is wrong with the optical side of a design, without the trace. A dish with neither vessel nor mirror is only
 * built, and nothing is asked of its focus.
 */
export function opticsProblems(prepared: Lit): readonly Diagnostic[] {
  const input = inputOf(prepared);
  const problems = inputProblems(input);
  return input.vessel === null ? problems.filter(({ code }) => code !== 'no-mirror') : problems;
}
