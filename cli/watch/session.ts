/** What the page does to the design file: single keys, with undo and redo. The file itself is what counts, not a copy. */
import { lstatSync } from 'node:fs';
import { entryAt, type KeySteps, type NewValue, withKey, type Written } from '../../lib/index.js';
import { reasonOf } from '../exit.js';
import { readPlainFile, whyUnread } from '../plain-file.js';
import { put } from '../plain-output.js';
import { isSection, revisionOf, shownAt } from './revision.js';
import { across, type Step, stepOf } from './step.js';

export interface Edit {
  readonly path: KeySteps;
  /** As a person types it; null takes the key out. */
  readonly value: string | null;
  /** What the page showed when the edit was made; null where the file did not have the key. */
  readonly was: string | null;
}

type Refused = Extract<Written, { readonly kind: 'refused' }>;

export type Outcome =
  /** `merged`: the file had been changed elsewhere, and both changes stand. */
  | { readonly kind: 'done'; readonly merged: boolean }
  /** The key itself was changed elsewhere: the person decides. */
  | { readonly kind: 'conflict'; readonly path: KeySteps; readonly theirs: string | null }
  | Refused;

const largest = 1_000_000;
/** Steps that can be taken back. */
const maxSteps = 500;

const refused = (message: string, remedy: string): Refused => ({ kind: 'refused', message, remedy });

/** The forms in which what was typed may be written, the one that its key takes first. */
function forms(path: KeySteps, typed: string): readonly NewValue[] {
  const quantity = entryAt(path)?.quantity;
  const asText = quantity === 'text' || quantity === 'size' || quantity === 'choice';
  return asText ? [{ text: typed }] : [{ source: typed }, { text: typed }];
}

/** The text with what was typed at a key. */
export function typedInto(text: string, path: KeySteps, typed: string | null): Written {
  if (typed === null) return withKey(text, path, null);
  const [first, second] = forms(path, typed.trim());
  const made = withKey(text, path, first ?? null);
  return made.kind === 'refused' && second ? withKey(text, path, second) : made;
}

export class Session {
  readonly #done: Step[] = [];
  readonly #undone: Step[] = [];

  constructor(
    readonly file: string,
    readonly readOnly: boolean,
  ) {}

  get undoable(): boolean {
    return this.#done.length > 0;
  }

  get redoable(): boolean {
    return this.#undone.length > 0;
  }

  /** The file as it is now, or why it cannot be read. */
  read(): { readonly kind: 'text'; readonly text: string } | Refused {
    try {
      return { kind: 'text', text: readPlainFile(this.file, largest) };
    } catch (error) {
      return refused(`the design file cannot be read: ${whyUnread(error)}`, 'put it back');
    }
  }

  /**
   * Writes in the place of the file itself: never through a link, and with its own permissions.
   * @param before what it holds; where an editor has saved since it was read, that save stands
   */
  #write(before: string, text: string): Refused | null {
    if (this.readOnly) return refused('the page is read-only', 'start the command without --read-only');
    try {
      const there = lstatSync(this.file);
      if (!there.isFile()) return refused('the design file is a link', 'open the file that it points to');
      put(this.file, text, there.mode & 0o777, () => {
        if (readPlainFile(this.file, largest) !== before) throw new Error('it was saved elsewhere at the same moment');
      });
      return null;
    } catch (error) {
      return refused(`the design file cannot be written: ${reasonOf(error)}`, 'nothing was changed; do it again');
    }
  }

  #take(before: string, after: string, path: KeySteps | null, merged: boolean): Outcome {
    if (after === before) return { kind: 'done', merged };
    const failed = this.#write(before, after);
    if (failed) return failed;
    this.#done.push(stepOf(before, after, path));
    if (this.#done.length > maxSteps) this.#done.shift();
    this.#undone.length = 0;
    return { kind: 'done', merged };
  }

  /** @param revision of the text on which the edit was made */
  edit({ path, value, was }: Edit, revision: string): Outcome {
    const now = this.read();
    if (now.kind === 'refused') return now;
    const merged = revisionOf(now.text) !== revision;
    if (merged) {
      const theirs = shownAt(now.text, path);
      if (theirs !== was || isSection(now.text, path)) return { kind: 'conflict', path, theirs };
    }
    const made = typedInto(now.text, path, value);
    if (made.kind === 'refused') return made;
    return this.#take(now.text, made.text, path, merged);
  }

  /** Puts a whole text in place, as that of a variant. */
  replace(text: string, revision: string): Outcome {
    const now = this.read();
    if (now.kind === 'refused') return now;
    if (revisionOf(now.text) !== revision)
      return refused('the file was changed elsewhere', 'look at it first, then use the variant again');
    return this.#take(now.text, text, null, false);
  }

  /** Goes from the one side of a step to the other; where the file was changed since, the key alone. */
  #go(from: Step[], to: Step[], back: boolean): Outcome {
    const step = from.at(-1);
    if (!step) return refused('there is nothing to undo', 'edit a key first');
    const now = this.read();
    if (now.kind === 'refused') return now;
    const { path, at } = step;
    const [here, there] = back ? [step.after, step.before] : [step.before, step.after];
    const whole = across(now.text, at, here, there);
    let text = whole;
    if (text === null) {
      const name = path?.join('.') ?? 'the file';
      if (path === null || shownAt(now.text, path) !== here.value)
        return refused(`${name} has been changed elsewhere since`, 'its present value is kept; change it by hand');
      const made = typedInto(now.text, path, there.value);
      if (made.kind === 'refused') return made;
      text = made.text;
    }
    const failed = this.#write(now.text, text);
    if (failed) return failed;
    from.pop();
    to.push(step);
    return { kind: 'done', merged: whole === null };
  }

  undo(): Outcome {
    return this.#go(this.#done, this.#undone, true);
  }

  redo(): Outcome {
    return this.#go(this.#undone, this.#done, false);
  }
}
