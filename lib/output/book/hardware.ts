/** Screws, bolts and pins by size and number. */
import { pathLength } from '../../geometry/index.js';
import type { BookInput } from './input.js';
import type { Measures } from './measures.js';

export interface Hardware {
  readonly item: string;
  readonly count: number;
  readonly use: string;
}

/** Lengths in which wood screws are sold (mm; in an inch design, inches): common practice, no source. */
const metricLengths = [12, 16, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 120];
const inchLengths = [0.5, 0.625, 0.75, 1, 1.25, 1.5, 1.75, 2, 2.25, 2.5, 3, 3.5, 4].map((inches) => inches * 25.4);

/** Wood that must be left under a screw's point, mm: common practice, no source. */
const leftUnder = 2;

/** The longest screw sold that stays within `room` mm of wood, or null when even the shortest comes through. */
export function screwLength(room: number, inches: boolean): number | null {
  const sold = inches ? inchLengths : metricLengths;
  return sold.findLast((length) => length <= room - leftUnder) ?? null;
}

export interface Screws {
  /** Through each cleat into the board, and sideways into its rib. */
  readonly down: { readonly count: number; readonly length: number | null; readonly room: number };
  readonly rib: { readonly count: number; readonly length: number | null; readonly room: number };
  readonly diameter: number;
}

const inchesIn = (unit: string): boolean => unit === 'in' || unit === 'ft';

export function screwsOf({ design, dish }: BookInput): Screws {
  const { cleat, board, materials, units } = design;
  const thickness = (name: string) => materials[name]?.thickness ?? 0;
  const cleats = dish.layout.ribs.length * cleat.perRib;
  const downRoom = thickness(cleat.material) + thickness(board.material);
  // two cleats meet in one rib: their screws share its thickness
  const ribRoom = cleat.width + dish.ribThickness;
  return {
    down: { count: cleats * cleat.downScrews, length: screwLength(downRoom, inchesIn(units)), room: downRoom },
    rib: { count: cleats * cleat.ribScrews, length: screwLength(ribRoom, inchesIn(units)), room: ribRoom },
    diameter: cleat.screwDiameter,
  };
}

/** Pins or screws that hold one panel. */
export function fixingsPerPanel({ parts }: BookInput): number {
  return parts.find((part) => part.kind === 'panel')?.holes.length ?? 0;
}

/** `4 x 30 mm`, or in words when no length sold would do. */
export function screwText(length: number | null, room: number, diameter: number, measures: Measures): string {
  const across = measures.length(diameter);
  return length === null
    ? `for holes of ${across}, shorter than ${measures.length(room)}`
    : `for holes of ${across}, ${measures.length(length)} long`;
}

/** Everything that is bought by the piece. */
export function hardwareOf(input: BookInput, measures: Measures): Hardware[] {
  const { design, dish } = input;
  const { hub, board, materials } = design;
  const screws = screwsOf(input);
  const thickness = (name: string) => materials[name]?.thickness ?? 0;
  const stack = hub.layers * thickness(hub.material) + thickness(board.material);
  const fixings = fixingsPerPanel(input) * dish.layout.ribs.length;
  const text = (kind: 'down' | 'rib') => screwText(screws[kind].length, screws[kind].room, screws.diameter, measures);
  const list: (Hardware | null)[] = [
    { item: `Countersunk wood screw ${text('down')}`, count: screws.down.count, use: 'cleats to the board' },
    { item: `Countersunk wood screw ${text('rib')}`, count: screws.rib.count, use: 'cleats to the ribs' },
    hub.boltDiameter > 0
      ? {
          item: `Bolt for a hole of ${measures.length(hub.boltDiameter)}, to clamp ${measures.length(stack)}, with washers and nut`,
          count: 1,
          use: 'hub to the board',
        }
      : null,
    board.mountingHoles > 0
      ? {
          item: `Bolt for a hole of ${measures.length(board.mountingDiameter)}, with washers and nut`,
          count: board.mountingHoles,
          use: 'board to its stand',
        }
      : null,
    fixings > 0
      ? {
          item: `Pin or screw for a hole of ${measures.length(design.panel.fixingDiameter)}`,
          count: fixings,
          use: 'panels to the ribs',
        }
      : null,
  ];
  return list.filter((entry) => entry !== null).filter(({ count }) => count > 0);
}

/** Length of all the seams between ribs and panels, mm: two beads of glue for each rib. */
export function beadLength({ dish }: BookInput): number {
  return 2 * dish.layout.ribs.length * pathLength(dish.ribTop.path);
}
