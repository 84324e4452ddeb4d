// Installs the locked dependencies when they are missing or older than the lock file.
import { existsSync, statSync } from 'node:fs';
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const stamp = `${root}node_modules/.package-lock.json`;
const lock = `${root}package-lock.json`;
if (!existsSync(stamp) || statSync(stamp).mtimeMs < statSync(lock).mtimeMs - 1000) {
  // the lock file alone decides what is installed; no package's own script needs to run
  const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';
  const done = spawnSync(npm, ['ci', '--ignore-scripts', '--no-fund', '--no-audit'], {
    cwd: root,
    stdio: ['ignore', 2, 2],
    shell: process.platform === 'win32',
  });
  process.exit(done.status ?? 1);
}
