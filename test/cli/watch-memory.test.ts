import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import process from 'node:process';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { expect, it } from 'vitest';
import { revisionOf } from '../../cli/watch/revision.js';
import { Session } from '../../cli/watch/session.js';
import { fixtureText } from '../helpers/fixtures.js';

setFlagsFromString('--expose-gc');
const collect = runInNewContext('gc') as () => void;

/** What is reachable, bytes. */
function heap(): number {
  collect();
  collect();
  return process.memoryUsage().heapUsed;
}

it('keeps what fifty edits changed, and not the text before and after each', () => {
  const folder = mkdtempSync(join(tmpdir(), 'dishwright-memory-'));
  const file = join(folder, 'dish.yaml');
  // of 40 KB, as a commented file is
  const good = `${fixtureText('press-house')}${`# ${'a line that somebody wrote '.repeat(4)}\n`.repeat(400)}`;
  writeFileSync(file, good);
  const session = new Session(file, false);
  const edit = (i: number): void => {
    const text = readFileSync(file, 'utf8');
    const was = /ribs: (\d+)/.exec(text)?.[1] ?? null;
    const value = String(20 + (i % 7));
    expect(session.edit({ path: ['dish', 'ribs'], value, was }, revisionOf(text)).kind).toBe('done');
  };
  for (let i = 0; i < 20; i += 1) edit(i);
  const before = heap();
  for (let i = 20; i < 70; i += 1) edit(i);
  const grown = heap() - before;
  for (let i = 0; i < 70; i += 1) expect(session.undo().kind).toBe('done');
  expect(readFileSync(file, 'utf8')).toBe(good);
  rmSync(folder, { recursive: true, force: true });
  // one text kept for each edit would be twice that
  expect(grown).toBeLessThan((50 * good.length) / 2);
});
