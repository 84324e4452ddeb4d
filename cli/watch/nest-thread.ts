/** Runs in a thread of its own: a first nest, the forecast, then the nest that the design asks for, a book after each. */
import { parentPort, workerData } from 'node:worker_threads';
import { type Design, forecastOf, nestPrepared, type Prepared, prepare, withNest } from '../../lib/index.js';
import { bookOf } from '../../lib/public/book.js';
import { lightValues } from './look.js';
import type { Nested } from './watch-design.js';

interface Task {
  readonly design: Design;
  readonly extras: ReadonlyMap<string, string>;
}

/** @returns whether all parts found a place */
async function nestAndReport(prepared: Prepared, rest: Pick<Nested, 'last'>, forecast?: ReturnType<typeof forecastOf>) {
  const { sheets, problems: unfit } = await nestPrepared(prepared);
  const doubts = forecast?.problems.filter(({ severity }) => severity === 'warning') ?? [];
  const problems = [...prepared.problems, ...unfit, ...doubts];
  const failed = unfit.some(({ severity }) => severity === 'error');
  const book = failed
    ? null
    : bookOf({ ...prepared, problems, sheets, ...(forecast && { forecast: forecast.forecast }) });
  const light = forecast?.forecast && lightValues(forecast.forecast, prepared.design.units);
  const nested: Nested = { problems, book, last: rest.last || failed, ...(light && { light }) };
  parentPort?.postMessage(nested);
  return !failed;
}

const { design, extras } = workerData as Task;
const quick = prepare(withNest(design, { effort: 0 }), extras);
if (await nestAndReport(quick, { last: false })) {
  const forecast = forecastOf(quick);
  await nestAndReport(prepare(design, extras), { last: true }, forecast);
}
