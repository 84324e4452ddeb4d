/** What can be wrong with the tool paths of a laser. What its language is about stands with those of the router. */
import type { FindingCode } from '../router-simulation/types.js';
import type { MessageSource } from './text.js';

export const laserMessages = {
  'beam-rapid': { code: 'beam', text: 'a rapid move (G0) with the beam on' },
  'beam-still': { code: 'beam', text: '{word} with the beam on: it burns in one place' },
  'beam-end': { code: 'beam', text: 'the program ends with the beam on' },
  'beam-word': { code: 'beam', text: 'the beam is switched on by {word}, not {wanted}' },
  'beam-range': { code: 'beam', text: 'the beam is on at S{power}, outside 0 to {max}' },
  'beam-power': { code: 'beam', text: '{what} at S{power}, not S{wanted}' },
  'beam-feed': { code: 'feed', text: '{what} at {feed} mm/min, not {wanted}' },
  'beam-off': { code: 'beam', text: 'a feed move with the beam off' },
  'beam-unplaced': { code: 'beam', text: 'a feed move before the first rapid move (G0) to a position' },
  'beam-axis': { code: 'beam', text: 'a word {letter}: a laser moves along X and Y only' },
  'beam-tool': { code: 'tool', text: '{word} does not belong in a file for a laser' },
  'beam-unnamed': { code: 'beam', text: 'the beam is on, but no comment says what it cuts' },
  'beam-described': { code: 'beam', text: 'the design does not describe the laser that the file is for' },
} as const satisfies Readonly<Record<string, MessageSource<FindingCode>>>;
