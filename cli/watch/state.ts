/** The state of the page, and the last book that could be made of the design. */
import type { State } from './shown.js';

/** Holds the state and notifies the listeners of each change. */
export class Board {
  #state: State;
  #book: string | null = null;
  readonly #listeners = new Set<(state: State) => void>();

  constructor(file: string, readOnly = false) {
    this.#state = {
      file,
      standing: 'waiting',
      status: 'reading the design file',
      problems: [],
      book: 0,
      revision: '',
      keys: null,
      outline: null,
      values: [],
      readOnly,
      undoable: false,
      redoable: false,
      variants: [],
      work: null,
      start: null,
    };
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

  show(change: Partial<Omit<State, 'file' | 'book' | 'readOnly'>>, book?: string): void {
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
