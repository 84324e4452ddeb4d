/** What somebody has to know about a design that cannot be read or built as it is: the form of every message. */
import type { DiagnosticCode } from './codes.js';

export type Severity = 'error' | 'warning';

/** Steps from the top of the design file to a key: names, and 0-based numbers within lists. */
export type KeyPath = readonly (string | number)[];

/** Where in the design file: the key, and its line and column (both from 1) once it is located. */
export interface Place {
  readonly path: KeyPath;
  /** Name of the design file. */
  readonly file?: string;
  readonly line?: number;
  readonly column?: number;
}

export interface Diagnostic {
  /** Stable, for machines. */
  readonly code: DiagnosticCode;
  /** An error stops the job; a warning is worth knowing. */
  readonly severity: Severity;
  /** What is wrong, with the value. */
  readonly message: string;
  /** How to fix it. */
  readonly remedy?: string;
  readonly place?: Place;
  /** What the file states at the key; absent if it states nothing and the default applies. */
  readonly value?: string | number | boolean;
}

/** Adds its line to a diagnostic; one without a key is left as it is. */
export type Locate = (diagnostic: Diagnostic) => Diagnostic;

/**
 * A diagnostic about a key of the design file; its line is found later, by whoever holds the file's text.
 * @param message what is wrong, with the value
 * @param remedy how to fix it
 */
export function diagnostic(
  code: DiagnosticCode,
  path: KeyPath,
  message: string,
  remedy: string | undefined,
  severity: Severity = 'error',
): Diagnostic {
  return { code, severity, message, ...(remedy === undefined ? {} : { remedy }), place: { path } };
}

/** What is wrong and how to fix it, in one sentence. */
export function diagnosticText({ message, remedy }: Pick<Diagnostic, 'message' | 'remedy'>): string {
  return remedy === undefined ? message : `${message}; ${remedy}`;
}

/** Whether any of the diagnostics is an error. */
export function hasError(diagnostics: readonly Pick<Diagnostic, 'severity'>[]): boolean {
  return diagnostics.some(({ severity }) => severity === 'error');
}

/** `stock[2].size`: a key as a person names it, lists counted from 1. */
export function pathText(path: KeyPath): string {
  return path.reduce<string>(
    (text, step) => (typeof step === 'number' ? `${text}[${step + 1}]` : text === '' ? step : `${text}.${step}`),
    '',
  );
}
