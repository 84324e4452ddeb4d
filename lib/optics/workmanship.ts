/** What each slip of the work costs, in the words in which a builder measures it. */
import { estimate } from './estimate.js';
import { type SetUp, takenUpShares } from './set-up.js';
import { passingTraces, type Rays, type TraceSettings } from './trace.js';
import type { Estimate, OpticsInput } from './types.js';
import { f64 } from '../geometry/typed-arrays.js';

export type SlipKey = 'rib-height' | 'rib-place' | 'hub' | 'thickness' | 'wave';

export interface Slip {
  readonly key: SlipKey;
  readonly label: string;
  readonly note: string;
  /** What the vessel takes up less (positive: lost), W. */
  readonly watts: Estimate;
}

/** Wave by which waviness is told: so long, mm. */
const WAVE_LENGTH = 300;

/** Crest to trough of a wave whose slope has a standard deviation of one mrad: σ = 2π·A/(√2·L). */
const waveHeight = (2 * (Math.SQRT2 * WAVE_LENGTH * 1e-3)) / (2 * Math.PI);

/**
 * The costs at the moment of the set-up, each slip by itself; the same rays with and without it.
 * @param built rays of the dish without a slip, traced with the seed
 */
export function workmanship(input: OpticsInput, set: SetUp, built: Rays, seed: number): Slip[] {
  const { solid, settings, line, areas } = set;
  if (solid === null) return [];
  const watts = (set.given * set.irradianceWPerM2) / 1e6;
  const passing = passingTraces();
  const taken = (change: Partial<TraceSettings>) =>
    takenUpShares(passing({ ...settings, ...change, rays: built.count, seed }), solid, input);
  // a mirror that lies higher is a vessel that hangs lower
  const lower = { ...solid, baseZ: solid.baseZ - 1, armHeight: solid.armHeight - 1 };
  const now = takenUpShares(built, solid, input);
  const lost = (changed: Float64Array) => estimate(changed.map((one, i) => (f64(now, i) - one) * watts));
  const ribs = settings.shape.layout.ribs.length;
  // a rib end 1 mm off to a side opens the seam on the other by a triangle
  const opened = (ribs * 0.5 * (line.to - line.from)) / areas.mirror;
  const power = estimate(now).value * watts;
  return [
    {
      key: 'rib-height',
      label: 'ribs 1 mm too high or too low',
      note: 'each on its own, in one wave along its length (one standard deviation)',
      watts: lost(taken({ ribError: 1 })),
    },
    {
      key: 'rib-place',
      label: 'rib ends 1 mm off along the rim',
      note: 'opens the seam beside each, and light falls through',
      watts: { value: opened * power, standardError: 0 },
    },
    {
      key: 'hub',
      label: 'hub 1 mm too large in radius',
      note: 'each point of the mirror has the slope for 1 mm further in',
      watts: lost(taken({ ribShift: 1 })),
    },
    {
      key: 'thickness',
      label: 'panel and mirror 1 mm thicker than stated',
      note: 'hang the vessel 1 mm higher and nothing is lost',
      watts: lost(takenUpShares(built, lower, input)),
    },
    {
      key: 'wave',
      label: 'one more mrad of waviness',
      note: `waves ${WAVE_LENGTH} mm long and ${waveHeight.toFixed(2)} mm from crest to trough, along a level chord`,
      watts: lost(taken({ slopeError: settings.slopeError + 1e-3 })),
    },
  ];
}

/** A slip in words: what it costs, or what it gains where the dish as designed is not at its best. */
export function effectOf({ label, watts, note }: Slip): Pick<Slip, 'label' | 'watts' | 'note'> {
  if (watts.value >= 0) return { label: `costs: ${label}`, watts, note };
  return {
    label: `gains: ${label}`,
    watts: { ...watts, value: -watts.value },
    note: `${note}; as the vessel hangs now, more light hits it`,
  };
}
