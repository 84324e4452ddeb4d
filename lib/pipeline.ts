/**
 * The one place that chains the modules: design, dish, parts, nest, machining, files. Still pure: how the nest is run
 * (in this thread or on all cores) is passed in, and the files come out as a map. Whatever only writes files is loaded when
 * files are written, because `check` runs often and somebody waits for it.
 */
import { assemble, assemblyProblems } from './assembly/index.js';
import type { Design } from './design/index.js';
import { type Diagnostic, hasError } from './diagnostic/index.js';
import { element } from './geometry/index.js';
import { cutProblems, machine } from './machining/index.js';
import { type Layout, nest } from './nest/index.js';
import type { Part } from './part/index.js';
import {
  type ExtraSource,
  makeGauges,
  makeParts,
  makeTemplates,
  readExtras,
  withFittingLabels,
} from './parts/index.js';
import { aidProcess, aidSheets } from './pipeline/aids.js';
import { burnOf, forecastOf, litOf, opticsProblems } from './pipeline/forecast.js';
import { nestAll } from './pipeline/nest-all.js';
import { type NestRequest, nestRequests } from './pipeline/nesting-request.js';
import { withLaserNotes } from './pipeline/laser-notes.js';
import {
  areaProblems,
  areaProblemsOf,
  cutProblem,
  marginProblems,
  settingsProblems,
  unplacedProblem,
} from './pipeline/problems.js';
import { calibrationProblems } from './pipeline/calibration-problems.js';
import { couponFiles, plannedCoupons, preparedCoupons } from './pipeline/coupon.js';
import { quickNest } from './pipeline/quick-nest.js';
import { sheetMarks } from './pipeline/sheet-marks.js';
import { aimProblems, assemblyOn, standOf } from './pipeline/stand.js';
import { stockProblems } from './pipeline/stock-problems.js';
import { thicknessProblems } from './pipeline/thickness-problems.js';
import { machineMinutes, type Totals, totalsOf } from './pipeline/totals.js';
import type { JobFiles, Job, JobSheet, NestedJob, Nester, Prepared } from './pipeline/types.js';

const noExtras: ReadonlyMap<string, ExtraSource> = new Map();

/** What the processes cannot cut of the parts assigned to them. */
function uncutProblems(requests: readonly NestRequest[], parts: ReadonlyMap<string, Part>): Diagnostic[] {
  return requests.flatMap(({ parts: asked, process }) =>
    cutProblems(
      asked.flatMap(({ id }) => parts.get(id) ?? []),
      process,
    ).map((problem) => cutProblem(problem, 'process', process)),
  );
}

/**
 * Solves the dish, makes its parts and checks whether the process can cut them.
 * @param extras texts of the design's `extra` files or Maker models (`makerExtra`), by name
 */
export function prepare(design: Design, extras = noExtras): Prepared {
  const { dish } = litOf(design);
  const made = makeParts(design, dish);
  const { cleatStart, splices } = made;
  const extra = readExtras(design, extras);
  const own = made.parts.map((part) => withLaserNotes(design, withFittingLabels(part)));
  const bare = assemble({ design, dish, parts: own, cleatStart, splices });
  // a dish that cannot be made as asked has no stand
  const { stand, problems: unstable } = hasError(made.problems)
    ? { stand: null, problems: [] }
    : standOf(design, dish, own, bare);
  const parts = [...own, ...(stand?.parts ?? []), ...extra.parts.map((part) => withLaserNotes(design, part))];
  const requests = nestRequests(design, parts);
  const byId = new Map(parts.map((part) => [part.id, part]));
  const aids = [...makeTemplates(design, dish, parts), ...makeGauges(design, dish)].map(withFittingLabels);
  const uncut = [
    ...uncutProblems(requests, byId),
    ...aids.flatMap((aid) => {
      const process = aidProcess(design, aid.material);
      return cutProblems([aid], process).map((problem) => cutProblem(problem, 'template', process));
    }),
  ];
  const assembly = assemblyOn(bare, stand);
  const prepared: Prepared = {
    design,
    dish,
    parts,
    aids,
    cleatStart,
    splices,
    assembly,
    stand,
    requests,
    problems: [],
  };
  const problems = [
    ...made.problems,
    // a part that cannot be made as asked affects more than itself
    ...(hasError(made.problems) ? [] : assemblyProblems(design, dish, assembly)),
    ...unstable,
    ...extra.problems,
    ...uncut,
    ...marginProblems(design, requests),
    ...areaProblems(design, requests),
    ...settingsProblems(design, requests),
    ...calibrationProblems(prepared),
    ...thicknessProblems(design, dish),
    ...opticsProblems(prepared),
  ];
  return { ...prepared, problems };
}

function cutSheets(request: NestRequest, layout: Layout, parts: ReadonlyMap<string, Part>): JobSheet[] {
  const margins = new Map(request.stock.map(({ id, margin }) => [id, margin]));
  const cuts = machine(
    layout.sheets.map((sheet) => ({ ...sheet, margin: margins.get(sheet.stock) ?? 0 })),
    [...parts.values()],
    request.process,
    { compensated: request.process.kind !== 'hand' },
  );
  return layout.sheets.map((nested, i) => {
    const cut = cuts[i];
    if (!cut) throw new Error(`machining gave no sheet for ${nested.stock}`);
    return { file: `sheets/${cut.id}`, nested, cut: { ...cut, marks: sheetMarks(nested, parts) } };
  });
}

/** Nests and cuts the parts of a prepared design without errors among its problems. */
export async function nestPrepared(prepared: Prepared, nester: Nester = nest): Promise<NestedJob> {
  const lacking = stockProblems(prepared);
  return hasError(lacking) ? { sheets: [], cost: 0, problems: lacking } : nestStocked(prepared, nester);
}

/** The same where the stock is known to be enough, as far as that can be seen without nesting. */
async function nestStocked(prepared: Prepared, nester: Nester): Promise<NestedJob> {
  const parts = new Map(prepared.parts.map((part) => [part.id, part]));
  const sheets: JobSheet[] = [];
  const problems: Diagnostic[] = [];
  let cost = 0;
  const layouts = await nestAll(prepared.requests, nester);
  for (const [i, request] of prepared.requests.entries()) {
    const layout = element(layouts, i);
    cost += layout.cost;
    for (const unplaced of layout.unplaced) {
      const part = parts.get(unplaced.part);
      if (part) problems.push(unplacedProblem(unplaced, part, prepared.design));
    }
    if (layout.unplaced.length === 0) sheets.push(...cutSheets(request, layout, parts));
  }
  return { sheets, cost, problems };
}

/** A job with nothing made yet. */
const nothingOf = (prepared: Prepared): Job => ({
  ...prepared,
  sheets: [],
  routes: [],
  lasered: [],
  aidSheets: [],
  forecast: null,
  burn: null,
  cost: 0,
  files: new Map(),
});

/** Cuts a prepared design without errors among its problems: sheets, tool paths and aids, without their files. */
async function cutPrepared(prepared: Prepared, nesting: Promise<NestedJob>): Promise<Job> {
  const { sheets, cost, problems: unfit } = await nesting;
  const { routeSheets } = await import('./pipeline/router-files.js');
  const { laserSheets } = await import('./pipeline/laser-files.js');
  const { routes, problems: unrouted } = hasError(unfit) ? { routes: [], problems: [] } : routeSheets(prepared, sheets);
  const { design } = prepared;
  const aids = aidSheets(design, prepared.aids);
  const { lasered, problems: unlit } = laserSheets(design, [...sheets, ...aids]);
  const problems: Diagnostic[] = [
    ...prepared.problems,
    ...unfit,
    ...unrouted,
    ...unlit,
    ...areaProblemsOf(design, sheets, aids),
  ];
  if (hasError(problems)) return { ...nothingOf(prepared), problems };
  return {
    ...nothingOf(prepared),
    sheets,
    routes,
    lasered,
    aidSheets: aids,
    cost,
    problems,
  };
}

/**
 * Makes everything for a design.
 * @param extras texts of the design's `extra` files or Maker models (`makerExtra`), by name
 * @param nester runs the nest; if omitted, in this thread
 * @param rays of the forecast, for a quick look; if omitted, the usual number
 */
export async function buildJob(design: Design, extras = noExtras, nester: Nester = nest, rays?: number): Promise<Job> {
  const prepared = prepare(design, extras);
  if (hasError(prepared.problems)) return nothingOf(prepared);
  // known at once: nobody waits for the light of a dish that is not cut
  const lacking = stockProblems(prepared);
  if (hasError(lacking)) return { ...nothingOf(prepared), problems: [...prepared.problems, ...lacking] };
  // where the nest runs in threads of its own, the forecast is traced meanwhile
  const nesting = nestStocked(prepared, nester);
  const { forecast, problems: doubts } = forecastOf(prepared, rays);
  const burn = forecast && burnOf(prepared, rays);
  const cut = await cutPrepared(prepared, nesting);
  if (hasError(cut.problems)) return cut;
  const problems = [
    ...cut.problems,
    ...doubts.filter(({ severity }) => severity === 'warning'),
    ...aimProblems(prepared, forecast),
  ];
  const job: Job = { ...cut, forecast, burn, problems };
  const { jobFiles } = await import('./pipeline/files.js');
  return { ...job, files: await jobFiles(job) };
}

/**
 * Makes what is cut and proven: drawings, tool paths, templates, lists and their record. No light is traced and no book
 * is written.
 * @param extras as for `buildJob`
 */
export async function buildCutFiles(design: Design, extras = noExtras, nester: Nester = nest): Promise<Job> {
  const prepared = prepare(design, extras);
  if (hasError(prepared.problems)) return nothingOf(prepared);
  const job = await cutPrepared(prepared, nestPrepared(prepared, nester));
  if (hasError(job.problems)) return job;
  const { cutFiles, sealed } = await import('./pipeline/files.js');
  return { ...job, files: sealed(job, await cutFiles(job)) };
}

/** Minutes of a machine for one copy of each part, times their number: to plan every copy would take seconds. */
async function minutesByPart(prepared: Prepared, layouts: readonly Layout[]): Promise<number | null> {
  const { laserSheets } = await import('./pipeline/laser-files.js');
  const { routeSheets } = await import('./pipeline/router-files.js');
  const parts = new Map(prepared.parts.map((part) => [part.id, part]));
  const minutes = prepared.requests.flatMap((request, i) => {
    const { sheets } = element(layouts, i);
    if (request.process.kind === 'hand') return [];
    return request.parts.map(({ id, quantity }) => {
      const sheet = sheets.find(({ placed }) => placed.some(({ part }) => part === id));
      const one = sheet?.placed.find(({ part }) => part === id);
      if (!sheet || !one) return 0;
      const alone = cutSheets(request, { sheets: [{ ...sheet, placed: [one] }], unplaced: [], cost: 0 }, parts);
      const { routes } = routeSheets(prepared, alone);
      const { lasered } = laserSheets(prepared.design, alone);
      const each = machineMinutes({ routes, lasered });
      return each === null ? null : each * quantity;
    });
  });
  return minutes.length === 0 || minutes.includes(null)
    ? null
    : minutes.reduce<number>((sum, one) => sum + (one ?? 0), 0);
}

/**
 * What a prepared design takes according to a nest without a search: quick, and rarely less than `cut` will
 * need.
 * @param prepared without errors among its problems and those of its stock
 * @param timed also estimates how long the machine takes, planned for one copy of each part; adds a second or two
 * @returns null where that nest has no room for a part, as can happen with counted stock
 */
export async function quickTotals(
  prepared: Prepared,
  timed: boolean,
): Promise<(Totals & { readonly minutes: number | null }) | null> {
  const layouts = quickNest(prepared);
  if (layouts.some(({ unplaced }) => unplaced.length > 0)) return null;
  return { ...totalsOf(prepared, layouts), minutes: timed ? await minutesByPart(prepared, layouts) : null };
}

/** The same for a job that is cut. */
export function jobTotals(job: Job): Totals & { readonly minutes: number | null } {
  const laid: Layout = { sheets: job.sheets.map(({ nested }) => nested), unplaced: [], cost: job.cost };
  return { ...totalsOf(job, [laid]), minutes: machineMinutes(job) };
}

/** The files of the rib template alone; check the problems of `prepared` first. */
export async function templateFiles({ design, aids }: Prepared): Promise<JobFiles> {
  const templates = aids.filter(({ kind }) => kind === 'template');
  const { aidFiles } = await import('./pipeline/files.js');
  return aidFiles(design, templates, aidSheets(design, templates));
}

/**
 * Makes coupons: a test sheet for each material that a machine cuts, with measuring sheets and files to fill in.
 * @param only names of materials; all when empty
 * @param designFile path of the design from their folder, for the command that reads the readings
 */
export async function buildCoupons(
  design: Design,
  only: readonly string[],
  designFile: string,
  nester: Nester = nest,
): Promise<Job> {
  // outlines of the user's own have no part in it
  const prepared = prepare({ ...design, extra: [] });
  const coupons = plannedCoupons(prepared, only);
  const bare = preparedCoupons(prepared, coupons);
  const byId = new Map(bare.parts.map((part) => [part.id, part]));
  const problems = [
    ...bare.problems,
    ...uncutProblems(bare.requests, byId),
    ...marginProblems(design, bare.requests),
    ...areaProblems(design, bare.requests),
    ...settingsProblems(design, bare.requests),
  ];
  const made: Prepared = { ...bare, problems };
  if (hasError(problems)) return nothingOf(made);
  const job = await cutPrepared(made, nestPrepared(made, nester));
  if (hasError(job.problems)) return job;
  const { couponJobFiles } = await import('./pipeline/files.js');
  return { ...job, files: couponJobFiles(job, couponFiles(design, coupons, job.sheets, designFile)) };
}
