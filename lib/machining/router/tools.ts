/** Which tool does what. */
import type { CutOperation, CutSheet, Process } from '../types.js';
import { cutWidth, isSameBit } from '../process.js';
import type { ListedTool, RouterData, RouterProblem, RouterTool, SheetMaterial } from './types.js';

/** Longest cut in diameters where the design does not say it; common practice, no source. */
const millLengths = 4;
const drillLengths = 10;
/** Diameter of the V-bit that is taken to be there when none is listed, mm: a common size, from memory. */
const usualV = 12;

function withDepth(tool: ListedTool): RouterTool {
  const { kind, diameter } = tool;
  const factor = kind === 'mill' ? millLengths : kind === 'drill' ? drillLengths : 0.5;
  return { ...tool, cuttingDepth: tool.cuttingDepth ?? factor * diameter };
}

/** The diameter by which a tool is known. */
const soldAs = ({ sold, diameter }: RouterTool): number => sold ?? diameter;

/** The tools with what the process's end mill cuts, where that was measured. */
function asMeasured(tools: readonly RouterTool[], process: Process): readonly RouterTool[] {
  if (process.kind !== 'router' || process.width === undefined) return tools;
  const { toolDiameter } = process;
  return tools.map((tool) =>
    tool.kind === 'mill' && isSameBit(tool.diameter, toolDiameter)
      ? { ...tool, diameter: cutWidth(process), sold: tool.diameter }
      : tool,
  );
}

/** The tools in the machine: as listed, or made up from the bits that the process names and a V-bit. */
function toolsOf(process: Process, data: RouterData): RouterTool[] {
  if (data.tools.length > 0) return data.tools.map(withDepth);
  if (process.kind !== 'router') return [];
  const drills = process.drills ?? [];
  return [
    withDepth({ number: 1, kind: 'mill', diameter: process.toolDiameter, flutes: 2 }),
    ...drills.map((diameter, i) => withDepth({ number: i + 2, kind: 'drill', diameter, flutes: 2 })),
    withDepth({ number: drills.length + 2, kind: 'v', diameter: usualV, flutes: 2 }),
  ];
}

/** The tools that a sheet may be cut with, each as it cuts. */
export function toolsAt(process: Process, data: RouterData): readonly RouterTool[] {
  return asMeasured(toolsOf(process, data), process);
}

/** An operation with the tool that makes it. */
export interface Tooled {
  readonly operation: CutOperation;
  readonly tool: RouterTool;
}

export interface ToolChoice {
  readonly tooled: readonly Tooled[];
  /** For scribes and lettering; null when there is no V-bit. */
  readonly marker: RouterTool | null;
  readonly problems: readonly RouterProblem[];
}

const mm = (value: number): string => `${Number(value.toFixed(2))} mm`;

/** How far below the face the tool's tip goes, mm. The tip of a 90° V-bit is half the head's diameter deep. */
export function cutDepth(operation: CutOperation, material: SheetMaterial, data: RouterData): number {
  if (operation.operation === 'countersink') return (operation.diameter ?? 0) / 2;
  if (operation.operation === 'scribe') return data.markDepth;
  return operation.depth === 'through' ? material.thickness + data.overcut : operation.depth;
}

/**
 * Chooses a tool for every operation: the end mill of the process's diameter for rings, pockets and bored holes;
 * for a drilled hole the drill bit of its size, or the end mill of its size; the V-bit for countersinks and marks.
 * A tool that is not there, or that cannot cut so deep, is a problem, reported once a tool.
 */
export function chooseTools(cut: CutSheet, material: SheetMaterial, data: RouterData): ToolChoice {
  const tools = toolsAt(cut.process, data);
  const problems = new Map<string, RouterProblem>();
  const missing = (what: string): null => {
    problems.set(what, {
      code: 'router-tool-missing',
      severity: 'error',
      key: ['router', 'tools'],
      message: `${cut.id} needs ${what}, but router.tools has none`,
      remedy: 'add it to router.tools',
    });
    return null;
  };
  const find = (kind: RouterTool['kind'], diameter: number): RouterTool | undefined =>
    tools.find((tool) => tool.kind === kind && isSameBit(soldAs(tool), diameter));
  const mill = cut.process.kind === 'router' ? cut.process.toolDiameter : 0;
  const marker = tools.find(({ kind }) => kind === 'v') ?? null;

  const toolFor = ({ operation, bore, diameter }: CutOperation): RouterTool | null => {
    if (operation === 'countersink') {
      const wide = tools.find((tool) => tool.kind === 'v' && tool.diameter >= (diameter ?? 0));
      return wide ?? missing(`a V-bit of at least ${mm(diameter ?? 0)} for countersinks`);
    }
    if (operation === 'scribe') return marker;
    if (operation === 'drill' && bore === undefined) {
      const size = diameter ?? 0;
      return find('drill', size) ?? find('mill', size) ?? missing(`a ${mm(size)} drill bit`);
    }
    return find('mill', mill) ?? missing(`an end mill of ${mm(mill)}, as process.toolDiameter asks`);
  };

  const tooled: Tooled[] = [];
  let marks = (cut.marks ?? []).length;
  for (const operation of cut.operations) {
    const tool = toolFor(operation);
    if (tool === null) {
      if (operation.operation === 'scribe') marks += 1;
      continue;
    }
    tooled.push({ operation, tool });
    const depth = cutDepth(operation, material, data);
    if (operation.operation === 'countersink' && depth > material.thickness + data.overcut + 1e-9)
      problems.set(`countersink ${operation.part}`, {
        code: 'router-countersink',
        severity: 'error',
        key: ['router', 'overcut'],
        message: `the countersinks of ${mm(2 * depth)} in ${operation.part} need ${mm(depth)}, but the sheet is ${mm(material.thickness)} thick`,
        remedy: 'use smaller heads, or increase router.overcut, deeper into the spoilboard',
      });
    if (depth > tool.cuttingDepth + 1e-9)
      problems.set(`short ${tool.number}`, {
        code: 'router-tool-short',
        severity: 'error',
        key: ['router', 'tools'],
        message: `tool ${tool.number} (${mm(soldAs(tool))}) cuts ${mm(tool.cuttingDepth)} deep, but ${operation.part} needs ${mm(depth)}`,
        remedy: 'use a longer tool, or state its cuttingDepth in router.tools',
      });
  }
  if (marker === null && marks > 0)
    problems.set('marks', {
      code: 'router-marks',
      severity: 'warning',
      key: ['router', 'tools'],
      message: `${cut.id}: the router leaves out ${marks} marks and scribed lines, because router.tools has no V-bit`,
      remedy: 'add a V-bit to router.tools, or mark the parts by hand',
    });
  return { tooled, marker, problems: [...problems.values()] };
}
