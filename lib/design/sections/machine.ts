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
      about: 'Decimals of a place.',
      auto: '4 in millimetres, 5 in inches, which takes at least 5',
      min: 3,
      max: 6,
    }),
    arcs: choice(['arcs', 'lines'], 'arcs', {
      about: 'Arcs as they are (G2, G3), or as short lines for a controller without them.',
    }),
    lineTolerance: lengthOr(0.01, {
      about: 'How far a short line may stand off the arc that it is part of.',
      min: 0.001,
      max: 0.015,
    }),
    lineNumbers: integerOr(0, { about: 'Step of the line numbers (N); 0 for none.', min: 0, max: 1000 }),
    commentLength: integerOr(96, { about: 'Longest comment, characters between its brackets.', min: 48, max: 250 }),
    commentCharacters: choice(['ascii', 'capitals'], 'ascii', {
      about: 'Characters of comments: all of ASCII, or capital letters, digits and plain signs only.',
    }),
  };
}

function changeKeys(unit: LengthUnit) {
  const { lengthOr } = keysIn(unit);
  return {
    toolChange: choice(['automatic', 'by-hand', 'none'], 'automatic', {
      about:
        'How a tool is changed: by the machine (M6); by hand at `changeAt`, where the program pauses (M0) and the new bit is set to zero; or not at all: a file for each tool, without M6, T and G43.',
    }),
    lengthOffsets: yesNo(true, {
      about: 'Whether an automatic change also calls the tool’s length from the tool table (G43 H).',
    }),
    changeAt: keysIn(unit)
      .point()
      .default({ x: 0, y: 0 })
      .meta({
        quantity: 'point',
        shown: '[0, 0]',
        about: 'Where the machine stands while a tool is changed by hand.',
      } satisfies KeyMeta),
    changeHeight: lengthOr(60, {
      about: 'Height above the sheet at which a tool is changed by hand.',
      why: 'a bit and its collet come out below it, from memory',
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
    about: 'Speed of travel, for the time only.',
    unit: 'mm/min',
    auto: '6000 for a router, a light gantry machine, from memory; of a laser no time is estimated without it',
    min: 10,
    max: 1_000_000,
  }),
  acceleration: numberAuto({
    about: 'How fast the machine gathers speed along its path, for the time only.',
    unit: 'mm/s²',
    auto: '500 for a router, a light gantry machine, from memory; the time of a laser is a minimum without it',
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
        'Exact path (G61), exact stop (G61.1), or corners rounded to keep the speed (G64 P, with `pathTolerance`; the P is in use with many controllers and not in the published standard).',
      why: 'only the exact path keeps the edge within its tolerance on every machine',
    }),
    pathTolerance: lengthOr(0.02, {
      about: 'How far a rounded corner may leave the path.',
      above: 0,
      max: 0.05,
    }),
    maxFeed: group(
      { about: 'Fastest feed of each axis in a cut.' },
      { x: feed('Along X.', 4000), y: feed('Along Y.', 4000), z: feed('Along Z.', 4000) },
    ).prefault({}),
    spindle: group(
      { about: 'The range of the spindle.' },
      {
        min: integerOr(8000, { about: 'Lowest speed.', unit: 'rev/min', min: 100, max: 100_000 }),
        max: integerOr(24_000, { about: 'Highest speed.', unit: 'rev/min', min: 100, max: 100_000 }),
      },
    ).prefault({}),
    spinUp: integerOr(3, { about: 'Wait for the spindle to come to speed (G4).', unit: 's', min: 0, max: 60 }),
    coolant: choice(['off', 'mist', 'flood'], 'off', {
      about: 'What M7 (mist) or M8 (flood) switches on while it cuts: an air blast or a coolant.',
    }),
    parking: place(unit, 'Where the machine stands at the end.', 'above the last cut'),
    end: choice(['M2', 'M30'], 'M2', { about: 'Word at the end of a program.' }),
  };
}

export function machineSection(unit: LengthUnit) {
  const area = keysIn(unit)
    .size({ about: 'Working area.' })
    .optional()
    .meta({
      quantity: 'size',
      about: 'Working area of the machine; a sheet that is larger is refused.',
      auto: 'as large as any sheet',
    } satisfies KeyMeta);
  return group(
    {
      about:
        'The machine that cuts, in the words of its manual; or the name of a file beside the design that holds these keys (and `units`), for several designs. What is cut otherwise than by a machine of its kind is cut on one of which nothing is stated.',
    },
    {
      kind: choiceAuto(machineKinds, {
        about: 'What it is.',
        auto: 'a laser where `process.kind` says so, else a router',
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
