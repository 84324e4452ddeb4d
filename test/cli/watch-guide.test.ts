import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { usualAnswers } from '../../cli/new/answers.js';
import { designText } from '../../cli/new/design-text.js';
import { askQuestions } from '../../cli/new/questions.js';
import { Guide } from '../../cli/watch/guide.js';
import { Board } from '../../cli/watch/state.js';
import { patience } from '../helpers/patience.js';

let folder = '';
let file = '';
let board: Board;
let guide: Guide;
let written = 0;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'dishwright-guide-'));
  file = join(folder, 'dish.yaml');
  board = new Board(file);
  written = 0;
  guide = new Guide(file, board, () => (written += 1));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** Answers each question with Enter up to the proposal; gives the questions. */
async function enterAll(): Promise<string[]> {
  const asked: string[] = [];
  guide.begin();
  for (;;) {
    await expect.poll(() => board.state.start?.question !== asked.at(-1), { ...patience, interval: 5 }).toBe(true);
    const { question = null } = board.state.start ?? {};
    if (question === null) return asked;
    asked.push(question);
    expect(guide.answer('')).toBe(true);
    await Promise.resolve();
  }
}

it('the page asks what `new` asks, in its order, and writes the same file when the proposal is taken', async () => {
  const onTerminal: string[] = [];
  await askQuestions(
    (question) => {
      onTerminal.push(question);
      return Promise.resolve('');
    },
    () => undefined,
  );
  expect(await enterAll()).toEqual(onTerminal);
  expect(board.state.start?.proposal.join('\n')).toContain('To buy:');
  expect([existsSync(file), written]).toEqual([false, 0]);
  guide.answer('');
  await expect.poll(() => written, patience).toBe(1);
  expect(readFileSync(file, 'utf8')).toBe(designText(usualAnswers()));
  expect(board.state.start).toBe(null);
  expect(guide.answer('')).toBe(false);
});

it('a file that an editor has saved meanwhile is never written over', async () => {
  await enterAll();
  writeFileSync(file, 'name: mine\n');
  guide.answer('');
  await expect.poll(() => board.state.start?.said, patience).toContain('already exists');
  expect([readFileSync(file, 'utf8'), written]).toEqual(['name: mine\n', 0]);
});
