/** The order of assembly, computed from the design. */
import { fastenersOf, sizeText } from './hardware.js';
import type { BookInput } from './input.js';
import type { Measures } from './measures.js';
import { battenSteps, hasBattens } from './batten-steps.js';
import { liveStep, sealStep } from './care-steps.js';
import { mirrorStep } from './mirror-step.js';
import { ribSizes } from './rib-sizes.js';
import { aidName, firstRibs, list, type Step } from './step.js';
import { standSteps } from './stand-steps.js';
import { apartStep, comesApart, dryHubText, joinText, panelsOverJointsText, pinnedPanels } from './segment-steps.js';
import { entersHub, housingSteps, inBoard } from './housing-steps.js';
import { lowerDiscStep, tabSteps, upperDiscStep } from './tab-steps.js';

/** How the layers of the hub come together on the board. */
function hubText(input: BookInput): string[] {
  const { hub } = input.design;
  const dowel = fastenersOf(input, 'hub-dowel');
  const bolt = fastenersOf(input, 'hub-bolt');
  const layers = hub.layers === 1 ? 'the hub' : `the ${hub.layers} layers of the hub`;
  const aligned = entersHub(input)
    ? 'Every groove stands in line with the groove of the board that bears its number: hold a rib in two that lie opposite, look before the glue grabs, and wipe the glue out of all of them.'
    : hub.shape === 'polygon'
      ? 'Each flat stands square across a rib line: look before the glue grabs.'
      : 'The edge lies on the scribed outline, the ticks on the rib lines: look before the glue grabs.';
  return [
    dowel
      ? `Drive the ${dowel.count === 1 ? 'dowel' : `${dowel.count} dowels`} ${sizeText(dowel.item)} into the board with glue, and thread ${layers} on, numbers up, glue between all. The dowels stand at unequal distances from the axis: a layer goes on in one position only, never upside down.`
      : `Glue ${layers} onto the scribed outline, numbers up, tick over tick.`,
    aligned,
    ...dryHubText(input),
    bolt
      ? `Draw all together with the bolt on the axis (${sizeText(bolt.item)}), head above, washer and nut below the board. It stays.`
      : 'Weight it down until the glue is hard.',
  ];
}

/** Holes that a machine may have left to the bench. */
function drillText(input: BookInput, { length }: Measures): string[] {
  const { hub, board } = input.design;
  const holes = [
    ...(fastenersOf(input, 'cleat-to-board') ? [`${length(board.pilotDiameter)} for the cleat screws`] : []),
    ...(fastenersOf(input, 'board-to-stand') ? [`${length(board.mountingDiameter)} for the stand`] : []),
    ...(board.centreHole > 0 ? [`${length(board.centreHole)} on the axis`] : []),
    ...(hub.dowels > 0 ? [`${length(hub.dowelDiameter)} for the dowels of the hub`] : []),
  ];
  return holes.length === 0
    ? []
    : [`Drill what the machine has left to do by the board’s drawing: ${holes.join(', ')}.`];
}

/** Board and hub: what the ribs are set on. */
function baseSteps(input: BookInput, measures: Measures): Step[] {
  const { length } = measures;
  const { design, dish, parts } = input;
  const { hub } = design;
  const boards = parts.filter((part) => part.kind === 'board').length;
  const standsIn = inBoard[design.rib.joint];
  return [
    {
      title: 'Lay out the board',
      text: [
        ...(boards > 1 ? joinText(input, boards) : ['Lay the board on a flat floor, scribed face up.']),
        ...(standsIn !== undefined
          ? []
          : [
              `Go over the ${dish.layout.ribs.length} scribed rib lines and number them anticlockwise from the x axis.`,
            ]),
        ...drillText(input, measures),
        ...(hub.boltDiameter > 0
          ? [
              'Then lay it on two level battens as long as it is wide: the nut of the hub bolt hangs below it from the next step on.',
            ]
          : []),
      ],
      checks: [
        standsIn !== undefined
          ? `A straight edge lies along the ${standsIn} of two ribs that stand opposite each other.`
          : `Two rib lines that stand opposite each other are one straight line through the centre.`,
        `A straight edge shows no hollow or hump over 1 mm: the board's flatness goes straight into the dish.`,
      ],
      picture: 'The backer board alone',
      scene: boards > 1 ? 'join' : 'board',
    },
    hub.build === 'slotted-discs'
      ? lowerDiscStep(input)
      : {
          title: 'Glue up the hub',
          text: [...hubText(input)],
          checks: [
            entersHub(input)
              ? `A rib of ${length(dish.ribThickness)} goes into each groove from above, over all layers, by hand.`
              : `Each flat is ${length(dish.setBack.flatLength)} long and takes a rib of ${length(dish.ribThickness)}.`,
            'The hub does not turn by hand.',
          ],
          picture: 'The hub on the board',
          scene: 'hub',
        },
  ];
}

/** Ribs with their cleats, set on board and hub. */
function cleatSteps(input: BookInput, measures: Measures, cleatStart: number): Step[] {
  const { design, dish, parts } = input;
  const { length } = measures;
  const { cleat } = design;
  const down = fastenersOf(input, 'cleat-to-board');
  const sideways = fastenersOf(input, 'cleat-to-rib');
  const rib = parts.find((part) => part.kind === 'rib');
  const sizes = rib ? ribSizes(rib, dish) : null;
  const first = firstRibs(dish.layout.ribs.length);
  const spacers = ['rim-spacer-1', 'rim-spacer-2'].map((id) => aidName(input, id));
  const perCleat = cleat.downScrews;
  return [
    {
      title: `${cleat.ribScrews > 0 ? 'Screw' : 'Glue'} each cleat to its rib, at the bench`,
      text: [
        `Its middle goes on the rib's scribed line, its lower face flush with the base, on the rib's scribed face, which is the right one as seen from the hub${cleat.perRib === 2 ? '; a second goes on the left face, turned half round: square the line over to it' : ''}.${cleat.ribScrews > 0 ? ' Once the ribs stand on the board there is little room for a driver.' : ''}`,
        cleat.ribScrews > 0
          ? `Glue, and ${cleat.ribScrews} ${cleat.ribScrews === 1 ? 'screw' : 'screws'} through each cleat into the pilot holes of the rib${sideways ? `: ${sideways.count} countersunk wood screws ${sizeText(sideways.item)}` : ''}.`
          : 'Glue, and clamp until the glue is hard.',
      ],
      checks: [
        'On a flat bench rib and cleat stand together without rocking.',
        ...(cleat.ribScrews > 0 ? ['No screw comes out on the far side of the rib.'] : []),
      ],
      picture: 'A rib with its cleat',
      scene: 'cleat',
    },
    {
      title: `Dry-fit ribs ${list(first)} first`,
      text: [
        `They stand evenly round the board and hold a straight edge between them. Push each inner end hard against the hub and stand it on its scribed line, the cleat's inner end ${length(cleatStart)} from the axis${perCleat > 0 ? ' over its pilot holes' : ''}; no glue yet.`,
        perCleat > 0
          ? `Drive ${perCleat} ${perCleat === 1 ? 'screw' : 'screws'} down through each cleat into the board.`
          : 'The cleats stand in their scribed outlines; weight each rib down when it is glued.',
      ],
      checks: sizes
        ? [
            `Heights above the board: ${length(sizes.innerHeight)} at the inner end, ${length(sizes.rimHeight)} at the rim.`,
            `From the axis to the rim end: ${length(sizes.rimRadius)} at each rib.`,
            'A square on the board touches the rib over its whole height.',
          ]
        : [],
      picture: `Ribs ${list(first)} in place with their cleats, the others still to come`,
      scene: 'first-ribs',
    },
    {
      title: 'Set the other ribs',
      text: [
        `Work round so that each new rib stands across from the last: ${dish.layout.ribs.length - first.length} ribs are left. When the first ones prove true, glue all seats on ${comesApart(input) ? 'the board, and none on the hub' : 'hub and board'}.`,
        ...(spacers.includes(null)
          ? []
          : [
              `While the glue sets, lower ${spacers[0]} on edge onto a pair of neighbours, its face flush with their rim ends, and ${spacers[1]} onto the next pair, close behind it: so round by turns.`,
            ]),
        ...(down
          ? [`In all ${down.count} countersunk wood screws ${sizeText(down.item)} go down into the board.`]
          : []),
      ],
      checks: [
        `A straight edge from rim to rim, right across the dish, stands level over the board, ${sizes ? length(sizes.rimHeight) : ''} above it.`,
        ...(down ? ['No screw comes out below.'] : []),
        `Rim ends of neighbours are ${length(2 * dish.apertureRadius * Math.sin(dish.layout.halfAngle))} apart, middle to middle.`,
      ],
      picture: 'All ribs in place on board and hub',
      scene: 'other-ribs',
    },
  ];
}

function curveStep(input: BookInput, measures: Measures): Step {
  const gauge = aidName(input, 'gauge-rib');
  return {
    title: 'Check the curve before the skin goes on',
    text: [
      gauge === null
        ? 'Bend a batten along each rib from rim to hub and look for light between the two.'
        : `Hold the ${gauge} on each rib, its marks at the inner end and the rim, and look for light between the two.`,
      'Plane off what stands proud; glue a shaving on what lies low. What is not true now will not be true later.',
    ],
    checks: [
      'No gap that takes a sheet of card, 0.5 mm (common practice, no source).',
      `The panels bear on the rib over its middle line only; at the rim a wedge of ${measures.length(input.dish.glueWedge)} stays open at the rib’s corners${hasBattens(input) ? '' : ': that is where the glue goes'}.`,
    ],
    picture: 'The frame of ribs that the gauge is held to',
    scene: 'curve',
  };
}

/** Whether the ribs have a hole that a clamp goes through. */
function ribsOpen({ parts }: BookInput): boolean {
  return parts.some(({ kind, openings }) => kind === 'rib' && openings.length > 0);
}

function skinSteps(input: BookInput, measures: Measures): Step[] {
  if (hasBattens(input)) return battenSteps(input, measures);
  const { design } = input;
  const { about, length } = measures;
  const pins = fastenersOf(input, 'panel-to-rib');
  const stapled = design.panel.fixing === 'staples';
  const mirrored = design.reflector.material !== undefined;
  const along = aidName(input, 'gauge-panel');
  const seam = aidName(input, 'gauge-seam');
  const skin: Step = {
    title: 'Lay the panels',
    text: [
      mirrored
        ? pins
          ? `The panels go on bare: the mirror is glued on after them and covers the ${stapled ? 'staples' : 'heads of the pins'}.`
          : `Glue the mirror strips to the panels first, while both are flat, and leave the protective film on.${design.reflector.hem > 0 ? ' Then fold the hem round each panel’s rim.' : ''}`
        : 'Leave the protective film on the panels.',
      `Run two beads of gap-filling glue along a pair of ribs. Start at the hub and press the panel down towards the rim; leave an open seam of ${length(design.panel.gap)} to the next panel, over the middle of the rib.`,
      pins
        ? `Drive ${pins.count / pinnedPanels(input)} ${stapled ? 'staples' : 'pins'} (${sizeText(pins.item)}) through each panel, one in the middle of each short mark, square to the panel${stapled ? ', the back along the rib' : ''}, from the hub outward, both edges in turn: they clamp the glue. The marks of two neighbours are staggered. Set every one flush.`
        : `Clamp it from the hub outward: sandbags on both edges, or a strap over panel and board every ${about(150)} (common practice, no source), until the glue is hard.`,
      ...panelsOverJointsText(input),
      `A bent panel wants to be straight: clamp a batten across it at the rim until the glue is hard${ribsOpen(input) ? ', the lower jaw in the hole of the rib, square to the panel: on the slanting underside it creeps' : ''}.`,
    ],
    checks: [
      ...(along === null ? [] : [`The ${along} lies close from hub to rim.`]),
      ...(seam === null ? [] : [`The ${seam} lies close beside each rib.`]),
      'Both edges lie down over their whole length; lifted edges spread the focus.',
    ],
    picture: 'Panels being laid on the ribs',
    scene: 'panels',
  };
  if (!mirrored || !pins) return [skin];
  return [skin, mirrorStep(design)];
}

function lastSteps(input: BookInput, measures: Measures): Step[] {
  const { design, dish } = input;
  const { length } = measures;
  const offset = design.vessel?.offset ?? 0;
  const stick = aidName(input, 'focal-stick');
  const above = dish.baseHeight + dish.focusHeight.atRim + offset;
  return [
    {
      title: 'Set the vessel, in the shade',
      text: [
        'Keep the dish covered for this.',
        design.vessel
          ? `The underside of the vessel, ${length(design.vessel.diameter)} across, hangs on the axis ${length(above)} above the board's face: ${length(dish.focusHeight.atRim + offset)} above the vertex of the mirror.`
          : `The focus lies on the axis ${length(above)} above the board's face: ${length(dish.focusHeight.atRim)} above the vertex of the mirror.`,
        ...(stick === null
          ? []
          : [`The ${stick}, glued into its foot, stands plumb on the hub, over the bolt; its top is that place.`]),
      ],
      checks: ['From three rim ends the vessel is equally far.', 'Its stand holds it when the dish is turned.'],
      picture: `The dish cut through its axis: the vessel hangs ${length(above)} above the board`,
      scene: 'vessel',
    },
    liveStep(),
    {
      title: 'Aim it under its cover',
      text: [
        'Stand a straight stick on the board or the rim, square to the board, so that it runs along the axis’s direction.',
        'With the cover on, turn and tilt the dish until the stick throws no shadow: the axis then points at the sun. Aim by the shadow, never by looking along the axis.',
        ...(input.stand === null
          ? []
          : [
              'The spot of light of the sight then lies in its innermost ring. From now on the sight takes the place of the stick.',
            ]),
        'Ballast the stand against wind.',
      ],
      checks: ['The shadow shrinks to nothing at the stick’s foot.', 'The stand does not creep when let go.'],
      picture:
        'The dish cut through its axis and tilted: axis and stick point at the sun, and the stick throws no shadow',
      scene: 'aim',
    },
    {
      title: 'First light',
      text: [
        'Read the cautions again. Water at hand, dark eye protection on, nobody else near, nothing that burns around or above.',
        'Uncover a quarter of the dish for a few seconds, stand behind the dish, look at the vessel’s underside only through the dark glass, and cover again.',
        'If the bright patch lies off the middle, aim again; if it is long or torn, press down the panels that throw it there. Uncover more only when the patch is right.',
        'Cover the dish before you walk away, each time.',
      ],
      checks: ['The patch is about as wide as the forecast says, and whole.', 'The cover is on.'],
      picture: 'The finished dish, together',
      scene: 'first-light',
    },
  ];
}

/** The ribs, as their joint has it. */
function ribSteps(input: BookInput, measures: Measures): Step[] {
  if (input.design.rib.joint === 'housing') return housingSteps(input, measures);
  return input.cleatStart === null ? tabSteps(input, measures) : cleatSteps(input, measures, input.cleatStart);
}

/** The steps in their order, from the cut parts to the first use. */
export function assemblySteps(input: BookInput, measures: Measures): Step[] {
  const { length } = measures;
  const { design } = input;
  const used = new Set(input.parts.map((part) => part.material));
  const thicknesses = Object.values(design.materials)
    .filter((material) => used.has(material.id))
    .map(({ description, thickness: thinnest, thickest }) =>
      thickest > thinnest
        ? `${description}: ${length(thinnest)} to ${length(thickest)}, cut for the thickest and made to fit the thinnest: sand what is tight`
        : `${description}: ${length(thinnest)}`,
    );
  const before: Step = {
    title: 'Before the first cut',
    text: [
      'Measure what you have bought with a calliper, at three places of each sheet, and put the true thickness into the design file; then cut again if it differs.',
      `The design counts on: ${thicknesses.join('; ')}.`,
      ...input.thicknessRanges.map(({ part, min, max }) =>
        part === 'rib'
          ? `Ribs from ${length(min)} to ${length(max)} still fit the hub and carry their panels; what they are thinner or thicker is shared evenly on both sides of each rib line.`
          : `Hub layers up to ${length(max)} stay below the panels.`,
      ),
      ...(design.process.kind === 'router'
        ? [
            'Trim off the tabs that held the parts, with a flush-trimming bit or a chisel, and sand the places flush: a stub on a seat keeps the part off it.',
          ]
        : []),
      'Lay out all parts, count them against the part list, number the ribs, break sharp edges lightly, and keep the curved edge of the ribs untouched.',
    ],
    checks: [
      'All ribs held together as a pack show one curve. Sand the pack, not single ribs.',
      entersHub(input)
        ? `An offcut of the ribs’ sheet goes into a ${design.hub.build === 'layers' ? 'groove' : 'slot'} of the hub by hand.`
        : 'A rib offcut stands on its hub flat without rocking.',
    ],
    picture: 'Everything there is, pulled apart',
    scene: 'overview',
  };
  return [
    before,
    ...baseSteps(input, measures),
    ...ribSteps(input, measures),
    ...(design.hub.build === 'slotted-discs' ? [upperDiscStep(input)] : []),
    curveStep(input, measures),
    sealStep(!hasBattens(input)),
    ...skinSteps(input, measures),
    ...standSteps(input, measures),
    ...lastSteps(input, measures),
    ...(comesApart(input) ? [apartStep(input)] : []),
  ];
}
