/** Reading a design file, with the flags of the command line laid over it. */
import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { type Design, type Problem, readDesign } from '../lib/index.js';
import { exitCode, reasonOf, Stop } from './exit.js';

/** `press-house.yaml:12: error: …`, as editors and people read it. */
export function problemLine(file: string, problem: Problem): string {
  const line = problem.place?.line;
  const where = line === undefined ? basename(file) : `${basename(file)}:${line}`;
  return `${where}: ${problem.severity}: ${problem.message}`;
}

/** @throws Stop when the file cannot be read */
export function readText(file: string): string {
  try {
    return readFileSync(file, 'utf8');
  } catch (error) {
    const advice = 'give the path of a design file; `dishwright new` writes one to start from';
    throw new Stop(exitCode.wrongInput, `cannot read ${file}: ${reasonOf(error)}; ${advice}`);
  }
}

/** A design as read from its file. */
export interface LoadedDesign {
  readonly file: string;
  readonly design: Design;
  readonly problems: readonly Problem[];
  /** Gives a problem that is found later on its line in the file. */
  readonly located: (problem: Problem) => Problem;
}

/**
 * @throws Stop with every problem when the file cannot be taken
 */
export function loadDesign(file: string): LoadedDesign {
  const reading = readDesign(readText(file));
  if (reading.kind === 'design') return { file, ...reading };
  const count = reading.problems.filter((problem) => problem.severity === 'error').length;
  throw new Stop(
    exitCode.wrongInput,
    `${file} has ${count} ${count === 1 ? 'fault' : 'faults'}`,
    reading.problems.map((problem) => problemLine(file, problem)),
  );
}
