import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { type KeySteps, type NewValue, statedKeys, withKey } from '../../lib/key-file/index.js';
import { fixtureText } from '../helpers/fixtures.js';
import { holds } from '../helpers/seeds.js';

function changed(text: string, path: KeySteps, value: NewValue | null): string {
  const made = withKey(text, path, value);
  if (made.kind === 'refused') throw new Error(made.message);
  return made.text;
}

describe('one key of a file', () => {
  it.each<[name: string, before: string, path: KeySteps, value: NewValue | null, after: string]>([
    ['on a line, its comment kept', 'a: 1 # one\nb: 2\n', ['a'], { source: '3' }, 'a: 3 # one\nb: 2\n'],
    ['in braces', 's: { a: 1, b: 2 } # s\n', ['s', 'a'], { source: '3' }, 's: { a: 3, b: 2 } # s\n'],
    ['added in braces', 's: { a: 1 }\n', ['s', 'b'], { source: '[1, 2]' }, 's: { a: 1, b: [1, 2] }\n'],
    ['added in empty braces', 's: {}\n', ['s', 'b'], { source: '2' }, 's: { b: 2 }\n'],
    ['added to lines', 's:\n    a: 1\n\n# end\n', ['s', 'b'], { source: '2' }, 's:\n    a: 1\n    b: 2\n\n# end\n'],
    ['added with its section', 'a: 1\n', ['s', 't', 'b'], { source: '2' }, 'a: 1\ns: { t: { b: 2 } }\n'],
    ['added to a file without a last line end', 'a: 1', ['b'], { source: '2' }, 'a: 1\nb: 2\n'],
    ['added to an empty file', '# mine\n', ['s', 'b'], { source: '2' }, '# mine\ns: { b: 2 }\n'],
    ['added in lines of Windows', 'a: 1\r\nb: 2\r\n', ['c'], { source: '3' }, 'a: 1\r\nb: 2\r\nc: 3\r\n'],
    ['filled in where nothing stands', 'a: # none\nb: 1\n', ['a'], { source: '2' }, 'a: 2 # none\nb: 1\n'],
    ['filled in below an empty section', 's:\nb: 1\n', ['s', 'a'], { source: '2' }, 's: { a: 2 }\nb: 1\n'],
    ['of a list of sections', 'l:\n  - a: 1\n    b: 2\n', ['l', 0, 'b'], { source: '3' }, 'l:\n  - a: 1\n    b: 3\n'],
    ['one more in a list', 'l:\n  - { a: 1 }\n', ['l', 1], { source: '{ a: 2 }' }, 'l:\n  - { a: 1 }\n  - { a: 2 }\n'],
    ['taken out of a list', 'l:\n  - { a: 1 }\n  - { a: 2 }\n', ['l', 0], null, 'l:\n  - { a: 2 }\n'],
    ['taken from behind a dash', 'l:\n  - a: 1\n    b: 2\n', ['l', 0, 'a'], null, 'l:\n  - b: 2\n'],
    ['taken out, its comment kept', 'a: 1 # one\nb: 2\n', ['a'], null, '# one\nb: 2\n'],
    ['taken out of braces, first', 's: { a: 1, b: 2 }\n', ['s', 'a'], null, 's: { b: 2 }\n'],
    ['taken out of braces, last', 's: { a: 1, b: 2 }\n', ['s', 'b'], null, 's: { a: 1 }\n'],
    ['the only one of its section', 's: { a: 1 }\nb: 2\n', ['s', 'a'], null, 'b: 2\n'],
    ['a text that needs quotes', 'a: 1\n', ['a'], { text: 'pot: 5 l # big' }, 'a: "pot: 5 l # big"\n'],
    ['a text that looks like a number', 'a: x\n', ['a'], { text: '012' }, 'a: "012"\n'],
    ['a text with a comma in braces', 's: { a: x }\n', ['s', 'a'], { text: 'y, z' }, 's: { a: "y, z" }\n'],
    ['a length with inch marks', 's: { a: 1 }\n', ['s', 'a'], { source: '1-1/2"' }, 's: { a: 1-1/2" }\n'],
  ])('is changed: %s', (_, before, path, value, after) => {
    expect(changed(before, path, value)).toBe(after);
  });

  it.each<[name: string, text: string, path: KeySteps, value: NewValue | null]>([
    ['a section on lines by a number', 's:\n  a: 1\n', ['s'], { source: '5' }],
    ['a text in lines', 'a: |\n  much\n  text\n', ['a'], { source: '5' }],
    ['a value that is a comment', 'a: 1\n', ['a'], { source: '5 # x' }],
    ['a value of two lines', 'a: 1\n', ['a'], { source: '5\nb: 2' }],
    ['a value that brings a key along', 's: { a: 1 }\n', ['s', 'a'], { source: '5, c: 2' }],
    ['a bracket left open', 'a: 1\n', ['a'], { source: '[1, 2' }],
    ['a key below a number', 'a: 1\n', ['a', 'b'], { source: '2' }],
    ['a file that cannot be read', 'a: [1\n', ['b'], { source: '2' }],
    ['a file with lost letters', 'a: \ufffd\n', ['a'], { source: '2' }],
    ['a key that is not there', 'a: 1\n', ['b'], null],
  ])('is refused: %s', (_, text, path, value) => {
    expect(withKey(text, path, value).kind).toBe('refused');
  });

  it('is set and set back in each fixture, and leaves the file byte for byte', () => {
    for (const name of ['press-house', 'hand-cut-inch', 'classroom'] as const) {
      const text = fixtureText(name);
      for (const { path, shown } of statedKeys(text) ?? []) {
        const plain = /^(?:-?[\d.]+|true|false|\[.*\])$/s.test(shown);
        const own: NewValue = plain ? { source: shown } : { text: shown };
        const other = changed(text, path, { source: '12345' });
        expect(other.split('\n').length).toBe(text.split('\n').length);
        const back = changed(other, path, own);
        // only quotes that a text does without may be gone
        expect(parse(back)).toEqual(parse(text));
        if (!/["']/.test(text)) expect(back).toBe(text);
      }
    }
  });

  it('is what is read again after it was written, whatever it is', () => {
    const keys = fc.constantFrom<KeySteps>(
      ['dish', 'ribs'],
      ['vessel', 'diameter'],
      ['stock', 1, 'price'],
      ['name'],
      ['tabs', 'a'],
    );
    holds(
      fc.property(keys, fc.string({ maxLength: 20 }), (path, value) => {
        const made = withKey(fixtureText('press-house'), path, { text: value });
        if (made.kind === 'refused') return /[\r\n]/.test(value) || made.message.length > 0;
        const read = statedKeys(made.text)?.find((one) => one.path.join() === path.join());
        return read?.shown === value;
      }),
    );
  });
});
