/** Text of a file in messages: what would steer a terminal or turn the line round is shown, not obeyed. */

// controls (line break and tab too: a message is one line), marks that turn the direction of writing, separators of
// lines and paragraphs, the byte order mark, and halves of characters
const hidden = /[\p{Cc}\p{Cs}\u061c\u200e\u200f\u2028\u2029\u202a-\u202e\u2066-\u2069\ufeff]/gu;

/** Whether a text holds characters that are not seen as written. */
export function hasHidden(text: string): boolean {
  return text.search(hidden) >= 0;
}

/** The text with hidden characters written out, such as `\\u202e`. */
export function visible(text: string): string {
  return text.replace(hidden, (found) => `\\u${(found.codePointAt(0) ?? 0).toString(16).padStart(4, '0')}`);
}
