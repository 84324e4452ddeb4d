/** The machine where it is a laser: order, colours, tool paths, and what it does with each material. */
import * as z from 'zod';
import { choice, colour, group, integerAuto, type KeyMeta, keysIn, numberAuto, yesNo } from '../keys.js';
import type { LengthUnit } from '../../units/index.js';

/** What a laser does to a part. Lettering always comes first; countersinks are left to the bench. */
const laserOperations = ['drill', 'scribe', 'opening', 'outline'] as const;

const speed = (about: string) =>
  numberAuto({
    about,
    unit: 'mm/min',
    auto: 'none (no time is estimated and no tool path is written)',
    min: 1,
    max: 1_000_000,
  });
const power = (about: string) =>
  numberAuto({ about, unit: '%', auto: 'none (no tool path is written)', above: 0, max: 100 });

/** What is known of the machine in each material, by the material's name in the design. */
export function materialKeys(unit: LengthUnit) {
  return z
    .record(
      z.string().regex(/^[A-Za-z0-9][A-Za-z0-9_-]{0,39}$/, 'a material name is letters, digits, - and _ (40 at most)'),
      group(
        { about: 'One material.' },
        {
          kerf: keysIn(unit).lengthAuto({
            about: 'Width of the laser’s cut in this material, as measured.',
            auto: '`process.kerf`, for templates and gauges `template.kerf`',
            finest: 0.01,
            max: 3,
          }),
          cutSpeed: speed('Speed of the laser where it cuts through.'),
          markSpeed: speed('Speed of the laser where it marks.'),
          cutPower: power('Power where it cuts through, for tool paths.'),
          markPower: power('Power where it marks, for tool paths.'),
        },
      ),
    )
    .default({})
    .meta({
      quantity: 'list',
      shown: '{}',
      about: 'The machine’s data for each material, under the names that designs use in `materials`.',
    } satisfies KeyMeta);
}

function orderKey() {
  return z
    .array(z.enum(laserOperations))
    .refine(
      (order) => laserOperations.every((one) => order.filter((other) => other === one).length === 1),
      'must name drill, scribe, opening and outline once each',
    )
    .refine((order) => order.at(-1) === 'outline', 'must end with outline: what is cut free moves')
    .default([...laserOperations])
    .meta({
      quantity: 'list',
      shown: '[drill, scribe, opening, outline]',
      about:
        'Order in which a laser cuts; lettering always comes first. Operations from `opening` on are done part by part where one part lies in an opening of another.',
    } satisfies KeyMeta);
}

/** Keys that only a laser has. */
export function laserKeys() {
  const coloured = (what: string) => colour(`Colour of ${what} lines.`).optional();
  return {
    order: orderKey(),
    colours: group(
      { about: 'Colours by which the laser’s driver distinguishes operations; they take precedence over `colours`.' },
      {
        outline: coloured('outline'),
        opening: coloured('opening'),
        drill: coloured('drill'),
        scribe: coloured('scribe'),
      },
    ).prefault({}),
    toolPaths: yesNo(false, {
      about: 'Whether tool paths are written beside the drawings, for a laser that takes G-code (M3 or M4, M5, S).',
    }),
    beam: choice(['M3', 'M4'], 'M3', {
      about:
        'Word that switches the beam on: M3 at steady power, or M4 where the controller lowers the power with the speed.',
    }),
    fullPower: integerAuto({
      about: 'S word that the controller takes as full power.',
      auto: 'none (required for tool paths)',
      min: 1,
      max: 1_000_000,
    }),
  };
}

export const laserOnly = Object.keys(laserKeys());
