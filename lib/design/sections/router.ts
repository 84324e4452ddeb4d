/** Machining data for tool paths. */
import * as z from 'zod';
import { choice, group, integer, integerAuto, integerOr, type KeyMeta, keysIn, numberAuto, numberOr } from '../keys.js';
import type { LengthUnit } from '../../units/index.js';

/** `mill` is an end mill, `v` a bit with a point for countersinks and marks. */
const toolKinds = ['mill', 'drill', 'v'] as const;

function toolsKey(unit: LengthUnit) {
  const { length, lengthAuto } = keysIn(unit);
  return z
    .array(
      group(
        { about: 'One tool.' },
        {
          number: integer({ about: 'Number in the machine’s tool table (T word).', min: 1, max: 999 }),
          kind: z.enum(toolKinds).meta({
            quantity: 'choice',
            about: 'An end mill, a drill bit, or a 90° V-bit for countersinks and marks.',
          } satisfies KeyMeta),
          diameter: length({ about: 'Cutting diameter.', above: 0, max: 100 }),
          flutes: integer({ about: 'Number of cutting edges.', min: 1, max: 12 }).default(2),
          cuttingDepth: lengthAuto({
            about: 'Maximum depth that it may cut: the length of its flutes.',
            auto: '4 diameters for an end mill, 10 for a drill bit, half the diameter for a V-bit',
            above: 0,
            max: 200,
          }),
        },
      ),
    )
    .max(40, '40 tools at most')
    .default([])
    .meta({
      quantity: 'list',
      shown: '[]',
      about: 'The tools in the machine. If left out, they are derived from the bits that `process` names.',
    } satisfies KeyMeta);
}

function spindleKeys() {
  return group(
    { about: 'Speeds of the spindle, within the range of the machine.' },
    {
      speed: integerOr(18_000, {
        about: 'Speed for milling; lowered if the feed would exceed what the machine can do.',
        unit: 'rev/min',
        why: 'middle of the range of a small router spindle, from memory',
        min: 100,
        max: 100_000,
      }),
      drillSpeed: integerAuto({
        about: 'Speed for drilling.',
        unit: 'rev/min',
        auto: 'by material and diameter, within the range of the spindle: 75 m/min at the edge in wood, 30 in plastic, 60 in aluminium, from memory',
        min: 100,
        max: 100_000,
      }),
    },
  );
}

function tabKeys(unit: LengthUnit) {
  const { lengthOr, lengthAuto } = keysIn(unit);
  return group(
    { about: 'How parts are held until the sheet is done.' },
    {
      width: lengthOr(6, { about: 'Width of a holding tab.', above: 0, max: 100 }),
      height: lengthAuto({
        about: 'Height of a holding tab above the bottom face.',
        auto: 'a quarter of the thickness, at least 1 mm, at most 3 mm and half the thickness',
        above: 0,
        max: 50,
      }),
      spacing: lengthOr(450, { about: 'A part gets one tab for every such length of its outline.', above: 0 }),
      min: integerOr(2, { about: 'Minimum number of tabs per part.', min: 1, max: 50 }),
      without: choice(['onion-skin', 'stop'], 'stop', {
        about:
          'What to do with a part that has no room for tabs: hold it by an onion skin, or write no file. A part on which every edge mates or reflects is always held by an onion skin.',
        why: 'an onion skin holds any part, but has to be cut with a knife and sanded off, so it is your choice',
      }),
      onionSkinBelow: lengthOr(0, {
        about: 'Parts shorter than this are held by an onion skin instead of tabs; 0 for none.',
      }),
      onionSkin: lengthOr(0.4, { about: 'Thickness of that onion skin.', above: 0, max: 5 }),
    },
  );
}

export function routerSection(unit: LengthUnit) {
  const { lengthOr } = keysIn(unit);
  return group(
    { about: 'Data for router tool paths.' },
    {
      safeHeight: lengthOr(10, {
        about: 'Height above the sheet for travel; it must clear every clamp.',
        above: 0,
        max: 200,
      }),
      hopHeight: lengthOr(3, {
        about:
          'Travel height of the V-bit between the marks of a part while its path stays over that part, and so clear of clamps and screws; with `safeHeight` or more it always travels at `safeHeight`.',
        why: 'a sheet that is held down lies flatter than that (common practice, no source)',
        min: 1,
        max: 200,
      }),
      overcut: lengthOr(0.3, { about: 'How far a through cut goes into the spoilboard.', max: 5 }),
      direction: choice(['conventional', 'climb'], 'conventional', {
        about: 'Direction of the cut, for a spindle that turns clockwise.',
        why: 'it does not pull a light machine forward through its backlash; climb leaves a cleaner edge on a stiff one (common practice, no source)',
      }),
      finishing: lengthOr(0.3, {
        about: 'Material that roughing leaves on every edge for the finishing pass.',
        min: 0.1,
        max: 3,
      }),
      rampAngleDeg: numberOr(3, {
        about: 'Slope at which an end mill enters the material.',
        unit: '°',
        min: 0.5,
        max: 45,
      }),
      plungeFeed: numberAuto({
        about: 'Plunge feed, straight down, of an end mill or V-bit.',
        unit: 'mm/min',
        auto: 'by material: 600 in wood, 300 in plastic, 150 in aluminium, from memory',
        min: 10,
        max: 50_000,
      }),
      chipLoad: numberAuto({
        about: 'Chip load: feed of one cutting edge per turn.',
        unit: 'mm',
        auto: 'by material and diameter, 0.45 of the minimum of a published guide (from memory); the bit maker’s table comes first',
        above: 0,
        max: 2,
      }),
      passDepth: numberAuto({
        about: 'Depth of one pass, as a multiple of the tool’s diameter.',
        auto: 'by material: 0.75 in wood, 0.5 in plastic, 0.25 in aluminium; half of it for bits under 3 mm (common practice, no source)',
        above: 0,
        max: 5,
      }),
      markDepth: lengthOr(0.3, { about: 'Depth of scribed lines and lettering.', above: 0, max: 2 }),
      spindle: spindleKeys().prefault({}),
      tools: toolsKey(unit),
      tabs: tabKeys(unit).prefault({}),
    },
  );
}
