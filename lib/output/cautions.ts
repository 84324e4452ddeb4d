/** The cautions that the command line, the build book and the README carry: written once, here. */

export interface Caution {
  readonly title: string;
  /** Whole sentences. */
  readonly sentences: readonly string[];
}

/** Every caution, the gravest first. */
export const cautions: readonly Caution[] = [
  {
    title: 'The focus burns and blinds',
    sentences: [
      'The focus of a dish can burn skin, start a fire and blind in an instant, even off to the side and when nobody is watching.',
      'Never look into it or along the axis.',
      'Stand clear of it, and keep others and animals clear.',
      'Wear dark eye protection made for bright radiant sources near the focus.',
    ],
  },
  {
    title: 'Never leave it in the sun',
    sentences: [
      'Keep the dish covered or turned away from the sun when it is not in use.',
      'Never leave it in the sun unattended.',
      'Keep water at hand.',
    ],
  },
  {
    title: 'Wind',
    sentences: ['Wind can tip the dish: ballast it.'],
  },
  {
    title: 'Machines',
    sentences: ['Routers, saws and lasers need their maker’s guards, and eye, ear and dust protection.'],
  },
  {
    title: 'What comes first',
    sentences: [
      'Local codes, the machine maker’s manual and licensed practice come first.',
      'Forecasts are estimates, not promises.',
    ],
  },
];

/** Those of the stand, in its chapter of the book. */
export const standCautions: readonly string[] = [
  'Fingers can be crushed between arm and side frame, at the beams, at levers and links, and under castors: keep hands and children clear of the swing, and hold the dish before you pull a pin.',
  'Tilt and lift with the cover on: the focus sweeps the ground and whoever stands there.',
  'Above 25 kg, two people lift.',
  'Wind: never use it without the stated ballast, and take the dish down, or tilt it up and tie it under its cover, above the stated wind.',
  'Park it under its cover as the table says, with both pins in and the brakes set. Never leave it uncovered, not even for a minute.',
  'Take the vessel off before tilting far, and never reach over the mirror for it.',
];

/** What `cut` and `check` say at their end. */
export const cautionsShort = [
  'Caution: the focus can burn skin, start a fire and blind in an instant, even off to the side and when nobody is watching.',
  'Keep the dish covered or turned away from the sun when not in use; wear dark eye protection near the focus; never look',
  'into it or along the axis; stand clear; keep water at hand; never leave it in the sun unattended; ballast it against wind.',
  'Machines need their maker’s guards, and eye, ear and dust protection. Local codes, the machine maker’s manual and',
  'licensed practice come first. Forecasts are estimates, not promises.',
].join('\n');
