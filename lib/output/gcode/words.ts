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
 * Text as a comment: plain ASCII, no brackets, shortened to a line. The standard lets no comment hold another one.
 * Letters with marks lose them; what has no ASCII form becomes a question mark.
 */
export function comment(text: string, width = longestLine - 2): string {
  const plain = text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/[‘’]/g, "'")
    .replace(/[“”]/g, '"')
    .replace(/[–—]/g, '-')
    .replace(/[([{]/g, '<')
    .replace(/[)\]}]/g, '>')
    .replace(/[^\x20-\x7e]/g, '?')
    // a comment that begins with MSG, is shown to the operator by controllers; none of ours is meant as that
    .replace(/^(\s*)MSG,/i, '$1MSG ');
  return `(${plain.slice(0, Math.min(width, longestLine - 2))})`;
}

/** Sentences broken into comments of a readable length. */
export function comments(text: string, width: number): string[] {
  return wrapped(text, width).map((line) => comment(line, width));
}
