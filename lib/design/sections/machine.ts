/** The machine: what its controller reads and what it can do. The defaults are the plain published standard. */
import {
  choice,
  choiceAuto,
  group,
  integerAuto,
  integerOr,
  keysIn,
  type KeyMeta,
  numberAuto,
  numberOr,
  yesNo,
} from '../keys.js';
import type { LengthUnit } from '../../units/index.js';
import { calibrationKeys } from './calibration.js';
import { laserKeys, materialKeys } from './laser.js';

export const machineKinds = ['router', 'laser'] as const;

function place(unit: LengthUnit, about: string, auto: string) {
  return keysIn(unit)
    .point()
    .optional()
    .meta({ quantity: 'point', about, auto } satisfies KeyMeta);
}

/** How numbers, lines and comments are written. */
function textKeys(unit: LengthUnit) {
  const { lengthOr } = keysIn(unit);
  return {
    programUnits: choice(['mm', 'in'], 'mm', {
      about: 'Unit of the tool-path files: millimetres (G21) or inches (G20).',
    }),
    decimals: integerAuto({
      about: 'Decimal places of coordinates.',
      auto: '4 in millimetres, 5 in inches, where it cannot be less',
      min: 3,
      max: 6,
    }),
    arcs: choice(['arcs', 'lines'], 'arcs', {
      about: 'Arcs as they are (G2, G3), or as short lines for a controller without them.',
    }),
    lineTolerance: lengthOr(0.01, {
      about: 'How far a short line may deviate from its arc.',
      min: 0.001,
      max: 0.015,
    }),
    lineNumbers: integerOr(0, { about: 'Increment of the line numbers (N); 0 for none.', min: 0, max: 1000 }),
    commentLength: integerOr(96, {
      about: 'Maximum length of a comment, in characters between its brackets.',
      min: 48,
      max: 250,
    }),
    commentCharacters: choice(['ascii', 'capitals'], 'ascii', {
      about: 'Characters allowed in comments: all of ASCII, or only capital letters, digits and simple punctuation.',
    }),
  };
}

function changeKeys(unit: LengthUnit) {
  const { lengthOr } = keysIn(unit);
  return {
    toolChange: choice(['automatic', 'by-hand', 'none'], 'automatic', {
      about:
        'How a tool is changed: by the machine (M6); by hand at `changeAt`, where the program pauses (M0) and you zero the new bit; or not at all, with one file per tool and no M6, T or G43.',
    }),
    lengthOffsets: yesNo(true, {
      about: 'Whether an automatic change also applies the tool’s length offset from the tool table (G43 H).',
    }),
    changeAt: keysIn(unit)
      .point()
      .default({ x: 0, y: 0 })
      .meta({
        quantity: 'point',
        shown: '[0, 0]',
        about: 'Where the machine waits while a tool is changed by hand.',
      } satisfies KeyMeta),
    changeHeight: lengthOr(60, {
      about: 'Height above the sheet at which a tool is changed by hand.',
      why: 'room to take out a bit and its collet, from memory',
      above: 0,
      max: 500,
    }),
  };
}

/** What a router does; none of it is for a laser. */
function routerKeys(unit: LengthUnit) {
  return { ...changeKeys(unit), ...motionKeys(unit) };
}

/** Keys of a router that a laser has no use for. */
export const routerOnly = ['toolChange', 'lengthOffsets', 'changeAt', 'changeHeight', 'maxFeed', 'spindle', 'spinUp'];

/** What both kinds need for their times. */
const timeKeys = {
  travelSpeed: numberAuto({
    about: 'Speed of travel, used only to estimate time.',
    unit: 'mm/min',
    auto: '6000 for a router (a light gantry machine, from memory); for a laser no time is estimated without it',
    min: 10,
    max: 1_000_000,
  }),
  acceleration: numberAuto({
    about: 'Acceleration along the path, used only to estimate time.',
    unit: 'mm/s²',
    auto: '500 for a router (a light gantry machine, from memory); for a laser the time is a minimum without it',
    min: 10,
    max: 100_000,
  }),
};

function motionKeys(unit: LengthUnit) {
  const { lengthOr } = keysIn(unit);
  const feed = (about: string, value: number) =>
    numberOr(value, { about, unit: 'mm/min', why: 'a light gantry machine, from memory', min: 10, max: 100_000 });
  return {
    pathMode: choice(['exact', 'exact-stop', 'continuous'], 'exact', {
      about:
        'Exact path (G61), exact stop (G61.1), or corners rounded to keep the speed (G64 P, with `pathTolerance`; many controllers use the P, but the published standard does not have it).',
      why: 'only the exact path keeps the edge within its tolerance on every machine',
    }),
    pathTolerance: lengthOr(0.02, {
      about: 'How far a rounded corner may leave the path.',
      above: 0,
      max: 0.05,
    }),
    maxFeed: group(
      { about: 'Maximum cutting feed of each axis.' },
      { x: feed('Along X.', 4000), y: feed('Along Y.', 4000), z: feed('Along Z.', 4000) },
    ).prefault({}),
    spindle: group(
      { about: 'The range of the spindle.' },
      {
        min: integerOr(8000, { about: 'Lowest speed.', unit: 'rev/min', min: 100, max: 100_000 }),
        max: integerOr(24_000, { about: 'Highest speed.', unit: 'rev/min', min: 100, max: 100_000 }),
      },
    ).prefault({}),
    spinUp: integerOr(3, { about: 'Time for the spindle to come up to speed (G4).', unit: 's', min: 0, max: 60 }),
    coolant: choice(['off', 'mist', 'flood'], 'off', {
      about: 'What is on while cutting: what M7 (mist) or M8 (flood) switches, an air blast or a coolant.',
    }),
    parking: place(unit, 'Where the machine goes at the end.', 'above the last cut'),
    end: choice(['M2', 'M30'], 'M2', { about: 'Word at the end of a program.' }),
  };
}

export function machineSection(unit: LengthUnit) {
  const area = keysIn(unit)
    .size({ about: 'Working area.' })
    .optional()
    .meta({
      quantity: 'size',
      about: 'Working area of the machine; a larger sheet is refused.',
      auto: 'as large as any sheet',
    } satisfies KeyMeta);
  return group(
    {
      about:
        'The machine that cuts, in the terms of its manual; or the name of a file beside the design with these keys (and `units`), shared by several designs. Whatever is cut by another kind of machine is planned as if no machine were described.',
    },
    {
      kind: choiceAuto(machineKinds, {
        about: 'What it is.',
        auto: 'a laser if `process.kind` is laser, else a router',
      }),
      area,
      ...textKeys(unit),
      ...routerKeys(unit),
      ...timeKeys,
      materials: materialKeys(unit),
      ...laserKeys(),
      calibration: calibrationKeys(unit).prefault({}),
    },
  );
}
