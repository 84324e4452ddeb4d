/** Ctrl-C: once keeps the best nest, twice leaves nothing behind. */
import { spawn } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { afterAll, describe, expect, it } from 'vitest';
import { commandPath, workshop } from '../helpers/command.js';
import { smallDish } from './small-dish.js';

// sheets so small that the search has something to do for as long as it is let
const design = smallDish('Small').replaceAll('900 x 600', '300 x 280');
const place = workshop({ 'small.yaml': design });
afterAll(() => place.clear());

const leftBehind = (): string[] => readdirSync(place.folder).filter((name) => name.startsWith('.out.'));

interface Ended {
  readonly code: number | null;
  readonly err: string;
}

/** Cuts with a search of ten minutes, and is interrupted a while after the folder is claimed: as often as asked. */
async function interruptedAfter(wait: number, times: number): Promise<Ended> {
  const child = spawn(process.execPath, [commandPath, 'cut', 'small.yaml', '-o', 'out', '--seconds', '600'], {
    cwd: place.folder,
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  let err = '';
  let ended = false;
  child.stderr.on('data', (data: Buffer) => (err += data.toString()));
  const end = new Promise<number | null>((resolve) => child.once('exit', resolve));
  void end.then(() => (ended = true));
  const running = () => !ended;
  while (leftBehind().length === 0 && running()) await pause(20);
  await pause(wait);
  child.kill('SIGINT');
  while (times > 1 && running() && !err.includes('Ctrl-C again')) await pause(2);
  if (times > 1) child.kill('SIGINT');
  return { code: await end, err };
}

/** The same, later where a slow machine had not begun to nest. */
async function interrupted(times: number): Promise<Ended> {
  for (const wait of [1500, 4000]) {
    const ended = await interruptedAfter(wait, times);
    if (ended.err.includes('Ctrl-C again')) return ended;
  }
  return interruptedAfter(10_000, times);
}

describe('Ctrl-C while it nests', () => {
  it('twice stops the command with nothing written', async () => {
    const { code, err } = await interrupted(2);
    expect(err).toContain('stopped; nothing was written');
    expect(code).toBe(130);
    expect(existsSync(join(place.folder, 'out'))).toBe(false);
    expect(leftBehind()).toEqual([]);
  });

  it('once keeps the best nest, says so, and writes the job', async () => {
    const { code, err } = await interrupted(1);
    expect(err).toContain('best nest kept; Ctrl-C again stops the command, and nothing is written');
    expect(code, err).toBe(0);
    expect(existsSync(join(place.folder, 'out', 'job.json'))).toBe(true);
    expect(leftBehind()).toEqual([]);
  });
});
