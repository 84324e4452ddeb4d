/** The guided start on the page: the questions of `new`, one after the other, for a file that is not there yet. */
import { designText } from '../new/design-text.js';
import { proposalLines } from '../new/proposal.js';
import { type AskFor, askQuestions } from '../new/questions.js';
import { writeDesign } from '../new/write.js';
import { reasonOf, Stop } from '../exit.js';
import type { Start } from './shown.js';
import type { Board } from './state.js';

const nothing: Start = { question: null, usual: '', said: null, given: [], proposal: [] };

export class Guide {
  #take: ((text: string) => void) | null = null;
  /** Counts the rounds: what an earlier one still works out is dropped. */
  #round = 0;

  /** @param written called when the file is there */
  constructor(
    readonly file: string,
    readonly board: Board,
    readonly written: () => void,
  ) {}

  get asking(): boolean {
    return this.board.state.start !== null;
  }

  /** Shows a step and waits for the answer, which never comes when a newer round has begun. */
  #put(step: Start, round: number): Promise<string> {
    return new Promise((resolve) => {
      if (round !== this.#round) return;
      this.#take = resolve;
      this.board.show({ start: step });
    });
  }

  /** Begins with the first question, and forgets earlier answers. */
  begin(): void {
    this.#round += 1;
    this.#ask(this.#round).catch((error: unknown) => {
      const said = error instanceof Stop ? error.message : reasonOf(error);
      this.board.show({ start: { ...nothing, said } });
    });
  }

  async #ask(round: number): Promise<void> {
    let said: string | null = null;
    const given: (readonly [string, string])[] = [];
    const ask: AskFor = async (question, usual) => {
      // what is asked again takes its answer back, and those after it
      const earlier = given.findIndex(([asked]) => asked === question);
      if (earlier >= 0) given.splice(earlier);
      const step = { ...nothing, question, usual, said, given: [...given] };
      said = null;
      const text = await this.#put(step, round);
      given.push([question, text.trim() === '' ? usual : text]);
      return text;
    };
    const answers = await askQuestions(ask, (message, remedy) => {
      said = `${message}; ${remedy}`;
    });
    const text = designText(answers);
    const proposal = await proposalLines(text);
    await this.#put({ ...nothing, given, proposal }, round);
    if (round !== this.#round) return;
    writeDesign(this.file, text, false);
    this.board.show({ start: null });
    this.written();
  }

  /** @returns whether a question was open */
  answer(text: string): boolean {
    const take = this.#take;
    this.#take = null;
    take?.(text);
    return take !== null;
  }
}
