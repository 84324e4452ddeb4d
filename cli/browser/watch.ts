/** The live page's script: the design to edit, what it comes to, and the book. */
import type { FormGroup, Outline, State, Steps, Value, Variant } from '../watch/shown.js';
import { type Answer, ask, askDraft, sentence } from './live/ask.js';
import { choosePart, markFaulty, sectionOfParts, showBook, showPart } from './live/books.js';
import { button, element, make, notice } from './live/dom.js';
import { askWhich, goToField, sayAtField, type Send, showForm } from './live/form.js';
import { paint } from './live/picture.js';
import { makeSliders, showSliders, statedAt } from './live/sliders.js';
import { setUpStart, showStart } from './live/start.js';
import { showValues, speakValues } from './live/values.js';
import { setUpWorks, showWork } from './live/works.js';

interface Picture {
  readonly values: readonly Value[];
  readonly outline: Outline | null;
}

const nothing: Picture = { values: [], outline: null };
let state: State | null = null;
/** Of the text that the page knows: shown, or written by its own edits since. */
let revision = '';
let groups: readonly FormGroup[] = [];
/** What stood before the last change of the file. */
let before = nothing;
let beforeOf = '';
/** What a slider would make of it, while one moves. */
let draft: Picture | null = null;

function report(answer: Answer, path: Steps | null): void {
  if (answer.kind === 'refused') {
    const text = sentence(answer);
    if (path === null || !sayAtField(path, text)) notice(text);
  } else notice(answer.merged === true ? 'The file had been changed elsewhere; both changes are kept.' : '');
}

const sendNow: Send = async (path, value, seen) => {
  const now = { was: state && statedAt(state, path), revision };
  const answer = await ask('edit', { path, value, ...(seen ?? now) });
  if (answer.kind === 'done' && answer.merged !== true) revision = answer.revision ?? revision;
  endDraft();
  if (answer.kind !== 'conflict') report(answer, path);
  else if (!askWhich(path, value, { was: answer.theirs ?? null, revision: now.revision }, sendNow))
    notice('The file has been changed elsewhere in the meantime: look at it first, then do this again.');
};

/** One edit after the other: each is made on what the one before has written. */
let sent = Promise.resolve();
const send: Send = (path, value, seen) => (sent = sent.then(() => sendNow(path, value, seen)));

const simple = (name: string, body: () => object = () => ({})): void =>
  void ask(name, body()).then((answer) => report(answer, null));

const variantActions = (variant: Variant): readonly Node[] => {
  const take = button('Use', () => simple('take', () => ({ id: variant.id, revision: state?.revision ?? '' })));
  const drop = button('Delete', () => simple('drop', () => ({ id: variant.id })));
  for (const [one, word] of [
    [take, 'Use'],
    [drop, 'Delete'],
  ] as const)
    one.setAttribute('aria-label', `${word} ${variant.name}`);
  take.disabled = state?.readOnly ?? true;
  return [take, drop];
};

/** The table and the picture: a draft beside what stands, else what stands beside what stood before. */
function showPicture(): void {
  if (!state) return;
  const { values, outline, variants } = state;
  const now = draft ?? { values, outline };
  const then = draft ? { values, outline } : before;
  showValues({ now: now.values, before: then.values, variants }, variantActions);
  const picture = document.querySelector<SVGElement>('#picture');
  const other = JSON.stringify(then.outline) === JSON.stringify(now.outline) ? null : then.outline;
  if (picture) paint(picture, now.outline, other);
}

let drafts = 0;
let outlineOf = 0;
let valuesOf = 0;
let flight = false;
let next: { readonly path: Steps; readonly value: string } | null = null;

function endDraft(): void {
  drafts += 1;
  outlineOf = drafts;
  valuesOf = drafts;
  next = null;
  draft = null;
  showPicture();
}

/** Asks for a draft; the next one goes out as soon as the picture of this one is there. */
function fly(): void {
  if (flight || !next) return;
  const own = ++drafts;
  const asked = next;
  next = null;
  flight = true;
  const landed = (): void => {
    if (own !== drafts) return;
    flight = false;
    fly();
  };
  let values: readonly Value[] = [];
  askDraft([asked], (line) => {
    if (line.kind === 'problems') {
      if (own >= valuesOf) notice(line.problems.map(sentence).join(' '));
    } else if (line.kind === 'outline') {
      if (own < outlineOf) return;
      outlineOf = own;
      draft = { values: draft?.values ?? state?.values ?? [], outline: line.outline };
    } else {
      values = [...values, ...line.values];
      if (own < valuesOf) return;
      valuesOf = own;
      const rest = (draft?.values ?? []).filter(({ group }) => !values.some((value) => value.group === group));
      draft = { outline: draft?.outline ?? null, values: [...values, ...rest] };
      if (line.last) speakValues(draft.values);
    }
    showPicture();
    landed();
  })
    .catch(() => undefined)
    .finally(landed);
}

function showProblems({ problems }: State): void {
  const sections = problems.flatMap(({ place }) => sectionOfParts(place?.path ?? []) ?? []);
  markFaulty(new Set(sections));
  element('problems').replaceChildren(
    ...problems.map(({ severity, message, place, remedy }) => {
      const item = make('li');
      const line = place?.line;
      item.append(make('strong', {}, line === undefined ? severity : `line ${line}, ${severity}`), `: ${message}`);
      if (remedy !== undefined) item.append(make('br'), remedy);
      const path = place?.path;
      if (path !== undefined && path.length > 0)
        item.append(
          ' ',
          button('Go to the field', () => goToField(path) || notice('this key has no field: fix it in the file')),
        );
      const section = sectionOfParts(path ?? []);
      if (section !== null)
        item.append(
          ' ',
          button('Show the part', () => showPart(section) || notice('there is no book with this part yet')),
        );
      return item;
    }),
  );
}

function show(now: State): void {
  const known = state;
  if (known && known.revision !== now.revision && known.values.length > 0) {
    before = { values: known.values, outline: known.outline };
    beforeOf = now.revision;
  }
  state = now;
  ({ revision } = now);
  document.title = `${now.file}: dishwright watch`;
  element('file').textContent = now.file;
  element('status').textContent =
    now.start && now.revision === '' ? 'answer the questions, or save the file in an editor' : now.status;
  element('bar').classList.toggle('faulty', now.standing === 'faulty' && !now.start);
  (element('undo') as HTMLButtonElement).disabled = !now.undoable || now.readOnly;
  (element('redo') as HTMLButtonElement).disabled = !now.redoable || now.readOnly;
  element('read-only').hidden = !now.readOnly;
  element('unreadable').hidden = now.keys !== null;
  // a file that an editor has saved meanwhile is there, whatever was asked
  const starting = now.revision === '' && now.start !== null;
  showStart(starting ? now.start : null);
  element('problems').hidden = starting;
  showProblems(now);
  showForm(element('form'), groups, now, send);
  showSliders(now);
  showPicture();
  showWork(now.work, now.readOnly);
  showBook(now.book);
  if (now.standing === 'shown' && known?.standing !== 'shown' && beforeOf === now.revision) speakValues(now.values);
}

function keys(event: KeyboardEvent): void {
  const typing = event.target instanceof HTMLInputElement && event.target.type === 'text';
  if (typing || !(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'z') return;
  event.preventDefault();
  simple(event.shiftKey ? 'redo' : 'undo');
}

async function start(): Promise<void> {
  groups = (await (await fetch('form')).json()) as readonly FormGroup[];
  makeSliders({
    moved: (path, value) => {
      next = { path, value };
      fly();
    },
    send,
  });
  choosePart();
  setUpWorks(report);
  setUpStart(report);
  element('undo').addEventListener('click', () => simple('undo'));
  element('redo').addEventListener('click', () => simple('redo'));
  element('keep').addEventListener('click', () =>
    simple('keep', () => ({ name: `Variant ${(state?.variants.at(-1)?.id ?? 0) + 1}` })),
  );
  element('every-value').addEventListener('change', showPicture);
  document.addEventListener('keydown', keys);
  const events = new EventSource('events');
  events.addEventListener('message', (event: MessageEvent<string>) => show(JSON.parse(event.data) as State));
  events.addEventListener('error', () => {
    element('status').textContent = 'the command has ended; start it again to continue';
    element('bar').classList.add('faulty');
  });
}

void start();
