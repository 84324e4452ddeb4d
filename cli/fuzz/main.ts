/** Feeds the readers with mutated files: `npm run fuzz -- --count 100000 --seed 1`. */
import process from 'node:process';
import { Worker } from 'node:worker_threads';
import yargs from 'yargs';
import { hideBin } from 'yargs/helpers';
import { columns, print } from '../console.js';
import { table } from '../table.js';
import type { Report, FuzzTask } from './worker.js';

/** Memory that a reader may take, MB. */
const maxMemory = 512;
/** An input that has not returned after this long is taken as one that never will, ms. */
const patience = 10_000;
const chunk = 5000;

/** Runs some inputs in a thread of their own. A hang or a full memory ends the thread and is reported with its input. */
function run(seed: number, from: number, to: number): Promise<Report> {
  const at = new SharedArrayBuffer(4);
  const place = new Int32Array(at);
  const task: FuzzTask = { seed, from, to, at };
  const worker = new Worker(new URL('./worker.js', import.meta.url), {
    workerData: task,
    resourceLimits: { maxOldGenerationSizeMb: maxMemory },
  });
  return new Promise((resolve) => {
    const broken = (failure: string): void => {
      clearInterval(watch);
      const index = Atomics.load(place, 0);
      void worker.terminate();
      resolve({ counts: {}, failures: [{ index, target: 'unknown', accepted: false, ms: 0, failure }] });
    };
    let seen = -1;
    const watch = setInterval(() => {
      const index = Atomics.load(place, 0);
      if (index === seen) broken(`has not returned after ${patience / 1000} s`);
      seen = index;
    }, patience);
    worker.once('error', (error: Error) => broken(`ends the thread: ${error.message}`));
    worker.once('message', (report: Report) => {
      clearInterval(watch);
      resolve(report);
    });
  });
}

const { count, seed, from } = await yargs(hideBin(process.argv))
  .options({
    count: { type: 'number', default: 100_000, describe: 'how many inputs' },
    seed: { type: 'number', default: 1, describe: 'start of the random numbers' },
    from: { type: 'number', default: 0, describe: 'number of the first input, to run one again' },
  })
  .strict()
  .parse();

const totals = new Map<string, { inputs: number; accepted: number; slowestMs: number }>();
let failed = 0;
for (let start = from; start < from + count; start += chunk) {
  const report = await run(seed, start, Math.min(start + chunk, from + count));
  for (const [name, { inputs, accepted, slowestMs }] of Object.entries(report.counts)) {
    const total = totals.get(name) ?? { inputs: 0, accepted: 0, slowestMs: 0 };
    totals.set(name, {
      inputs: total.inputs + inputs,
      accepted: total.accepted + accepted,
      slowestMs: Math.max(total.slowestMs, slowestMs),
    });
  }
  for (const { index, target, failure } of report.failures) {
    failed += 1;
    print(`input ${index} (${target}, again by --seed ${seed} --from ${index} --count 1): ${failure ?? ''}`);
  }
}
const rows = [...totals].map(([name, { inputs, accepted, slowestMs }]) => [
  name,
  String(inputs),
  String(accepted),
  `${Math.round(slowestMs)} ms`,
]);
const heads = [
  { head: 'reader' },
  { head: 'inputs', right: true },
  { head: 'accepted', right: true },
  { head: 'slowest', right: true },
];
for (const line of table(heads, rows, columns())) print(line);
print(`${count} inputs of seed ${seed}: ${failed} failures`);
process.exitCode = failed === 0 ? 0 : 1;
