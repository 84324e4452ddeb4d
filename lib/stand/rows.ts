/** The values of a stand as tables. */
import { tippingFactor } from './tipping.js';
import type { Stand } from './make.js';
import { ringDegrees, ringRadius, sightHeight } from './sight.js';
import { offMiddle } from './linkage.js';
import { holeLetters } from './part-shapes.js';
import type { Design } from '../design/index.js';

interface StandRow {
  readonly label: string;
  readonly value: string;
  readonly note: string;
}

/** Two positions of the tilt axis, compared: heads and rows. */
export interface AxisTable {
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** Above this mass two people lift, kg: common practice, no source. */
export const liftAlone = 25;

const DEG = 180 / Math.PI;
const one = (value: number): string => value.toFixed(1);
const whole = (value: number): string => value.toFixed(0);

const row = (label: string, value: string, note: string): StandRow => ({ label, value, note });

/** What hangs in the focus. */
function holderRows({ holder, values }: Pick<Stand, 'holder' | 'values'>, length: (mm: number) => string): StandRow[] {
  const { linkN, hollow } = values;
  return [
    ...(holder === null
      ? []
      : [row('hanger', length(holder.inside), `inside; its straps sag ${one(holder.strapSag)} mm under the vessel`)]),
    ...(linkN === null
      ? []
      : [row('links', `${whole(linkN)} N`, `in each, with the vessel ${length(offMiddle)} off centre`)]),
    ...(hollow === null ? [] : [row('vessel to mirror', length(Math.floor(hollow)), 'the nearest at any tilt')]),
  ];
}

export function standRows(
  { cradle, holder, values }: Stand,
  design: Design,
  length: (mm: number) => string,
): StandRow[] {
  const { tilt, lever } = cradle;
  const asked = design.stand;
  if (asked === undefined) return [];
  const { weights, deflection } = values;
  const site =
    design.site === undefined
      ? 'a usual range, as the design has no site'
      : 'from the site’s highest sun to the lowest in use';
  const bySite = asked.highest === undefined ? site : 'as the design states';
  return [
    row('range', `${whole(90 - tilt.to * DEG)} to ${whole(90 - tilt.from * DEG)}°`, `height of the sun; ${bySite}`),
    row(
      'mass',
      `${whole(values.totalKg)} kg`,
      `dish ${whole(values.dishKg)} kg, counterweights ${one(2 * weights.each)} kg; without vessel and ballast`,
    ),
    row(
      'tilt axis',
      length(cradle.axis - cradle.ground),
      `above the ground, through the ${asked.axis === 'focus' ? 'focus' : 'centre of gravity'}; the vessel’s base at ${vesselAt(values, length)}`,
    ),
    row('centre of gravity', length(values.below), 'of what tilts, without the vessel, below the tilt axis'),
    row(
      'counterweights',
      lever === 0 ? 'none' : `2 x ${weights.each} kg`,
      lever === 0 ? 'light enough to tilt without' : `${length(lever)} beyond the tilt axis`,
    ),
    row('hand force', `${whole(values.handN)} N`, `at the rim, at the lowest sun; ${asked.handForce} N allowed`),
    row(
      'lock holds',
      `${whole(values.lockTorque)} N m`,
      `in gusts of ${asked.wind} m/s; ${whole(values.pinN)} N on each pin, ${one(values.pinBearing)} N/mm² on the wood`,
    ),
    row('ballast', `${values.ballastKg} kg`, `in the middle of the base, for gusts of ${asked.wind} m/s`),
    row(
      'tipping factor',
      values.factor.toFixed(2),
      `the minimum over all tilts and winds with that ballast; ${tippingFactor} or more`,
    ),
    row(
      'take it down above',
      `${one(values.takeDown)} m/s`,
      `${whole(3.6 * values.takeDown)} km/h; without ballast above ${one(values.bareWind)} m/s`,
    ),
    row(
      'give',
      `${one(deflection.totalMrad)} mrad`,
      `aim error in a wind of ${asked.workingWind} m/s, all in one direction: ${deflection.parts.map(({ what, mrad }) => `${what} ${one(mrad)}`).join('; ')}`,
    ),
    ...holderRows({ holder, values }, length),
    row(
      'sight',
      ringDegrees.map((degrees) => length(ringRadius(degrees, sightHeight))).join(', '),
      'radii of its rings of 0.5, 1 and 2°',
    ),
    row(
      'motion',
      values.collisions.length === 0 ? 'free' : 'not free',
      'every half degree from looking up to the lowest sun',
    ),
  ];
}

/** Height of the vessel's base: one, or from the lowest sun to the highest. */
function vesselAt({ vesselHeight: { low, high } }: Stand['values'], length: (mm: number) => string): string {
  const [from, to] = [length(low), length(high)];
  return from === to ? from : `${from} to ${to}`;
}

export function axisTable({ values }: Stand, length: (mm: number) => string): AxisTable {
  const { axes } = values;
  const cells = (of: (axis: (typeof axes)[number]) => string): string[] => axes.map(of);
  return {
    heads: ['tilt axis', ...axes.map(({ name }) => name)],
    rows: [
      ['height above the board', ...cells(({ height }) => length(height))],
      ['torque at the lowest sun, vessel on', ...cells(({ torque }) => `${whole(torque)} N m`)],
      ['torque at the lowest sun, vessel off', ...cells(({ torqueEmpty }) => `${whole(torqueEmpty)} N m`)],
      ['hand force at the rim without counterweights', ...cells(({ handN }) => `${whole(handN)} N`)],
      [
        'counterweights to bring it down to what is allowed',
        ...cells(({ counterweightKg }) => `${counterweightKg} kg`),
      ],
      ['travel of the vessel over the range', ...cells(({ travel }) => length(Math.round(travel)))],
    ],
  };
}

/** A height of the sun with the hole of the frame and the letter of the arm that lock it. */
export interface Setting {
  readonly sunDeg: number;
  readonly hole: number;
  readonly letter: string;
}

/** Every setting of the lock in the range, from the highest sun to the lowest. */
export function settingsOf({ cradle: { lock, tilt } }: Pick<Stand, 'cradle'>): Setting[] {
  const all = lock.frame.flatMap((frame, hole) =>
    lock.arm.map((offset, j) => ({ angle: frame - offset, hole, letter: holeLetters.charAt(j) })),
  );
  return all
    .filter(({ angle }) => angle >= tilt.from - 1e-6 && angle <= tilt.to + 1e-6)
    .sort((a, b) => a.angle - b.angle)
    .map(({ angle, hole, letter }) => ({ sunDeg: 90 - angle * DEG, hole, letter }));
}
