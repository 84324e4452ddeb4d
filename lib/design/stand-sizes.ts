/** What follows of the stand where the file leaves it out. Millimetres. */
import type { Filled } from './design.js';
import type { DesignFile } from './schema.js';
import { axleSpan, holderPlay, holderShade, pipeFor } from '../hardware/index.js';
import type { FilledLoad, FilledVessel } from './vessel-sizes.js';

export type StandFile = NonNullable<DesignFile['stand']>;
export type FilledStand = Filled<StandFile, 'material' | 'baseMaterial' | 'lowest' | 'foot' | 'holder'> & {
  readonly kind: 'cradle';
};

/** Tabs, bolts and beams find their places from here on, mm. */
const minFoot = 180;

/** The stand with its defaults; undefined where none is asked for. */
export function filledStand(
  { stand, dish, day }: DesignFile,
  { rib, board }: { readonly rib: string; readonly board: string },
  vessel: FilledVessel | undefined,
): FilledStand | undefined {
  if (stand === undefined || stand.kind === 'none') return undefined;
  return {
    ...stand,
    kind: 'cradle',
    material: stand.material ?? board,
    baseMaterial: stand.baseMaterial ?? rib,
    lowest: stand.lowest ?? day.minElevation,
    foot: stand.foot ?? Math.max(minFoot, 5 * Math.round((0.23 * dish.aperture) / 5)),
    holder: stand.holder ?? (vessel?.mount === 'level' ? 'hanger' : 'none'),
  };
}

/** m/s². */
const gravity = 9.81;

/** The vessel with what its hanger shades, where the file does not say it. */
export function hungVessel(
  { vessel: stated, dish }: DesignFile,
  vessel: FilledVessel | undefined,
  load: FilledLoad | undefined,
  stand: FilledStand | undefined,
): FilledVessel | undefined {
  if (vessel === undefined || stand?.holder !== 'hanger') return vessel;
  const radius = dish.aperture / 2;
  const pipe = pipeFor(axleSpan(radius), (vessel.wallMass + (load?.mass ?? 0)) * gravity);
  if (pipe === null) return vessel;
  const inside = stand.holderWidth ?? vessel.diameter + holderPlay;
  return {
    ...vessel,
    holderArms: stated?.holderArms ?? 2,
    holderWidth: stated?.holderWidth ?? holderShade(pipe, inside, vessel.diameter, radius),
  };
}
