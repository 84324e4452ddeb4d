/** What the page can ask to be done. Every answer is plain; what has changed comes to all pages by the board. */
import { resolve } from 'node:path';
import * as z from 'zod';
import type { KeySteps } from '../../lib/index.js';
import { readDesignText } from '../design-file.js';
import { Stop } from '../exit.js';
import { loadExtras } from '../extras.js';
import {
  askedAnswer,
  askedDraft,
  askedDrop,
  askedEdit,
  askedKeep,
  askedNothing,
  askedVariant,
  askedWork,
} from './asked.js';
import type { Guide } from './guide.js';
import { outlineOf } from './look.js';
import type { Looks } from './looks.js';
import { type Outcome, type Session, typedInto } from './session.js';
import type { DraftLine } from './shown.js';
import type { Board } from './state.js';
import type { Works } from './works.js';

/** An answer with its status of HTTP. */
export interface Reply {
  readonly status: number;
  readonly body: object;
}

/** Compared side by side; more columns nobody reads. */
const maxVariants = 3;

const done = (body: object = {}): Reply => ({ status: 200, body });
const refusal = (status: number, message: string, remedy: string): Reply => ({
  status,
  body: { kind: 'refused', message, remedy },
});

export class Desk {
  readonly #texts = new Map<number, string>();
  #next = 1;

  constructor(
    readonly session: Session,
    readonly board: Board,
    readonly looks: Looks,
    readonly works: Works,
    /** Asks for what a new design needs; null where none may be written. */
    readonly guide: Guide | null,
    /** Takes up what was written, at once. */
    readonly refresh: () => void,
  ) {}

  #answer(outcome: Outcome): Reply {
    const { undoable, redoable } = this.session;
    if (outcome.kind !== 'done') return { status: outcome.kind === 'conflict' ? 409 : 422, body: outcome };
    this.board.show({ undoable, redoable });
    this.refresh();
    return done({ kind: 'done', merged: outcome.merged, revision: this.board.state.revision });
  }

  #keep({ name }: { readonly name: string }): Reply {
    const read = this.session.read();
    if (read.kind === 'refused') return { status: 422, body: read };
    const { variants, values, outline } = this.board.state;
    if (variants.length >= maxVariants) return refusal(422, 'only three variants can be kept', 'delete one first');
    const id = this.#next++;
    this.#texts.set(id, read.text);
    this.board.show({ variants: [...variants, { id, name, values, outline }] });
    return done({ id });
  }

  #drop({ id }: { readonly id: number }): Reply {
    this.#texts.delete(id);
    this.board.show({ variants: this.board.state.variants.filter((one) => one.id !== id) });
    return done();
  }

  #work({ kind, sizes }: z.infer<typeof askedWork>): Reply {
    if (this.session.readOnly && kind !== 'stock' && kind !== 'verify')
      return refusal(403, 'the page is read-only', 'start the command without --read-only');
    if (this.works.running) return refusal(409, 'a command is running', 'wait for it, or cancel it');
    this.works.start(kind, sizes);
    return done();
  }

  /** Does what is asked; null for what nobody can ask. */
  act(name: string, body: object): Reply | null {
    const { session } = this;
    const acts: Readonly<Record<string, () => Reply>> = {
      edit: () => {
        const { revision, ...edit } = askedEdit.parse(body);
        return this.#answer(session.edit(edit, revision));
      },
      undo: () => (askedNothing.parse(body), this.#answer(session.undo())),
      redo: () => (askedNothing.parse(body), this.#answer(session.redo())),
      keep: () => this.#keep(askedKeep.parse(body)),
      drop: () => this.#drop(askedDrop.parse(body)),
      take: () => {
        const { id, revision } = askedVariant.parse(body);
        const text = this.#texts.get(id);
        if (text === undefined) return refusal(404, 'this variant no longer exists', 'choose another');
        return this.#answer(session.replace(text, revision));
      },
      work: () => this.#work(askedWork.parse(body)),
      answer: () => {
        const { text } = askedAnswer.parse(body);
        return this.guide?.answer(text) ? done() : refusal(409, 'there is no question at the moment', 'wait for it');
      },
      again: () => {
        askedNothing.parse(body);
        if (!this.guide?.asking) return refusal(409, 'there is no question at the moment', 'edit the file');
        this.guide.begin();
        return done();
      },
      cancel: () => {
        askedNothing.parse(body);
        this.works.cancel();
        return done();
      },
    };
    if (!Object.hasOwn(acts, name)) return null;
    try {
      return acts[name]?.() ?? null;
    } catch (error) {
      if (error instanceof z.ZodError) return refusal(400, 'this request has the wrong form', 'reload the page');
      throw error;
    }
  }

  /** Works out what an edit would come to, without writing it; gives each step as it is known. */
  async draft(body: object, send: (line: DraftLine) => void): Promise<void> {
    const asked = askedDraft.safeParse(body);
    const read = this.session.read();
    if (!asked.success || read.kind === 'refused') return;
    const file = resolve(this.session.file);
    try {
      let { text } = read;
      for (const { path, value } of asked.data.edits as readonly { path: KeySteps; value: string | null }[]) {
        const made = typedInto(text, path, value);
        if (made.kind === 'refused') return;
        text = made.text;
      }
      const reading = readDesignText(file, text);
      if (reading.kind === 'refused') {
        send({ kind: 'problems', problems: reading.problems });
        return;
      }
      const { design, locate, problems } = reading;
      // at once, however long the thread is busy with an earlier one
      send({ kind: 'outline', outline: outlineOf(design) });
      await this.looks('draft', design, loadExtras(file, design, locate), (look) => {
        if (look.stage === 'outline') return;
        if (look.stage === 'built') send({ kind: 'problems', problems: [...problems, ...look.problems.map(locate)] });
        send({ kind: 'values', values: look.values, last: look.stage === 'light' });
      });
    } catch (error) {
      if (error instanceof Stop) send({ kind: 'problems', problems: error.problems });
      else throw error;
    }
  }
}
