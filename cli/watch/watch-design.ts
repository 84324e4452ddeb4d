/** From the design file as it is saved to the book on the page: a first picture at once, the nest behind it. */
import { basename, dirname, resolve } from 'node:path';
import { bookOf, type Design, type Problem, prepare, readDesign } from '../../lib/index.js';
import { Stop } from '../exit.js';
import { isBeside, readExtras } from '../extras.js';
import { follow, type Sight } from './follow.js';
import type { Board, ShownProblem } from './state.js';

/** A nested book, or why there is none. */
export interface Nested {
  readonly problems: readonly Problem[];
  readonly book: string | null;
  /** No better one follows. */
  readonly last: boolean;
}

/**
 * Nests a design behind the page's back and tells of each book.
 * @returns ends the work
 */
export type Background = (
  design: Design,
  extras: ReadonlyMap<string, string>,
  tell: (nested: Nested) => void,
) => () => void;

export type Reporter = (line: string) => void;

function shown(problems: readonly Problem[]): ShownProblem[] {
  return problems.map(({ severity, message, place }) => ({
    severity,
    message,
    ...(place?.line === undefined ? {} : { line: place.line }),
  }));
}

const faulty = (problems: readonly Problem[]): boolean => problems.some(({ severity }) => severity === 'error');

/** Why the last good book stands although the file does not allow one. */
function faultText(problems: readonly Problem[], hasBook: boolean): string {
  const count = problems.filter(({ severity }) => severity === 'error').length;
  const faults = count === 1 ? '1 fault in the file' : `${count} faults in the file`;
  return hasBook ? `${faults}; below is the last state that could be built` : `${faults}; nothing to show yet`;
}

/**
 * Follows a design file and the drawings that it names, and keeps the board up to date.
 * @param report told of each change in one line, for the terminal
 * @returns ends it
 */
export function watchDesign(file: string, board: Board, background: Background, report: Reporter): () => void {
  const path = resolve(file);
  const name = basename(path);
  let stopNest = (): void => undefined;

  const refuse = (problems: readonly Problem[]): void => {
    const says = faultText(problems, board.book !== null);
    board.show({ standing: 'faulty', says, problems: shown(problems) });
    report(`${name}: ${says}`);
    for (const problem of problems) {
      const line = problem.place?.line;
      report(`  ${line === undefined ? name : `${name}:${line}`}: ${problem.severity}: ${problem.message}`);
    }
  };

  const build = (design: Design, extras: ReadonlyMap<string, string>, warnings: readonly Problem[]): void => {
    const prepared = prepare(design, extras);
    const problems = [...warnings, ...prepared.problems];
    if (faulty(problems)) {
      refuse(problems);
      return;
    }
    const book = bookOf({ ...prepared, problems, sheets: null });
    board.show({ standing: 'nesting', says: 'the dish is up to date; nesting', problems: shown(problems) }, book);
    stopNest = background(design, extras, (nested) => {
      const all = [...warnings, ...nested.problems];
      if (nested.book === null) {
        refuse(all);
        return;
      }
      const says = nested.last ? 'up to date' : 'up to date; looking for a better nest';
      board.show({ standing: nested.last ? 'shown' : 'nesting', says, problems: shown(all) }, nested.book);
      if (nested.last) report(`${name}: up to date`);
    });
  };

  let leaveDrawings = (): void => undefined;
  const followDrawings = (design: Design, sight: Sight): void => {
    const files = new Set(design.extra.map(({ file: named }) => named).filter((named) => isBeside(path, named)));
    let begun = false;
    const leaves = [...files].map((named) =>
      follow(resolve(dirname(path), named), () => {
        if (begun) seen(sight);
      }),
    );
    begun = true;
    leaveDrawings = () => {
      for (const leaveOne of leaves) leaveOne();
    };
  };

  const seen = (sight: Sight): void => {
    stopNest();
    stopNest = () => undefined;
    leaveDrawings();
    leaveDrawings = () => undefined;
    if (sight.kind === 'gone') {
      const message = `cannot read ${name}: ${sight.reason}; the page goes on as soon as it is there`;
      refuse([{ code: 'gone', severity: 'error', message }]);
      return;
    }
    try {
      const reading = readDesign(sight.text);
      if (reading.kind === 'refused') {
        refuse(reading.problems);
        return;
      }
      followDrawings(reading.design, sight);
      build(reading.design, readExtras(path, reading.design), reading.problems);
    } catch (error) {
      // whatever goes wrong with one state of the file, the next one may be right
      const message = error instanceof Stop || error instanceof Error ? error.message : String(error);
      refuse([{ code: 'failed', severity: 'error', message }]);
    }
  };

  const leave = follow(path, seen);
  return () => {
    leave();
    leaveDrawings();
    stopNest();
  };
}
