/** From the design file as it is saved to the page: its values at once, the book with the nest behind them. */
import { basename, dirname, resolve } from 'node:path';
import { type Design, type Diagnostic, hasError, type Layout, machineFileOf, statedKeys } from '../../lib/index.js';
import { readDesignText } from '../design-file.js';
import { reasonOf, Stop } from '../exit.js';
import { isBeside, loadExtras } from '../extras.js';
import { follow, type Sight } from './follow.js';
import type { Looks } from './looks.js';
import type { Value } from './shown.js';
import { revisionOf } from './revision.js';
import { problemLines } from '../report.js';
import type { Board } from './state.js';

type ReadDesign = Extract<ReturnType<typeof readDesignText>, { readonly kind: 'design' }>;

/** A nested book, or why there is none. */
export interface Nested {
  readonly problems: readonly Diagnostic[];
  readonly book: string | null;
  /** What is known by now: the light by all rays, and what the nest comes to. */
  readonly values?: readonly Value[];
  /** No better one follows. */
  readonly last: boolean;
}

export interface Nesting {
  /** Takes the quick nest of the values, which is the first one of the book too; null where it leaves a part out. */
  readonly laid: (layouts: readonly Layout[] | null) => void;
  readonly end: () => void;
}

/** Nests a design in the background and reports each book. */
export type Background = (
  design: Design,
  extras: ReadonlyMap<string, string>,
  report: (nested: Nested) => void,
) => Nesting;

export type Reporter = (line: string) => void;

/** Why the last good book stands although the file does not allow one. */
function faultText(problems: readonly Diagnostic[], hasBook: boolean): string {
  const count = problems.filter(({ severity }) => severity === 'error').length;
  const faults = count === 1 ? '1 fault in the file' : `${count} faults in the file`;
  return hasBook ? `${faults}; below is the last version that could be built` : `${faults}; nothing to show yet`;
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
    for (const { end } of leaves) end();
  };
}

/** What was known stands until its group is worked out again. */
function withGroups(known: readonly Value[], found: readonly Value[]): Value[] {
  const groups = new Set(found.map(({ group }) => group));
  return [...known.filter(({ group }) => !groups.has(group)), ...found];
}

/** Who works: the values in one thread, nest and book in another. */
interface Workers {
  readonly looks: Looks;
  readonly background: Background;
}

/** Works out states of a design and puts them on the board; a newer one takes the place of an older. */
function builder(name: string, board: Board, { looks, background }: Workers, report: Reporter) {
  let nesting: Nesting | null = null;
  /** Counts the states, so that what comes late of an older one is dropped. */
  let current = 0;

  const refuse = (problems: readonly Diagnostic[]): void => {
    const status = faultText(problems, board.book !== null);
    board.show({ standing: 'faulty', status, problems });
    report(`${name}: ${status}`);
    for (const line of problems.flatMap(problemLines)) report(`  ${line}`);
  };

  /** Ends what is under way. */
  const stop = (): void => {
    current += 1;
    nesting?.end();
    nesting = null;
  };

  const nestOf = ({ design, locate, problems: warnings }: ReadDesign, extras: ReadonlyMap<string, string>): void => {
    nesting = background(design, extras, (nested) => {
      const all = [...warnings, ...nested.problems.map(locate)];
      if (nested.book === null) {
        refuse(all);
        return;
      }
      const status = nested.last ? 'up to date' : 'up to date; looking for a better nest';
      const values = nested.values && withGroups(board.state.values, nested.values);
      const change = { standing: nested.last ? 'shown' : 'nesting', status, problems: all } as const;
      board.show(values ? { ...change, values } : change, nested.book);
      if (nested.last) report(`${name}: up to date`);
    });
  };

  const build = (reading: ReadDesign, extras: ReadonlyMap<string, string>): void => {
    const { design, locate, problems: warnings } = reading;
    const own = current;
    board.show({ standing: 'nesting', status: 'working out the dish', problems: warnings });
    const worked = looks('file', design, extras, (look) => {
      if (own !== current) return;
      if (look.stage === 'outline') {
        board.show({ outline: look.outline });
        return;
      }
      // a search takes too long for what it came to before to stand meanwhile
      const known = board.state.values.filter(({ group }) => group !== 'nested');
      const values = withGroups(known, look.values);
      if (look.stage !== 'built') {
        board.show({ values });
        if (look.stage === 'bought') nesting?.laid(look.layouts);
        return;
      }
      const problems = [...warnings, ...look.problems.map(locate)];
      if (hasError(problems)) {
        refuse(problems);
        return;
      }
      board.show({ values, problems, status: 'the dish is up to date; nesting in the background' });
      nestOf(reading, extras);
    });
    worked.then(
      () => {
        if (own === current) nesting?.laid(null);
      },
      (error: unknown) => {
        if (own !== current) return;
        stop();
        refuse([{ code: 'internal', severity: 'error', message: reasonOf(error) }]);
      },
    );
  };

  return { refuse, build, stop };
}

/**
 * Follows a design file, its machine's and the drawings that it names, and keeps the board up to date.
 * @param report called with each change in one line, for the terminal
 */
export function watchDesign(
  file: string,
  board: Board,
  workers: Workers,
  report: Reporter,
): { readonly refresh: () => void; readonly end: () => void } {
  const path = resolve(file);
  const name = basename(path);
  const { refuse, build, stop } = builder(name, board, workers, report);
  let leaveNamed = (): void => undefined;
  const seen = (sight: Sight): void => {
    stop();
    leaveNamed();
    leaveNamed = () => undefined;
    const text = sight.kind === 'text' ? sight.text : null;
    board.show({ revision: text === null ? '' : revisionOf(text), keys: text === null ? null : statedKeys(text) });
    if (sight.kind === 'gone') {
      const message = `cannot read ${name}: ${sight.reason}`;
      refuse([
        { code: 'cannot-read', severity: 'error', message, remedy: 'the page continues as soon as it is there' },
      ]);
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
      else refuse([{ code: 'internal', severity: 'error', message: reasonOf(error) }]);
    }
  };

  const following = follow(path, seen);
  return {
    refresh: following.look,
    end: () => {
      following.end();
      leaveNamed();
      stop();
    },
  };
}
