/** The forecast as a comparison asks it: gain for each W/m² of sun, loss, and heat held, for any waviness. */
import { estimate, scaled } from '../estimate.js';
import { heatLoss, lossArea } from '../heat.js';
import { setUp } from '../set-up.js';
import { caughtShares, squaredRadii } from '../spot.js';
import { trace } from '../trace.js';
import type { Estimate, Load, OpticsInput } from '../types.js';
import type { Reading } from './log.js';

export interface Model {
  readonly load: Load;
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
  const area = lossArea(vessel, load.massKg, load.densityKgPerM3);
  const full =
    (set.areas.mirror / 1e6) * Math.cos(set.settings.pointing) * input.reflector.reflectance * vessel.absorptance;
  return {
    load,
    heatCapacityJPerK: load.massKg * load.heatCapacityJPerKgK,
    apertureM2: set.areas.aperture / 1e6,
    lossW: ({ loadC, ambientC, windMPerS }) => heatLoss(area, vessel.emittance, loadC, { ambientC, windMPerS }),
    gainM2: (slopeErrorMrad) => {
      const traced = trace({ ...set.settings, slopeError: slopeErrorMrad / 1000, rays, seed });
      return scaled(estimate(caughtShares(traced, squaredRadii(traced, set.vesselHeight), set.vesselRadius)), full);
    },
  };
}
