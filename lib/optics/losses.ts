/** Where the sunlight goes: each loss by itself, in watts. They add up to what came in. */
import { absorptances, caughtOf, type SurfaceShares, takenUpOf } from './catch.js';
import { estimate, exact } from './estimate.js';
import { interceptOf, meetsVessel, type SetUp, solidAt } from './set-up.js';
import { type Surface, surfaces } from './solid.js';
import { passingTraces, type Rays, type TraceSettings } from './trace.js';
import type { Estimate, OpticsInput } from './types.js';
import { f64 } from '../geometry/typed-arrays.js';

export type LossKey =
  | 'aim'
  | 'rim'
  | 'hub'
  | 'seams'
  | 'strips'
  | 'shade'
  | 'reflector'
  | 'flat-panels'
  | 'sun-size'
  | 'waviness'
  | 'edge-curl'
  | 'aim-spill'
  | 'vessel';

export interface Loss {
  readonly key: LossKey;
  readonly label: string;
  readonly watts: Estimate;
}

export interface SurfaceLight {
  readonly surface: Surface;
  readonly arrivingW: Estimate;
  readonly takenUpW: Estimate;
}

export interface LossTable {
  /** Direct irradiance x the round aperture, facing the sun. */
  readonly incomingW: number;
  readonly losses: readonly Loss[];
  /** Light that meets the vessel, and what it takes up; both all that the mirror gives back at a bare focus. */
  readonly arrivingW: Estimate;
  readonly takenUpW: Estimate;
  /** The same by surface, those that get any. */
  readonly surfaces: readonly SurfaceLight[];
}

/**
 * The intercept with the errors switched on one after the other; the last is the dish as built.
 * @param built its rays, traced with the seed, so that stages compare ray by ray
 * @param light of them on the vessel
 */
function stages(
  input: OpticsInput,
  set: SetUp,
  built: Rays,
  light: SurfaceShares,
  seed: number,
): [LossKey, Float64Array][] {
  const all: TraceSettings = { ...set.settings, rays: built.count, seed };
  const still = { ...all, pointing: 0 };
  const smooth = { ...still, edgeCurlMrad: 0 as const };
  const even = { ...smooth, slopeError: 0, specularity: 0 };
  const aimed = solidAt(input, set.sunElevation);
  const offAim = all.pointing !== 0;
  const passing = passingTraces();
  return [
    ['flat-panels', meetsVessel(passing({ ...even, sun: null }), aimed)],
    ['sun-size', meetsVessel(passing(even), aimed)],
    ['waviness', meetsVessel(passing(smooth), aimed)],
    ['edge-curl', offAim ? meetsVessel(passing(still), aimed) : interceptOf(light)],
    ...(offAim ? [['aim-spill', interceptOf(light)] as [LossKey, Float64Array]] : []),
  ];
}

const labels: Readonly<Record<LossKey, string>> = {
  aim: 'dish turned off the sun',
  rim: 'between round rim and straight panels',
  hub: 'hub',
  seams: 'seams over the ribs',
  strips: 'tape, battens, inset and joints of the reflector',
  shade: 'shade of vessel and holder on the mirror',
  reflector: 'absorbed by the mirror',
  'flat-panels': 'misses: flat width, figure and height',
  'sun-size': 'misses: size of the sun',
  waviness: 'misses: waviness and haze of the mirror',
  'edge-curl': 'misses: curled panel edges',
  'aim-spill': 'misses: dish turned off the sun',
  vessel: 'reflected by the vessel',
};

/**
 * The table.
 * @param built the rays of the dish as built, traced with the seed
 * @param light of them on the vessel; null without one
 */
export function lossTable(
  input: OpticsInput,
  set: SetUp,
  built: Rays,
  light: SurfaceShares | null,
  seed: number,
): LossTable {
  const { areas, irradianceWPerM2 } = set;
  const watts = (area: number) => (irradianceWPerM2 * area) / 1e6;
  const facing = Math.cos(set.settings.pointing);
  const incomingW = watts(areas.aperture);
  const onMirror = watts(areas.mirror) * facing;
  const { reflectance } = input.reflector;
  const given = onMirror * reflectance;
  const { solid } = set;
  const none = new Float64Array(built.batches);
  const shaded = light?.shade ?? none;
  const share = (shares: Float64Array, factor: number) => estimate(shares.map((one) => one * factor));

  const unshaded = shaded.map((one) => 1 - one);
  let before: Float64Array = shaded.map(() => 1);
  const misses = (light === null ? [] : stages(input, set, built, light, seed)).map(
    ([key, intercept]): [LossKey, Estimate] => {
      const lost = unshaded.map((one, i) => one * (f64(before, i) - f64(intercept, i)));
      before = intercept;
      return [key, share(lost, given)];
    },
  );
  const alpha = input.vessel && absorptances(input.vessel);
  const bySurface = surfaces.map((surface): SurfaceLight => {
    const arriving = light?.[surface] ?? none;
    return {
      surface,
      arrivingW: share(arriving, given),
      takenUpW: share(arriving, given * (alpha?.[surface] ?? 0)),
    };
  });
  const arriving = light ? caughtOf(light) : unshaded;
  const takenUp = light && input.vessel ? takenUpOf(light, input.vessel) : arriving;
  const listed: [LossKey, Estimate][] = [
    ...(facing < 1 ? [['aim', exact(incomingW * (1 - facing))] as [LossKey, Estimate]] : []),
    ['rim', exact(watts(areas.rim) * facing)],
    ['hub', exact(watts(areas.hub) * facing)],
    ['seams', exact(watts(areas.seams) * facing)],
    ...(areas.strips > 0 ? [['strips', exact(watts(areas.strips) * facing)] as [LossKey, Estimate]] : []),
    ...(solid === null ? [] : [['shade', share(shaded, onMirror)] as [LossKey, Estimate]]),
    ['reflector', share(unshaded, onMirror * (1 - reflectance))],
    ...misses,
    ...(solid === null
      ? []
      : [
          [
            'vessel',
            share(
              arriving.map((one, i) => one - f64(takenUp, i)),
              given,
            ),
          ] as [LossKey, Estimate],
        ]),
  ];
  return {
    incomingW,
    losses: listed.map(([key, lost]) => ({ key, label: labels[key], watts: lost })),
    arrivingW: share(arriving, given),
    takenUpW: share(takenUp, given),
    surfaces: bySurface.filter(({ arrivingW }) => arrivingW.value > 0),
  };
}
