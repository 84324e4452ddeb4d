/** Facing panels and the reflective sheet on them. */
import { choice, choiceAuto, group, type KeyMeta, keysIn, numberOr, textAuto } from '../keys.js';
import * as z from 'zod';
import type { LengthUnit } from '../../units/index.js';

export function panelSection(unit: LengthUnit) {
  const { lengthOr } = keysIn(unit);
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
      fixing: choiceAuto(['glue', 'pins'], {
        about:
          'How the panels are held on the ribs: glue under weights and clamps, with the mirror glued on before; or glue and panel pins along both edges, with the mirror glued on after.',
        auto: 'pins where a wooden panel of up to 6 mm lies on ribs of 9 mm or more and a mirror covers the heads; else glue',
      }),
      fixingSpacing: lengthOr(100, {
        about: 'Greatest distance between two pins along an edge.',
        min: 20,
        max: 1000,
      }),
    },
  );
}

export function reflectorSection(unit: LengthUnit) {
  const { lengthOr } = keysIn(unit);
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
      hem: lengthOr(0, { about: 'Width turned over the panel at the rim; 0 for none.', max: 100 }),
      reflectance: numberOr(0.85, {
        about: 'Share of sunlight that it reflects, 0 to 1.',
        why: 'anodised or polished aluminium sheet when clean, from memory; use the maker’s value',
        above: 0,
        max: 1,
      }),
    },
  );
}
