/** The height at which the vessel hangs: where it takes up most, how far it may be off, and how to take the glare off. */
import { element } from '../geometry/index.js';
import type { DishShape } from '../dish/index.js';
import { estimate } from './estimate.js';
import { type SetUp, takenUpShares } from './set-up.js';
import { placeVessel, type Solid } from './solid.js';
import type { Rays } from './trace.js';
import type { OpticsInput, Vessel } from './types.js';
import { vesselMap } from './vessel-map.js';

/** Offsets that are looked at, as shares of the focal length, below the focus by the vessel's height more; how many. */
const REACH = { from: -0.4, to: 0.25 };
const SCAN = 36;
const REFINED = 6;
/** What the range of heights keeps. */
const KEPT = 0.95;

export interface Hanging {
  /** Offset of the base at which most is taken up, mm, to a few millimetres. */
  readonly bestOffset: number;
  readonly bestW: number;
  /** Offsets between which 95 % of that is taken up. */
  readonly from: number;
  readonly to: number;
}

/** A height of the sun that counts, with its direct irradiance and for how long. */
export interface Weighted {
  readonly elevation: number;
  readonly irradianceWPerM2: number;
  readonly share: number;
}

/** Whether any part of the vessel would stand in the mirror. */
export function strikes({ radius, height, baseX, baseZ, upX, upZ }: Solid, dish: DishShape): boolean {
  const { apertureRadius, profile } = dish;
  for (const along of [0, height])
    for (const out of [0, 0.5, 1])
      for (let k = 0; k < 24; k++) {
        const angle = (k * Math.PI) / 12;
        const across = out * radius * Math.cos(angle);
        const x = baseX + along * upX + across * upZ;
        const z = baseZ + along * upZ - across * upX;
        const r = Math.hypot(x, out * radius * Math.sin(angle));
        if (r <= apertureRadius && z <= profile.height(r)) return true;
      }
  return false;
}

const placed = (input: OpticsInput, vessel: Vessel, elevation: number) =>
  placeVessel(vessel, input.dish.profile.focusHeight, elevation);

/** What is taken up at an offset, W, as the mean over the heights of the sun; null where the vessel strikes the mirror. */
function powerAt(
  input: OpticsInput,
  set: SetUp,
  rays: Rays,
  moments: readonly Weighted[],
  offset: number,
): number | null {
  const { vessel } = input;
  if (vessel === null) return null;
  let sum = 0;
  let all = 0;
  for (const { elevation, irradianceWPerM2, share } of moments) {
    const solid = placed(input, { ...vessel, offset }, elevation);
    if (strikes(solid, input.dish)) return null;
    sum += (share * estimate(takenUpShares(rays, solid, input)).value * set.given * irradianceWPerM2) / 1e6;
    all += share;
  }
  return all > 0 ? sum / all : null;
}

/** Best height and range for heights of the sun; null when the vessel finds no place or catches nothing. */
export function hangingFor(input: OpticsInput, set: SetUp, rays: Rays, moments: readonly Weighted[]): Hanging | null {
  const f = input.dish.profile.focusHeight;
  const lowest = REACH.from * f - (input.vessel?.height ?? 0);
  const step = (REACH.to * f - lowest) / SCAN;
  const at = (offset: number) => ({ offset, power: powerAt(input, set, rays, moments, offset) });
  const scan = Array.from({ length: SCAN + 1 }, (_, i) => at(lowest + i * step)).filter(
    (one): one is { offset: number; power: number } => one.power !== null,
  );
  if (scan.length === 0) return null;
  const coarse = scan.reduce((a, b) => (b.power > a.power ? b : a));
  const fine = Array.from({ length: 2 * REFINED - 1 }, (_, i) =>
    at(coarse.offset + ((i - REFINED + 1) * step) / REFINED),
  ).flatMap(({ offset, power }) => (power === null ? [] : [{ offset, power }]));
  const best = [coarse, ...fine].reduce((a, b) => (b.power > a.power ? b : a));
  if (!(best.power > 0)) return null;
  const edge = (list: readonly { offset: number; power: number }[]): number => {
    let inner = best;
    for (const one of list) {
      if (one.power < KEPT * best.power) {
        const part = (inner.power - KEPT * best.power) / (inner.power - one.power);
        return inner.offset + part * (one.offset - inner.offset);
      }
      inner = one;
    }
    return inner.offset;
  };
  return {
    bestOffset: best.offset,
    bestW: best.power,
    from: edge(scan.filter(({ offset }) => offset < best.offset).reverse()),
    to: edge(scan.filter(({ offset }) => offset > best.offset)),
  };
}

export interface Defocus {
  /** Offset at which the brightest place stays below the limit, and what is taken up there. */
  readonly offset: number;
  readonly takenUpW: number;
}

/** The offset that takes up most of those whose hottest place is below a limit of flux; null when none is. */
export function defocus(input: OpticsInput, set: SetUp, rays: Rays, maxFluxWPerM2: number): Defocus | null {
  const { vessel } = input;
  if (vessel === null) return null;
  const f = input.dish.profile.focusHeight;
  const offsets = Array.from(
    { length: SCAN / 2 + 1 },
    (_, i) => f * (REACH.from + (2 * i * (REACH.to - REACH.from)) / SCAN),
  );
  const found = offsets.flatMap((offset): Defocus[] => {
    const solid = placed(input, { ...vessel, offset }, set.sunElevation);
    if (strikes(solid, input.dish)) return [];
    const { hottest } = vesselMap(rays, solid, vessel, set.given);
    if (hottest.value * set.irradianceWPerM2 > maxFluxWPerM2) return [];
    const takenUpW = (estimate(takenUpShares(rays, solid, input)).value * set.given * set.irradianceWPerM2) / 1e6;
    return [{ offset, takenUpW }];
  });
  return found.length === 0 ? null : found.reduce((a, b) => (b.takenUpW > a.takenUpW ? b : a), element(found, 0));
}
