/** The book in its frame, each new one in the old one's place, and the way to one part of it. */
import { element, make } from './dom.js';

let shown: HTMLIFrameElement | null = null;
let coming: HTMLIFrameElement | null = null;
let latest = 0;

const part = (): HTMLSelectElement => element('part') as HTMLSelectElement;

const inBook = (): Document | null => shown?.contentDocument ?? null;

/** Lights the chosen part in the book, and no other. */
function light(): void {
  const wanted = part().value;
  for (const one of inBook()?.querySelectorAll<HTMLButtonElement>('button[data-light]') ?? []) {
    const lit = one.getAttribute('aria-pressed') === 'true';
    if (lit !== (one.dataset['light'] === wanted)) one.click();
  }
}

/** Sections of the design file that describe parts; the ids of their parts begin with the section's name. */
const partSections: ReadonlySet<string> = new Set(['rib', 'hub', 'board', 'cleat', 'panel', 'reflector', 'stand']);
const isOf = (section: string, id: string): boolean => id === section || id.startsWith(`${section}-`);

/** Sections that have a fault. */
let faulty: ReadonlySet<string> = new Set();

/** The section of a key, where it describes parts. */
export function sectionOfParts(path: readonly (string | number)[]): string | null {
  const section = String(path[0] ?? '');
  return partSections.has(section) ? section : null;
}

/** Says at the parts of some sections that something is wrong with them. */
export function markFaulty(sections: ReadonlySet<string>): void {
  // a choice that is being made stays open
  if ([...sections].sort().join() === [...faulty].sort().join()) return;
  faulty = sections;
  offerParts();
}

/** Lights the first part of a section in the picture of the dish. @returns whether the book has one */
export function showPart(section: string): boolean {
  const found = [...part().options].find(({ value }) => isOf(section, value));
  if (found === undefined) return false;
  part().value = found.value;
  light();
  element('part-place').click();
  return true;
}

/** Offers the parts of the book that is shown, those with a fault marked. */
function offerParts(): void {
  const chosen = part().value;
  const buttons = [...(inBook()?.querySelectorAll<HTMLButtonElement>('button[data-light]') ?? [])];
  const options = buttons.map((one) => {
    const id = one.dataset['light'] ?? '';
    const wrong = [...faulty].some((section) => isOf(section, id));
    return make('option', { value: id }, wrong ? `${one.textContent}: has a fault` : one.textContent);
  });
  part().replaceChildren(make('option', { value: '' }, 'none'), ...options);
  part().value = options.some(({ value }) => value === chosen) ? chosen : '';
  if (part().value !== '') light();
}

const places: Readonly<Record<string, (id: string) => string>> = {
  'part-place': () => '#dish',
  'part-drawing': (id) => `[data-drawing="${CSS.escape(id)}"]`,
  'part-sheet': (id) => `[data-chapter="sheets"] [data-part="${CSS.escape(id)}"]`,
};

export function choosePart(): void {
  part().addEventListener('change', light);
  for (const [id, selector] of Object.entries(places))
    element(id).addEventListener('click', () => {
      const found = inBook()?.querySelector(selector(part().value));
      const place = found?.closest('figure') ?? found;
      place?.scrollIntoView({ block: 'start' });
      element('frames').scrollIntoView({ block: 'start' });
      element('notice').textContent = place ? '' : 'the book does not have this yet; it comes with the nest';
    });
}

/** Loads a book out of sight and shows it when it is there, where the reader was in the last one. */
export function showBook(book: number): void {
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
    element('frames').dataset['book'] = String(book);
    offerParts();
  });
  next.src = `book?${book}`;
  element('frames').append(next);
}
