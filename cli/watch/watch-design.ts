/** From the design file as it is saved to the book on the page: a first picture at once, the nest behind it. */
import { basename, dirname, resolve } from 'node:path';
import { type Design, type Diagnostic, hasError, machineFileOf, prepare } from '../../lib/index.js';
import { readDesignText } from '../design-file.js';
import { bookOf } from '../../lib/public/book.js';
import { Stop } from '../exit.js';
import { isBeside, loadExtras } from '../extras.js';
import { follow, type Sight } from './follow.js';
import { problemLines } from '../report.js';
import type { Board } from './state.js';

type ReadDesign = Extract<ReturnType<typeof readDesignText>, { readonly kind: 'design' }>;

/** A nested book, or why there is none. */
export interface Nested {
  readonly problems: readonly Diagnostic[];
  readonly book: string | null;
  /** No better one follows. */
  readonly last: boolean;
}

/**
 * Nests a design in the background and reports each book.
 * @returns ends the work
 */
export type Background = (
  design: Design,
  extras: ReadonlyMap<string, string>,
  report: (nested: Nested) => void,
) => () => void;

export type Reporter = (line: string) => void;

/** Why the last good book stands although the file does not allow one. */
function faultText(problems: readonly Diagnostic[], hasBook: boolean): string {
  const count = problems.filter(({ severity }) => severity === 'error').length;
  const faults = count === 1 ? '1 fault in the file' : `${count} faults in the file`;
  return hasBook ? `${faults}; below is the last state that could be built` : `${faults}; nothing to show yet`;
}

/**
 * Follows files that a design names beside its own.
 * @param changed called when one of them is saved
 * @returns ends it
 */
function followNamed(path: string, names: readonly string[], changed: () => void): () => void {
  const files = new Set(names.filter((named) => isBeside(path, named)));
  let begun = false;
  const leaves = [...files].map((named) =>
    follow(resolve(dirname(path), named), () => {
      if (begun) changed();
    }),
  );
  begun = true;
  return () => {
    for (const leave of leaves) leave();
  };
}

/**
 * Follows a design file, its machine's and the drawings that it names, and keeps the board up to date.
 * @param report called with each change in one line, for the terminal
 * @returns ends it
 */
export function watchDesign(file: string, board: Board, background: Background, report: Reporter): () => void {
  const path = resolve(file);
  const name = basename(path);
  let stopNest = (): void => undefined;

  const refuse = (problems: readonly Diagnostic[]): void => {
    const status = faultText(problems, board.book !== null);
    board.show({ standing: 'faulty', status, problems });
    report(`${name}: ${status}`);
    for (const line of problems.flatMap(problemLines)) report(`  ${line}`);
  };

  const build = ({ design, locate, problems: warnings }: ReadDesign, extras: ReadonlyMap<string, string>): void => {
    const prepared = prepare(design, extras);
    const problems = [...warnings, ...prepared.problems.map(locate)];
    if (hasError(problems)) {
      refuse(problems);
      return;
    }
    const book = bookOf({ ...prepared, problems, sheets: null });
    board.show({ standing: 'nesting', status: 'the dish is up to date; nesting', problems }, book);
    stopNest = background(design, extras, (nested) => {
      const all = [...warnings, ...nested.problems.map(locate)];
      if (nested.book === null) {
        refuse(all);
        return;
      }
      const status = nested.last ? 'up to date' : 'up to date; looking for a better nest';
      board.show({ standing: nested.last ? 'shown' : 'nesting', status, problems: all }, nested.book);
      if (nested.last) report(`${name}: up to date`);
    });
  };

  let leaveNamed = (): void => undefined;
  const seen = (sight: Sight): void => {
    stopNest();
    stopNest = () => undefined;
    leaveNamed();
    leaveNamed = () => undefined;
    if (sight.kind === 'gone') {
      const message = `cannot read ${name}: ${sight.reason}`;
      refuse([{ code: 'cannot-read', severity: 'error', message, remedy: 'the page goes on as soon as it is there' }]);
      return;
    }
    try {
      const machine = machineFileOf(sight.text);
      const again = (): void => seen(sight);
      // a machine with a fault is followed too: the next save may mend it
      leaveNamed = followNamed(path, machine === null ? [] : [machine], again);
      const reading = readDesignText(path, sight.text);
      if (reading.kind === 'refused') {
        refuse(reading.problems);
        return;
      }
      const drawings = reading.design.extra.map(({ file }) => file);
      leaveNamed();
      leaveNamed = followNamed(path, machine === null ? drawings : [machine, ...drawings], again);
      build(reading, loadExtras(path, reading.design, reading.locate));
    } catch (error) {
      // whatever goes wrong with one state of the file, the next one may be right
      if (error instanceof Stop) refuse(error.problems);
      else {
        const message = error instanceof Error ? error.message : String(error);
        refuse([{ code: 'internal', severity: 'error', message }]);
      }
    }
  };

  const leave = follow(path, seen);
  return () => {
    leave();
    leaveNamed();
    stopNest();
  };
}
