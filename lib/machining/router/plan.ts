/** From a cut sheet to the tool's whole path: the one entrance to this folder. */
import { distance, element, type Point } from '../../geometry/index.js';
import type { PartShape } from '../../part/index.js';
import { cutWidth } from '../process.js';
import type { CutOperation } from '../types.js';
import { type CutSettings, type Entered, inTurn, lineCut, pointCut, ringCut } from './cuts.js';
import { type Cutting, cuttingOf, feedProblems } from './feeds.js';
import { type Held, hold } from './holding.js';
import { allowanceOf } from './lead.js';
import { facesOf, withLowHops } from './hops.js';
import { settledLimits } from './limits.js';
import { inLines } from '../moves.js';
import { measure, timed } from './measure.js';
import { reachProblems } from './reach.js';
import { settingProblems } from './settings.js';
import { chooseTools, cutDepth, type ToolChoice, type Tooled } from './tools.js';
import { tour } from './tour.js';
import type {
  Cut,
  RoutedSheet,
  RouterData,
  RouterLimits,
  RouterPlan,
  RouterProblem,
  RouterTool,
  SheetMaterial,
  ToolRun,
} from './types.js';

/** Drill bits first, then the V-bit, the end mill last: a part is whole and held while it is drilled and marked. */
const kindOrder = { drill: 0, v: 1, mill: 2 } as const;

/** Runs of operations that must follow one another, outlines after what lies within; in each the travel decides. */
function phases(operations: readonly Tooled[]): Tooled[][] {
  const groups: Tooled[][] = [];
  let last: boolean | null = null;
  for (const one of operations) {
    const outline = one.operation.operation === 'outline';
    if (outline !== last) groups.push([]);
    last = outline;
    groups.at(-1)!.push(one);
  }
  return groups;
}

/** The operations of each part, in their order: another way to keep outlines last. */
function byPart(operations: readonly Tooled[]): Tooled[][] {
  const groups = new Map<string, Tooled[]>();
  for (const one of operations) {
    const key = `${one.operation.copy}:${one.operation.part}`;
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return [...groups.values()];
}

interface Tour {
  readonly cuts: readonly Cut[];
  readonly end: Point;
}

function travelOf({ cuts }: Tour, start: Point): number {
  let at = start;
  let sum = 0;
  for (const { moves } of cuts) {
    sum += distance(at, element(moves, 0).to);
    at = moves.at(-1)!.to;
  }
  return sum;
}

/** The cuts of one group in a short order, from where the tool is. */
function toured(cuts: readonly Entered[], start: Point): Tour {
  const made = tour(cuts, start).flatMap(({ visit, entry, reversed }) => element(cuts, visit).make(entry, reversed));
  return { cuts: made, end: made.at(-1)?.moves.at(-1)?.to ?? start };
}

function inPhases(groups: readonly (readonly Entered[])[], start: Point): Tour {
  let end = start;
  const cuts: Cut[] = [];
  for (const group of groups) {
    const done = toured(group, end);
    cuts.push(...done.cuts);
    end = done.end;
  }
  return { cuts, end };
}

interface Setting {
  readonly sheet: RoutedSheet;
  readonly parts: ReadonlyMap<string, PartShape>;
  readonly material: SheetMaterial;
  readonly data: RouterData;
  readonly held: Held;
  readonly choice: ToolChoice;
  readonly cuttings: ReadonlyMap<number, Cutting>;
}

function entered(tooled: Tooled, setting: Setting): Entered {
  const { sheet, material, data, held, cuttings } = setting;
  const { operation, tool } = tooled;
  const cutting = cuttings.get(tool.number)!;
  const point = operation.operation === 'countersink' || (operation.operation === 'drill' && !operation.bore);
  const deep = cutDepth(operation, material, data);
  if (point) return pointCut(operation, deep, cutting, data);
  if (operation.operation === 'scribe')
    return lineCut(`scribe ${operation.part} ${operation.copy}`, operation.vertices, operation.closed, cutting, data);
  const depth = held.leavesSkin(operation) ? material.thickness - data.tabs.onionSkin : deep;
  const settings: CutSettings = {
    cutting,
    data,
    tabs: held.tabs,
    tabTop: held.tabHeight - material.thickness,
  };
  return ringCut(operation, depth, allowanceOf(data, sheet.cut.process), settings);
}

function marksOf({ sheet, choice, cuttings, data }: Setting): Entered[] {
  const { marker } = choice;
  if (marker === null) return [];
  return (sheet.cut.marks ?? [])
    .filter(({ vertices }) => vertices.length > 1)
    .map(({ part, copy, vertices }) =>
      lineCut(`mark ${part} ${copy}`, vertices, false, cuttings.get(marker.number)!, data),
    );
}

function hopped(cuts: readonly Cut[], { diameter }: RouterTool, { sheet, parts, data }: Setting): readonly Cut[] {
  const { hopHeight, safeHeight } = data;
  return withLowHops(cuts, facesOf(sheet.placed, parts), { hopHeight, safeHeight, radius: diameter / 2 });
}

/** Everything that the tools do, tool by tool. */
function toolRuns(setting: Setting, tools: readonly RouterTool[]): Omit<ToolRun, 'seconds'>[] {
  let at: Point = { x: 0, y: 0 };
  return tools.flatMap((tool): Omit<ToolRun, 'seconds'>[] => {
    const own = setting.choice.tooled.filter((one) => one.tool.number === tool.number);
    const made = new Map(own.map((one) => [one, entered(one, setting)]));
    const cutOf = (one: Tooled): Entered => made.get(one)!;
    const groups = phases(own).map((group) => group.map(cutOf));
    if (tool.number === setting.choice.marker?.number) groups.push([...(groups.pop() ?? []), ...marksOf(setting)]);
    const tours = [inPhases(groups, at)];
    // with no part within another, each part may also be finished before the next
    if (groups.length === 2)
      tours.push(
        toured(
          byPart(own).map((part) => inTurn(part.map(cutOf))),
          at,
        ),
      );
    const { cuts: chosen, end } = tours.reduce((a, b) => (travelOf(b, at) < travelOf(a, at) ? b : a));
    at = end;
    const cuts = tool.kind === 'v' ? hopped(chosen, tool, setting) : chosen;
    return cuts.length === 0 ? [] : [{ tool, spindle: setting.cuttings.get(tool.number)!.spindle, cuts }];
  });
}

function inUse(choice: ToolChoice, sheet: RoutedSheet): RouterTool[] {
  const used = new Map(choice.tooled.map(({ tool }) => [tool.number, tool]));
  if (choice.marker !== null && (sheet.cut.marks ?? []).length > 0) used.set(choice.marker.number, choice.marker);
  return [...used.values()].sort(
    (a, b) => kindOrder[a.kind] - kindOrder[b.kind] || a.diameter - b.diameter || a.number - b.number,
  );
}

function isRing({ operation, bore }: CutOperation): boolean {
  return operation === 'outline' || operation === 'opening' || operation === 'pocket' || bore !== undefined;
}

/**
 * Plans how a router cuts one sheet: tools, speeds, passes, ramps, tabs and the travel between the cuts.
 * @param sheet compensated for the end mill, in cutting order, with the placements that made it
 * @param parts all that the sheet places, by id
 * @returns the tool path with limits for a proof; empty, with the problems, where the sheet cannot be cut as asked
 * @throws RangeError for a sheet that is not compensated or not for a router, or a part that is not given
 */
export function planRouter(
  sheet: RoutedSheet,
  parts: ReadonlyMap<string, PartShape>,
  data: RouterData,
  material: SheetMaterial,
): RouterPlan {
  const { cut } = sheet;
  const { machine } = data;
  if (cut.process.kind !== 'router' || !cut.compensated)
    throw new RangeError(`${cut.id} is not compensated for a router`);
  const choice = chooseTools(cut, material, data);
  const tools = inUse(choice, sheet);
  const cuttings = new Map(tools.map((tool) => [tool.number, cuttingOf(tool, material, data)]));
  const radius = cutWidth(cut.process) / 2;
  const held = hold(sheet, parts, material, data, radius);
  const finishing = allowanceOf(data, cut.process);
  const problems: RouterProblem[] = [
    ...settingProblems(data, cut.process.toolDiameter),
    ...choice.problems,
    ...feedProblems([...cuttings.values()], material, data),
    ...held.problems,
    ...reachProblems(
      sheet,
      choice.tooled.filter(({ operation }) => isRing(operation)).map(({ operation }) => operation),
      radius + finishing,
    ),
  ];
  const limits: RouterLimits = {
    ...settledLimits(tools, material, data, cut.process),
    holding: held.holding,
    tabs: held.tabs.map(({ corners }) => corners),
    keepOuts: sheet.keepOuts ?? [],
  };
  const failed = problems.some(({ severity }) => severity === 'error');
  const made = failed ? [] : toolRuns({ sheet, parts, material, data, held, choice, cuttings }, tools);
  const inShort =
    machine.arcs === 'arcs'
      ? made
      : made.map((run) => ({ ...run, cuts: run.cuts.map((cut) => inLines(cut, machine.lineTolerance)) }));
  const runs = timed(inShort, machine);
  return {
    toolpath: {
      sheet: cut.id,
      width: cut.width,
      height: cut.height,
      thickness: material.thickness,
      safeHeight: data.safeHeight,
      machine,
      ...(cut.process.axes === undefined ? {} : { axes: cut.process.axes }),
      runs,
    },
    limits,
    problems,
    ...measure(runs),
  };
}
