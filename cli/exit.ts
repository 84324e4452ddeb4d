/** How a command ends: 0 done, 1 the design cannot be built as asked, 2 the command or the file is wrong, 3 an output could not be written. */
import { type Diagnostic, type DiagnosticCode, diagnosticText } from '../lib/diagnostic/index.js';

export const exitCode = { done: 0, cannotBuild: 1, wrongInput: 2, notWritten: 3 } as const;
export type ExitCode = (typeof exitCode)[keyof typeof exitCode];

/** Ends a command with diagnostics for the person and an exit code. */
export class Stop extends Error {
  constructor(
    readonly exit: ExitCode,
    readonly problems: readonly Diagnostic[],
    /** One line after them: how things stand now. */
    readonly closing?: string,
  ) {
    super(problems.map(diagnosticText).join('\n'));
  }
}

/** Ends a command for a single reason, which is not about a key of the design file. */
export function stop(exit: ExitCode, code: DiagnosticCode, message: string, remedy?: string): Stop {
  return new Stop(exit, [{ code, severity: 'error', message, ...(remedy === undefined ? {} : { remedy }) }]);
}

/** What the operating system reports, in words. */
export function reasonOf(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  const words: Readonly<Record<string, string>> = {
    ENOENT: 'no such file or folder',
    EACCES: 'permission denied',
    EPERM: 'permission denied',
    EROFS: 'the disk is read-only',
    EISDIR: 'it is a folder',
    ENOTDIR: 'part of the path is a file, not a folder',
    ENOSPC: 'the disk is full',
    EDQUOT: 'the disk quota is used up',
    ENAMETOOLONG: 'the name is too long',
    ELOOP: 'the links form a loop',
    EXDEV: 'it would have to move to another disk',
  };
  return words[code] ?? (error instanceof Error ? error.message : String(error));
}
