import { defineConfig } from 'vitest/config';

// Each mutant starts these tests again, so nothing runs that the module does not need; `npm run mutation` names them.
const tests = JSON.parse(process.env['MUTATION_TESTS'] ?? '["test"]') as string[];

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    include: tests.map((path) => (path.endsWith('.ts') ? path : `${path}/**/*.test.ts`)),
    setupFiles: [new URL('mutation-setup.js', import.meta.url).pathname],
    env: { DISHWRIGHT_SEED: '1' },
    testTimeout: 600_000,
    hookTimeout: 600_000,
    // constants of a module are mutants too, and only count where it is read again
    isolate: true,
  },
});
