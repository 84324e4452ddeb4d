import { type FixtureName, fixtureText } from './fixtures.js';

/** A fixture's text with one piece of it changed; throws when there is nothing to change. */
export function changed(name: FixtureName, from: string | RegExp, to: string): string {
  const text = fixtureText(name);
  const result = text.replace(from, to);
  if (result === text) throw new Error(`nothing to change: ${from}`);
  return result;
}
