/** Runs the command: built, in a process of its own as a person would, or within this one. */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { runCommand } from '../../cli/run.js';

export const commandPath = fileURLToPath(new URL('../../dist/bin/main.js', import.meta.url));
const fixturesPath = fileURLToPath(new URL('../../fixtures', import.meta.url));

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs the built `dishwright` in a folder: half a second each time, so only where a process of its own is what is tested. */
export function dishwright(folder: string, args: readonly string[], env: NodeJS.ProcessEnv = {}): Ran {
  const done = spawnSync(process.execPath, [commandPath, ...args], {
    cwd: folder,
    encoding: 'utf8',
    env: { ...process.env, ...env },
    maxBuffer: 256 * 1024 * 1024,
    // only to end what would never end
    timeout: 600_000,
  });
  return { code: done.status, out: done.stdout, err: done.stderr };
}

/** Runs the command of the sources within this process, as if in a folder and in a pipe. */
export async function inProcess(folder: string, args: readonly string[]): Promise<Ran> {
  const printed = { stdout: '', stderr: '' };
  const here = process.cwd();
  const streams = (['stdout', 'stderr'] as const).map((name) => {
    const stream = process[name];
    const { isTTY } = stream;
    const write = stream.write.bind(stream);
    stream.isTTY = false;
    stream.write = (text: string | Uint8Array) => {
      printed[name] += typeof text === 'string' ? text : Buffer.from(text).toString();
      return true;
    };
    return () => Object.assign(stream, { write, isTTY });
  });
  try {
    process.chdir(folder);
    process.exitCode = 0;
    await runCommand(args);
    return { code: process.exitCode, out: printed.stdout, err: printed.stderr };
  } finally {
    process.exitCode = 0;
    process.chdir(here);
    for (const restore of streams) restore();
  }
}

/** A folder of its own with the fixtures in it, and what removes it. */
export function workshop(files: Readonly<Record<string, string>> = {}): { readonly folder: string; clear(): void } {
  const folder = mkdtempSync(join(tmpdir(), 'dishwright-test-'));
  cpSync(fixturesPath, folder, {
    recursive: true,
    filter: (from) => !from.includes('nesting') && !from.includes('pictures'),
  });
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), text);
  }
  return { folder, clear: () => rmSync(folder, { recursive: true, force: true }) };
}
