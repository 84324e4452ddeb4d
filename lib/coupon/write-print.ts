/** The printer's correction put into the text of a design file: `print.measured` alone is written, all else stays. */
import { isMap, isNode, parseDocument } from 'yaml';
import { printedRange } from '../units/index.js';
import { lineStart, pairNamed } from './key-lines.js';
import { notInLines, type Written } from './written.js';

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
  // twice a little is more than the design takes
  if (measured < printedRange.min || measured > printedRange.max)
    return {
      kind: 'refused',
      message: `with the print.measured that is there, the printer would make ${value} of 100 mm`,
      remedy: 'take print.measured out, print again at 100 % ("actual size") and measure its line',
    };
  if (!isMap(contents) || contents.flow === true) return notInLines;
  const print: unknown = pairNamed(contents, 'print')?.value;
  if (print === undefined) {
    const gap = text.endsWith('\n') ? '' : '\n';
    return { kind: 'text', text: `${text}${gap}\nprint: { measured: ${value} }\n` };
  }
  if (!isMap(print) || !print.range)
    return { kind: 'refused', message: 'the section print has no keys', remedy: `write print: { measured: ${value} }` };
  const own: unknown = pairNamed(print, 'measured')?.value;
  if (isNode(own) && own.range) {
    const [from, to] = own.range;
    return { kind: 'text', text: text.slice(0, from) + value + text.slice(to) };
  }
  const at = print.range[0] + (print.flow === true ? 1 : 0);
  const rest = print.items.length > 0;
  const indent = text.slice(lineStart(text, at), at);
  // a key before the first one, in braces or on a line of its own
  const line = print.flow === true ? ` measured: ${value}${rest ? ',' : ' '}` : `measured: ${value}\n${indent}`;
  return { kind: 'text', text: text.slice(0, at) + line + text.slice(at) };
}
