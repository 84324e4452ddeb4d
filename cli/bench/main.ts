/** Times the main job on the fixtures; one line of JSON per case: what, size, seconds, result. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { benchGeometry } from './geometry.js';
import { benchLimits } from './limits.js';
import { benchOptics } from './optics.js';

const command = fileURLToPath(new URL('../../bin/main.js', import.meta.url));
const fixtures = fileURLToPath(new URL('../../../fixtures', import.meta.url));
const runs = 3;

interface Run {
  readonly seconds: number;
  readonly output: string;
}

function run(args: readonly string[]): Run {
  const start = performance.now();
  const done = spawnSync(process.execPath, [command, ...args], { encoding: 'utf8', maxBuffer: 256 * 1024 * 1024 });
  const seconds = (performance.now() - start) / 1000;
  if (done.status !== 0) throw new Error(`dishwright ${args.join(' ')} ended with ${done.status}: ${done.stderr}`);
  return { seconds, output: done.stdout };
}

/** Least of a few runs of the whole command, start-up included. */
function time(what: string, size: string, args: readonly string[], result: (output: string) => number): void {
  const times = Array.from({ length: runs }, () => run(args));
  const best = times.reduce((min, next) => (next.seconds < min.seconds ? next : min));
  console.log(JSON.stringify({ what, size, seconds: Number(best.seconds.toFixed(3)), result: result(best.output) }));
}

const folder = mkdtempSync(join(tmpdir(), 'dishwright-bench-'));
try {
  for (const name of ['press-house', 'table-top', 'hand-cut-inch']) {
    const design = join(fixtures, `${name}.yaml`);
    const out = join(folder, name);
    const list = (output: string, key: string) => (JSON.parse(output) as Record<string, unknown[]>)[key]?.length ?? 0;
    time('check', name, ['check', design, '--json'], (output) => list(output, 'values'));
    time('cut', name, ['cut', design, '-o', out, '--json'], (output) => list(output, 'sheets'));
    time('verify', name, ['verify', out, '--json'], (output) => list(output, 'sheets'));
    time('optics', name, ['optics', design, '--json'], () => 1);
  }
  benchGeometry();
  benchOptics(join(fixtures, 'press-house.yaml'));
  await benchLimits(join(fixtures, 'press-house.yaml'));
} finally {
  rmSync(folder, { recursive: true, force: true });
}
