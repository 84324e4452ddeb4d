/** The commands that the page starts: the command line itself in a process of its own, one at a time. */
import { type ChildProcess, spawn } from 'node:child_process';
import { basename, dirname, join } from 'node:path';
import process from 'node:process';
import type { Work } from './shown.js';

export type WorkKind = 'cut' | 'template' | 'stock' | 'verify';

/** Lines of a command that are kept: the end of them is what matters. */
const maxLines = 80;
/** How often the page is shown how far it is (ms). */
const tick = 500;
/** Between the first Ctrl-C, which keeps the best nest, and the second, which ends the command (ms). */
const patience = 250;

/** Where the page writes: folders beside the design file, named after it. The page cannot name another. */
const folderFor = (file: string, kind: string): string =>
  join(dirname(file), `${basename(file).replace(/\.ya?ml$/i, '')}-${kind}`);

function argumentsOf(file: string, kind: WorkKind, sizes: readonly string[]): string[] {
  switch (kind) {
    case 'cut':
    case 'template':
      return [kind, file, '-o', folderFor(file, kind)];
    case 'stock':
      return [kind, file, ...sizes.map((size) => `--try=${size}`)];
    case 'verify':
      return [kind, folderFor(file, 'cut')];
  }
}

const ends: Readonly<Record<number, string>> = {
  0: 'done',
  1: 'not done: see the faults above',
  2: 'not done: see above',
  3: 'nothing was written: see above',
  130: 'cancelled; nothing was written',
};

export class Works {
  #child: ChildProcess | null = null;

  /**
   * @param command the program that is started, with its own path
   * @param show given each change
   */
  constructor(
    readonly file: string,
    readonly command: string,
    readonly show: (work: Work) => void,
  ) {}

  get running(): boolean {
    return this.#child !== null;
  }

  start(kind: WorkKind, sizes: readonly string[]): void {
    const begun = Date.now();
    const lines: string[] = [];
    let progress = '';
    let pending = '';
    const child = spawn(process.execPath, [this.command, ...argumentsOf(this.file, kind, sizes)], {
      stdio: ['ignore', 'pipe', 'pipe', 'ipc'],
      env: { ...process.env, NO_COLOR: '1', DISHWRIGHT_PROGRESS: 'messages' },
    });
    this.#child = child;
    const show = (ended: string | null): void => {
      const shown = ended === null && progress !== '' ? [...lines, progress] : lines;
      const seconds = Math.round((Date.now() - begun) / 1000);
      this.show({ kind, running: ended === null, lines: shown.slice(-maxLines), ended, seconds });
    };
    const take = (piece: string): void => {
      const all = (pending + piece).split('\n');
      pending = all.pop() ?? '';
      lines.push(...all);
      lines.splice(0, lines.length - maxLines);
    };
    for (const stream of [child.stdout, child.stderr]) stream?.setEncoding('utf8').on('data', take);
    child.on('message', (message: unknown) => {
      const said = message as { readonly progress?: unknown };
      if (typeof said.progress === 'string') progress = said.progress;
    });
    const timer = setInterval(() => show(null), tick);
    const over = (ended: string): void => {
      if (this.#child !== child) return;
      clearInterval(timer);
      this.#child = null;
      if (pending !== '') lines.push(pending);
      show(ended);
    };
    child.once('error', (error) => over(`it could not be started: ${error.message}`));
    child.once('close', (code, signal) => over(signal ? 'cancelled' : (ends[code ?? 1] ?? `ended with code ${code}`)));
    show(null);
  }

  /** Ends what runs, with nothing written. */
  cancel(): void {
    const child = this.#child;
    child?.kill('SIGINT');
    const again = setInterval(() => {
      if (this.#child === null || this.#child !== child) clearInterval(again);
      else child.kill('SIGINT');
    }, patience);
    again.unref();
  }
}
