/** What is bought for a stand beside its sheets and the bolts of its joints. */
import { flatSteel, pipeName } from '../hardware/index.js';
import { type Cradle, stubLength } from './cradle.js';
import type { Holder } from './holder.js';
import { sightHeight } from './sight.js';
import type { Stand } from './make.js';

export interface Bought {
  readonly item: string;
  readonly count: number;
  readonly use: string;
}

/** Threads, bolts and screws in the sizes of either system, for the same holes: common practice, no source. */
const sizes = {
  metric: { light: 'M8', heavy: 'M12', pipeBolt: 'M8 x 50 mm', cornerBolt: 'M8 x 20 mm', screw: '4 x 40 mm' },
  inch: {
    light: '5/16 in',
    heavy: '1/2 in',
    pipeBolt: '5/16 in x 2 in',
    cornerBolt: '5/16 in x 3/4 in',
    screw: 'no 8 x 1-1/2 in',
  },
} as const;
type Sizes = (typeof sizes)['metric' | 'inch'];

/** A sandbag, kg. */
const bagKg = 25;
/** Thread that shows at an end of a rod with nut and washer, mm (common practice, no source). */
const rodEnd = 25;

/** Pipes of a hanger that the arms carry, and what its levers and links need. */
function linkageBought(
  cradle: Cradle,
  pipe: string,
  name: string,
  { light }: Sizes,
  length: (mm: number) => string,
): Bought[] {
  const { sheet, thin, spacers } = cradle;
  const apart = (spacers - 1) * thin + sheet;
  const rod = (grip: number): string => `Threaded rod ${light}, ${length(Math.ceil(grip + 2 * rodEnd))} long`;
  return [
    { item: pipe, count: 2, use: 'carries the hanger in the arms' },
    {
      item: `Floor flange for pipe ${name}, with 4 wood screws that do not come through`,
      count: 2,
      use: 'pipes to the levers, outside',
    },
    {
      item: `${rod(2 * thin + apart)}, 2 self-locking nuts, 2 nuts and 4 washers; steel tube over it ${length(apart)} long`,
      count: 2,
      use: 'levers to the links, the tube between them',
    },
    {
      item: `${rod(sheet + thin)}, 2 self-locking nuts, 2 nuts and 4 washers`,
      count: 2,
      use: 'links to the side frames',
    },
  ];
}

/** The hanger's flat steel and bolts. */
function hangerBought(holder: Holder, size: Sizes, length: (mm: number) => string): Bought[] {
  const { end, long, strap } = flatSteel;
  const flat = ({ width, thickness }: { readonly width: number; readonly thickness: number }, mm: number): string =>
    `Flat steel ${length(width)} x ${length(thickness)}, ${length(mm)} long`;
  const nut = 'washers and self-locking nut';
  return [
    { item: flat(end, holder.endBar), count: 2, use: 'hanger: bars across the pipes' },
    { item: flat(long, holder.longBar), count: 2, use: 'hanger: bars along the pipes' },
    { item: `${flat(strap, holder.strap)}, bent to a U`, count: 2, use: 'hanger: straps under the vessel' },
    { item: `Bolt ${size.pipeBolt}, ${nut}`, count: 4, use: 'hanger: bars to the pipes, two each' },
    { item: `Bolt ${size.cornerBolt}, ${nut}`, count: 8, use: 'hanger: corners and straps' },
  ];
}

/**
 * @param length a length in the user's unit
 * @param inches whether pipes are called by inches
 */
export function boughtFor(
  { cradle, holder, values }: Stand,
  length: (mm: number) => string,
  inches: boolean,
): Bought[] {
  const name = pipeName(cradle.pipe, inches);
  const size = inches ? sizes.inch : sizes.metric;
  const { sheet, thin, pipe, lock, castors, lever, linkage } = cradle;
  const through = 2 * sheet + cradle.spacers * thin;
  const pipeItem = (mm: number): string =>
    `Steel pipe ${name} (${length(pipe.outside)} outside), ${length(mm)} long, threaded at one end`;
  const fixed = holder !== null && linkage === null;
  const bags = Math.ceil(values.ballastKg / bagKg - 1e-9);
  return [
    {
      item: pipeItem(fixed ? holder.pipe : stubLength(cradle)),
      count: 2,
      use: fixed ? 'tilt axis, and carries the hanger' : 'tilt axis',
    },
    {
      item: `Floor flange for pipe ${name}, with 4 wood screws`,
      count: 2,
      use: 'pipes to the side frames, outside',
    },
    ...(holder === null || linkage === null ? [] : linkageBought(cradle, pipeItem(holder.pipe), name, size, length)),
    {
      item: `Ball-lock pin ${length(lock.pin)}, grip ${length(through)} or more, on a cord`,
      count: 2,
      use: 'lock of the tilt',
    },
    { item: `Swivel castor with brake, ${length(castors.height)} high, with screws`, count: 4, use: 'under the base' },
    {
      item: `Threaded rod ${size.heavy}, ${length(castors.height + 2 * thin + 2 * rodEnd)} long, 4 nuts, 4 washers`,
      count: 1,
      use: 'pivot of the base',
    },
    {
      item: `Threaded rod ${size.light}, ${length(sightHeight + 2 * thin + 30)} long, 4 nuts and washers; 2 wood screws ${size.screw}`,
      count: 2,
      use: 'sight: between its plates; screws into the arm’s end',
    },
    ...(holder === null ? [] : hangerBought(holder, size, length)),
    ...(lever === 0
      ? []
      : [
          {
            item: `Cast-iron discs as for barbells, ${values.weights.each} kg together`,
            count: 2,
            use: 'counterweights, a stack on each arm',
          },
          {
            item: `Bolt ${size.heavy}, ${length(sheet + values.weights.thickness + 30)} long, large washers, two nuts`,
            count: 2,
            use: 'counterweights to the arms',
          },
        ]),
    ...(bags === 0 ? [] : [{ item: `Sandbag of ${bagKg} kg`, count: bags, use: 'ballast on the base' }]),
  ];
}
