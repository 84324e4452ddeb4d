/** Buttons for what the command line does, how far it is, and what it says. */
import type { Work } from '../../watch/shown.js';
import { type Answer, ask } from './ask.js';
import { element } from './dom.js';

const kinds = ['cut', 'template', 'stock', 'verify'] as const;

export function setUpWorks(report: (answer: Answer, path: null) => void): void {
  for (const kind of kinds)
    element(`work-${kind}`).addEventListener('click', () => {
      const typed = (element('sizes') as HTMLInputElement).value;
      const sizes = typed
        .split(/[,;]/)
        .map((size) => size.trim())
        .filter((size) => size !== '');
      void ask('work', kind === 'stock' ? { kind, sizes } : { kind }).then((answer) => report(answer, null));
    });
  element('work-cancel').addEventListener('click', () => void ask('cancel').then((answer) => report(answer, null)));
}

export function showWork(work: Work | null, readOnly: boolean): void {
  const running = work?.running ?? false;
  for (const kind of kinds) {
    const writes = kind === 'cut' || kind === 'template';
    (element(`work-${kind}`) as HTMLButtonElement).disabled = running || (readOnly && writes);
  }
  (element('work-cancel') as HTMLButtonElement).disabled = !running;
  element('work-progress').hidden = !running;
  const status = element('work-status');
  const text = !work ? '' : running ? `${work.kind} is running` : `${work.kind}: ${work.ended ?? ''}`;
  if (status.textContent !== text) status.textContent = text;
  element('work-seconds').textContent = running && work ? `${work.seconds} s` : '';
  element('work-lines').textContent = work?.lines.join('\n') ?? '';
}
