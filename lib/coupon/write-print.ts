/** The printer's correction put into the text of a design file: `print.measured` alone is written, all else stays. */
import { isMap, isNode, isScalar, type Pair, parseDocument } from 'yaml';
import type { Written } from './write-values.js';

const named = (pair: Pair, key: string): boolean => isScalar(pair.key) && pair.key.value === key;

/**
 * What the printer makes of 100 mm, by a print that was drawn for an earlier measurement.
 * @param line what its check line measures, mm
 * @param drawnFor the `print.measured` by which it was drawn
 */
export function printerScale(line: number, drawnFor: number): number {
  return Number(((line * drawnFor) / 100).toFixed(3));
}

/**
 * The text with the measurement in it.
 * @param text of a design file
 * @param measured what the printer makes of 100 mm
 */
export function withPrint(text: string, measured: number): Written {
  const { contents } = parseDocument(text, { merge: false });
  const value = `${measured} mm`;
  if (!isMap(contents) || contents.flow === true)
    return { kind: 'refused', message: 'the file is not written in lines of keys', remedy: 'write one key a line' };
  const pairs = contents.items as readonly Pair[];
  const print: unknown = pairs.find((pair) => named(pair, 'print'))?.value;
  if (print === undefined) {
    const gap = text.endsWith('\n') ? '' : '\n';
    return { kind: 'text', text: `${text}${gap}\nprint: { measured: ${value} }\n` };
  }
  if (!isMap(print) || !print.range)
    return { kind: 'refused', message: 'the section print has no keys', remedy: `write print: { measured: ${value} }` };
  const own: unknown = (print.items as readonly Pair[]).find((pair) => named(pair, 'measured'))?.value;
  if (isNode(own) && own.range) {
    const [from, to] = own.range;
    return { kind: 'text', text: text.slice(0, from) + value + text.slice(to) };
  }
  const at = print.range[0] + (print.flow === true ? 1 : 0);
  const rest = print.items.length > 0;
  // a key before the first one, in braces or on a line of its own
  const line =
    print.flow === true ? ` measured: ${value}${rest ? ',' : ' '}` : `measured: ${value}\n${indentAt(text, at)}`;
  return { kind: 'text', text: text.slice(0, at) + line + text.slice(at) };
}

function indentAt(text: string, offset: number): string {
  return text.slice(text.lastIndexOf('\n', offset - 1) + 1, offset);
}
