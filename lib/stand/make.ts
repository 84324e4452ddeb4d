/** The stand of a dish: its parts at their places, and what they weigh, hold and bear. */
import type { AssembledPart, AssembledPlate, Assembly, Fastener } from '../assembly/index.js';
import { rotate, type Vec3 } from '../geometry/index.js';
import { holderPlay, pipeMass } from '../hardware/index.js';
import type { Part } from '../part/index.js';
import { type Counterweights, counterweightFor, discsOf, tiltTorque } from './balance.js';
import { type Cradle, cradleOf, type StandSource } from './cradle.js';
import { type Deflection, deflectionAt } from './deflection.js';
import { type Holder, holderOf } from './holder.js';
import { fastenerMasses, type Mass, partMasses, together } from './masses.js';
import { type Collision, collisions, hollowClearance, type Prism, standingPrisms, tiltingPrisms } from './motion.js';
import { cradleParts } from './parts.js';
import { placeStand, standBolts, tilts } from './places.js';
import { ballastFor, factorOf, gravity, type Stance, type Standing, windFor } from './tipping.js';
import { type DishFace, plateForce } from './wind.js';

/** Castors swivel: their wheel may stand this far inside their bolt, mm. Mass of one, kg (common practice, no source). */
const castorTrail = 35;
const castorKg = 0.6;
/** Mass of a floor flange, kg (from memory). */
const flangeKg = 0.4;
const RAD = Math.PI / 180;

/** Two places of the tilt axis beside each other. */
export interface AxisChoice {
  readonly name: 'through the focus' | 'through the centre of gravity';
  /** Above the board's upper face. */
  readonly height: number;
  /** Greatest torque to be held without counterweights, N·m: with the vessel on, and off. */
  readonly torque: number;
  readonly torqueEmpty: number;
  /** At the rim. */
  readonly handN: number;
  /** Counterweights that take what a hand should not, both together, kg. */
  readonly counterweightKg: number;
  /** How far the vessel travels between the ends of the range. */
  readonly travel: number;
}

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
  readonly vesselHeight: number;
  readonly collisions: readonly Collision[];
  /** From vessel and hanger to the mirror; null without. */
  readonly hollow: number | null;
}

export interface Stand {
  readonly cradle: Cradle;
  readonly holder: Holder | null;
  readonly parts: readonly Part[];
  readonly placed: readonly AssembledPlate[];
  readonly fasteners: readonly Fastener[];
  /** What tilts and what stands, as outlines across the tilt axis, the dish looking up. */
  readonly tilting: readonly Prism[];
  readonly standing: readonly Prism[];
  readonly values: StandValues;
  /** The wind in which the factor is just kept, m/s, with some ballast (kg). */
  readonly windAt: (ballastKg: number) => number;
}

/** The vessel with its load, kg, and the height of its centre above its base. */
function vesselMass({ design: { vessel, load } }: StandSource): { readonly kg: number; readonly middle: number } {
  if (vessel === undefined) return { kg: 0, middle: 0 };
  const loadKg = load?.mass ?? 0;
  const kg = vessel.wallMass + loadKg;
  return { kg, middle: kg === 0 ? 0 : (vessel.height * (vessel.wallMass / 2 + (loadKg * vessel.fill) / 2)) / kg };
}

/** A place turned into the cradle's axes, and tilted about its axis. */
function turned({ turn }: Cradle, [x, y, z]: Vec3): Vec3 {
  const at = rotate({ x, y }, -turn);
  return [at.x, at.y, z];
}

function tiltedPlace({ axis }: Pick<Cradle, 'axis'>, [x, y, z]: Vec3, angle: number): Vec3 {
  const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
  return [x * cos + (z - axis) * sin, y, axis + (z - axis) * cos - x * sin];
}

interface Made {
  readonly cradle: Cradle;
  readonly parts: readonly Part[];
  readonly placed: readonly AssembledPlate[];
  readonly fasteners: readonly Fastener[];
  /** In the cradle's axes, the dish looking up. */
  readonly tilting: Mass;
  readonly standing: Mass;
  readonly dish: Mass;
}

function madeWith(source: StandSource, assembly: Assembly, lever: number): Made | null {
  const { design, dish, stand } = source;
  const cradle = cradleOf(source, lever, vesselMass(source).kg * gravity);
  if (cradle === null) return null;
  const parts = cradleParts(cradle, {
    sheet: stand.material,
    thin: stand.baseMaterial,
    packing: design.board.material,
    mountingBolt: design.board.mountingBolt,
    board: design.materials[design.board.material]?.thickness ?? 0,
  }).map(source.finish);
  const placed = placeStand(cradle, parts);
  const fasteners = standBolts(placed, assembly.placed);
  const inCradle = (masses: readonly Mass[]): Mass[] => masses.map((one) => ({ ...one, at: turned(cradle, one.at) }));
  const ownDish: readonly AssembledPart[] = assembly.placed;
  const dishMasses = inCradle([
    ...partMasses(design, dish, ownDish),
    ...fastenerMasses(assembly.fasteners.filter(({ joint }) => joint !== 'board-to-stand')),
  ]);
  const own = inCradle(partMasses(design, dish, placed));
  const bolts = inCradle(fastenerMasses(fasteners)).map((one, i) => ({
    ...one,
    tilts: fasteners[i]?.through.some(({ part }) => tilts(part.part)) ?? false,
  }));
  const moving = placed.map(({ part }) => tilts(part));
  return {
    cradle,
    parts,
    placed,
    fasteners,
    dish: together('dish', dishMasses),
    tilting: together('what tilts', [
      ...dishMasses,
      ...own.filter((_, i) => moving[i]),
      ...bolts.filter((one) => one.tilts),
    ]),
    standing: together('what stands', [...own.filter((_, i) => !moving[i]), ...bolts.filter((one) => !one.tilts)]),
  };
}

/** From the tilt axis to the rim, where a hand takes hold. */
const handLever = ({ cradle }: Made, rimHeight: number): number => Math.hypot(cradle.rim, cradle.axis - rimHeight);

function axisChoices(source: StandSource, made: Made, rimHeight: number, lever: number): AxisChoice[] {
  const { cradle, tilting } = made;
  const { kg: vesselKg } = vesselMass(source);
  const { tilt, axis } = cradle;
  const worst = tilt.to;
  const below = axis - tilting.at[2];
  const allowed = (source.stand.handForce * handLever(made, rimHeight)) / 1000;
  const focusTorque = tiltTorque(tilting.kg, below, worst);
  // where dish and vessel balance; the vessel then hangs in the arms
  const both = tilting.kg + vesselKg;
  const height = (tilting.kg * tilting.at[2] + vesselKg * axis) / both;
  const empty = tiltTorque(tilting.kg, height - tilting.at[2], worst);
  const hand = (torque: number, at: number): number => (1000 * torque) / Math.hypot(cradle.rim, at - rimHeight);
  return [
    {
      name: 'through the focus',
      height: axis,
      torque: focusTorque,
      torqueEmpty: focusTorque,
      handN: hand(focusTorque, axis),
      counterweightKg: 2 * discsOf(counterweightFor(focusTorque, allowed, lever, worst)).each,
      travel: 0,
    },
    {
      name: 'through the centre of gravity',
      height,
      torque: 0,
      torqueEmpty: empty,
      handN: hand(empty, height),
      counterweightKg: 0,
      travel: 2 * (axis - height) * Math.sin((tilt.to - tilt.from) / 2),
    },
  ];
}

/** Everything's mass and centre at tilts a degree apart, x towards the sun, z from the ground; vessel on and off. */
function statesOf(made: Made, weights: Counterweights, fixed: readonly Mass[], vessel: Mass, rim: number): Standing[] {
  const { cradle, tilting, standing } = made;
  const { tilt, axis, lever, ground } = cradle;
  const up = ([x, y, z]: Vec3): Vec3 => [x, y, z - ground];
  const count = Math.max(1, Math.ceil((tilt.to - tilt.from) / RAD - 1e-9));
  const angles = [0, ...Array.from({ length: count + 1 }, (_, i) => Math.min(tilt.to, tilt.from + i * RAD))];
  return angles.flatMap((angle) => {
    const moving = [
      { ...tilting, at: tiltedPlace(cradle, tilting.at, angle) },
      { name: 'counterweights', kg: 2 * weights.each, at: tiltedPlace(cradle, [0, 0, axis + lever], angle) },
    ];
    return [true, false].map((on): Standing => {
      const all = together('machine', [...moving, standing, ...fixed, ...(on ? [vessel] : [])]);
      return { tilt: angle, kg: all.kg, centre: up(all.at), face: up(tiltedPlace(cradle, [0, 0, rim], angle)) };
    });
  });
}

/** Torque about the tilt axis, N·mm, of weight and of wind on one half of the aperture. */
function heldTorque(made: Made, weights: Counterweights, face: DishFace, angle: number, speed: number): number {
  const { cradle, tilting } = made;
  const weight =
    gravity * (tilting.kg * (cradle.axis - tilting.at[2]) - 2 * weights.each * cradle.lever) * Math.sin(angle);
  return Math.abs(weight) + (plateForce(face, angle, speed) * face.radius) / 2;
}

/** The hanger with what is bought, and the vessel with its load. */
function heldParts(source: StandSource, { cradle }: Made) {
  const { design, stand } = source;
  const { vessel } = design;
  const load = vesselMass(source);
  const offset = vessel?.offset ?? 0;
  const inside = stand.holderWidth ?? (vessel?.diameter ?? 0) + holderPlay;
  const holder =
    vessel === undefined || stand.holder === 'none'
      ? null
      : holderOf(cradle.pipe, inside, offset, cradle.sideY + cradle.sheet, load.kg * gravity);
  const pipeKg = holder === null ? 0 : 2 * holder.pipe * pipeMass(cradle.pipe);
  const fixed: Mass[] = [
    { name: 'castors', kg: 4 * castorKg, at: [0, 0, cradle.ground + cradle.castors.height / 2] },
    { name: 'pipes and flanges', kg: pipeKg + 2 * flangeKg, at: [0, 0, cradle.axis] },
    ...(holder === null ? [] : [{ name: 'hanger', kg: holder.kg, at: [0, 0, cradle.axis + holder.middle] as Vec3 }]),
  ];
  const held: Mass = {
    name: 'vessel',
    kg: holder === null ? 0 : load.kg,
    at: [0, 0, cradle.axis + offset + load.middle],
  };
  return { holder, fixed, held, offset, top: offset + (vessel?.height ?? 0), radius: (vessel?.diameter ?? 0) / 2 };
}

/** What holds against the wind: tipping, the lock, and how much all gives. */
function windValues(
  source: StandSource,
  made: Made,
  weights: Counterweights,
  states: readonly Standing[],
  face: DishFace,
) {
  const { dish, stand } = source;
  const { cradle } = made;
  const stance: Stance = { halfX: cradle.castors.x - castorTrail, halfY: cradle.castors.y - castorTrail };
  const ballastKg = 5 * Math.max(0, Math.ceil(ballastFor(states, stance, face, stand.wind) / 5 - 1e-9));
  const angles = states.map(({ tilt }) => tilt);
  const lockTorque = Math.max(...angles.map((angle) => heldTorque(made, weights, face, angle, stand.wind))) / 1000;
  const pinN = (1000 * lockTorque) / (2 * cradle.lock.radius);
  const deflections = angles.map((tilt) =>
    deflectionAt(cradle, {
      dishN: made.tilting.kg * gravity,
      windN: plateForce(face, tilt, stand.workingWind),
      torque: heldTorque(made, weights, face, tilt, stand.workingWind),
      tilt,
      focal: cradle.axis - dish.baseHeight,
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
  const bare = madeWith(source, assembly, 0);
  if (bare === null) return null;
  const rim = dish.baseHeight + dish.depth;
  const allowed = (stand.handForce * handLever(bare, rim)) / 1000;
  const longest = usualLever(bare.cradle.axis);
  const lever = torqueOf(bare) > allowed ? longest : 0;
  const made = lever === 0 ? bare : (madeWith(source, assembly, lever) ?? bare);
  const { cradle } = made;
  const weights = discsOf(counterweightFor(torqueOf(made), allowed, lever, cradle.tilt.to));
  const { holder, fixed, held, offset, top, radius } = heldParts(source, made);
  const face: DishFace = { radius: dish.apertureRadius, depth: rim - cradle.cross.top };
  const wind = windValues(source, made, weights, statesOf(made, weights, fixed, held, rim), face);
  const tilting = tiltingPrisms(source, cradle, weights);
  const standing = standingPrisms(cradle, holder, top, radius);
  const fixedKg = together('bought', fixed).kg;
  const left = torqueOf(made) - 2 * tiltTorque(weights.each, lever, cradle.tilt.to);
  return {
    cradle,
    holder,
    parts: made.parts,
    placed: made.placed,
    fasteners: made.fasteners,
    tilting,
    standing,
    windAt: wind.windAt,
    values: {
      dishKg: made.dish.kg,
      tiltingKg: made.tilting.kg,
      below: cradle.axis - made.tilting.at[2],
      totalKg: made.tilting.kg + made.standing.kg + fixedKg + 2 * weights.each,
      axes: axisChoices(source, made, rim, longest),
      weights,
      handN: (1000 * Math.abs(left)) / handLever(made, rim),
      ...wind.values,
      vesselHeight: cradle.axis + offset - cradle.ground,
      collisions: collisions(tilting, standing, cradle.axis, { from: 0, to: cradle.tilt.to }),
      hollow: holder === null ? null : hollowClearance(dish, holder, top, radius),
    },
  };
}
