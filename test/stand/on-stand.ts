/** Designs on a stand, prepared once for all tests of a file. */
import { prepare } from '../../lib/pipeline.js';
import type { Prepared } from '../../lib/pipeline/types.js';
import type { Stand } from '../../lib/stand/index.js';
import { designOf, type FixtureName, fixtureText } from '../helpers/fixtures.js';

/** A fixture with sections added, or those of its own replaced line by line. */
export const textOn = (name: FixtureName, lines: readonly string[] = ['stand: {}']): string => {
  const keys = lines.map((line) => line.slice(0, line.indexOf(':') + 1));
  const kept = fixtureText(name)
    .split('\n')
    .filter((line) => !keys.some((key) => line.startsWith(key)));
  return [...kept, ...lines].join('\n');
};

export const preparedOn = (name: FixtureName, ...lines: string[]): Prepared =>
  prepare(designOf(textOn(name, lines.length > 0 ? lines : undefined)));

export function standOn(prepared: Prepared): Stand {
  if (prepared.stand === null) throw new Error(prepared.problems.map(({ message }) => message).join('\n'));
  return prepared.stand;
}
