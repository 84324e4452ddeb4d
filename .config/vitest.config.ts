import { defineConfig } from 'vitest/config';

// Checks that need Debian packages (a browser, python3-ezdxf, poppler) run where .ci/run has installed them.
const outside = process.env['DISHWRIGHT_OUTSIDE'] === '1';

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    include: outside ? ['test/outside/**/*.test.ts'] : ['test/**/*.test.ts'],
    exclude: outside ? [] : ['test/outside/**'],
    testTimeout: outside ? 300_000 : 60_000,
    hookTimeout: 120_000,
    maxWorkers: 2,
  },
});
