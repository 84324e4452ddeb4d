import { type FixtureName, fixtureText } from './fixtures.js';

/** A fixture's text with pieces of it changed; throws when there is nothing to change. */
export function changedBy(
  name: FixtureName,
  changes: readonly (readonly [from: string | RegExp, to: string])[],
): string {
  return changes.reduce((text, [from, to]) => {
    const result = text.replace(from, to);
    if (result === text) throw new Error(`nothing to change: ${from}`);
    return result;
  }, fixtureText(name));
}

/** The same for one piece. */
export function changed(name: FixtureName, from: string | RegExp, to: string): string {
  return changedBy(name, [[from, to]]);
}
