/** What goes to the page and comes from it: types alone, so that the page's script does not take in the library. */

/** From the top of the design file to a key: names, and places in lists from 0. */
export type Steps = readonly (string | number)[];

/** A key as the file states it. */
export interface Stated {
  readonly path: Steps;
  readonly shown: string;
}

/** One value of the design as the page's table has it. */
export interface Value {
  readonly group: 'dish' | 'stock' | 'nested' | 'light';
  readonly label: string;
  readonly value: string;
  readonly note?: string;
}

/** The dish in section, mm; heights above the vertex. */
export interface Outline {
  readonly profile: readonly (readonly [radius: number, height: number])[];
  readonly ribs: number;
  readonly innerRadius: number;
  readonly boardRadius: number;
  readonly baseHeight: number;
  readonly focus: number;
  readonly vessel: { readonly diameter: number; readonly height: number; readonly offset: number } | null;
}

export interface FormKey {
  readonly path: string;
  readonly kind: string;
  readonly about: string;
  /** What may be written. */
  readonly value: string;
  readonly fallback: string;
  readonly limits: string | null;
  readonly required: boolean;
  readonly choices: readonly string[];
}

export interface FormGroup {
  readonly title: string;
  readonly sections: readonly { readonly name: string; readonly about: string; readonly keys: readonly FormKey[] }[];
}

/** `waiting`: nothing seen yet. `faulty`: the file as it stands cannot be built; the book is the last good one. */
export type PageState = 'waiting' | 'shown' | 'nesting' | 'faulty';

/** What the page shows of a diagnostic; the page's script must not take in the whole library for its type. */
export interface ShownProblem {
  readonly severity: 'error' | 'warning';
  readonly message: string;
  readonly remedy?: string;
  readonly place?: { readonly line?: number; readonly path?: Steps };
}

export interface State {
  readonly file: string;
  readonly standing: PageState;
  /** One line on how things stand. */
  readonly status: string;
  readonly problems: readonly ShownProblem[];
  /** Counts the books; 0 while there is none. */
  readonly book: number;
  /** Names the text that the rest is about; empty while there is none. */
  readonly revision: string;
  /** What the file states; null where it cannot be read as keys. */
  readonly keys: readonly Stated[] | null;
  /** Of the file, or of its last state that could be built. */
  readonly outline: Outline | null;
  readonly values: readonly Value[];
  readonly readOnly: boolean;
  readonly undoable: boolean;
  readonly redoable: boolean;
  readonly variants: readonly Variant[];
  readonly work: Work | null;
  /** The next question of a new design; null where the file is there. */
  readonly start: Start | null;
}

/** A step of the guided start. */
export interface Start {
  /** Null at the end, where `proposal` says what the answers come to. */
  readonly question: string | null;
  /** What an empty answer takes. */
  readonly usual: string;
  /** Why the last answer does not do, and what would. */
  readonly said: string | null;
  readonly given: readonly (readonly [question: string, answer: string])[];
  readonly proposal: readonly string[];
}

/** A state of the file that is kept for comparison. */
export interface Variant {
  readonly id: number;
  readonly name: string;
  readonly values: readonly Value[];
  readonly outline: Outline | null;
}

/** A command of the command line that the page has started. */
export interface Work {
  readonly kind: string;
  readonly running: boolean;
  /** What it has printed, its end only. */
  readonly lines: readonly string[];
  /** How it ended; null while it runs. */
  readonly ended: string | null;
  readonly seconds: number;
}

/** A line of the answer to a draft. */
export type DraftLine =
  | { readonly kind: 'outline'; readonly outline: Outline }
  | { readonly kind: 'values'; readonly values: readonly Value[]; readonly last: boolean }
  | { readonly kind: 'problems'; readonly problems: readonly ShownProblem[] };
