/** The live page's script: shows how the design file stands, and puts each new book in the old one's place. */
import type { State } from '../watch/state.js';

const element = (id: string): HTMLElement => {
  const found = document.getElementById(id);
  if (!found) throw new Error(`the page lacks #${id}`);
  return found;
};
const [bar, file, status, problems, frames] = ['bar', 'file', 'status', 'problems', 'frames'].map(element) as [
  HTMLElement,
  HTMLElement,
  HTMLElement,
  HTMLElement,
  HTMLElement,
];

let shown: HTMLIFrameElement | null = null;
let coming: HTMLIFrameElement | null = null;
let latest = 0;

/** Loads a book out of sight and shows it when it is there, where the reader was in the last one. */
function load(book: number): void {
  if (book === 0 || book === latest) return;
  latest = book;
  coming?.remove();
  const next = document.createElement('iframe');
  coming = next;
  next.title = 'Build book';
  next.className = 'coming';
  // the book takes up its view from here: see spatial.ts
  const held = shown?.dataset['standing'];
  if (held !== undefined) next.dataset['standing'] = held;
  next.addEventListener('load', () => {
    if (next !== coming) return;
    const from = shown?.contentWindow;
    next.contentWindow?.scrollTo({ left: from?.scrollX ?? 0, top: from?.scrollY ?? 0, behavior: 'instant' });
    next.className = '';
    document.getElementById('empty')?.remove();
    shown?.remove();
    shown = next;
    coming = null;
    frames.dataset['book'] = String(book);
  });
  next.src = `book?${book}`;
  frames.append(next);
}

function show(state: State): void {
  document.title = `${state.file}: dishwright watch`;
  file.textContent = state.file;
  status.textContent = state.status;
  bar.classList.toggle('faulty', state.standing === 'faulty');
  problems.replaceChildren(
    ...state.problems.map(({ severity, message, place, remedy }) => {
      const item = document.createElement('li');
      const line = place?.line;
      const kind = document.createElement('strong');
      kind.textContent = line === undefined ? severity : `line ${line}, ${severity}`;
      item.append(kind, `: ${message}`);
      if (remedy !== undefined) item.append(document.createElement('br'), remedy);
      return item;
    }),
  );
  load(state.book);
}

const events = new EventSource('events');
events.addEventListener('message', (event: MessageEvent<string>) => show(JSON.parse(event.data) as State));
events.addEventListener('error', () => {
  status.textContent = 'the command has ended; start it again to go on';
  bar.classList.add('faulty');
});
