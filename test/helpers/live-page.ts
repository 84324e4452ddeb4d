/** The live page without its threads: asked over the network, worked out in this one. */
import { request } from 'node:http';
import { Desk } from '../../cli/watch/desk.js';
import type { Guide } from '../../cli/watch/guide.js';
import { lookAt } from '../../cli/watch/look.js';
import type { Looks } from '../../cli/watch/looks.js';
import { Session } from '../../cli/watch/session.js';
import type { Board } from '../../cli/watch/state.js';
import type { Background } from '../../cli/watch/watch-design.js';
import { Works } from '../../cli/watch/works.js';

export interface Answer {
  readonly status: number;
  readonly text: string;
  readonly headers: Record<string, unknown>;
}

/** Asks for an address and takes the whole answer. */
export function ask(url: string, headers: Record<string, string>, method: string, body = ''): Promise<Answer> {
  return new Promise((resolve, reject) => {
    request(url, { headers, method }, (response) => {
      let text = '';
      response.setEncoding('utf8');
      response.on('data', (piece: string) => (text += piece));
      response.on('end', () => resolve({ status: response.statusCode ?? 0, text, headers: response.headers }));
    })
      .on('error', reject)
      .end(body);
  });
}

export const get = (url: string, headers: Record<string, string> = {}, method = 'GET'): Promise<Answer> =>
  ask(url, headers, method);

/** Says what a book would be of, at once. */
export const noNest: Background = (design, _, report) => {
  report({ problems: [], book: `<!DOCTYPE html>${design.dish.ribs} ribs`, last: false });
  return { laid: () => undefined, end: () => undefined };
};

/** In this thread, shape and key values alone. */
export const looksHere: Looks = (lane, design, extras, report) => {
  let asked = 0;
  // a draft is worked out to its end
  return lookAt(design, extras, report, () => Promise.resolve(lane === 'draft' || asked++ === 0));
};

/** What the page asks goes to this file. */
export const deskOf = (board: Board, file: string, readOnly = false, guide: Guide | null = null): Desk => {
  const works = new Works(file, '/nowhere/main.js', (work) => board.show({ work }));
  return new Desk(new Session(file, readOnly), board, looksHere, works, guide, () => undefined);
};
