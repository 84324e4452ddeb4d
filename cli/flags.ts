/** Flags that commands share, and what they do to a design. */
import type { Options, PositionalOptions } from 'yargs';
import {
  type Design,
  LengthError,
  lengthUnits,
  type LengthUnit,
  parseUsualSize,
  processKinds,
  type ProcessKind,
  withNest,
  withProcess,
  withSheetSize,
  withUnits,
} from '../lib/index.js';
import { exitCode, stop } from './exit.js';

/** Reads the number of an option. @throws Stop when it is none */
function numberFlag(flag: string): (text: string) => number {
  return (text) => {
    const value = Number(text);
    if (text.trim() !== '' && !Number.isNaN(value)) return value;
    throw stop(exitCode.wrongInput, 'usage', `--${flag} is "${text}"`, 'it must be a number, such as 10');
  };
}

export const jsonFlag = {
  json: { type: 'boolean', default: false, describe: 'print the result as JSON' },
} as const satisfies Record<string, Options>;

export const designFlags = {
  ...jsonFlag,
  sheet: { type: 'string', requiresArg: true, describe: 'nest on sheets of this size instead, such as 2500x1250' },
  process: { choices: processKinds, requiresArg: true, describe: 'cut by router, laser or hand instead' },
  units: { choices: lengthUnits, requiresArg: true, describe: 'print lengths in this unit' },
  seed: {
    type: 'string',
    requiresArg: true,
    coerce: numberFlag('seed'),
    describe: 'seed of the random search, 0 or more',
  },
  seconds: {
    type: 'string',
    requiresArg: true,
    coerce: numberFlag('seconds'),
    describe: 'how long to search for a better nest, for all materials together',
  },
} as const satisfies Record<string, Options>;

/** The first argument of most commands. */
export const designArgument = {
  type: 'string',
  demandOption: true,
  describe: 'the design file',
} as const satisfies PositionalOptions;

/** Of commands that write a folder. */
export const outFlags = {
  ...designFlags,
  out: { alias: 'o', type: 'string', requiresArg: true, demandOption: true, describe: 'folder to write' },
  force: { type: 'boolean', default: false, describe: 'replace earlier output even if it has been changed since' },
} as const satisfies Record<string, Options>;

export interface DesignArguments {
  readonly design: string;
  readonly json: boolean;
  readonly sheet: string | undefined;
  readonly process: ProcessKind | undefined;
  readonly units: LengthUnit | undefined;
  readonly seed: number | undefined;
  readonly seconds: number | undefined;
}

/** @throws Stop when a size cannot be read */
export function sizeFlag(flag: string, text: string, unit: LengthUnit) {
  try {
    return parseUsualSize(text, unit);
  } catch (error) {
    if (!(error instanceof LengthError)) throw error;
    const code = error.kind === 'wrong-unit' ? error.kind : 'usage';
    throw stop(exitCode.wrongInput, code, `--${flag}: ${error.message}`, error.remedy);
  }
}

/** Lays the flags over the design. @throws Stop for a value out of range */
export function applyFlags(design: Design, flags: DesignArguments): Design {
  let changed = design;
  if (flags.seed !== undefined) {
    if (!Number.isInteger(flags.seed) || flags.seed < 0 || flags.seed >= 2 ** 31)
      throw stop(
        exitCode.wrongInput,
        'usage',
        `--seed is ${flags.seed}`,
        `it must be an integer from 0 to ${2 ** 31 - 1}`,
      );
    changed = withNest(changed, { seed: flags.seed });
  }
  if (flags.seconds !== undefined && !(flags.seconds >= 0 && flags.seconds <= 86_400))
    throw stop(exitCode.wrongInput, 'usage', `--seconds is ${flags.seconds}`, 'it must be from 0 to 86400');
  if (flags.process !== undefined) changed = withProcess(changed, flags.process);
  if (flags.sheet !== undefined) changed = withSheetSize(changed, sizeFlag('sheet', flags.sheet, design.units));
  if (flags.units !== undefined) changed = withUnits(changed, flags.units);
  return changed;
}
