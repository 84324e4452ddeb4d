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
        why: 'swelling and tolerance of thin board',
        max: 50,
      }),
      fixing: choiceAuto(['glue', 'pins', 'staples', 'battens'], {
        about:
          'How the panels are held on the ribs: glue under weights and clamps, with the mirror glued on before; or glue and panel pins or staples along both edges, which clamp it while it sets, with the mirror glued on after; or dry under battens over the seams, fixed into the ribs through the gap, so that a panel comes out again.',
        auto: 'pins where a wooden panel of up to 6 mm lies on ribs of 9 mm or more that keep wood beside them, and a mirror covers the heads; else glue',
      }),
      fixingSpacing: lengthOr(100, {
        about: 'Greatest distance between two pins or staples along an edge, or between the screws of a batten.',
        min: 20,
        max: 1000,
      }),
      battenMaterial: textAuto({
        about: 'What the battens over the seams are cut from, a name from `materials`.',
        auto: 'that of the panels',
      }),
      battenWidth: lengthAuto({
        about: 'Width of a batten; the mirror ends beside it, and it shades as much.',
        auto: '20 mm, 3/4 in in an inch file',
        min: 5,
        max: 200,
      }),
      battenScrew: sizeAuto(
        woodScrewSizes,
        'Size of the screws that hold the battens.',
        'the thickest up to 3.5 mm, a quarter of the ribs’ thickness and the seam gap; where none is as thin, panel pins',
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
        about: 'Name of the material, from `materials`; left out when the panel itself is the mirror.',
        auto: 'none: the panel itself reflects',
      }),
      glue: lengthOr(0, { about: 'Thickness of the glue or tape under it.', max: 5 }),
      layout: choice(['strip', 'rows'], 'strip', {
        about: 'One strip a panel, or rows across the panel from a narrow roll.',
      }),
      overlap: lengthOr(10, {
        about: 'How far one row laps over the next; a negative overlap is not possible.',
        max: 200,
      }),
      inset: lengthOr(0, { about: 'How far the strip stays back from the panel edges.', max: 50 }),
      tape: lengthOr(0, { about: 'Width of tape over each seam, lost to the sun; 0 for none.', max: 200 }),
      hem: lengthAuto({
        about: 'Width turned over the panel at the rim; 0 for none.',
        auto: '10 mm for an aluminium sheet, whose bare edge cuts hands; none for film and foil',
        max: 100,
      }),
      finish: choiceAuto(mirrorFinishes, {
        about: 'What kind of mirror it is: sets reflectance, spread and waviness.',
        auto: 'by the material that faces the sun: film is mirror-film, aluminium under 0.05 mm foil, thicker aluminium rolled; wood and card are no mirror',
      }),
      state: choice(['new', 'weathered'], 'new', {
        about: 'Whether the mirror is new and clean, or has stood outdoors for some years and is washed now and then.',
      }),
      reflectance: numberAuto({
        about:
          'Share of sunlight that it reflects within its spread, 0 to 1; use the maker’s value for specular light.',
        auto: 'by finish and state: 0.45 to 0.85, named with its source under the forecast',
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
