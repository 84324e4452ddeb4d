/** How much the frames give under weight and wind, as aim error. N, mm, radians. */
import type { Cradle } from './cradle.js';

/** Modulus of plywood in bending, N/mm²: the low end of five plywoods (Journal of the Korean Wood Science and Technology 53 (4), table 3). */
const plywoodModulus = 6900;

/**
 * Sag in the middle of a beam on two supports under two equal loads, each `from` its support: the handbook case
 * F·a·(3L² − 4a²)/24EI.
 */
export function twoLoadSag(force: number, from: number, span: number, stiffness: number): number {
  return (force * from * (3 * span ** 2 - 4 * from ** 2)) / (24 * stiffness);
}

/** Bending moment between the loads, N·mm. */
const twoLoadMoment = (force: number, from: number): number => force * from;

/** Turn of the free end of a cantilever under a force there: F·L²/2EI. */
export const cantileverTurn = (force: number, length: number, stiffness: number): number =>
  (force * length ** 2) / (2 * stiffness);

/** Sag of the free end of a cantilever under a force there: F·L³/3EI. */
export const cantileverSag = (force: number, length: number, stiffness: number): number =>
  (force * length ** 3) / (3 * stiffness);

export interface Giving {
  readonly what: string;
  readonly mrad: number;
}

export interface Deflection {
  readonly parts: readonly Giving[];
  readonly totalMrad: number;
  /** Greatest bending stress in a cross beam, N/mm². */
  readonly beamStress: number;
}

const inertia = (width: number, depth: number): number => (width * depth ** 3) / 12;

export interface DeflectionLoads {
  /** Weight of what tilts, N. */
  readonly dishN: number;
  /** Of the wind square to the aperture, in working wind. */
  readonly windN: number;
  /** Torque about the tilt axis in working wind, N·mm: what the lock holds. */
  readonly torque: number;
  readonly tilt: number;
  /** Weight that the arms carry in the focus, N: hanger and vessel where the tilt axis lies elsewhere. */
  readonly carriedN: number;
  /** From the mirror to the focus. */
  readonly focal: number;
}

/** What gives at one tilt. The cross beams move the mirror against the vessel: a shift over the focal length. */
export function deflectionAt(
  cradle: Cradle,
  { dishN, windN, torque, tilt, carriedN, focal }: DeflectionLoads,
): Deflection {
  const { cross, sheet, thin, armY, mountY, lock, arm, axis, focus, baseTop, foot } = cradle;
  const span = 2 * armY;
  const from = armY - mountY;
  const sideways = twoLoadSag((dishN * Math.sin(tilt)) / 4, from, span, plywoodModulus * inertia(thin, cross.flange));
  const downward = (dishN * Math.cos(tilt) + windN) / 4;
  const upright = inertia(sheet, cross.height);
  const sag = twoLoadSag(downward, from, span, plywoodModulus * upright);
  // depth of an arm at the lock's pin, between head and cross beams
  const share = lock.radius / (axis - cross.top);
  const armDepth = 2 * (arm.head + share * (arm.halfWidth - arm.head));
  const armTurn =
    ((torque / 2) * Math.max(0, axis - cross.top - lock.radius)) / (plywoodModulus * inertia(sheet, armDepth));
  // both arms beyond the tilt axis, as narrow as at their ends
  const hung = cantileverSag(
    (carriedN * Math.sin(tilt)) / 2,
    focus - axis,
    plywoodModulus * inertia(sheet, 2 * arm.head),
  );
  // two legs of a side frame, half as far apart at mid-height as at the ground
  const leg = Math.max(70, foot / 5);
  const legs = 2 * sheet * leg * (foot / 2) ** 2;
  const frame = cantileverTurn(windN / 2, axis - baseTop, plywoodModulus * legs);
  const play = (lock.hole - lock.pin) / 2 / lock.radius;
  const parts = [
    { what: 'play of the lock pins in their holes', mrad: 1000 * play },
    { what: 'cross beams sideways, under the weight of the dish', mrad: (1000 * sideways) / focal },
    // a sag along the axis moves the focus along it: seen across it by the sine of the tilt
    { what: 'cross beams along the axis', mrad: (1000 * sag * Math.sin(tilt)) / focal },
    { what: 'arms between lock and cross beams', mrad: 1000 * armTurn },
    ...(carriedN === 0 ? [] : [{ what: 'arms under the vessel', mrad: (1000 * hung) / focal }]),
    { what: 'side frames in the wind', mrad: 1000 * frame },
  ];
  return {
    parts,
    totalMrad: parts.reduce((sum, { mrad }) => sum + mrad, 0),
    beamStress: (twoLoadMoment(downward, from) * cross.height) / 2 / upright,
  };
}
