/** How a laser follows the sheets: times, and tool paths where they are asked for. */
import { drawBeamCut } from '../check/index.js';
import { type Design, laserOf } from '../design/index.js';
import { type Diagnostic, diagnostic } from '../diagnostic/index.js';
import { type LaserData, planLaser, smallSlug } from '../machining/index.js';
import type { CutPicture } from '../output/book/index.js';
import { type RecordedSheet, writeLaserNgc } from '../output/index.js';
import { formatLength, formatRun, type LengthUnit } from '../units/index.js';
import type { JobFiles, JobSheet, LaserRoute } from './types.js';

type Laser = NonNullable<ReturnType<typeof laserOf>>;

/** The material of a sheet; the sheets of templates and gauges bear its name. */
function materialOf(design: Design, { nested }: JobSheet): string {
  return design.stock.find(({ id }) => id === nested.stock)?.material ?? nested.stock;
}

/** The laser in a material; of one that the design does not describe nothing is known. */
function dataOf(laser: Laser | null, material: string): LaserData {
  if (laser === null)
    return { arcs: 'arcs', lineTolerance: 0.01, pathMode: 'exact', pathTolerance: 0.02, travelSpeed: undefined };
  const { arcs, lineTolerance, pathMode, pathTolerance, travelSpeed, acceleration, materials } = laser;
  const own = Object.hasOwn(materials, material) ? materials[material] : undefined;
  return {
    arcs,
    lineTolerance,
    pathMode,
    pathTolerance,
    travelSpeed,
    acceleration,
    cutSpeed: own?.cutSpeed,
    markSpeed: own?.markSpeed,
  };
}

/** The key of a speed or power, as in the design. */
const keyOf = (material: string, key: string): string =>
  key === 'travelSpeed' || key === 'fullPower' ? `machine.${key}` : `machine.materials.${material}.${key}`;

/** What the tool paths of a sheet lack. */
function lacking(laser: Laser, material: string, { plan }: Pick<LaserRoute, 'plan'>): Diagnostic[] {
  const own = laser.materials[material];
  const needed = [
    ...(plan.cutLength > 0 ? (['cutSpeed', 'cutPower'] as const) : []),
    ...(plan.markLength > 0 ? (['markSpeed', 'markPower'] as const) : []),
  ].filter((key) => own?.[key] === undefined);
  const keys = [...(laser.fullPower === undefined ? ['fullPower'] : []), ...needed];
  return keys.map((key) =>
    diagnostic(
      'machine-power',
      keyOf(material, key).split('.'),
      `${keyOf(material, key)} is not stated, and machine.toolPaths needs it`,
      'find it on a piece of scrap and state it, or remove machine.toolPaths',
    ),
  );
}

/** About how long, in a sentence; or what would have to be known for it. */
function laserTime({ plan, unknown }: Pick<LaserRoute, 'plan' | 'unknown'>, units: LengthUnit): string {
  const lengths = `cuts ${formatRun(plan.cutLength, units)} and marks ${formatRun(plan.markLength, units)}`;
  if (plan.seconds === null) return `The beam ${lengths}; its time is not estimated without ${unknown.join(', ')}.`;
  const minutes = Math.ceil(plan.seconds / 60);
  const more = plan.atLeast ? ' or more, as machine.acceleration is not stated' : '';
  return `The beam ${lengths}, in about ${minutes} minutes${more}.`;
}

/** What comes loose inside parts; null where nothing does that could be in the way. */
function slugSentence({ plan: { slugs } }: Pick<LaserRoute, 'plan'>, units: LengthUnit): string | null {
  if (slugs === 0) return null;
  const pieces = slugs === 1 ? 'One piece' : `${slugs} pieces`;
  return `${pieces} over ${formatLength(smallSlug, units)} cut out of openings may tip up into the path of the head: watch them, and take them out only when it has stopped.`;
}

/** What is worth knowing of a laser's sheet: how long it takes, and what comes loose. */
export function laserSentences(route: Pick<LaserRoute, 'plan' | 'unknown'>, units: LengthUnit): string[] {
  const slugs = slugSentence(route, units);
  return [laserTime(route, units), ...(slugs === null ? [] : [slugs])];
}

function filesOf(design: Design, laser: Laser, material: string, sheet: JobSheet, route: Omit<LaserRoute, 'files'>) {
  const { fullPower = 0, materials } = laser;
  const { cutPower = 0, markPower = 0 } = materials[material] ?? {};
  const { cut } = sheet;
  const described = design.materials[material]?.description ?? material;
  const axes = cut.process.kind === 'laser' ? cut.process.axes : undefined;
  const text = writeLaserNgc(
    {
      sheet: cut.id,
      width: cut.width,
      height: cut.height,
      cuts: route.plan.cuts,
      cutPower: (cutPower / 100) * fullPower,
      markPower: (markPower / 100) * fullPower,
      axes,
    },
    laser,
    { job: design.name, material: described, notes: laserSentences(route, design.units) },
  );
  return new Map([[`${sheet.file}.ngc`, text]]);
}

/** Follows every sheet that a laser cuts. With an error among the problems the files are not to be used. */
export function laserSheets(
  design: Design,
  sheets: readonly JobSheet[],
): { readonly lasered: readonly LaserRoute[]; readonly problems: readonly Diagnostic[] } {
  const laser = laserOf(design);
  const problems = new Map<string, Diagnostic>();
  const lasered = sheets
    .filter(({ cut }) => cut.process.kind === 'laser' && cut.compensated)
    .map((sheet): LaserRoute => {
      const material = materialOf(design, sheet);
      const plan = planLaser(sheet.cut, dataOf(laser, material));
      const route = { sheet, plan, unknown: plan.unknown.map((key) => keyOf(material, key)) };
      if (laser?.toolPaths !== true) return { ...route, files: new Map() };
      const lack = lacking(laser, material, route);
      for (const problem of lack) problems.set(problem.message, problem);
      return { ...route, files: lack.length > 0 ? new Map() : filesOf(design, laser, material, sheet, route) };
    });
  return { lasered, problems: [...problems.values()] };
}

/** What the record states of how a laser follows a sheet; nothing for a sheet that none cuts. */
export function laserRecord(lasered: readonly LaserRoute[], file: string): Pick<RecordedSheet, 'laser'> {
  const route = lasered.find(({ sheet }) => sheet.file === file);
  if (route === undefined) return {};
  const { seconds, atLeast, cutLength, markLength, travelLength } = route.plan;
  return { laser: { files: [...route.files.keys()], seconds, atLeast, cutLength, markLength, travelLength } };
}

/** Pictures of the sheets as a laser leaves them, drawn from the files that it runs. */
export function beamPictures(sheets: readonly JobSheet[], files: JobFiles): CutPicture[] {
  return sheets.flatMap(({ file, cut }) => {
    const text = files.get(`${file}.svg`);
    if (cut.process.kind !== 'laser' || typeof text !== 'string') return [];
    return [{ sheet: cut.id, svg: drawBeamCut(text, cut.process.kerf), routed: null }];
  });
}
