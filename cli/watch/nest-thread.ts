/** Runs in a thread of its own: a first nest, the forecast, then the nest that the design asks for, a book after each. */
import { parentPort, workerData } from 'node:worker_threads';
import {
  type Design,
  forecastOf,
  type Layout,
  nest,
  type Nester,
  nestPrepared,
  type Prepared,
  prepare,
  totalsOf,
  withNest,
} from '../../lib/index.js';
import { bookOf } from '../../lib/public/book.js';
import { lightValues, nestedValues } from './look.js';
import type { Nested } from './watch-design.js';

type Forecast = ReturnType<typeof forecastOf>;

interface Task {
  readonly design: Design;
  readonly extras: ReadonlyMap<string, string>;
}

/** @returns whether all parts found a place */
async function nestAndReport(prepared: Prepared, nester: Nester, last: boolean, forecast?: Forecast) {
  const { sheets, cost, problems: unfit } = await nestPrepared(prepared, nester);
  const doubts = forecast?.problems.filter(({ severity }) => severity === 'warning') ?? [];
  const problems = [...prepared.problems, ...unfit, ...doubts];
  const failed = unfit.some(({ severity }) => severity === 'error');
  const book = failed
    ? null
    : bookOf({ ...prepared, problems, sheets, ...(forecast && { forecast: forecast.forecast }) });
  const { design } = prepared;
  const found = forecast?.forecast && lightValues(forecast.forecast, design.units);
  const laid: Layout = { sheets: sheets.map(({ nested }) => nested), unplaced: [], cost };
  const values = [...(found ?? []), ...(last && !failed ? nestedValues(totalsOf(prepared, [laid]), design) : [])];
  const nested: Nested = { problems, book, last: last || failed, values };
  parentPort?.postMessage(nested);
  return !failed;
}

/** Gives the layouts of another nest of the same requests, one by one. */
function asLaid(layouts: readonly Layout[]): Nester {
  const left = layouts.values();
  return (parts, stock, options) => left.next().value ?? nest(parts, stock, options);
}

// the first nest is that of the values beside the book; they are worked out while this thread warms up
const laid = new Promise<readonly Layout[] | null>((resolve) => parentPort?.once('message', resolve));
const { design, extras } = workerData as Task;
const quick = prepare(withNest(design, { effort: 0 }), extras);
const layouts = await laid;
if (await nestAndReport(quick, layouts ? asLaid(layouts) : nest, false)) {
  const forecast = forecastOf(quick);
  await nestAndReport(prepare(design, extras), nest, true, forecast);
}
