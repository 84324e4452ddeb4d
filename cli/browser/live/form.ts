/** The form: a field for every key that the file has or could have, with its meaning, limits and faults beside it. */
import type { FormGroup, FormKey, ShownProblem, State, Stated, Steps } from '../../watch/shown.js';
import { sentence } from './ask.js';
import { button, make } from './dom.js';

/** What a person saw when an edit was begun: held against the file when it is written. */
export interface Seen {
  readonly was: string | null;
  readonly revision: string;
}

/** Sends an edit; settles when it was answered. `seen` is left out where what the page shows now is meant. */
export type Send = (path: Steps, value: string | null, seen?: Seen) => Promise<void>;

type Field = HTMLInputElement | HTMLSelectElement;

const pathId = (path: Steps): string => path.join('.');
const stepsOf = (path: string): string[] => path.replace(/\[\]/g, '').split('.');

interface Shown {
  readonly path: Steps;
  readonly field: Field;
  readonly fault: HTMLElement;
  /** What came of an edit: a refusal, or the question which value is to stand. It stays until it is answered. */
  readonly answer: HTMLElement;
  seen: Seen;
}

/** The fields that are on the page, by their path. */
const fields = new Map<string, Shown>();

function control(key: FormKey, id: string): Field {
  const described = `${id}-about ${id}-fault ${id}-answer`;
  if (key.choices.length === 0)
    return make('input', { id, type: 'text', autocomplete: 'off', spellcheck: 'false', 'aria-describedby': described });
  const blank = make('option', { value: '' }, 'default');
  const options = key.choices.map((choice) => make('option', { value: choice }, choice));
  return make('select', { id, 'aria-describedby': described }, blank, ...options);
}

/** One key with its label, its meaning and a place for its fault. */
function fieldOf(key: FormKey, path: Steps, send: Send, readOnly: boolean): HTMLElement {
  const id = `key-${pathId(path)}`;
  const field = control(key, id);
  if (readOnly) field.disabled = true;
  const fault = make('p', { class: 'fault', id: `${id}-fault` });
  const limits = key.limits === null ? '' : ` Limits: ${key.limits}.`;
  const about = make(
    'p',
    { class: 'about', id: `${id}-about` },
    key.about,
    make('br'),
    `${key.value}.${limits} Default: ${key.fallback}.`,
  );
  const answer = make('p', { class: 'fault', id: `${id}-answer` });
  const shown: Shown = { path, field, fault, answer, seen: { was: null, revision: '' } };
  fields.set(pathId(path), shown);
  field.addEventListener('change', () => {
    const typed = field.value.trim();
    answer.replaceChildren();
    if (typed === (shown.seen.was ?? '')) return;
    void send(path, typed === '' ? null : typed, shown.seen);
  });
  field.addEventListener('focus', () => {
    // the meaning stays until another field is gone to: what moved on blur would slip away from under a pointer
    document.querySelector('.field.current')?.classList.remove('current');
    field.closest('.field')?.classList.add('current');
  });
  const name = String(path.at(-1));
  return make(
    'div',
    { class: 'field', 'data-key': pathId(path) },
    make('label', { for: id }, name),
    field,
    fault,
    answer,
    about,
  );
}

/** The instances of a list or of named sections that the file has: `stock.0`, `materials.birch12`. */
function instances(section: string, keys: readonly Stated[]): (string | number)[] {
  return [...new Set(keys.filter(({ path }) => path[0] === section && path.length > 2).map(({ path }) => path[1]!))];
}

/** Replaces the place holder of a key's path by an instance. */
function pathIn(key: FormKey, instance: string | number | null): Steps {
  return stepsOf(key.path).flatMap((step, i): (string | number)[] => {
    if (step === '<name>') return [instance ?? ''];
    const opened = i === 0 && key.path.startsWith(`${step}[]`);
    return opened && instance !== null ? [step, instance] : [step];
  });
}

function nextItem(section: string, keys: readonly Stated[]): string {
  const material = keys.find(({ path }) => path[0] === 'materials')?.path[1] ?? 'ply';
  return section === 'stock'
    ? `{ material: ${material}, size: 2440 mm x 1220 mm }`
    : `{ file: part.svg, material: ${material}, quantity: 1 }`;
}

/** A button that adds one more of a section, and a field for its name where it has one. */
function adder(section: string, keys: readonly Stated[], send: Send): HTMLElement {
  if (section !== 'materials') {
    const count = instances(section, keys).length;
    const path: Steps = [section, count];
    const value = nextItem(section, keys);
    const act = (): void => void send(count === 0 ? [section] : path, count === 0 ? `[${value}]` : value);
    return make('p', {}, button(section === 'stock' ? 'Add a sheet' : 'Add an outline of your own', act));
  }
  const name = make('input', { id: 'new-material', type: 'text', autocomplete: 'off' });
  const act = (): void => {
    if (name.value.trim() !== '') void send(['materials', name.value.trim()], '{ kind: plywood, thickness: 12 mm }');
  };
  return make(
    'p',
    { class: 'adder' },
    make('label', { for: 'new-material' }, 'Name of a new material'),
    name,
    button('Add', act),
  );
}

const listed = new Set(['materials', 'stock', 'extra']);

/** The list of sections within a section in whose items a key stands, such as `router.tools`. */
const listOf = ({ path }: FormKey): string | null => /^(\w+(?:\.\w+)+)\[\]/.exec(path)?.[1] ?? null;

/** What stands in a new item: what has to, in values to start from. */
function firstValues(own: readonly FormKey[], place: number): string {
  const value = ({ kind, choices }: FormKey): string =>
    kind === 'integer' ? String(place + 1) : (choices[0] ?? (kind === 'length' ? '6 mm' : '?'));
  const stated = own.filter(({ required }) => required).map((key) => `${stepsOf(key.path).at(-1)}: ${value(key)}`);
  return `{ ${stated.join(', ')} }`;
}

/** The items of a list within a section, each with its fields. */
function rowsOf(list: string, own: readonly FormKey[], { keys, readOnly }: State, send: Send): HTMLElement {
  const at = stepsOf(list);
  const name = at.at(-1) ?? list;
  const inList = (keys ?? []).filter(({ path }) => at.every((step, i) => path[i] === step));
  const places = [...new Set(inList.map(({ path }) => path[at.length]))].filter((one) => typeof one === 'number');
  const rows = places.map((place) => {
    const title = `${name} ${place + 1}`;
    const fieldsOf = own.map((key) => fieldOf(key, [...at, place, stepsOf(key.path).at(-1) ?? ''], send, readOnly));
    const remove = button(`Remove ${title}`, () => void send([...at, place], null));
    remove.disabled = readOnly;
    return make('fieldset', {}, make('legend', {}, title), ...fieldsOf, remove);
  });
  const item = firstValues(own, places.length);
  const add = button(`Add to ${name}`, () => {
    if (places.length === 0) void send(at, `[${item}]`);
    else void send([...at, places.length], item);
  });
  add.disabled = readOnly;
  return make('fieldset', {}, make('legend', {}, name), ...rows, add);
}

function sectionOf(section: FormGroup['sections'][number], state: State, send: Send): HTMLElement {
  const keys = state.keys ?? [];
  const box = make(
    'fieldset',
    {},
    make('legend', {}, section.name === '' ? 'file' : section.name),
    make('p', {}, section.about),
  );
  if (!listed.has(section.name)) {
    const names = instances('materials', keys);
    for (const key of section.keys) {
      if (listOf(key) !== null) continue;
      if (!key.path.includes('<name>')) box.append(fieldOf(key, stepsOf(key.path), send, state.readOnly));
      else for (const name of names) box.append(fieldOf(key, pathIn(key, name), send, state.readOnly));
    }
    for (const list of new Set(section.keys.flatMap((key) => listOf(key) ?? []))) {
      const own = section.keys.filter((key) => listOf(key) === list);
      box.append(rowsOf(list, own, state, send));
    }
    return box;
  }
  for (const instance of instances(section.name, keys)) {
    const title = typeof instance === 'number' ? `${section.name} ${instance + 1}` : instance;
    const own = section.keys.map((key) => fieldOf(key, pathIn(key, instance), send, state.readOnly));
    const remove = button(`Remove ${title}`, () => void send([section.name, instance], null));
    remove.disabled = state.readOnly;
    box.append(make('fieldset', {}, make('legend', {}, title), ...own, remove));
  }
  if (!state.readOnly) box.append(adder(section.name, keys, send));
  return box;
}

/** Names what there are fields for: the form is made again when it changes. */
function shapeOf({ keys }: State): string {
  const items = (keys ?? []).flatMap(({ path }) => {
    const at = path.findLastIndex((step) => typeof step === 'number');
    return at < 0 ? [] : [pathId(path.slice(0, at + 1))];
  });
  return [...new Set(items), ...instances('materials', keys ?? [])].join('|');
}

let shape: string | null = null;

/** Puts the faults at their fields. */
function showFaults(problems: readonly ShownProblem[]): void {
  for (const { field, fault, answer } of fields.values()) {
    fault.textContent = '';
    if (!answer.hasChildNodes()) field.removeAttribute('aria-invalid');
  }
  for (const problem of problems) {
    const { place, severity } = problem;
    const found = place?.path && fields.get(pathId(place.path));
    if (!found) continue;
    found.fault.textContent = `${severity}: ${sentence(problem)}`;
    if (severity === 'error') found.field.setAttribute('aria-invalid', 'true');
  }
}

/** Whether a field holds what is being typed, or waits for an answer. */
const isOpen = ({ field, answer, seen }: Shown): boolean =>
  answer.hasChildNodes() || (document.activeElement === field && field.value !== (seen.was ?? ''));

/** Takes what is being typed into a form that is made anew. */
function carryOver(from: Shown, to: Shown | undefined): void {
  if (!to) return;
  to.field.value = from.field.value;
  to.seen = from.seen;
  to.answer.replaceChildren(...from.answer.childNodes);
}

/** Brings the form up to the state; what is being typed is left alone. */
export function showForm(box: HTMLElement, groups: readonly FormGroup[], state: State, send: Send): void {
  if (state.keys === null) return;
  const next = shapeOf(state);
  if (next !== shape) {
    const open = new Set([...box.querySelectorAll('details[open]')].map((one) => one.id));
    const focused = document.activeElement?.id;
    shape = next;
    const earlier = new Map([...fields].filter(([, one]) => isOpen(one)));
    fields.clear();
    box.replaceChildren(
      ...groups.map(({ title, sections }, i) => {
        const id = `group-${i}`;
        const inside = sections.map((section) => sectionOf(section, state, send));
        return make('details', { id, open: open.has(id) ? '' : undefined }, make('summary', {}, title), ...inside);
      }),
    );
    for (const [id, one] of earlier) carryOver(one, fields.get(id));
    if (focused) document.getElementById(focused)?.focus();
  }
  const stated = new Map(state.keys.map(({ path, shown }) => [pathId(path), shown]));
  for (const [id, one] of fields) {
    const shown = stated.get(id) ?? null;
    // what is being typed answers to what was seen when it was begun, or a save made meanwhile would be lost
    if (!isOpen(one) || one.field.value.trim() === (shown ?? '')) {
      one.answer.replaceChildren();
      one.seen = { was: shown, revision: state.revision };
      one.field.value = shown ?? '';
    }
    one.field.closest('.field')?.classList.toggle('stated', shown !== null);
  }
  showFaults(state.problems);
}

/** Opens the group of a field and goes to it. @returns whether there is one */
export function goToField(path: Steps): boolean {
  const found = fields.get(pathId(path));
  const group = found?.field.closest('details');
  if (!found || !group) return false;
  group.open = true;
  found.field.focus();
  return true;
}

/**
 * Shows at its field that a key was changed elsewhere, and asks which is to stand.
 * @returns whether there is such a field
 */
export function askWhich(path: Steps, mine: string | null, theirs: Seen, send: Send): boolean {
  const id = pathId(path);
  const found = fields.get(id);
  if (!found) return false;
  found.field.value = mine ?? '';
  const { was } = theirs;
  const say = was === null ? 'was removed from the file' : `was changed to ${was} in the file`;
  const settle = (value: string): void => {
    const now = fields.get(id);
    now?.answer.replaceChildren();
    if (!now) return;
    now.field.value = value;
    now.seen = theirs;
    now.field.focus();
  };
  const keep = button('Keep that', () => settle(was ?? ''));
  const write = button(mine === null ? 'Remove it' : `Write ${mine}`, () => {
    settle(mine ?? '');
    void send(path, mine, theirs);
  });
  found.answer.replaceChildren(`Meanwhile this ${say}. `, keep, ' ', write);
  goToField(path);
  return true;
}

/** Puts an answer at its field. @returns whether there is one */
export function sayAtField(path: Steps, text: string): boolean {
  const found = fields.get(pathId(path));
  if (!found) return false;
  found.answer.textContent = text;
  found.field.setAttribute('aria-invalid', 'true');
  return true;
}
