/**
 * Calibrated values put into the text of a machine or design file. Only the lines of `calibration` are written anew, and
 * of these only the values: comments, order and everything else stay as they are, to the letter.
 */
import { isMap, isScalar, parseDocument, type YAMLMap } from 'yaml';
import { notInLines, type Written } from '../key-file/index.js';
import { linesOf, pairNamed } from '../key-file/lines.js';
import type { Answer } from './answer.js';

/** Keys of a material that are lengths: they are written with their unit, as the file may be in inches. */
const lengths = new Set([
  'thickness',
  'width',
  'widthUncertainty',
  'toolDiameter',
  'bore',
  'boreUncertainty',
  'drilled',
  'fit',
  'fitUncertainty',
  'depth',
  'depthUncertainty',
]);

function withUnits(values: Answer['values']): Record<string, number | string> {
  return Object.fromEntries(
    Object.entries(values).map(([key, value]) => [key, lengths.has(key) ? `${value} mm` : value]),
  );
}

/** The block of calibrated values, with the new ones in it. */
function blockText(old: string | null, { material, axes, values }: Answer): string {
  const document = parseDocument(old ?? 'axes: {}\nmaterials: {}\n', { merge: false });
  const put = (path: readonly string[], entries: Readonly<Record<string, number | string>>): void => {
    const there = document.getIn(path, true);
    const stale = isMap(there) ? there.items.flatMap(({ key }) => (isScalar(key) ? [String(key.value)] : [])) : [];
    for (const key of stale) if (!(key in entries)) document.deleteIn([...path, key]);
    for (const [key, value] of Object.entries(entries)) document.setIn([...path, key], value);
  };
  put(['axes'], { ...axes });
  put(['materials', material], withUnits(values));
  for (const path of [['axes'], ['materials'], ['materials', material]]) {
    const map = document.getIn(path, true);
    if (isMap(map) && old === null) map.flow = false;
  }
  return document.toString({ lineWidth: 0 });
}

const indented = (text: string, by: number): string =>
  text
    .split('\n')
    .map((line) => (line === '' ? line : ' '.repeat(by) + line))
    .join('\n');

/** Puts the block under a mapping in block form, in place of the one that stands there. */
function intoMap(text: string, map: YAMLMap, indent: number, answer: Answer): Written {
  const pair = pairNamed(map, 'calibration');
  if (pair === undefined) {
    const last = map.items.at(-1);
    const at = last === undefined ? text.length : linesOf(text, last).to;
    const gap = at > 0 && text[at - 1] !== '\n' ? '\n' : '';
    const block = `${' '.repeat(indent)}calibration:\n${indented(blockText(null, answer), indent + 2)}`;
    return { kind: 'text', text: text.slice(0, at) + gap + block + text.slice(at) };
  }
  const { from, to } = linesOf(text, pair);
  const value: unknown = pair.value;
  const flow = isMap(value) && value.flow === true;
  const own = text.slice(from, to).split('\n');
  const body = own.slice(1).filter((line, i, all) => i < all.length - 1 || line !== '');
  const inner = Math.min(
    ...body.filter((line) => line.trim() !== '').map((line) => line.length - line.trimStart().length),
  );
  const old = flow || body.length === 0 ? null : `${body.map((line) => line.slice(inner)).join('\n')}\n`;
  if (flow && value.items.length > 0)
    return {
      kind: 'refused',
      message: 'calibration is written on one line in braces',
      remedy: 'write it on lines of its own, or remove it: it will be written again',
    };
  const head = flow || body.length === 0 ? `${' '.repeat(indent)}calibration:` : (own[0] ?? '');
  const block = `${head}\n${indented(blockText(old, answer), old === null ? indent + 2 : inner)}`;
  return { kind: 'text', text: text.slice(0, from) + block + text.slice(to) };
}

/**
 * The text with the values in it.
 * @param text a machine's own file, or a design with the section `machine`
 * @param own whether it is a machine's own file
 */
export function withValues(text: string, own: boolean, answer: Answer): Written {
  const document = parseDocument(text, { merge: false });
  const top = document.contents;
  if (!isMap(top) || top.flow === true) return notInLines;
  if (own) return intoMap(text, top, 0, answer);
  const pair = pairNamed(top, 'machine');
  const machine: unknown = pair?.value;
  if (pair === undefined) {
    const gap = text === '' || text.endsWith('\n') ? '' : '\n';
    return { kind: 'text', text: `${text}${gap}\nmachine:\n  calibration:\n${indented(blockText(null, answer), 4)}` };
  }
  if (!isMap(machine) || machine.flow === true)
    return {
      kind: 'refused',
      message: 'the section machine is written on one line in braces',
      remedy: 'write its keys on lines of their own, or move them to a file of their own (machine: my-machine.yaml)',
    };
  const [first] = machine.items;
  const indent = first === undefined ? 2 : linesOf(text, first).indent;
  return intoMap(text, machine, indent, answer);
}
