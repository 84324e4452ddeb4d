/** Where it burns, as rows of texts for the terminal and the book. */
import { burnSuns, dazzleSuns } from './limits.js';
import type { LengthText } from '../summary.js';
import { type Burn, burnLevels } from './burn.js';

/** Distances are rounded up to so many mm: the map knows them no better. */
const ROUNDED = 100;

/** Headings of the table: how the dish stands, how far each level reaches, and what is harmless from where on. */
export const burnHeads = [
  'from the focus',
  ...burnLevels.map((suns) => `${suns} ${suns === 1 ? 'sun' : 'suns'}`),
  'skin from',
  'glance from',
  'eyes from',
] as const;

/** One row for each way in which the dish may stand. */
export function burnRows({ states }: Burn, length: LengthText): string[][] {
  const shown = (mm: number) => (mm === 0 ? '-' : length(Math.ceil(mm / ROUNDED) * ROUNDED));
  return states.map((state) => [
    state.label,
    ...state.reach.map(({ fromFocus }) => shown(fromFocus)),
    shown(state.harmless.skin),
    shown(state.harmless.glance),
    shown(state.harmless.eyes),
  ]);
}

/** What the table means, in sentences. */
export function burnNotes({ secondsToSkinHurt }: Burn): string[] {
  const skin = secondsToSkinHurt.map(({ suns, seconds }) =>
    seconds === null
      ? `${suns} ${suns === 1 ? 'sun' : 'suns'}: not within 10 s`
      : `${suns} suns: ${seconds.toFixed(1)} s`,
  );
  return [
    'Distances are from the focus, outside the bowl, at which that many suns (1000 W/m² each) are still reached; direct sunlight adds to this. When the mirror is turned off the sun, its light concentrates beside the axis, away from the sun.',
    `Skin is hurt after: ${skin.join('; ')} (ICNIRP, Health Physics 105, 2013, from memory).`,
    `Beyond "skin from", skin is not hurt within 10 s. Beyond "glance from", the light is no brighter than the sun, which nobody may look into either: a glance of 0.15 s can burn the retina at ${burnSuns.toFixed(1)} suns or more. Beyond "eyes from", not even an after-image remains (${dazzleSuns.toFixed(2)} suns; Ho, Ghanbari and Diver, Journal of Solar Energy Engineering 133, 2011, from memory). Flat panels throw narrow beams a long way. Anyone who stares, or looks through binoculars or a telescope, is hurt from farther away.`,
    'These are estimates for the mirror as designed: dents and curled edges concentrate light in other places too. Keep the dish covered when it is not in use.',
  ];
}
