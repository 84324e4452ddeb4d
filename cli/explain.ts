/** What `explain` prints of a key. */
import { defaultText, type KeyEntry, limitsText, valueText, wrapped } from '../lib/index.js';
import { shade } from './console.js';

function row(head: string, text: string, width: number): string[] {
  return wrapped(text, Math.max(20, width - 12)).map((line, i) => `  ${(i === 0 ? head : '').padEnd(10)}${line}`);
}

/** One key: its meaning, what may be written, default with reason, limits. */
export function keyLines(entry: KeyEntry, width: number): string[] {
  const limits = limitsText(entry);
  return [
    shade(entry.path, 'bold', process.stdout),
    ...wrapped(entry.about, width - 2).map((line) => `  ${line}`),
    ...(entry.quantity === 'group'
      ? []
      : [
          ...row('value', valueText(entry), width),
          ...row('default', defaultText(entry), width),
          ...(limits === null ? [] : row('limits', limits, width)),
        ]),
  ];
}
