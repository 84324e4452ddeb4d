/** A run that is killed at any moment leaves the folder as it was before or as it is after, never between. */
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { commandPath, dishwright } from '../helpers/command.js';
import { randomOf } from '../helpers/random-nester.js';
import { byDay, seedFrom } from '../helpers/seeds.js';
import { smallDish } from './small-dish.js';

const kills = byDay(1, 120);
const seed = seedFrom(9);

const home = mkdtempSync(join(tmpdir(), 'dishwright-kill-'));
const out = join(home, 'out');

/** Everything in a folder, as one hash. */
function digest(folder: string): string {
  const hash = createHash('sha256');
  const files = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(folder.length))
    .sort();
  for (const file of files) hash.update(`${file}\0`).update(readFileSync(join(folder, file)));
  return hash.digest('hex');
}

const leftovers = (kind: 'part' | 'before'): string[] =>
  readdirSync(home).filter((name) => name.startsWith(`.out.${kind}-`));

/** Cuts a design and is killed: after a while, or as soon as a folder beside the target is seen and a while after. */
async function cutAndKill(design: string, whenWriting: boolean, wait: number): Promise<'killed' | 'done'> {
  const child = spawn(process.execPath, [commandPath, 'cut', design, '-o', 'out', '--force'], {
    cwd: home,
    stdio: 'ignore',
  });
  let ended = false;
  const end = new Promise<void>((resolve) => {
    child.once('exit', () => {
      ended = true;
      resolve();
    });
  });
  const running = () => !ended;
  while (whenWriting && running() && leftovers('part').every((name) => !name.includes(`-${child.pid}-`)))
    await pause(1);
  await Promise.race([pause(wait), end]);
  const killed = running() && child.kill('SIGKILL');
  await end;
  return killed ? 'killed' : 'done';
}

describe(`cut, killed ${kills} times, seed ${seed}`, () => {
  const designs = ['first.yaml', 'second.yaml'] as const;
  const digests: string[] = [];

  beforeAll(() => {
    writeFileSync(join(home, designs[0]), smallDish('First'));
    writeFileSync(join(home, designs[1]), smallDish('Second', 'board: { shape: square }'));
    for (const design of designs) {
      const ran = dishwright(home, ['cut', design, '-o', 'out', '--force']);
      expect(ran.code, ran.err).toBe(0);
      digests.push(digest(out));
    }
    expect(new Set(digests).size).toBe(2);
  });

  afterAll(() => {
    rmSync(home, { recursive: true, force: true });
  });

  it('loses nothing', async () => {
    const random = randomOf(seed);
    const counts = { killed: 0, done: 0, asBefore: 0, asAfter: 0, setAside: 0 };
    // how long a run goes on once its folder is seen depends on the machine: a kill that came too late brings the
    // next ones forward, one that landed puts them off, so that about half land and they land all along the run
    let longest = 900;
    for (let i = 0; counts.killed < kills && i < 3 * kills + 40; i += 1) {
      const before = digest(out);
      // always the other design than the one that stands there, so that before and after differ
      const other = before === digests[0] ? 1 : 0;
      const design = designs[other];
      const after = digests[other]!;
      const ended = await cutAndKill(design, random() < 0.85, random() * longest);
      counts[ended] += 1;
      longest *= ended === 'done' ? 0.8 : 1.25;
      if (existsSync(out)) {
        const now = digest(out);
        expect([before, after]).toContain(now);
        counts[now === before ? 'asBefore' : 'asAfter'] += 1;
      } else {
        // between its two renames the whole folder stands aside, and the next run puts it back
        const aside = leftovers('before');
        expect(aside.length).toBe(1);
        expect(digest(join(home, aside[0]!))).toBe(before);
        counts.setAside += 1;
      }
      if (!existsSync(out) || i % 10 === 9) {
        const ran = dishwright(home, ['cut', design, '-o', 'out', '--force']);
        expect(ran.code, ran.err).toBe(0);
        expect(digest(out)).toBe(after);
        // nothing of the killed runs is left beside it
        expect([...leftovers('part'), ...leftovers('before')]).toEqual([]);
      }
    }
    console.info(JSON.stringify(counts));
    expect(counts.killed).toBe(kills);
  });
});
