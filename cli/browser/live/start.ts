/** The guided start: one question at a time, what was answered above it. */
import type { Start } from '../../watch/shown.js';
import { type Answer, ask } from './ask.js';
import { element, make } from './dom.js';

const field = (): HTMLInputElement => element('start-answer') as HTMLInputElement;

export function setUpStart(report: (answer: Answer, path: null) => void): void {
  const simple = (name: string, body: object): void => void ask(name, body).then((answer) => report(answer, null));
  element('start-form').addEventListener('submit', (event) => {
    event.preventDefault();
    simple('answer', { text: field().value });
  });
  element('start-write').addEventListener('click', () => simple('answer', { text: '' }));
  element('start-again').addEventListener('click', () => simple('again', {}));
}

let shown = '';

export function showStart(start: Start | null): void {
  element('start').hidden = start === null;
  document.querySelector('main')?.toggleAttribute('hidden', start !== null);
  const now = JSON.stringify(start);
  if (!start || now === shown) return;
  shown = now;
  const { question, usual, said, given, proposal } = start;
  element('start-given').replaceChildren(
    ...given.flatMap(([asked, answer]) => [make('dt', {}, asked), make('dd', {}, answer)]),
  );
  element('start-form').hidden = question === null;
  element('start-question').textContent = `${question ?? ''} [${usual}]`;
  element('start-said').textContent = said ?? '';
  element('start-proposal').replaceChildren(...proposal.map((line) => make('p', {}, line)));
  element('start-write').hidden = proposal.length === 0;
  field().toggleAttribute('aria-invalid', false);
  if (said === null) field().value = '';
  else field().setAttribute('aria-invalid', 'true');
  (question === null ? element('start-write') : field()).focus();
}
