/** Diagnostics on the terminal, the same wherever a command meets them. */
import { type Diagnostic, hasError } from '../lib/diagnostic/index.js';
import type { Proof } from '../lib/check/index.js';
import { type LengthUnit, proseIn } from '../lib/index.js';
import { say, shade } from './console.js';
import type { LoadedDesign } from './design-file.js';
import { exitCode, Stop } from './exit.js';

/** `press-house.yaml:12:3`, as editors and people read it; empty for what is not about a design file. */
function placeText({ place }: Diagnostic): string {
  if (place === undefined) return '';
  const { file = 'design', line, column } = place;
  return [file, line, column].filter((part) => part !== undefined).join(':');
}

/** What is wrong, in one line, and how to fix it, in a second. */
export function problemLines(problem: Diagnostic): readonly [string, ...string[]] {
  const place = placeText(problem);
  const head = `${place === '' ? '' : `${place}: `}${problem.severity}: ${problem.message} [${problem.code}]`;
  return problem.remedy === undefined ? [head] : [head, `  ${problem.remedy}`];
}

/** Prints every problem, what stops the job first and in red. */
export function reportProblems(problems: readonly Diagnostic[]): void {
  const stops = problems.filter(({ severity }) => severity === 'error');
  for (const problem of [...stops, ...problems.filter(({ severity }) => severity !== 'error')]) {
    const [head, ...rest] = problemLines(problem);
    say(shade(head, problem.severity === 'error' ? 'red' : 'yellow'));
    for (const line of rest) say(line);
  }
}

/** Prints every fault of a proof in the manner of diagnostics, in the units of the design. */
export function reportFaults(proof: Proof, units: LengthUnit): void {
  for (const { code, file, message } of proof.faults) {
    const rest = message.startsWith(`${file}: `) ? message.slice(file.length + 2) : message;
    say(shade(`${file}: error: ${proseIn(rest, units)} [${code}]`, 'red'));
  }
}

/**
 * Reports every warning, those of the file first, and stops when there is an error among the problems.
 * @param found what was found after the file was read
 * @throws Stop
 */
export function stopOnErrors(loaded: LoadedDesign, found: readonly Diagnostic[]): void {
  const problems = [...loaded.problems, ...found.map(loaded.locate)];
  if (hasError(problems))
    throw new Stop(exitCode.cannotBuild, problems, 'the dish cannot be built as designed; nothing was written');
  reportProblems(problems);
}
