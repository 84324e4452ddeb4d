/** The terminal: results on stdout, everything else on stderr; colour only where a person looks. */
import process from 'node:process';
import { visible, wrapped } from '../lib/index.js';

type Stream = NodeJS.WriteStream;

function coloured(stream: Stream): boolean {
  const { NO_COLOR, TERM } = process.env;
  return stream.isTTY && (NO_COLOR === undefined || NO_COLOR === '') && TERM !== 'dumb';
}

type Shade = 'red' | 'yellow' | 'green' | 'dim' | 'bold';
const codes: Readonly<Record<Shade, readonly [number, number]>> = {
  red: [31, 39],
  yellow: [33, 39],
  green: [32, 39],
  dim: [2, 22],
  bold: [1, 22],
};

/** Text in a shade where the stream shows colours, plain elsewhere. */
export function shade(text: string, name: Shade, stream: Stream = process.stderr): string {
  if (!coloured(stream)) return text;
  const [on, off] = codes[name];
  return `\u001b[${on}m${text}\u001b[${off}m`;
}

// text from a design file must not steer the terminal; our own shades may
const ownShade = /(\u001b\[\d+m)/;

function tame(text: string): string {
  return text
    .split('\n')
    .map((line) =>
      line
        .split(ownShade)
        .map((part, i) => (i % 2 === 1 ? part : visible(part)))
        .join(''),
    )
    .join('\n');
}

const lengthOf = (line: string): number => line.replace(new RegExp(ownShade, 'g'), '').length;

/** Lines that a terminal would break within a word are broken between words, deeper by two; a program gets them whole. */
function fitted(text: string, stream: Stream): string {
  const width = columns(stream);
  return text
    .split('\n')
    .flatMap((line) => {
      if (lengthOf(line) <= width) return [line];
      const indent = /^ */.exec(line)?.[0] ?? '';
      const rest = width - indent.length - 2;
      return wrapped(line, rest, lengthOf).map((piece, i) => `${indent}${i === 0 ? '' : '  '}${piece}`);
    })
    .join('\n');
}

/** Prints a line of the result. */
export function print(line: string): void {
  process.stdout.write(`${fitted(tame(line), process.stdout)}\n`);
}

/** Says something about the work. */
export function say(line: string): void {
  process.stderr.write(`${fitted(tame(line), process.stderr)}\n`);
}

/** Says a paragraph in lines that are read easily, however its own lines are broken. */
export function sayParagraph(text: string): void {
  say(wrapped(text, Math.min(120, columns(process.stderr))).join('\n'));
}

/** Prints a result for machines. */
export function printJson(value: unknown): void {
  process.stdout.write(`${JSON.stringify(value, null, 2)}\n`);
}

/** Columns of the terminal; no limit where a program reads, which takes each line as it is. */
export function columns(stream: Stream = process.stdout): number {
  // a terminal that does not know its width says 0
  return stream.isTTY ? Math.max(40, stream.columns || 80) : Infinity;
}

/** Whether the command was started by the live page, which shows how far it is. */
const reportsToPage = (): boolean => process.env['DISHWRIGHT_PROGRESS'] === 'messages' && process.send !== undefined;

/** A live line on a terminal or the live page, nothing in a pipe. */
export class ProgressLine {
  readonly #started = Date.now();
  #shown = false;

  update(text: string): void {
    if (reportsToPage()) process.send?.({ progress: text });
    // work that is over within a second needs no progress line
    if (!process.stderr.isTTY || Date.now() - this.#started < 1000) return;
    process.stderr.write(`\r\u001b[K${tame(text).slice(0, columns(process.stderr) - 1)}`);
    this.#shown = true;
  }

  end(): void {
    if (this.#shown) process.stderr.write('\r\u001b[K');
    this.#shown = false;
  }
}
