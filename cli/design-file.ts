/** Reading a design file, with the flags of the command line laid over it. */
import { readdirSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { type Design, type Diagnostic, inWords, machineFileOf, nearestWord, readDesign } from '../lib/index.js';
import { exitCode, reasonOf, Stop, stop } from './exit.js';
import { readBeside } from './extras.js';
import { NotPlain, readPlainFile } from './plain-file.js';

/** A design file is a page or two; the reader of designs has its own, lower limit (bytes). */
const largest = 1_000_000;

/** A design file beside one that is not there, with nearly its name. */
function neighbourOf(file: string): string | null {
  try {
    const folder = dirname(file);
    const found = readdirSync(folder).filter((name) => /\.ya?ml$/i.test(name));
    const stem = (name: string): string => name.replace(/\.\w+$/, '');
    const own = stem(basename(file));
    const near = nearestWord(own, found.map(stem), Math.floor(own.length / 3));
    const there = found.find((name) => stem(name) === near);
    return there === undefined ? null : join(folder, there);
  } catch {
    return null;
  }
}

/** @throws Stop when the file cannot be read, or is none */
export function readText(
  file: string,
  remedy = 'give the path of a design file; `dishwright new` writes one to start from',
): string {
  try {
    return readPlainFile(file, largest);
  } catch (error) {
    if (error instanceof NotPlain) throw stop(exitCode.wrongInput, 'not-a-file', `${file} ${error.message}`, remedy);
    const near = neighbourOf(file);
    const instead = near === null ? remedy : `there is a ${near}: did you mean that?`;
    throw stop(exitCode.wrongInput, 'cannot-read', `cannot read ${file}: ${reasonOf(error)}`, instead);
  }
}

/** A design as read from its file. */
export interface LoadedDesign {
  readonly file: string;
  readonly design: Design;
  readonly problems: readonly Diagnostic[];
  /** Puts a diagnostic that is made later on its line in the file. */
  readonly locate: (problem: Diagnostic) => Diagnostic;
}

/** The design in a text, with the file that it names for its machine. */
export function readDesignText(file: string, text: string): ReturnType<typeof readDesign> {
  const machine = machineFileOf(text);
  if (machine === null) return readDesign(text, basename(file));
  const read = readBeside(file, machine, 'a text file with the keys of a machine');
  const source =
    typeof read === 'string' ? { kind: 'text' as const, text: read } : { kind: 'refused' as const, ...read };
  return readDesign(text, basename(file), source);
}

function refused(file: string, problems: readonly Diagnostic[]): Stop {
  const count = problems.filter((problem) => problem.severity === 'error').length;
  return new Stop(exitCode.wrongInput, problems, `${file} has ${count} ${count === 1 ? 'fault' : 'faults'}`);
}

/** As read, with problems in the units of the design. */
function loaded(file: string, reading: Omit<LoadedDesign, 'file'>): LoadedDesign {
  const { units } = reading.design;
  return {
    file,
    design: reading.design,
    problems: reading.problems.map((problem) => inWords(problem, units)),
    locate: (problem) => reading.locate(inWords(problem, units)),
  };
}

/**
 * @throws Stop with every problem when the file cannot be taken
 */
export function loadDesign(file: string): LoadedDesign {
  const reading = readDesignText(file, readText(file));
  if (reading.kind === 'design') return loaded(file, reading);
  throw refused(file, reading.problems);
}

/**
 * The same for those who only ask what the light does: what the workshop cannot build is left among the problems.
 * @throws Stop with every problem when the light cannot be asked
 */
export function loadForLight(file: string): LoadedDesign {
  const reading = readDesignText(file, readText(file));
  if (reading.kind === 'design') return loaded(file, reading);
  if (reading.unbuilt) return loaded(file, { problems: reading.problems, ...reading.unbuilt });
  throw refused(file, reading.problems);
}
