/** Where it burns: the light round the dish when it is aimed, off the sun and parked, with the vessel and without. */
import { f64 } from '../../geometry/typed-arrays.js';
import { withShade } from '../catch.js';
import { setUp } from '../set-up.js';
import { disc } from '../solid.js';
import { trace } from '../trace.js';
import type { OpticsInput } from '../types.js';
import { type BeamBox, type BeamMap, beamMap, farIntensity } from './beam-map.js';
import { BRIGHT_SUN, dazzleSuns, secondsToSkinHurt, SKIN_LIMIT } from './limits.js';

export const burnLevels = [1, 5, 10, 50] as const;
const OFF_DEG = [5, 10, 20, 30, 45, 60];
/** With the sun this far off or more, none of it gets into the mirror that could be gathered. */
const DARK_DEG = 89;
const RAYS = 98_304;
/** Cells from the axis to the rim. */
const CELLS = 20;
/** How far beyond the focus is looked, as a multiple of the way from the rim to the focus. */
const BEYOND = 2.5;
/** Light that is met farther out than this share of the box may go on beyond it. */
const CUT = 0.95;

/** Distances from the focus, mm; 0 where there is nothing to fear. */
export interface Harmless {
  /** From here on skin takes no hurt within 10 s. */
  readonly skin: number;
  /** From here on the light is no brighter than the sun: less than what burns the retina at a glance. */
  readonly glance: number;
  /** From here on a glance leaves no after-image. */
  readonly eyes: number;
}

/** One way in which the dish may stand. */
export interface BurnState {
  /** In words: `aimed, with vessel`. */
  readonly label: string;
  readonly kind: 'aimed' | 'off' | 'parked';
  /** Angle between axis and sun. */
  readonly angleDeg: number;
  readonly vessel: boolean;
  /** Greatest distance from the focus at which there are so many suns outside the bowl, mm; 0 for nowhere. */
  readonly reach: readonly { readonly suns: number; readonly fromFocus: number }[];
  readonly harmless: Harmless;
}

type Measured = Pick<BurnState, 'reach' | 'harmless'>;

export interface Burn {
  readonly states: readonly BurnState[];
  /** At each level, under a sun of 1000 W/m²; null where skin takes no hurt within 10 s. */
  readonly secondsToSkinHurt: readonly { readonly suns: number; readonly seconds: number | null }[];
}

/** A state with its pictures. */
export interface BurnPicture {
  readonly state: BurnState;
  /** Null where the dish is dark. */
  readonly map: BeamMap | null;
}

export interface BurnResult {
  readonly burn: Burn;
  readonly pictures: readonly BurnPicture[];
  readonly box: BeamBox;
  /** Suns from which on a place is drawn darker. */
  readonly levels: readonly number[];
  /** Half of the dish's section: radius and height, mm. */
  readonly section: readonly (readonly [number, number])[];
  readonly vessel: { readonly radius: number; readonly height: number };
  readonly focusHeight: number;
}

/** The greatest distance from the focus, outside the bowl, at which each of some levels of suns is met; 0 for nowhere. */
function farthestOf(map: BeamMap, focusHeight: number, rimHeight: number, levels: readonly number[]): number[] {
  const { cell, across, up } = map;
  const reach = levels.map(() => 0);
  const width = 2 * across;
  for (let place = Math.ceil(rimHeight / cell) * across * width; place < up * across * width; place++) {
    const suns = f64(map.suns, place);
    if (suns < 1) continue;
    const [column, row, k] = [place % width, Math.floor(place / width) % across, Math.floor(place / width / across)];
    const [x, y, z] = [(column + 0.5 - across) * cell, (row + 0.5) * cell, (k + 0.5) * cell];
    const distance = Math.hypot(x, y, z - focusHeight);
    levels.forEach((level, i) => {
      if (suns >= level) reach[i] = Math.max(reach[i] ?? 0, distance);
    });
  }
  return reach;
}

/** @param intensity of the brightest direction far from the dish, suns times mm² */
function measure(map: BeamMap, intensity: number, focusHeight: number, rimHeight: number): Measured {
  const levels = [...burnLevels, SKIN_LIMIT / BRIGHT_SUN];
  const reach = farthestOf(map, focusHeight, rimHeight, levels);
  const one = reach[0] ?? 0;
  // where the box ends before the light has thinned out, the far field goes on
  const cut = one > CUT * map.across * map.cell;
  return {
    reach: burnLevels.map((suns, i) => ({ suns, fromFocus: reach[i] ?? 0 })),
    harmless: {
      skin: reach.at(-1) ?? 0,
      glance: cut ? Math.max(one, Math.sqrt(intensity)) : one,
      eyes: Math.max(one, Math.sqrt(intensity / dazzleSuns)),
    },
  };
}

const nowhere: Measured = {
  reach: burnLevels.map((suns) => ({ suns, fromFocus: 0 })),
  harmless: { skin: 0, glance: 0, eyes: 0 },
};

/** How the dish stands, in words. */
function labelOf({ kind, angleDeg }: Pick<BurnState, 'kind' | 'angleDeg'>, vessel: boolean): string {
  const stand =
    kind === 'aimed' ? 'aimed' : kind === 'off' ? `${angleDeg}° off the sun` : `parked, ${angleDeg.toFixed(0)}° off`;
  return `${stand}, ${vessel ? 'with vessel' : 'bare'}`;
}

/** The angles at which the dish is looked at. */
function stands(input: OpticsInput, noonElevationDeg: number | null): readonly Pick<BurnState, 'kind' | 'angleDeg'>[] {
  // lying on its back the dish looks straight up, and the sun comes nearest at noon
  const parkedDeg = input.sun.parkedAngleDeg ?? (noonElevationDeg === null ? null : 90 - noonElevationDeg);
  return [
    { kind: 'aimed', angleDeg: 0 },
    ...OFF_DEG.map((angleDeg) => ({ kind: 'off' as const, angleDeg })),
    ...(parkedDeg === null ? [] : [{ kind: 'parked' as const, angleDeg: parkedDeg }]),
  ];
}

/**
 * Looks round the dish. The sun that shines on everything comes on top. The shade of the rim on the mirror and the light
 * that the vessel throws back are left out: the first makes it too bright here, the second is spread all round.
 * @param input checked by `inputProblems`
 */
export function burnMaps(input: OpticsInput, seed: number, rays = RAYS): BurnResult {
  const set = setUp(input);
  const { profile, apertureRadius } = input.dish;
  const rim = { radius: apertureRadius, height: profile.height(apertureRadius) };
  const { focusHeight } = profile;
  const farthest = BEYOND * Math.hypot(rim.radius, focusHeight - rim.height);
  const cell = apertureRadius / CELLS;
  const box: BeamBox = {
    cell,
    across: Math.ceil(Math.max(farthest, apertureRadius) / cell),
    up: Math.ceil((focusHeight + farthest) / cell),
  };
  // a disc across the axis as wide as the vessel: what stands higher shades no more of a dish that is aimed true
  const vessel = { radius: (input.vessel?.diameter ?? 0) / 2, height: set.planeHeight };
  const given = set.areas.mirror * input.reflector.reflectance;
  const pictures = stands(input, set.day?.noonElevationDeg ?? null).flatMap((stand): BurnPicture[] => {
    // a hair off the axis, as there all panels are traced
    const pointing = Math.max(1e-9, (stand.angleDeg * Math.PI) / 180);
    const traced =
      stand.angleDeg >= DARK_DEG
        ? null
        : withShade(trace({ ...set.settings, pointing, rays, seed }), disc(vessel.radius, vessel.height));
    return (input.vessel === null ? [false] : [true, false]).map((withVessel) => {
      const options = { given, rim, vessel: withVessel ? vessel : null };
      const map = traced && beamMap(traced, box, options);
      const measured = traced && map ? measure(map, farIntensity(traced, options), focusHeight, rim.height) : nowhere;
      return { state: { label: labelOf(stand, withVessel), ...stand, vessel: withVessel, ...measured }, map };
    });
  });
  const points = 40;
  return {
    burn: {
      states: pictures.map(({ state }) => state),
      secondsToSkinHurt: burnLevels.map((suns) => {
        const seconds = secondsToSkinHurt(suns * BRIGHT_SUN);
        return { suns, seconds: Number.isFinite(seconds) ? seconds : null };
      }),
    },
    pictures,
    box,
    levels: burnLevels,
    section: Array.from({ length: points + 1 }, (_, i) => {
      const radius = (apertureRadius * i) / points;
      return [radius, profile.height(radius)] as const;
    }),
    vessel,
    focusHeight,
  };
}
