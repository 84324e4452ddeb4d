import { defineConfig } from 'vitest/config';

// Checks that need Debian packages (a browser, python3-ezdxf, poppler) run where .ci/run has installed them.
const outside = process.env['DISHWRIGHT_OUTSIDE'] === '1';
const night = process.env['DISHWRIGHT_FULL'] === '1';

// By night each run draws its own random numbers and says which, so that it can be run again.
const seed = process.env['DISHWRIGHT_SEED'] ?? String(night ? 2 + Math.floor(Math.random() * 1e6) : 1);
if (night) console.info(`DISHWRIGHT_SEED=${seed}`);

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    include: outside ? ['test/outside/**/*.test.ts'] : ['test/**/*.test.ts'],
    exclude: outside ? [] : ['test/outside/**'],
    env: { DISHWRIGHT_SEED: seed },
    // only to end what would never end: how fast something is, is for `npm run bench`
    testTimeout: night ? 14_400_000 : 600_000,
    hookTimeout: night ? 14_400_000 : 600_000,
    maxWorkers: 2,
    // files share a process, and with it the modules they read and the fixtures they cut
    pool: 'forks',
    isolate: false,
  },
});
