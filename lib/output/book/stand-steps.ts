/** Steps that build the stand and set the dish in it. */
import { fastenersOf, sizeText } from './hardware.js';
import type { BookInput, BookStand } from './input.js';
import type { Measures } from './measures.js';
import type { Look } from './still.js';
import type { Solid } from '../illustrate/solids.js';
import type { Step } from './step.js';

/** Parts of the stand by their ids: those that are there, those that are new; with the dish or without. */
const standLooks =
  (there: readonly string[], fresh: readonly string[], dish: Look = 'hidden') =>
  ({ role, parts }: Pick<Solid, 'role' | 'parts'>): Look => {
    if (role !== 'stand') return role === 'vessel' ? 'hidden' : dish;
    const is = (ids: readonly string[]): boolean => parts.some((id) => ids.includes(id.replace('stand-', '')));
    return is(fresh) ? 'new' : is(there) ? 'there' : 'hidden';
  };

const frame = ['pivot', 'base', 'beam', 'side'];
const joined = ['spacer', 'lever', 'link'];
const swing = ['cross', 'flange', 'arm', 'packing'];

function frameSteps(input: BookInput, { castors, axisAbove }: BookStand, { length }: Measures): Step[] {
  const joint = fastenersOf(input, 'stand-joint');
  const bolts = joint === null ? 'Bolts' : `${joint.count} bolts ${joint.item.size}`;
  return [
    {
      title: 'Base and pivot of the stand',
      text: [
        'Drill all holes into edges first, each square and on the middle of the thickness: their places and depths stand in the part list’s notes and the record.',
        `Screw a castor under each scribed cross of the base, ${length(castors.height)} high, and set the brakes. Screws that would come out above are cut shorter.`,
        'The rod of the pivot is fixed in the pivot plate with a nut on each side; it stands up through the middle hole of the base, a nut above it and left a turn loose. Peg the plate to the ground, or weight it.',
        `Bolt both base beams onto the base from below. ${bolts} hold the whole stand, each into a barrel nut whose slot is turned towards it with a screwdriver.`,
      ],
      checks: ['The base turns by hand all the way round and does not rock.', 'All four castors touch the ground.'],
      picture: 'Base and beams of the stand',
      scene: 'stand',
      look: standLooks(['pivot', 'base'], ['beam']),
    },
    {
      title: 'Side frames',
      text: [
        'Both stand the same way round, the row of lock holes away from the sun: they are no mirror pair. Set the tabs in the slots of the base, and the tabs of the beams in theirs, before any bolt is drawn tight.',
      ],
      checks: [
        'A batten through both holes of the pipes is level and turns freely.',
        `The middle of the holes is ${length(axisAbove)} above the ground.`,
      ],
      picture: 'The side frames on the base',
      scene: 'stand',
      look: standLooks(['pivot', 'base', 'beam'], ['side']),
    },
  ];
}

function swingSteps(input: BookInput, stand: BookStand, { weight }: Measures): Step[] {
  const board = fastenersOf(input, 'board-to-stand');
  const two = stand.dishKg > stand.liftAlone;
  return [
    {
      title: 'Arms and cross beams',
      text: [
        'Glue and screw each flange along the upper edge of its cross beam, its holes over the holes of the beam.',
        'Join both arms and both beams: tabs through the arms, bolts from outside. Measure both diagonals before they are drawn tight.',
      ],
      checks: ['Both diagonals are alike within 2 mm.', 'A pipe through both holes turns freely.'],
      picture: 'Arms and cross beams, which carry the dish',
      scene: 'stand',
      look: standLooks([], swing),
    },
    {
      title: 'Dish onto the cross beams',
      text: [
        ...(two ? [`The dish weighs about ${weight(stand.dishKg)}: two people lift it.`] : []),
        'Do it under its cover or in the shade. Turn the dish until its four mounting holes lie over those of the flanges; only one pair of turns does it.',
        `Bolts go down through the board${board === null ? '' : ` (${board.count} bolts ${sizeText(board.item)})`} into the barrel nuts of the beams.`,
      ],
      checks: ['The board lies on both flanges over their whole length.', 'The heads are tight, with washers.'],
      picture: 'The dish on its cross beams',
      scene: 'stand',
      look: standLooks([], swing, 'there'),
    },
    {
      title: 'Hang the dish',
      text: [
        `Dish, arms and beams weigh about ${weight(stand.swingKg)} together. Two people lift them between the side frames, the mirror up and covered; a third pushes each pipe, its floor flange screwed on, from outside through side frame, spacer and arm until the flange lies on the frame, and drives its screws. Fingers stay out from between arm and side frame.`,
        'Push both pins of the lock through at once, mirror up, before anyone lets go.',
        ...(stand.weightKg > 0
          ? [
              `Only then bolt the counterweights, ${stand.weightKg} kg on each arm, to the upper ends. Without the dish on the beams they would swing down: they go on last and come off first.`,
            ]
          : []),
        `Lay ${stand.ballastKg} kg of ballast in the middle of the base.`,
      ],
      checks: [
        `With the pins out a person at the rim tilts it with ${stand.handN.toFixed(0)} N at most, and it is held all the time.`,
        `It swings from looking up to a sun ${stand.lowest.toFixed(0)}° high, and nothing touches.`,
      ],
      picture: 'The dish in its stand',
      scene: 'stand',
      look: standLooks([...frame, 'spacer'], swing, 'there'),
    },
  ];
}

/** What is done before the hanger where the arms carry it. */
const leverText = [
  'Screw a floor flange onto the outer end of each pipe and the flange onto a lever, the pipe square to it. Push each pipe from outside through the upper hole of its arm, waxed, until the lever lies on the arm; its small hole points up and away from the sun.',
  'Join each lever by its link to the small hole of the side frame: the link outside of the frame, the tube between lever and link. Draw the self-locking nuts up until nothing rattles and all still turns.',
];

function hangerStep({ holder, balanced }: BookStand, { length }: Measures): Step[] {
  if (holder === null) return [];
  return [
    {
      title: 'The hanger of the vessel',
      text: [
        'It is of steel alone: wood burns there. Keep the dish covered, and the lock’s pins in.',
        ...(balanced ? leverText : []),
        `Bolt each bar across the inner end of its pipe with two bolts right through the pipe, level, then the two long bars on top of them: inside, the frame is ${length(holder.inside)} wide. It is the guard round the vessel’s foot.`,
        `Hang both straps from the long bars, ${length(holder.strapsApart)} apart from middle to middle and black as the vessel: they lie in the light, and least falls there. They are bent so that the vessel’s base is ${holder.base === 0 ? 'level with' : `${length(Math.abs(holder.base))} ${holder.base < 0 ? 'below' : 'above'}`} the middle of the pipes.`,
      ],
      checks: [
        'A level on the frame shows level both ways, at every tilt of the dish.',
        ...(balanced ? ['Tilted slowly from end to end, with hands away from levers and links, nothing binds.'] : []),
        'With twice the load of water in the vessel nothing slips; the dish is covered meanwhile.',
      ],
      picture: 'The dish in its stand',
      scene: 'stand',
      look: standLooks([...frame, 'spacer', ...swing], balanced ? ['lever', 'link'] : [], 'there'),
    },
  ];
}

function sightStep(): Step {
  return {
    title: 'The sight',
    text: [
      'Drill the small hole of the front plate, 5 mm, in its scribed cross. Tracing paper goes under the opening of the rear plate, with a cross through its middle along the scribed lines and three rings round it: the part list’s notes have their radii.',
      'Join both plates by the two rods, parallel within half a millimetre, and screw the rear plate down on the upper end of the arm that bears number 1, flat on it, standing out away from the dish.',
      'Set it true once, under the cover: aim the dish by a stick’s shadow, square to the board, and move the rear plate until the spot of light lies in the middle. Only then drive the second screw.',
    ],
    checks: [
      'The spot is seen from behind the dish, against the paper.',
      'With the spot within the ring of half a degree the dish is aimed.',
    ],
    picture: 'The sight on its arm',
    scene: 'stand',
    look: standLooks([...frame, ...joined, ...swing], ['sight-rear', 'sight-front'], 'there'),
  };
}

/** Everything from the base to the hanger. */
export function standSteps(input: BookInput, measures: Measures): Step[] {
  const { stand } = input;
  if (stand === null) return [];
  return [
    ...frameSteps(input, stand, measures),
    ...swingSteps(input, stand, measures),
    ...hangerStep(stand, measures),
    sightStep(),
  ];
}
