/** Runs the built command as a person would. */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const commandPath = fileURLToPath(new URL('../../dist/bin/main.js', import.meta.url));
export const fixturesPath = fileURLToPath(new URL('../../fixtures', import.meta.url));

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs `dishwright` in a folder. */
export function dishwright(folder: string, args: readonly string[], env: NodeJS.ProcessEnv = {}): Ran {
  const done = spawnSync(process.execPath, [commandPath, ...args], {
    cwd: folder,
    encoding: 'utf8',
    env: { ...process.env, ...env },
    maxBuffer: 256 * 1024 * 1024,
    timeout: 120_000,
  });
  return { code: done.status, out: done.stdout, err: done.stderr };
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
