/** Steps for a board in segments, glued for good or bolted so that the dish comes apart. */
import { fastenersOf, sizeText } from './hardware.js';
import type { BookInput } from './input.js';
import { list, type Step } from './step.js';

/** Whether the dish comes apart at the joints of its board. */
export function comesApart({ design, parts }: BookInput): boolean {
  return design.board.splice === 'bolted' && parts.some(({ kind }) => kind === 'splice');
}

/** How the segments of the board come together. */
export function joinText(input: BookInput, boards: number): string[] {
  const screws = fastenersOf(input, 'splice-to-board');
  const bolts = fastenersOf(input, 'splice-bolt');
  const pilots = input.assembly.fasteners.some(
    ({ joint, through }) => joint === 'splice-to-board' && through.length > 1,
  );
  const held = screws
    ? `glued and screwed (${screws.count} screws ${sizeText(screws.item)}${pilots ? ', each into its pilot: they put the plate in its place' : ''})`
    : 'glued and clamped';
  if (!comesApart(input))
    return [
      `Join the ${boards} pieces of the board with the splice plates on its underside, ${held}, face down on a flat floor; then turn it over, scribed face up.`,
    ];
  return [
    `Drive a tee nut into each of the ${bolts?.count ?? 0} holes for them from the scribed face of the ${boards} segments, flange flush with the face.`,
    `Lay the segments face down on a flat floor, edge to edge, and fix a splice plate under the right edge of each, as seen from the axis with the face up: its screwed half ${held}, its bolted half dry, with a strip of baking paper between.`,
    `Put the ${bolts?.count ?? 0} bolts${bolts ? ` ${sizeText(bolts.item)}` : ''} in from below with a washer each while the glue is wet, so that they line up; then turn the board over, scribed face up.`,
  ];
}

/** What stays without glue under a hub that has to come off. */
export function dryHubText(input: BookInput): string[] {
  return comesApart(input)
    ? [
        'Glue the layers to each other but not to the board, with baking paper under the lowest: the hub comes off with its bolt.',
      ]
    : [];
}

/** Number of the panels that are held by pins. */
export function pinnedPanels({ assembly }: BookInput): number {
  return new Set(
    assembly.fasteners.flatMap(({ joint, through }) => (joint === 'panel-to-rib' ? [through[0]?.part.copy] : [])),
  ).size;
}

/** Numbers of the ribs after which a joint of the board lies, read off the plates under the joints. */
export function baysOverJoints({ assembly, dish }: BookInput): number[] {
  const bay = 2 * dish.layout.halfAngle;
  const bays = assembly.placed.flatMap((one) => {
    if (one.form !== 'plate' || one.part.kind !== 'splice') return [];
    const turn = Math.atan2(one.frame.x[1], one.frame.x[0]);
    return [1 + Math.floor((turn < 0 ? turn + 2 * Math.PI : turn) / bay)];
  });
  return [...new Set(bays)].sort((a, b) => a - b);
}

/** Which panels are screwed dry because they bridge two segments. */
export function panelsOverJointsText(input: BookInput): string[] {
  if (!comesApart(input)) return [];
  const screws = fastenersOf(input, 'panel-over-joint');
  const inSeam = screws !== null && screws.item.diameter <= input.dish.seamGap;
  const bays = baysOverJoints(input);
  return [
    `The panels after ribs ${list(bays)} lie over the joints of the board and come off for transport: no glue under them. Glue their mirror on while they are flat, then fix them last of all, with${screws ? ` ${screws.count} screws ${sizeText(screws.item)}` : ' screws'} ${inSeam ? 'through the seams on both sides of them into the middle of the ribs, level with the marks, each into a hole that is bored first, a screw cup under each head that laps the edges of both panels' : 'through mirror and panel at the marks, each into a hole that is bored first, a screw cup under each head, no more than hand-tight: there is little wood beside them'}.`,
  ];
}

/** How it comes apart again. */
export function apartStep(input: BookInput): Step {
  const bolts = fastenersOf(input, 'splice-bolt');
  const joints = input.parts.find(({ kind }) => kind === 'splice')?.quantity ?? 0;
  return {
    title: 'Take it apart for transport',
    text: [
      'Cover the mirror first, and work in the shade.',
      `Number the ${joints} panels over the joints, draw ${input.design.panel.fixing === 'battens' ? 'the screws of the battens on both sides of them, and lift battens and panels out' : 'their screws and lift them out'}. Take the nut off the bolt on the axis and lift the hub straight up.`,
      `Turn the dish onto its rim on a blanket, held by two people. Draw the ${bolts?.count ?? 0} bolts from below, and slide one segment after the other straight outward, off the plate of its neighbour.`,
      'To put it together, slide the segments inward again, put in all bolts before any is tight, then the hub, then the panels.',
    ],
    checks: [
      'Every segment stands by itself on its ribs.',
      'Put together again, a straight edge across a joint shows no step.',
    ],
    picture: 'The dish without the panels, as it is taken apart',
    scene: 'apart',
  };
}
