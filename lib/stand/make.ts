/** The stand of a dish: its parts at their places, and what they weigh, hold and bear. */
import type { AssembledPlate, Assembly, Fastener } from '../assembly/index.js';
import type { Vec3 } from '../geometry/index.js';
import type { Part } from '../part/index.js';
import { type AxisChoice, axisChoices, balanced, torquesAt } from './axis-place.js';
import { type Counterweights, counterweightFor, discsOf, tiltTorque } from './balance.js';
import type { Cradle, StandSource } from './cradle.js';
import { type Deflection, deflectionAt } from './deflection.js';
import { type Held, heldParts } from './held.js';
import type { Holder } from './holder.js';
import { linkForce } from './linkage.js';
import { dishMasses, handLever, type Made, madeWith, placeAt } from './made.js';
import { type Mass, together } from './masses.js';
import { type Collision, collisions, hollowClearance, type Prism, standingPrisms, tiltingPrisms } from './motion.js';
import type { Motion } from './pose.js';
import { ballastFor, factorOf, gravity, type Stance, type Standing, windFor } from './tipping.js';
import { type DishFace, plateForce } from './wind.js';

/** Castors swivel: their wheel may stand this far inside their bolt, mm (common practice, no source). */
const castorTrail = 35;
const RAD = Math.PI / 180;

export interface StandValues {
  readonly dishKg: number;
  /** What tilts, counterweights left out; its centre below the tilt axis. */
  readonly tiltingKg: number;
  readonly below: number;
  readonly totalKg: number;
  readonly axes: readonly AxisChoice[];
  readonly weights: Counterweights;
  /** With the counterweights: hand force, N; torque that the lock holds in the design's gusts, N·m; force on a pin, N. */
  readonly handN: number;
  readonly lockTorque: number;
  readonly pinN: number;
  /** Bearing stress of a pin in its hole, N/mm². */
  readonly pinBearing: number;
  readonly ballastKg: number;
  readonly factor: number;
  /** Gust above which the dish is taken down, m/s: with the ballast. */
  readonly takeDown: number;
  /** Without ballast. */
  readonly bareWind: number;
  /** The worst of the range. */
  readonly deflection: Deflection;
  /** Of the vessel's base above the ground, at the lowest and at the highest sun. */
  readonly vesselHeight: { readonly low: number; readonly high: number };
  readonly collisions: readonly Collision[];
  /** Force in a link, N; null where the hanger needs none. */
  readonly linkN: number | null;
  /** From vessel and hanger to the mirror; null without. */
  readonly hollow: number | null;
}

export interface Stand {
  readonly cradle: Cradle;
  readonly holder: Holder | null;
  readonly parts: readonly Part[];
  readonly placed: readonly AssembledPlate[];
  readonly fasteners: readonly Fastener[];
  /** What moves and what stands, as outlines across the tilt axis. */
  readonly prisms: readonly Prism[];
  readonly values: StandValues;
  /** The wind in which the factor is just kept, m/s, with some ballast (kg). */
  readonly windAt: (ballastKg: number) => number;
}

/** Everything's mass and centre at tilts a degree apart, x towards the sun, z from the ground; vessel on and off. */
function statesOf(made: Made, weights: Counterweights, fixed: readonly Mass[], held: Held, rim: number): Standing[] {
  const { cradle, tilting, standing } = made;
  const { tilt, axis, lever, ground } = cradle;
  const up = ([x, y, z]: Vec3): Vec3 => [x, y, z - ground];
  const count = Math.max(1, Math.ceil((tilt.to - tilt.from) / RAD - 1e-9));
  const angles = [0, ...Array.from({ length: count + 1 }, (_, i) => Math.min(tilt.to, tilt.from + i * RAD))];
  return angles.flatMap((angle) => {
    const at = (motion: Motion, one: Mass): Mass => ({ ...one, at: placeAt(cradle, motion, one.at, angle) });
    const moving = [
      at('tilts', tilting),
      at('tilts', { name: 'counterweights', kg: 2 * weights.each, at: [0, 0, axis + lever] }),
      at('level', held.hanger),
    ];
    return [true, false].map((on): Standing => {
      const all = together('machine', [...moving, standing, ...fixed, ...(on ? [at('level', held.vessel)] : [])]);
      return { tilt: angle, kg: all.kg, centre: up(all.at), face: up(placeAt(cradle, 'tilts', [0, 0, rim], angle)) };
    });
  });
}

/** Greatest torque of weight about the tilt axis with the vessel on or off, N·m. */
function weightTorque(made: Made, weights: Counterweights, held: Held, angle: number): number {
  const { cradle } = made;
  const { on, off } = torquesAt(cradle.axis, made, held, angle);
  const taken = 2 * tiltTorque(weights.each, cradle.lever, angle);
  return Math.max(Math.abs(on - taken), Math.abs(off - taken));
}

/** Torque about the tilt axis, N·mm, of weight and of wind on one half of the aperture. */
const heldTorque = (
  made: Made,
  weights: Counterweights,
  held: Held,
  face: DishFace,
  angle: number,
  speed: number,
): number => 1000 * weightTorque(made, weights, held, angle) + (plateForce(face, angle, speed) * face.radius) / 2;

/** What holds against the wind: tipping, the lock, and how much all gives. */
function windValues(
  source: StandSource,
  made: Made,
  weights: Counterweights,
  held: Held,
  states: readonly Standing[],
  face: DishFace,
) {
  const { dish, stand } = source;
  const { cradle } = made;
  const stance: Stance = { halfX: cradle.castors.x - castorTrail, halfY: cradle.castors.y - castorTrail };
  const ballastKg = 5 * Math.max(0, Math.ceil(ballastFor(states, stance, face, stand.wind) / 5 - 1e-9));
  const angles = states.map(({ tilt }) => tilt);
  const lockTorque =
    Math.max(...angles.map((angle) => heldTorque(made, weights, held, face, angle, stand.wind))) / 1000;
  const pinN = (1000 * lockTorque) / (2 * cradle.lock.radius);
  const deflections = angles.map((tilt) =>
    deflectionAt(cradle, {
      dishN: made.tilting.kg * gravity,
      windN: plateForce(face, tilt, stand.workingWind),
      torque: heldTorque(made, weights, held, face, tilt, stand.workingWind),
      carriedN: cradle.linkage === null ? 0 : (held.hanger.kg + held.vessel.kg) * gravity,
      tilt,
      focal: cradle.focus - dish.baseHeight,
    }),
  );
  const windAt = (kg: number): number => windFor(states, stance, face, kg);
  return {
    windAt,
    values: {
      lockTorque,
      pinN,
      pinBearing: pinN / (cradle.lock.pin * cradle.sheet),
      ballastKg,
      factor: factorOf(states, stance, face, stand.wind, ballastKg),
      takeDown: windAt(ballastKg),
      bareWind: windAt(0),
      deflection: deflections.reduce((a, b) => (b.totalMrad > a.totalMrad ? b : a)),
    },
  };
}

/** Torque about the tilt axis at the lowest sun, without counterweights, N·m. */
const torqueOf = ({ tilting, cradle }: Made): number =>
  tiltTorque(tilting.kg, cradle.axis - tilting.at[2], cradle.tilt.to);

/** From the tilt axis to the counterweights where there are any, mm: common practice, no source. */
const usualLever = (axis: number): number => 10 * Math.round((0.55 * axis + 100) / 10);

/** Makes the stand; null where the dish's mounting holes do not allow one. */
export function makeStand(source: StandSource, assembly: Assembly): Stand | null {
  const { dish, stand } = source;
  const own = dishMasses(source, assembly);
  const bare = madeWith(source, assembly, own, { lever: 0 });
  if (bare === null) return null;
  const rim = dish.baseHeight + dish.depth;
  const allowed = (stand.handForce * handLever(bare, rim)) / 1000;
  const longest = usualLever(bare.cradle.focus);
  const lever = stand.axis === 'focus' && torqueOf(bare) > allowed ? longest : 0;
  const made =
    stand.axis === 'balance'
      ? balanced(source, assembly, own, bare)
      : lever === 0
        ? bare
        : madeWith(source, assembly, own, { lever });
  if (made === null) return null;
  const { cradle } = made;
  const weights = discsOf(counterweightFor(torqueOf(made), allowed, lever, cradle.tilt.to));
  const { holder, fixed, held, offset, top, radius } = heldParts(source, made);
  const face: DishFace = { radius: dish.apertureRadius, depth: rim - cradle.cross.top };
  const wind = windValues(source, made, weights, held, statesOf(made, weights, fixed, held, rim), face);
  const prisms = [...tiltingPrisms(source, cradle, weights), ...standingPrisms(cradle, holder, top, radius)];
  const vesselBase = (tilt: number): number =>
    placeAt(cradle, 'level', [0, 0, cradle.focus + offset], tilt)[2] - cradle.ground;
  return {
    cradle,
    holder,
    parts: made.parts,
    placed: made.placed,
    fasteners: made.fasteners,
    prisms,
    windAt: wind.windAt,
    values: {
      dishKg: made.dish.kg,
      tiltingKg: made.tilting.kg,
      below: cradle.axis - made.tilting.at[2],
      totalKg: made.tilting.kg + made.standing.kg + together('bought', fixed).kg + held.hanger.kg + 2 * weights.each,
      axes:
        stand.axis === 'focus'
          ? axisChoices(source, made, null, rim, longest)
          : axisChoices(source, bare, made, rim, longest),
      weights,
      handN: (1000 * weightTorque(made, weights, held, cradle.tilt.to)) / handLever(made, rim),
      ...wind.values,
      vesselHeight: { low: vesselBase(cradle.tilt.to), high: vesselBase(cradle.tilt.from) },
      collisions: collisions(prisms, cradle, { from: 0, to: cradle.tilt.to }),
      linkN: cradle.linkage && linkForce(cradle.linkage, held.vessel.kg * gravity),
      hollow: holder === null ? null : hollowClearance(dish, holder, top, radius),
    },
  };
}
