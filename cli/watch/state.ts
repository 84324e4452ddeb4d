/** What the page shows: the state of the design file, and the last book that could be made of it. */

/** `waiting`: nothing seen yet. `faulty`: the file as it stands cannot be built; the book is the last good one. */
export type PageState = 'waiting' | 'shown' | 'nesting' | 'faulty';

/** What the page shows of a diagnostic; the page's script must not take in the whole library for its type. */
export interface ShownProblem {
  readonly severity: 'error' | 'warning';
  readonly message: string;
  readonly remedy?: string;
  readonly place?: { readonly line?: number };
}

export interface State {
  readonly file: string;
  readonly standing: PageState;
  /** One line on how things stand. */
  readonly status: string;
  readonly problems: readonly ShownProblem[];
  /** Counts the books; 0 while there is none. */
  readonly book: number;
}

/** Holds the state and notifies the listeners of each change. */
export class Board {
  #state: State;
  #book: string | null = null;
  readonly #listeners = new Set<(state: State) => void>();

  constructor(file: string) {
    this.#state = { file, standing: 'waiting', status: 'reading the design file', problems: [], book: 0 };
  }

  get state(): State {
    return this.#state;
  }

  /** How many are notified of changes. */
  get listeners(): number {
    return this.#listeners.size;
  }

  /** The last book, complete HTML. */
  get book(): string | null {
    return this.#book;
  }

  show(change: Pick<State, 'standing' | 'status' | 'problems'>, book?: string): void {
    if (book !== undefined) this.#book = book;
    this.#state = { ...this.#state, ...change, book: this.#state.book + (book === undefined ? 0 : 1) };
    for (const listener of this.#listeners) listener(this.#state);
  }

  /** @returns ends the listening */
  listen(listener: (state: State) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }
}
