/** A cradle with its parts at their places, and what stands and moves of it. */
import type { AssembledPlate, Assembly, Fastener } from '../assembly/index.js';
import { rotate, type Vec3 } from '../geometry/index.js';
import type { Part } from '../part/index.js';
import { type AxisPlace, type Cradle, cradleOf, type StandSource } from './cradle.js';
import { fastenerMasses, type Mass, partMasses, together } from './masses.js';
import { cradleParts } from './parts.js';
import { motionOf, placeStand, standBolts } from './places.js';
import { type Motion, posed } from './pose.js';
import { gravity } from './tipping.js';

/** The vessel with its load, kg, and the height of its centre above its base. */
export function vesselMass({ design: { vessel, load } }: StandSource): {
  readonly kg: number;
  readonly middle: number;
} {
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

export function placeAt(cradle: Cradle, motion: Motion, [x, y, z]: Vec3, angle: number): Vec3 {
  const at = posed({ x, y: z }, motion, cradle, angle);
  return [at.x, y, at.y];
}

export interface Made {
  readonly cradle: Cradle;
  readonly parts: readonly Part[];
  readonly placed: readonly AssembledPlate[];
  readonly fasteners: readonly Fastener[];
  /** In the cradle's axes, the dish looking up. */
  readonly tilting: Mass;
  readonly standing: Mass;
  /** Levers, which go with the hanger. */
  readonly level: Mass;
  readonly dish: Mass;
}

/** Masses of the dish itself, in its own axes. */
export const dishMasses = ({ design, dish }: StandSource, assembly: Assembly): Mass[] => [
  ...partMasses(design, dish, assembly.placed),
  ...fastenerMasses(assembly.fasteners.filter(({ joint }) => joint !== 'board-to-stand')),
];

/** Stand for a dish whose own masses are known; null where its mounting holes allow none. */
export function madeWith(
  source: StandSource,
  assembly: Assembly,
  own: readonly Mass[],
  place: Pick<AxisPlace, 'axis' | 'lever'>,
): Made | null {
  const { design, dish, stand } = source;
  const cradle = cradleOf(source, { ...place, carriedN: vesselMass(source).kg * gravity });
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
  const dishMass = inCradle(own);
  const plates = inCradle(partMasses(design, dish, placed)).map((one, i) => ({
    one,
    motion: motionOf(placed[i]!.part),
  }));
  const bolts = inCradle(fastenerMasses(fasteners)).map((one, i) => {
    const moves = fasteners[i]?.through.some(({ part }) => motionOf(part.part) === 'tilts') ?? false;
    return { one, motion: moves ? 'tilts' : 'stands' };
  });
  // a bar that goes along with one end and stays with the other counts half and half
  const half = plates.filter(({ motion }) => motion === 'link').map(({ one }) => ({ ...one, kg: one.kg / 2 }));
  const of = (motion: Motion): Mass[] =>
    [...plates, ...bolts].filter((all) => all.motion === motion).map(({ one }) => one);
  return {
    cradle,
    parts,
    placed,
    fasteners,
    dish: together('dish', dishMass),
    tilting: together('what tilts', [...dishMass, ...of('tilts')]),
    standing: together('what stands', [...of('stands'), ...atLinkEnds(cradle, half, cradle.axis)]),
    level: together('levers', [...of('level'), ...atLinkEnds(cradle, half, cradle.focus)]),
  };
}

/** Halves of the links, at the height of their bolts at one end. */
const atLinkEnds = ({ linkage }: Cradle, halves: readonly Mass[], height: number): Mass[] =>
  halves.map((one) => ({ ...one, at: [one.at[0], one.at[1], height + (linkage?.lever.y ?? 0)] }));
/** From a tilt axis, where the stand has it or at another height, to the rim, where a hand takes hold. */
export const handLever = ({ cradle }: Made, rimHeight: number, axis = cradle.axis): number =>
  Math.hypot(cradle.rim, axis - rimHeight);
