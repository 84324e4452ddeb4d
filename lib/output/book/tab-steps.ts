/** Steps for ribs that go into slots: of the board by their tabs, of two hub discs by their inner ends. */
import { fastenersOf, sizeText } from './hardware.js';
import type { BookInput } from './input.js';
import type { Measures } from './measures.js';
import { ribSizes } from './rib-sizes.js';
import { firstRibs, list, type Step } from './step.js';

/** The disc that lies on the board. */
export function lowerDiscStep(input: BookInput): Step {
  const dowel = fastenersOf(input, 'hub-dowel');
  return {
    title: 'Glue the lower disc of the hub onto the board',
    text: [
      dowel
        ? `Drive the ${dowel.count === 1 ? 'dowel' : `${dowel.count} dowels`} ${sizeText(dowel.item)} into the board with glue, and thread one disc on, numbers up. They stand at unequal distances from the axis: the disc goes on in one position only, never upside down. Cut them flush with the disc.`
        : 'Glue one disc onto the scribed outline, numbers up, and hold a rib in two slots across from each other while the glue sets.',
      'Wipe the glue out of the slots before it sets: the ribs have to reach the board there.',
    ],
    checks: ['Every slot points along the slots of the board that bear its number.', 'The disc does not turn by hand.'],
    picture: 'The lower disc on the board',
    scene: 'lower-disc',
  };
}

/** Ribs by their tabs. */
export function tabSteps(input: BookInput, { length }: Measures): Step[] {
  const { design, dish, parts } = input;
  const { fit, material } = design.rib;
  const count = dish.layout.ribs.length;
  const first = firstRibs(count);
  const rib = parts.find((part) => part.kind === 'rib');
  const sizes = rib ? ribSizes(rib, dish) : null;
  const laser = design.materials[material]?.cut === 'laser';
  const slotted = design.hub.build === 'slotted-discs';
  return [
    {
      title: `Dry-fit ribs ${list(first)} first`,
      text: [
        `Each goes in from above, upright, its tabs in the slots of its number${slotted ? ' and its inner end in the slot of the disc' : ''}; press it down until its whole base lies on the board, then inward until it meets the hub. No glue yet.`,
        `A tab has ${length(fit)} of play in its slot and goes in by hand. If it sticks, the sheet is thicker than the design counts on: sand the faces of the tabs, never the base.${laser ? ' A laser cuts a little wider at the face that was up; the tight edge of a slot is the one that was down.' : ''}`,
      ],
      checks: [
        ...(sizes
          ? [
              `Heights above the board: ${length(sizes.innerHeight)} at the inner end of the curve, ${length(sizes.rimHeight)} at the rim.`,
            ]
          : []),
        'No light shows between base and board.',
        'No tab stands out below: the board still lies flat.',
      ],
      picture: `Ribs ${list(first)} in their slots, the others still to come`,
      scene: 'first-ribs',
    },
    {
      title: 'Glue in all ribs',
      text: [
        `Work round so that each new rib stands across from the last, ${count} in all. Glue on the base and the tabs, then a thin bead along both sides of the base, where a brush still reaches.`,
        slotted
          ? 'The slots hold each rib upright; do not wait with the upper disc, which holds all of them down, until the glue has set.'
          : 'The slots hold each rib upright; lay a weight across each pair of ribs that stand opposite until the glue is hard.',
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

/** The disc that is lowered over the ribs and clamps them. */
export function upperDiscStep(input: BookInput): Step {
  const bolt = fastenersOf(input, 'hub-bolt');
  return {
    title: 'Lower the upper disc of the hub onto the ribs',
    text: [
      'Glue on the noses of the ribs. Lower the disc from above with every rib in its slot, rib by rib round the edge, until it lies on all the noses.',
      bolt
        ? `Put the bolt (${sizeText(bolt.item)}) through both discs and the board, washers on both sides, and tighten it until the disc lies on all noses and no further: it clamps all ribs down while the glue sets, and stays.`
        : 'Weight it down until the glue is hard.',
    ],
    checks: ['The disc lies on every nose.', 'All ribs stand upright, and their bases still lie on the board.'],
    picture: 'The upper disc over the noses of the ribs',
    scene: 'upper-disc',
  };
}
