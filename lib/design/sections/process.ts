/** How the parts are cut. */
import { choice, group, keysIn, numberOr, integerOr } from '../keys.js';
import * as z from 'zod';
import type { KeyMeta } from '../keys.js';
import type { LengthUnit } from '../../units/index.js';

export const processKinds = ['router', 'laser', 'hand'] as const;
export type ProcessKind = (typeof processKinds)[number];

export function processSection(unit: LengthUnit) {
  const { lengthOr, length } = keysIn(unit);
  return group(
    { about: 'How the parts are cut.' },
    {
      kind: choice(processKinds, 'router', { about: 'CNC router, laser, or by hand along marked lines.' }),
      toolDiameter: lengthOr(6, { about: 'Diameter of the router bit.', above: 0, max: 50 }),
      drillBits: z
        .array(length({ about: 'Diameter.', above: 0, max: 50 }))
        .max(30, '30 drill bits at most')
        .default([])
        .meta({
          quantity: 'list',
          shown: '[]',
          about: 'Diameters of the drill bits that you have, for holes smaller than the router bit.',
        } satisfies KeyMeta),
      kerf: lengthOr(0.2, { about: 'Width of the laser’s cut, as measured on this material.', finest: 0.01, max: 3 }),
      web: lengthOr(4, {
        about: 'Minimum width left between two cuts.',
        why: 'holds the sheet together while it is cut',
        max: 100,
      }),
      margin: lengthOr(10, { about: 'Border of every sheet that parts keep clear of.', max: 500 }),
      relief: choice(['dogbone', 'none'], 'dogbone', {
        about: 'How an inside corner is relieved where a mating part must seat.',
      }),
    },
  );
}

export function nestSection() {
  return group(
    { about: 'How the nest is searched.' },
    {
      seed: integerOr(1, {
        about: 'Seed of the random search; the same seed gives the same nest.',
        min: 0,
        max: 2 ** 31 - 1,
      }),
      effort: numberOr(1, {
        about: 'How long to search, as a multiple of the usual effort.',
        why: '1 takes a few seconds on two cores',
        min: 0,
        max: 1000,
      }),
    },
  );
}
