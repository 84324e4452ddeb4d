/** How the sun's light is spread over angles from its centre. */
import { element } from '../geometry/index.js';
import type { SunShapeName } from './types.js';

/** Half-angle of the sun's disc, in radians, at the mean distance as the trade rounds it. */
export const meanSunRadius = 4.65e-3;
/** The aureole of the published shape ends here. */
const AUREOLE_END_MRAD = 43.6;
const DISC_END_MRAD = 4.65;
const CELLS = 2048;

/** Angles from the sun's centre (radians) at evenly spaced shares of its power, from 0 to 1. */
export interface SunShape {
  readonly angleAtShare: Float64Array;
}

/**
 * Radiance at an angle from the sun's centre, 1 at the centre: Buie, Monger and Dey, Sunshape distributions for
 * terrestrial solar simulations, Solar Energy 74, 2003, 113-122 (formulas from memory). Angle in mrad; the disc ends
 * at 4.65 mrad, the aureole at 43.6 mrad.
 * @param chi the paper's χ; 0 for the disc alone
 */
export function radiance(angleMrad: number, chi: number): number {
  if (angleMrad <= DISC_END_MRAD) return Math.cos(0.326 * angleMrad) / Math.cos(0.308 * angleMrad);
  if (chi <= 0 || angleMrad > AUREOLE_END_MRAD) return 0;
  const kappa = 0.9 * Math.log(13.5 * chi) * chi ** -0.3;
  const gamma = 2.2 * Math.log(0.52 * chi) * chi ** 0.43 - 0.1;
  return Math.exp(kappa) * angleMrad ** gamma;
}

/**
 * The shape as a table for sampling.
 * @param circumsolarRatio share of the power from around the disc, 0 to 0.8, for `circumsolar`
 * @param radius half-angle of the disc, radians; the published shape is scaled to it
 */
export function sunShape(name: SunShapeName, circumsolarRatio: number, radius = meanSunRadius): SunShape {
  if (name === 'uniform')
    return { angleAtShare: Float64Array.from({ length: CELLS + 1 }, (_, i) => radius * Math.sqrt(i / CELLS)) };
  const chi = name === 'circumsolar' && circumsolarRatio > 0 ? chiFor(circumsolarRatio) : 0;
  const end = chi > 0 ? AUREOLE_END_MRAD : DISC_END_MRAD;
  // the disc's edge is a node, as the radiance jumps there; power in a ring is radiance x angle
  const angles = [...spaced(0, DISC_END_MRAD, 4000), ...(chi > 0 ? spaced(DISC_END_MRAD, end, 8000).slice(1) : [])];
  const upTo = [0];
  for (let i = 1; i < angles.length; i++) {
    const middle = (element(angles, i - 1) + element(angles, i)) / 2;
    upTo.push(element(upTo, i - 1) + radiance(middle, chi) * middle * (element(angles, i) - element(angles, i - 1)));
  }
  const total = element(upTo, upTo.length - 1);
  const angleAtShare = new Float64Array(CELLS + 1);
  for (let k = 0, i = 1; k <= CELLS; k++) {
    const share = (total * k) / CELLS;
    while (i < upTo.length - 1 && element(upTo, i) < share) i += 1;
    const part = Math.min(1, (share - element(upTo, i - 1)) / (element(upTo, i) - element(upTo, i - 1)));
    const mrad = element(angles, i - 1) + part * (element(angles, i) - element(angles, i - 1));
    angleAtShare[k] = (mrad / DISC_END_MRAD) * radius;
  }
  return { angleAtShare };
}

function spaced(from: number, to: number, cells: number): number[] {
  return Array.from({ length: cells + 1 }, (_, i) => from + ((to - from) * i) / cells);
}

/** Share of the power that the published shape puts outside the disc. It is not quite the χ that the shape is named by. */
export function shareOutsideDisc(chi: number): number {
  const power = (from: number, to: number): number => {
    const cells = 2000;
    const step = (to - from) / cells;
    let sum = 0;
    for (let i = 0; i < cells; i++) {
      const angle = from + (i + 0.5) * step;
      sum += radiance(angle, chi) * angle * step;
    }
    return sum;
  };
  const disc = power(0, DISC_END_MRAD);
  const aureole = power(DISC_END_MRAD, AUREOLE_END_MRAD);
  return aureole / (disc + aureole);
}

/** The χ with which the shape really puts `ratio` (0 to 0.8) of the power outside the disc, to 1e-6. */
export function chiFor(ratio: number): number {
  let [low, high] = [0, 1];
  while (high - low > 1e-6) {
    const middle = (low + high) / 2;
    if (shareOutsideDisc(middle) < ratio) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
