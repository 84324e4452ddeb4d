/** Screws, bolts, dowels and pins by size and number, as the assembly holds them. */
import { pathLength } from '../../geometry/index.js';
import type { FastenerItem, JointKind } from '../../assembly/index.js';
import { formatFraction } from '../../units/index.js';
import type { BookInput } from './input.js';

export interface Hardware {
  /** As it is asked for in a shop. */
  readonly item: string;
  readonly count: number;
  readonly use: string;
}

const uses: Readonly<Record<JointKind, string>> = {
  'cleat-to-board': 'cleats to the board',
  'cleat-to-rib': 'cleats to the ribs',
  'hub-dowel': 'hub and board in register',
  'hub-bolt': 'hub to the board',
  'board-to-stand': 'board to its stand',
  'splice-to-board': 'splice plates to the board',
  'splice-bolt': 'segments of the board to each other',
  'panel-over-joint': 'panels over joints to the ribs',
  'panel-to-rib': 'panels to the ribs',
  'batten-to-rib': 'battens to the ribs',
  'stand-joint': 'parts of the stand to each other',
};

const inInches = ({ size }: FastenerItem): boolean => /in$|^no |gauge/.test(size);

/** A length as the shop sells it: whole millimetres, or inches in sixteenths. */
const soldLength = (item: FastenerItem, mm: number): string =>
  inInches(item) ? formatFraction(mm, 16).replace('"', ' in') : `${Math.round(mm)} mm`;

/** `4 x 40 mm`, `no 8 x 1-1/4 in`, `M8 x 90 mm`. */
export function sizeText(item: FastenerItem): string {
  if (item.length === null) return item.size;
  return `${item.size} x ${soldLength(item, item.length)}`;
}

function nameOf(joint: JointKind, item: FastenerItem): string {
  switch (item.kind) {
    case 'wood-screw':
      return item.length === null
        ? `Countersunk wood screw ${item.size}, cut to length: none that is sold is short enough`
        : `Countersunk wood screw ${sizeText(item)}${joint === 'panel-over-joint' ? ' and screw cup' : ''}`;
    case 'bolt':
      if (joint === 'splice-bolt')
        return item.length === null
          ? `Threaded rod ${item.size}, nut, washer and tee nut: no bolt is short enough`
          : `Bolt ${sizeText(item)}, washer and tee nut`;
      if (joint === 'stand-joint' || (joint === 'board-to-stand' && item.length !== null))
        return item.length === null
          ? `Threaded rod ${item.size}, nut, washer and barrel nut: no bolt is long enough`
          : `Bolt ${sizeText(item)}, washer and barrel nut`;
      return joint === 'board-to-stand'
        ? `Bolt ${item.size}, washers and nut, length by the stand`
        : item.length === null
          ? `Threaded rod ${item.size}, washers and nuts: no bolt is long enough`
          : `Bolt ${sizeText(item)}, two washers and nut`;
    case 'dowel':
      return `Dowel ${sizeText(item)}, cut from rod`;
    case 'staple':
      return `Staple ${sizeText(item)}`;
    case 'pin':
      return `Panel pin ${sizeText(item)}`;
  }
}

/** The fasteners of one joint: alike, so the first stands for all. */
export function fastenersOf(
  { assembly }: BookInput,
  joint: JointKind,
): { readonly item: FastenerItem; readonly count: number } | null {
  const all = assembly.fasteners.filter((fastener) => fastener.joint === joint);
  const [first] = all;
  return first === undefined ? null : { item: first.item, count: all.length };
}

/** Everything that is bought by the piece, what is alike in one line. */
export function hardwareOf(input: BookInput): Hardware[] {
  const lines = new Map<string, Hardware>();
  for (const { joint, item } of input.assembly.fasteners) {
    const name = nameOf(joint, item);
    const line = lines.get(name);
    const use = uses[joint];
    lines.set(name, {
      item: name,
      count: (line?.count ?? 0) + 1,
      use: line === undefined || line.use.split(', ').includes(use) ? (line?.use ?? use) : `${line.use}, ${use}`,
    });
  }
  return [...lines.values()];
}

/** Length of all the seams between ribs and panels, mm: two beads of glue for each rib. */
export function beadLength({ dish }: BookInput): number {
  return 2 * dish.layout.ribs.length * pathLength(dish.ribTop.path);
}
