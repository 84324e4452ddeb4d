/** Markup by tagged templates: whatever is put in is escaped, unless it is markup itself. */
import { escapeXml } from './xml.js';

export interface Markup {
  readonly text: string;
}

type Value = string | number | Markup | null | readonly Value[];

function textOf(value: Value): string {
  if (value === null) return '';
  if (typeof value === 'string') return escapeXml(value);
  if (typeof value === 'number') return String(value);
  if ('text' in value) return value.text;
  return value.map(textOf).join('');
}

/** `markup\`<p>${text}</p>\``: strings are escaped, lists are joined, null is nothing. Serves SVG as well. */
export function markup(strings: TemplateStringsArray, ...values: readonly Value[]): Markup {
  return { text: strings.map((part, i) => part + textOf(values[i] ?? null)).join('') };
}

/** Text that is markup already. */
export function raw(text: string): Markup {
  return { text };
}

/** Data for a script, as JSON that cannot end its element. */
export function json(value: unknown): Markup {
  return { text: JSON.stringify(value).replace(/</g, '\\u003c') };
}

/** A coordinate of a picture, to a tenth of a unit. */
export function px(value: number): string {
  const rounded = Math.round(value * 10) / 10;
  return String(Object.is(rounded, -0) ? 0 : rounded);
}
