/** Where the tilt axis lies: what follows from either place, and the place at which dish and vessel balance. */
import type { Assembly } from '../assembly/index.js';
import { counterweightFor, discsOf, tiltTorque } from './balance.js';
import type { StandSource } from './cradle.js';
import { type Held, heldParts } from './held.js';
import { handLever, type Made, madeWith } from './made.js';
import type { Mass } from './masses.js';

/** Two positions of the tilt axis, compared. */
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

/**
 * Height of the tilt axis at which the dish with a full vessel balances. The vessel bears down on the focus, whatever
 * its own height. With less in it the dish is bottom-heavy and turns its mirror up by itself.
 */
function balancedHeight({ cradle, tilting }: Made, { hanger, vessel }: Held): number {
  const carried = hanger.kg + vessel.kg;
  return (tilting.kg * tilting.at[2] + carried * cradle.focus) / (tilting.kg + carried);
}

/** Torques about a tilt axis at some height, N·m, without counterweights: with the vessel on, and off. */
export function torquesAt(axis: number, { cradle, tilting }: Made, { hanger, vessel }: Held, angle: number) {
  const dish = tiltTorque(tilting.kg, axis - tilting.at[2], angle);
  const carried = (kg: number): number => tiltTorque(kg, cradle.focus - axis, angle);
  return { on: dish - carried(hanger.kg + vessel.kg), off: dish - carried(hanger.kg) };
}

/**
 * Both positions of the tilt axis, compared.
 * @param about the stand about the focus
 * @param through the stand about the centre of gravity where that is built; else it is reckoned from the other's masses
 */
export function axisChoices(
  source: StandSource,
  about: Made,
  through: Made | null,
  rimHeight: number,
  lever: number,
): AxisChoice[] {
  const { cradle } = about;
  const { tilt, focus } = cradle;
  const allowed = (source.stand.handForce * handLever(about, rimHeight)) / 1000;
  const hand = (torque: number, at: number): number => (1000 * Math.abs(torque)) / handLever(about, rimHeight, at);
  const { held } = heldParts(source, about);
  const aboutFocus = torquesAt(focus, about, held, tilt.to).off;
  const height = through?.cradle.axis ?? balancedHeight(about, held);
  const balance = torquesAt(height, through ?? about, through ? heldParts(source, through).held : held, tilt.to);
  return [
    {
      name: 'through the focus',
      height: focus,
      torque: aboutFocus,
      torqueEmpty: aboutFocus,
      handN: hand(aboutFocus, focus),
      counterweightKg: 2 * discsOf(counterweightFor(aboutFocus, allowed, lever, tilt.to)).each,
      travel: 0,
    },
    {
      name: 'through the centre of gravity',
      height,
      torque: Math.abs(balance.on),
      torqueEmpty: Math.abs(balance.off),
      handN: hand(Math.max(Math.abs(balance.on), Math.abs(balance.off)), height),
      counterweightKg: 0,
      travel: 2 * (focus - height) * Math.sin((tilt.to - tilt.from) / 2),
    },
  ];
}

/** How often the tilt axis is laid through the centre of gravity of the arms that it has: each time it moves less. */
const settlings = 6;

/** A stand whose tilt axis lies where dish and vessel balance, or less than a millimetre above: links are whole millimetres long. */
export function balanced(source: StandSource, assembly: Assembly, own: readonly Mass[], about: Made): Made | null {
  let made: Made | null = about;
  for (let i = 0; i < settlings && made !== null; i++) {
    const { axis, focus } = made.cradle;
    const next: number = focus - Math.floor(focus - balancedHeight(made, heldParts(source, made).held));
    if (Math.abs(next - axis) < 0.5) return made;
    made = madeWith(source, assembly, own, { axis: next, lever: 0 });
  }
  return made;
}
