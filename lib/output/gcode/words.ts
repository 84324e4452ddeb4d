/** Words and lines of RS-274/NGC as in NISTIR 6556 (Kramer, Proctor and Messina, 2000), from memory of its tables. */
import { wrapped } from '../../units/index.js';
import { decimal } from '../decimal.js';

/** Longest line that the standard lets a controller expect, characters. */
const longestLine = 256;

/** One word: a letter and a number. */
export function word(letter: string, value: number, digits: number): string {
  return `${letter}${decimal(value, digits)}`;
}

/**
 * Text in plain ASCII without brackets, as the standard lets no comment hold another one. Letters with marks lose them;
 * what has no ASCII form becomes a question mark.
 */
export function plainAscii(text: string): string {
  return (
    text
      .normalize('NFKD')
      .replace(/\p{M}/gu, '')
      .replace(/[‘’]/g, "'")
      .replace(/[“”]/g, '"')
      .replace(/[–—]/g, '-')
      .replace(/[([{]/g, '<')
      .replace(/[)\]}]/g, '>')
      .replace(/[^\x20-\x7e]/g, '?')
      // a comment that begins with MSG, is shown to the operator by controllers; none of ours is meant as that
      .replace(/^(\s*)MSG,/i, '$1MSG ')
  );
}

/** Text as a comment, shortened to a line. */
export function comment(text: string, width = longestLine - 2): string {
  return `(${plainAscii(text).slice(0, Math.min(width, longestLine - 2))})`;
}

/** Sentences broken into comments of a readable length; a word that is longer than a comment is broken too. */
export function comments(text: string, width: number): string[] {
  const broken = plainAscii(text).replace(new RegExp(`\\S{${width}}(?=\\S)`, 'g'), '$& ');
  return wrapped(broken, width).map((line) => comment(line, width));
}
