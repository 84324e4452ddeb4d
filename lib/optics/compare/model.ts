/** The forecast as a comparison asks it: gain for each W/m² of sun, loss, and heat held, for any waviness. */
import { estimate, scaled } from '../estimate.js';
import { heatCapacity } from '../filling.js';
import { bodyOf, heatLoss, isWet } from '../heat.js';
import { setUp, takenUpShares } from '../set-up.js';
import { wallHeat } from '../warming.js';
import { trace } from '../trace.js';
import type { Estimate, Load, OpticsInput } from '../types.js';
import type { Reading } from './log.js';

export interface Model {
  readonly load: Load;
  /** Infinite for what does not boil. */
  readonly boilingC: number;
  readonly heatCapacityJPerK: number;
  readonly apertureM2: number;
  /** What the vessel loses at a reading, W. */
  readonly lossW: (reading: Pick<Reading, 'loadC' | 'ambientC' | 'windMPerS'>) => number;
  /** What the vessel takes up for each W/m² of direct sun, m², with a waviness (mrad). */
  readonly gainM2: (slopeErrorMrad: number) => Estimate;
}

/** @param input with a load */
export function modelOf(input: OpticsInput, load: Load, rays: number, seed: number): Model {
  const set = setUp(input);
  const { vessel } = input;
  if (vessel === null) throw new RangeError('a log cannot be compared without a vessel');
  const body = bodyOf(vessel, isWet(load));
  const damp = { humidity: input.day.humidity, altitudeM: input.site?.altitudeM ?? 0 };
  return {
    load,
    boilingC: load.boilingPointC ?? Infinity,
    // at the middle of the warming; that of water moves by a hundredth over it
    heatCapacityJPerK: load.massKg * heatCapacity(load, (load.startC + load.targetC) / 2) + wallHeat(vessel),
    apertureM2: set.areas.aperture / 1e6,
    lossW: ({ loadC, ambientC, windMPerS }) => heatLoss(body, loadC, { ambientC, windMPerS }, damp),
    gainM2: (slopeErrorMrad) => {
      const traced = trace({ ...set.settings, slopeError: slopeErrorMrad / 1000, rays, seed });
      return scaled(estimate(takenUpShares(traced, set.solid, input)), set.given / 1e6);
    },
  };
}
