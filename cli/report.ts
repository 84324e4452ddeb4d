/** Problems on the terminal, the same wherever a command meets them. */
import type { Problem } from '../lib/index.js';
import { say, shade } from './console.js';
import { type LoadedDesign, problemLine } from './design-file.js';
import { exitCode, Stop } from './exit.js';

/** Says every problem, errors in red. */
export function sayProblems(file: string, problems: readonly Problem[]): void {
  for (const problem of problems)
    say(shade(problemLine(file, problem), problem.severity === 'error' ? 'red' : 'yellow'));
}

/**
 * Says every warning, those of the file first, and stops when there is an error among the problems.
 * @param found what was found after the file was read
 * @throws Stop
 */
export function stopOnErrors(loaded: LoadedDesign, found: readonly Problem[]): void {
  const problems = [...loaded.problems, ...found.map(loaded.located)];
  sayProblems(
    loaded.file,
    problems.filter((problem) => problem.severity === 'warning'),
  );
  const errors = problems.filter((problem) => problem.severity === 'error');
  if (errors.length > 0)
    throw new Stop(
      exitCode.cannotBuild,
      'the dish cannot be built as designed; nothing was written',
      errors.map((problem) => problemLine(loaded.file, problem)),
    );
}
