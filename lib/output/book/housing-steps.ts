/** Steps for ribs whose bases go into grooves of the board, and whose inner ends go into those of the hub. */
import type { BookInput } from './input.js';
import type { Measures } from './measures.js';
import { ribSizes } from './rib-sizes.js';
import { firstRibs, list, type Step } from './step.js';

/** What ribs go into where they stand in the board and not by cleats on it. */
export const inBoard: Readonly<Partial<Record<BookInput['design']['rib']['joint'], string>>> = {
  'tab-slot': 'slots',
  housing: 'grooves',
};

/** Whether the ribs' inner ends go into the hub. */
export const entersHub = ({ design }: BookInput): boolean =>
  design.rib.joint === 'housing' || design.hub.build === 'slotted-discs';

/** How deep the grooves are. */
export const grooveOf = ({ design }: BookInput): number => design.rib.housing ?? 0;

export function housingSteps(input: BookInput, { length }: Measures): Step[] {
  const { design, dish, parts } = input;
  const { fit } = design.rib;
  const count = dish.layout.ribs.length;
  const first = firstRibs(count);
  const rib = parts.find((part) => part.kind === 'rib');
  const sizes = rib ? ribSizes(rib, dish) : null;
  const hub = design.hub.build === 'layers' ? 'the grooves of the hub' : 'the slot of the disc';
  return [
    {
      title: `Dry-fit ribs ${list(first)} first`,
      text: [
        `Each goes in from above, upright, its base in the groove of its number and its inner end in ${hub}; press it down until it lies on the board at both ends of the groove, and inward until it meets the bottom of ${hub}. No glue yet.`,
        `A rib has ${length(fit)} of play in its grooves and goes in by hand. If it sticks, the sheet is thicker than the design counts on: sand the faces of the base, never its lower edge. If it rocks, the groove is too shallow somewhere: clear it with a chisel to ${length(grooveOf(input))}.`,
      ],
      checks: [
        ...(sizes
          ? [
              `Heights above the board: ${length(sizes.innerHeight)} at the inner end of the curve, ${length(sizes.rimHeight)} at the rim.`,
            ]
          : []),
        'No light shows between rib and board at the ends of the groove.',
        'Each groove is clean: no chip or dust lies in it.',
      ],
      picture: `Ribs ${list(first)} in their grooves, the others still to come`,
      scene: 'first-ribs',
    },
    {
      title: 'Glue in all ribs',
      text: [
        `Work round so that each new rib stands across from the last, ${count} in all. Brush wood glue on both walls of the groove, thinly on its floor, where the glue has nowhere to go, and on ${hub}.`,
        'The grooves hold each rib upright; lay a weight across each pair of ribs that stand opposite until the glue is hard.',
      ],
      checks: [
        'A square on the board touches each rib over its whole height.',
        `Rim ends of neighbours are ${length(2 * dish.apertureRadius * Math.sin(dish.layout.halfAngle))} apart, middle to middle.`,
      ],
      picture: 'All ribs in place',
      scene: 'other-ribs',
    },
  ];
}
