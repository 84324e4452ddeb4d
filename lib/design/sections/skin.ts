/** Facing panels and the reflective sheet on them. */
import { choice, choiceAuto, group, type KeyMeta, keysIn, numberAuto, sizeAuto, textAuto } from '../keys.js';
import * as z from 'zod';
import { woodScrewSizes } from '../../hardware/index.js';
import type { LengthUnit } from '../../units/index.js';

export function panelSection(unit: LengthUnit) {
  const { lengthOr, lengthAuto } = keysIn(unit);
  return group(
    { about: 'The facing panels.' },
    {
      material: z
        .string()
        .meta({ quantity: 'text', about: 'Name of the material, from `materials`.' } satisfies KeyMeta),
      gap: lengthOr(2, {
        about: 'Open seam between two panels over a rib.',
        why: 'allows for swelling and tolerances of thin board',
        max: 50,
      }),
      fixing: choiceAuto(['glue', 'pins', 'staples', 'battens'], {
        about:
          'How the panels are fixed to the ribs: glue under weights and clamps, with the mirror glued on beforehand; or glue plus panel pins or staples along both edges, which clamp it while it sets, with the mirror glued on afterwards; or dry, under battens over the seams, which are fixed to the ribs through the gap, so that panels can be taken out again.',
        auto: 'pins if a wooden panel of up to 6 mm is on ribs of 9 mm or more, thick enough to leave wood beside the pins, and a mirror covers the heads; else glue',
      }),
      fixingSpacing: lengthOr(100, {
        about: 'Maximum spacing of pins or staples along an edge, or of the screws of a batten.',
        min: 20,
        max: 1000,
      }),
      battenMaterial: textAuto({
        about: 'Material that the battens over the seams are cut from, a name from `materials`.',
        auto: 'that of the panels',
      }),
      battenWidth: lengthAuto({
        about: 'Width of a batten; it covers the mirror, which ends beside it.',
        auto: '20 mm, 3/4 in in an inch file',
        min: 5,
        max: 200,
      }),
      battenScrew: sizeAuto(
        woodScrewSizes,
        'Size of the screws that hold the battens.',
        'the thickest that is at most 3.5 mm, a quarter of the ribs’ thickness and the seam gap; if none is thin enough, panel pins',
      ),
    },
  );
}

const mirrorFinishes = ['mirror-film', 'bright-anodised', 'rolled', 'foil', 'crinkled-foil', 'mirror-tiles'] as const;

export function reflectorSection(unit: LengthUnit) {
  const { lengthOr, lengthAuto } = keysIn(unit);
  return group(
    { about: 'The mirror-like sheet on the panels.' },
    {
      material: textAuto({
        about: 'Name of the material, from `materials`; leave it out if the panel itself is the mirror.',
        auto: 'none (the panel itself reflects)',
      }),
      glue: lengthOr(0, { about: 'Thickness of the glue or tape under it.', max: 5 }),
      layout: choice(['strip', 'rows'], 'strip', {
        about: 'One strip per panel, or rows across the panel from a narrow roll.',
      }),
      overlap: lengthOr(10, {
        about: 'How far one row overlaps the next; it cannot be negative.',
        max: 200,
      }),
      inset: lengthOr(0, { about: 'Distance from the panel edges to the strip.', max: 50 }),
      tape: lengthOr(0, { about: 'Width of tape over each seam, which reflects nothing; 0 for none.', max: 200 }),
      hem: lengthAuto({
        about: 'Width turned over the panel at the rim; 0 for none.',
        auto: '10 mm for an aluminium sheet, whose bare edge cuts hands; none for film and foil',
        max: 100,
      }),
      finish: choiceAuto(mirrorFinishes, {
        about: 'Kind of mirror: sets reflectance, spread and waviness.',
        auto: 'by the material that faces the sun: film is mirror-film, aluminium under 0.05 mm foil, thicker aluminium rolled; wood and card do not reflect',
      }),
      state: choice(['new', 'weathered'], 'new', {
        about: 'Whether the mirror is new and clean, or has been outdoors for some years, washed from time to time.',
      }),
      reflectance: numberAuto({
        about:
          'Share of sunlight that it reflects within its spread, 0 to 1; use the maker’s value for specular reflectance.',
        auto: 'by finish and state: 0.45 to 0.85, given with its source under the forecast',
        above: 0,
        max: 1,
      }),
      tileSize: lengthAuto({
        about: 'Side of a flat mirror tile along the panel; a tile spreads the light by its own length.',
        auto: '50 mm for mirror-tiles; none for mirrors that bend with their panel',
        min: 5,
        max: 300,
      }),
    },
  );
}
