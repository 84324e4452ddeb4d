/** Steps of a skin under battens: panels laid dry, then a batten over every seam. */
import { fastenersOf, sizeText } from './hardware.js';
import type { BookInput } from './input.js';
import type { Measures } from './measures.js';
import { baysOverJoints, comesApart } from './segment-steps.js';
import { aidName, list, type Step } from './step.js';

/** What holds the battens of a dish. */
const fixedBy = (input: BookInput) => fastenersOf(input, 'batten-to-rib');

export function hasBattens({ design }: BookInput): boolean {
  return design.panel.fixing === 'battens';
}

function layStep(input: BookInput, { length }: Measures): Step {
  const { design } = input;
  const along = aidName(input, 'gauge-panel');
  return {
    title: 'Lay the panels, dry',
    text: [
      design.reflector.material === undefined
        ? 'Leave the protective film on the panels.'
        : 'Glue the mirror strips to the panels first, while both are flat: each in the middle of its panel, its rim flush, its sides clear of where the battens will lie. Leave the protective film on.',
      `No glue on the ribs: the battens alone hold the panels, and any of them comes out again. Lay each with its narrow end to the hub, and leave an open seam of ${length(design.panel.gap)} to the next, over the middle of the rib: what holds the battens goes through it.`,
      'Sandbags or a strap over the rim hold a panel down until its battens are on.',
    ],
    checks: [
      ...(along === null ? [] : [`The ${along} lies close from hub to rim.`]),
      'A shank of the right size drops through every seam from hub to rim; the rib’s top shows in the middle of it.',
    ],
    picture: 'Panels being laid dry on the ribs',
    scene: 'panels',
  };
}

function fixStep(input: BookInput, { length }: Measures): Step {
  const { dish, parts } = input;
  const batten = parts.find(({ kind }) => kind === 'batten');
  const fixed = fixedBy(input);
  const count = dish.layout.ribs.length;
  const each = fixed === null ? 0 : fixed.count / count;
  const screwed = fixed?.item.kind === 'wood-screw';
  const size = fixed === null ? '' : sizeText(fixed.item);
  return {
    title: 'Fix a batten over every seam',
    text: [
      `Bend a batten${batten ? ` of ${length(batten.thickness)}` : ''} along the seam, its middle on the middle of the gap, its outer end flush with the panels. It lies on its two edges, hollow over the gap.`,
      screwed
        ? `Start at the hub. Through each hole, square to the batten, bore a pilot of ${length(fixed.item.pilot ?? 0)} into the rib, then drive one of its ${each} screws ${size} by hand until the batten lies down on both panels, no further: ${fixed.count} in all.`
        : `Start at the hub. Drive ${each} pins ${size} through each batten, one in the middle of each short mark, square to it: ${fixed?.count ?? 0} in all. They go through the gap and into the rib; one that meets a panel is drawn and set anew.`,
      'Go round the dish so that the battens on both sides of a panel press it down together.',
      ...(comesApart(input)
        ? [
            `The panels after ribs ${list(baysOverJoints(input))} lie over the joints of the board: they come out for transport, with the battens on both sides of them.`,
          ]
        : []),
    ],
    checks: [
      'No light shows between a batten and its panels, and no panel lifts at its edge when it is pressed in the middle.',
      'Nothing of a batten lies on the mirror, and its edges run straight from hub to rim.',
    ],
    picture: 'Battens over the seams, the next on its way with what holds it',
    scene: 'battens',
  };
}

export function battenSteps(input: BookInput, measures: Measures): Step[] {
  return [layStep(input, measures), fixStep(input, measures)];
}
