/** What a coupon has shown of the machine, as measured with callipers; `dishwright coupon --measured` writes it. */
import * as z from 'zod';
import { group, type KeyMeta, keysIn, numberOr } from '../keys.js';
import type { LengthUnit } from '../../units/index.js';

/** What cuts with an offset that a coupon can show. */
const calibratedKinds = ['router', 'laser'] as const;

function cutBy() {
  return z.enum(calibratedKinds).meta({
    quantity: 'choice',
    about: 'What cut the coupon; nothing cut in another way is corrected by it.',
  } satisfies KeyMeta);
}

function dateKey() {
  return z
    .string()
    .regex(/^\d{4}-\d{2}-\d{2}$/, 'must be a date such as 2026-05-31')
    .meta({ quantity: 'text', about: 'Day on which the coupon was measured.' } satisfies KeyMeta);
}

/** The axes of the machine, the same in every material. */
function axesKeys() {
  const scale = (axis: string) =>
    numberOr(1, { about: `Actual length along ${axis} of a programmed length of 1.`, min: 0.98, max: 1.02 });
  const uncertainty = (about: string, unit: string) => numberOr(0, { about, unit, min: 0, max: 20 });
  return group(
    { about: 'The axes: everything that the machine cuts is corrected for them.' },
    {
      cutBy: cutBy(),
      date: dateKey(),
      scaleX: scale('X'),
      scaleY: scale('Y'),
      scaleUncertaintyMmPerM: uncertainty('Standard uncertainty of the two.', 'mm/m'),
      squarenessMmPerM: numberOr(0, {
        about: 'How far the Y axis leans towards +X; negative if away from it.',
        unit: 'mm/m',
        min: -20,
        max: 20,
      }),
      squarenessUncertaintyMmPerM: uncertainty('Standard uncertainty of it.', 'mm/m'),
    },
  );
}

function materialKeys(unit: LengthUnit) {
  const { length, lengthOr, lengthAuto } = keysIn(unit);
  const uncertainty = (what: string) => lengthOr(0, { about: `Standard uncertainty of ${what}.`, min: 0, max: 1 });
  return group(
    { about: 'One material.' },
    {
      cutBy: cutBy(),
      date: dateKey(),
      thickness: length({ about: 'Thickness of the coupon, as measured.', above: 0, max: 100 }),
      width: length({
        about: 'Width that the cut takes away: effective diameter of the bit, or kerf of the laser.',
        min: 0.01,
        max: 50,
      }),
      widthUncertainty: uncertainty('the width'),
      toolDiameter: lengthAuto({
        about: 'Nominal diameter of the bit; other bits are not corrected.',
        auto: 'any',
        above: 0,
        max: 50,
      }),
      bore: lengthOr(0, {
        about: 'How much wider than programmed a bored hole comes out; negative if narrower.',
        min: -1,
        max: 1,
      }),
      boreUncertainty: uncertainty('it'),
      drilled: lengthAuto({
        about: 'How much wider than its bit a drilled hole comes out.',
        auto: 'not measured',
        min: -1,
        max: 1,
      }),
      fit: lengthAuto({
        about: 'Play at which a tab can be pushed into its slot by hand; the default of `rib.fit`.',
        auto: 'not measured',
        min: -1,
        max: 2,
      }),
      fitUncertainty: uncertainty('it'),
      depth: lengthAuto({
        about:
          'How much deeper than programmed a blind hole comes out; negative if shallower. It is not corrected, because zero is set again for each sheet.',
        auto: 'not measured',
        min: -2,
        max: 2,
      }),
      depthUncertainty: uncertainty('it'),
    },
  );
}

/** Calibrated values: of the axes, and of each material by its name in the design. */
export function calibrationKeys(unit: LengthUnit) {
  return group(
    {
      about: 'What a test coupon has shown about the machine; `dishwright coupon` makes one and writes these values.',
    },
    {
      axes: axesKeys().optional(),
      materials: z
        .record(
          z
            .string()
            .regex(/^[A-Za-z0-9][A-Za-z0-9_-]{0,39}$/, 'a material name is letters, digits, - and _ (40 at most)'),
          materialKeys(unit),
        )
        .default({})
        .meta({
          quantity: 'list',
          shown: '{}',
          about: 'Values for each material, under the names that designs use in `materials`.',
        } satisfies KeyMeta),
    },
  );
}
