import * as z from 'zod';
import { group, type KeyMeta, keysIn, choice, numberAuto, numberOr, textAuto, integerAuto } from '../keys.js';
import type { LengthUnit } from '../../units/index.js';

export const materialKinds = [
  'plywood',
  'osb',
  'mdf',
  'hardboard',
  'card',
  'acrylic',
  'aluminium',
  'foil',
  'film',
  'other',
] as const;
export type MaterialKind = (typeof materialKinds)[number];

/** The sheet materials of the job, each by a short name that parts and stock refer to. */
export function materialsSection(unit: LengthUnit) {
  const { lengthPlaces } = keysIn(unit);
  return z
    .record(
      z.string().regex(/^[A-Za-z0-9][A-Za-z0-9_-]{0,39}$/, 'a material name is letters, digits, - and _ (40 at most)'),
      group(
        { about: 'One sheet material.' },
        {
          kind: choice(materialKinds, 'plywood', {
            about: 'Kind of material; sets the default density and the cutting data.',
          }),
          thickness: lengthPlaces(
            {
              about:
                'Actual thickness, measured with callipers: a sheet sold as 12 mm is often 11.6 mm. A list such as [11.8, 12.1, 11.9] gives readings from several places: passes and overcut then follow the thickest, fits the thinnest.',
              above: 0,
              max: 100,
              usual: [0.01, 50],
            },
            { max: 20, apart: 0.2 },
          ),
          cut: z
            .enum(['router', 'laser', 'hand'])
            .optional()
            .meta({
              quantity: 'choice',
              about: 'How this material is cut, if not by the design’s `process`.',
              auto: 'as `process` says; thin metal, foil and film by hand, with shears or a knife',
            } satisfies KeyMeta),
          description: textAuto({
            about: 'Name for the cut list and the shopping list.',
            auto: 'the kind and thickness',
          }),
          densityKgPerM3: numberAuto({
            about: 'Density, for the weights in the shopping list.',
            unit: 'kg/m³',
            auto: 'by kind: plywood 680, OSB 620, MDF 740, hardboard 950, card 800, acrylic 1190, aluminium and foil 2700, film 1390',
            above: 0,
            max: 23_000,
          }),
        },
      ),
    )
    .meta({ quantity: 'list', about: 'The sheet materials of the job, each under a short name.' } satisfies KeyMeta);
}

/** What can be bought or is in stock. */
export function stockSection(unit: LengthUnit) {
  const { size, point, lengthOr, length, lengthAuto } = keysIn(unit);
  const ring = z
    .array(point())
    .min(3, 'an outline needs three corners or more')
    .max(2000, 'an outline may have 2000 corners at most');
  return z
    .array(
      group(
        { about: 'One kind of stock: a sheet size, an offcut by its outline, or a roll.' },
        {
          material: z
            .string()
            .meta({ quantity: 'text', about: 'Name of the material, from `materials`.' } satisfies KeyMeta),
          size: size({ about: 'Sheet size, length x width; the face grain runs along the length.' }).optional(),
          outline: ring
            .optional()
            .meta({ quantity: 'list', about: 'Corners of an offcut, in order; grain along x.' } satisfies KeyMeta),
          rollWidth: length({
            about: 'Width of a roll; its length is cut as needed.',
            above: 0,
            usual: [50, 6000],
          }).optional(),
          rollLength: lengthOr(50_000, { about: 'Longest piece of the roll.', above: 0 }),
          count: integerAuto({ about: 'How many you have.', auto: 'as many as needed', min: 1, max: 10_000 }),
          price: numberOr(0, {
            about:
              'Price of one sheet or offcut, or of one metre of roll, in your currency; 0 for what you already have.',
            why: 'without prices the nest saves area instead',
            min: 0,
            max: 1e6,
          }),
          margin: lengthAuto({
            about: 'Border of the stock that parts keep clear of.',
            auto: '`process.margin`',
            max: 500,
          }),
          keepOuts: z
            .array(ring)
            .max(200, '200 keep-outs at most')
            .default([])
            .meta({
              quantity: 'list',
              shown: '[]',
              about: 'Outlines of places to keep clear: clamps, knots, damage.',
            } satisfies KeyMeta),
        },
      ),
    )
    .max(100, 'at most 100 kinds of stock')
    .default([])
    .meta({ quantity: 'list', about: 'Sheets, offcuts and rolls to nest on.' } satisfies KeyMeta);
}
