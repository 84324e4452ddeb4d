/** What a person has to know of a design file that cannot be taken or built as it stands. */

/** Where in the design file: the key's path, and its line when known. */
export interface Place {
  readonly path: readonly (string | number)[];
  readonly line?: number;
}

export interface Problem {
  /** Stable, for machines: `unknown-key`, `cleat-does-not-fit`. */
  readonly code: string;
  /** An error stops the job; a warning is worth knowing. */
  readonly severity: 'error' | 'warning';
  /** What is wrong, with the value, and what would do. */
  readonly message: string;
  readonly place?: Place;
}

/** `stock[2].size` */
export function pathText(path: readonly (string | number)[]): string {
  return path.reduce<string>(
    (text, step) => (typeof step === 'number' ? `${text}[${step + 1}]` : text === '' ? step : `${text}.${step}`),
    '',
  );
}
