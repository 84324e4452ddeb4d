/** Balance about the tilt axis: what a hand has to hold, what the lock holds, and what counterweights take. */
import { gravity } from './tipping.js';

/** Cast-iron discs with a bore, as they are sold for barbells; density of grey cast iron 7200 kg/m³ (from memory). */
const ironDensity = 7200;
const discRadius = 140;
/** Steps in which discs are sold, kg. */
const discStep = 1.25;

export interface Counterweights {
  /** On each of the two arms, kg. */
  readonly each: number;
  readonly radius: number;
  /** Of the stack on one arm, mm. */
  readonly thickness: number;
}

/** Discs of a mass on each arm, with the room that they take. */
export function discsOf(eachKg: number): Counterweights {
  const each = discStep * Math.max(0, Math.ceil(eachKg / discStep - 1e-9));
  const area = Math.PI * discRadius ** 2 * 1e-9;
  // bores and rims leave a third of the stack empty
  return { each, radius: discRadius, thickness: each === 0 ? 0 : Math.ceil((1.5 * each) / (ironDensity * area)) };
}

/**
 * Torque about the tilt axis, N·m, of a mass whose centre lies `below` mm under it while the dish looks up.
 * @param tilt radians off that
 */
export const tiltTorque = (kg: number, below: number, tilt: number): number =>
  (kg * gravity * below * Math.sin(tilt)) / 1000;

/** Mass on each of two arms that leaves a torque of at most `allowed` N·m at a tilt, kg. */
export function counterweightFor(torque: number, allowed: number, lever: number, tilt: number): number {
  const excess = torque - allowed;
  if (excess <= 0 || lever === 0) return 0;
  return (1000 * excess) / (gravity * lever * Math.sin(tilt)) / 2;
}
