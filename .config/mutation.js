/**
 * Mutation score of one module: plants each small bug that StrykerJS knows into lib/<module>, runs the tests that reach
 * it, and lists the bugs that no test has noticed.
 *
 *   npm run mutation -- units            the whole module
 *   npm run mutation -- units size.ts    one file of it (for work on its tests; no threshold)
 *   npm run mutation -- all              every module, one after the other, as the nightly run does
 *
 * Reports and the incremental record go to out/mutation.
 */
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Stryker } from '@stryker-mutator/core';
import { modules } from './mutation-modules.js';

process.chdir(fileURLToPath(new URL('..', import.meta.url)));

const [name, ...files] = process.argv.slice(2);
if (name !== 'all' && !(name in modules)) {
  console.error(`npm run mutation -- MODULE [FILE...]: one of all, ${Object.keys(modules).join(', ')}`);
  process.exit(2);
}

/** Share of the mutants that a test has noticed, in per cent. */
function scoreOf(counted) {
  const noticed = counted.Killed + counted.Timeout;
  const all = noticed + counted.Survived + counted.NoCoverage;
  return { noticed, all, percent: all === 0 ? 100 : (100 * noticed) / all };
}

function lineOf({ fileName, location, mutatorName, replacement, status }) {
  const { line, column } = location.start;
  return `${relative('.', fileName)}:${line}:${column} ${status} ${mutatorName}: ${(replacement ?? '').replace(/\s+/g, ' ').slice(0, 160)}`;
}

async function measure(module) {
  const { tests, min } = modules[module];
  const folder = `out/mutation/${module}`;
  mkdirSync(folder, { recursive: true });
  // the tests of the module are all that vitest sees
  process.env.MUTATION_TESTS = JSON.stringify(tests.filter((path) => existsSync(path)));
  const partial = files.length > 0;
  const sources = [`lib/${module}/**/*.ts`, ...[`lib/${module}.ts`].filter((path) => existsSync(path))];
  const results = await new Stryker({
    mutate: partial ? files.map((file) => `lib/${module}/${file}`) : sources,
    testRunner: 'vitest',
    plugins: ['@stryker-mutator/vitest-runner'],
    vitest: { configFile: '.config/vitest.mutation.ts', related: false },
    coverageAnalysis: 'perTest',
    checkers: [],
    disableTypeChecks: false,
    incremental: true,
    incrementalFile: partial ? `${folder}/partial.json` : `${folder}/incremental.json`,
    force: process.env.MUTATION_FORCE === '1',
    tempDirName: `out/mutation/sandbox-${module}`,
    ignorePatterns: ['out', 'dist/*', '!dist/assets', 'README.md', '*.tgz'],
    concurrency: Number(process.env.MUTATION_CONCURRENCY ?? 1),
    timeoutMS: 20_000,
    timeoutFactor: 4,
    dryRunTimeoutMinutes: 30,
    reporters: process.env.CI ? [] : ['progress-append-only'],
    allowConsoleColors: false,
    logLevel: 'warn',
    thresholds: { high: 95, low: 85, break: null },
  }).runMutationTest();
  const counted = { Killed: 0, Timeout: 0, Survived: 0, NoCoverage: 0, Ignored: 0, RuntimeError: 0, CompileError: 0 };
  for (const { status } of results) counted[status] += 1;
  const left = results.filter(({ status }) => status === 'Survived' || status === 'NoCoverage');
  writeFileSync(`${folder}/survivors.txt`, left.map((one) => `${lineOf(one)}\n`).join(''));
  for (const one of left) console.log(lineOf(one));
  const { noticed, all, percent } = scoreOf(counted);
  const date = new Date().toISOString().slice(0, 10);
  const ignored = counted.Ignored > 0 ? `, ${counted.Ignored} excluded with a reason` : '';
  console.log(`| \`lib/${module}\` | ${percent.toFixed(1)} % | ${noticed} of ${all}${ignored} | ${min} % | ${date} |`);
  return partial || percent >= min;
}

const asked = name === 'all' ? Object.keys(modules) : [name];
const short = [];
for (const module of asked) if (!(await measure(module))) short.push(module);
if (short.length > 0) {
  console.error(`below the threshold of .config/mutation-modules.js: ${short.join(', ')}`);
  process.exit(1);
}
