/** The router files of a sheet against the record: the proof by simulated cutting as part of the proof of a folder. */
import type { FaultList } from './faults.js';
import { checkRouterHeads } from './head/index.js';
import type { RecordRead, PartRead, SheetRead } from './job-reader.js';
import { axesOf, boreOf, processOf } from './nominal.js';
import { simulate, type Simulation, type SimulationLimits } from './router-simulation/index.js';

/**
 * Simulates the router files that the record names for a sheet, and adds what it finds to the faults. Limits are those
 * that the record states; what else the files must keep to is in the standard.
 * @returns the simulation; null for a sheet without router files, or when one is missing
 */
export function checkRouterFile(
  files: ReadonlyMap<string, string>,
  job: RecordRead,
  parts: ReadonlyMap<string, PartRead>,
  sheet: SheetRead,
  faults: FaultList,
): Simulation | null {
  const { router } = sheet;
  if (router === undefined) return null;
  const texts = router.files.map((name) => ({ name, text: files.get(name) }));
  const missing = texts.filter(({ text }) => text === undefined);
  for (const { name } of missing) faults.add('file-missing', name, {});
  if (missing.length > 0) return null;
  const process = processOf(job, sheet);
  const limits: SimulationLimits = {
    ...router.limits,
    travelHeight: job.design.router?.safeHeight ?? 0,
    axes: axesOf(process),
    bore: boreOf(process),
  };
  const { width, height, placed } = sheet;
  const written = texts.map(({ name, text }) => ({ name, text: text ?? '' }));
  const simulation = simulate(written, { width, height, parts, placed }, limits);
  checkRouterHeads(written, simulation.motions, job, sheet, limits.travelHeight, faults);
  for (const { id, file, line, what, place } of simulation.findings)
    faults.take(
      'router',
      id,
      file === '' ? sheet.file : file,
      line === undefined ? what : `line ${line}: ${what}`,
      place,
    );
  return simulation;
}
