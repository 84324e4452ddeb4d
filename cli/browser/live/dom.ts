/** Small things that every part of the live page needs. */

export function element(id: string): HTMLElement {
  const found = document.getElementById(id);
  if (!found) throw new Error(`the page lacks #${id}`);
  return found;
}

type Child = Node | string;

/** An element with attributes and children; an attribute that is undefined is left out. */
export function make<Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  attributes: Readonly<Record<string, string | undefined>> = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[Tag] {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) if (value !== undefined) made.setAttribute(name, value);
  made.append(...children);
  return made;
}

export function button(text: string, act: () => void): HTMLButtonElement {
  const made = make('button', { type: 'button' }, text);
  made.addEventListener('click', act);
  return made;
}

/** Says something to whoever listens to the page instead of looking at it. */
export function speak(text: string): void {
  element('said').textContent = text;
}

/** Shows the outcome of what was asked, where it is not simply done. */
export function notice(text: string): void {
  element('notice').textContent = text;
}
