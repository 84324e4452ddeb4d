/** What hangs in the focus, and what is bought for the stand: masses at their places, the dish looking up. */
import { holderPlay, pipeMass } from '../hardware/index.js';
import { type Cradle, type StandSource, stubLength } from './cradle.js';
import { type Holder, holderOf } from './holder.js';
import { type Made, vesselMass } from './made.js';
import { type Mass, together } from './masses.js';
import { gravity } from './tipping.js';

/** Mass of a castor, kg (common practice, no source). */
const castorKg = 0.6;
/** Mass of a floor flange, kg (from memory). */
const flangeKg = 0.4;

/** What hangs in the focus: hanger and pipes, with levers where the arms carry them, and the vessel or not. */
export interface Held {
  readonly hanger: Mass;
  readonly vessel: Mass;
}

/** The hanger of a vessel; null where there is none. */
function hangerOf({ design: { vessel }, stand }: StandSource, cradle: Cradle, carriedN: number): Holder | null {
  if (vessel === undefined || stand.holder === 'none') return null;
  const inside = stand.holderWidth ?? vessel.diameter + holderPlay;
  const { linkage, armY, sideY, sheet, thin } = cradle;
  const outer = linkage === null ? sideY + sheet : armY + sheet + thin;
  return holderOf(cradle.pipe, inside, vessel.offset, outer, carriedN);
}

/** The hanger with its pipes and levers, the vessel with its load, and what else is bought. */
export function heldParts(source: StandSource, { cradle, level }: Made) {
  const { vessel } = source.design;
  const { focus, linkage } = cradle;
  const load = vesselMass(source);
  const { offset, height, diameter } = vessel ?? { offset: 0, height: 0, diameter: 0 };
  const holder = hangerOf(source, cradle, load.kg * gravity);
  const pipeKg = holder === null ? 0 : 2 * holder.pipe * pipeMass(cradle.pipe);
  const stubKg = holder !== null && linkage === null ? 0 : 2 * stubLength(cradle) * pipeMass(cradle.pipe);
  const fixed: Mass[] = [
    { name: 'castors', kg: 4 * castorKg, at: [0, 0, cradle.ground + cradle.castors.height / 2] },
    { name: 'pipes and flanges', kg: stubKg + 2 * flangeKg, at: [0, 0, cradle.axis] },
  ];
  const hanger = together('hanger', [
    { name: 'pipes', kg: pipeKg + (linkage === null ? 0 : 2 * flangeKg), at: [0, 0, focus] },
    { name: 'frame', kg: holder?.kg ?? 0, at: [0, 0, focus + (holder?.middle ?? 0)] },
    level,
  ]);
  const held: Held = {
    hanger,
    vessel: { name: 'vessel', kg: holder === null ? 0 : load.kg, at: [0, 0, focus + offset + load.middle] },
  };
  return { holder, fixed, held, offset, top: offset + height, radius: diameter / 2 };
}
