/** Reading back a folder as written. */
import { lstatSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { FolderFiles } from '../lib/check/index.js';
import { type LengthUnit, lengthUnits } from '../lib/index.js';
import { exitCode, reasonOf, Stop, stop } from './exit.js';

/** What `verify` reads; a larger file is not one of ours. */
const largestFile = 64 * 1024 * 1024;
// what a folder of ours holds, and what a machine would run: a stray one of those has to be found
const ours = /\.(?:json|dxf|svg|csv|ngc|html|pdf)$|^measured-[\w-]+\.yaml$/i;
const machine = /\.(?:nc|gcode|gc|tap|cnc|plt|hpgl)$/i;

/**
 * The files below a folder that a proof looks at, by name with `/`. Links are not followed.
 * @throws Stop when the folder cannot be read
 */
export function readFolder(folder: string): FolderFiles {
  const files = new Map<string, string | Uint8Array>();
  const walk = (prefix: string, depth: number): void => {
    for (const entry of readdirSync(join(folder, prefix), { withFileTypes: true })) {
      const name = prefix === '' ? entry.name : `${prefix}/${entry.name}`;
      if (entry.isDirectory() && depth < 3) walk(name, depth + 1);
      if (!entry.isFile() || entry.name.startsWith('.') || !(ours.test(name) || machine.test(name))) continue;
      if (lstatSync(join(folder, name)).size > largestFile)
        throw stop(
          exitCode.wrongInput,
          'cannot-read',
          `${name} is larger than 64 MB: dishwright did not write it`,
          'give a folder that `dishwright cut` has written',
        );
      files.set(name, readFileSync(join(folder, name)));
    }
  };
  try {
    walk('', 0);
  } catch (error) {
    if (error instanceof Stop) throw error;
    const file = lstatSync(folder, { throwIfNoEntry: false })?.isFile() === true;
    throw stop(
      exitCode.wrongInput,
      'cannot-read',
      file ? `${folder} is a file, not a folder` : `cannot read the folder ${folder}: ${reasonOf(error)}`,
      'give a folder that `dishwright cut` has written',
    );
  }
  if (!files.has('job.json'))
    throw stop(
      exitCode.wrongInput,
      'cannot-read',
      `${folder} has no job.json`,
      'give a folder that `dishwright cut` has written',
    );
  return files;
}

/** The units of the design that a folder was cut from; millimetres where its record does not say. */
export function unitsOf(files: FolderFiles): LengthUnit {
  const record = files.get('job.json');
  const text = typeof record === 'string' ? record : new TextDecoder().decode(record);
  // stated once, among the first keys of the design; what else is wrong with the record the proof finds
  const name = /"design":\s*\{[^{}]*?"units":\s*"(\w+)"/.exec(text)?.[1];
  return lengthUnits.find((unit) => unit === name) ?? 'mm';
}
