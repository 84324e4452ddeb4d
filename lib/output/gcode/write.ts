/**
 * A tool path as RS-274/NGC text, as NISTIR 6556 (Kramer, Proctor and Messina, The NIST RS274NGC Interpreter -
 * Version 3, 2000) describes it; its tables are cited from memory. The words in use:
 *   table 5, G codes: G0 G1 G2 G3 motion, G4 dwell, G17 XY plane, G20 inches, G21 mm, G40 no cutter compensation,
 *     G43/G49 tool length offset, G54 coordinate system 1, G61 exact path, G61.1 exact stop, G64 continuous, G80 no
 *     canned cycle, G90 absolute, G94 feed a minute;
 *   table 7, M codes: M0 pause, M2/M30 end, M3 spindle clockwise, M5 spindle stop, M6 tool change, M7 mist, M8 flood,
 *     M9 both off;
 *   further words F, H, I, J, N, P, S, T, X, Y, Z. Arcs are in centre form; I and J are measured from the arc's start.
 * The one word beyond it is the P of G64, the tolerance of a rounded corner: without one a corner has none.
 */
import type { Point3, RouterMachine, ToolPath, ToolRun } from '../../machining/index.js';
import { decimal } from '../decimal.js';
import { changeCautions, routerCautions } from './cautions.js';
import { commandedMoves } from './commanded.js';
import { atRest, coolantWords, type Format, formatOf, modeWord, numbered, sidesText, unitNames } from './format.js';
import { moveLine, unknown, type Written } from './move-line.js';

/** What the head of the file states in addition to the tool path. */
export interface NgcHeader {
  /** Name of the job. */
  readonly job: string;
  readonly material: string;
  /** Further full sentences, such as warnings of the plan. */
  readonly notes: readonly string[];
}

/** Everything that the lines of a file depend on. */
interface Writing {
  readonly path: ToolPath;
  readonly machine: RouterMachine;
  readonly format: Format;
}

const kindNames = { mill: 'end mill', drill: 'drill bit', v: 'V-bit of 90 degrees' } as const;

function toolName({ tool }: ToolRun): string {
  // a size of inches is a nanometre off its decimals, which would round it down in one file and up in another
  const size = decimal(Number(decimal(tool.sold ?? tool.diameter, 6)), 3);
  return `tool ${tool.number}: ${size} mm ${kindNames[tool.kind]}, ${tool.flutes} flutes`;
}

/** How the tool of a run comes into the spindle. The first of a file that is changed by hand is in it from the start. */
function changeLines(run: ToolRun, first: boolean, { path, machine, format }: Writing): string[] {
  const { number } = run.tool;
  const name = format.comment(toolName(run));
  if (machine.toolChange === 'none') return [name];
  if (machine.toolChange === 'automatic')
    return [name, 'M5', `T${number} M6`, ...(machine.lengthOffsets ? [`G43 H${number}`] : [])];
  if (first) return [name];
  const { changeAt, changeHeight } = machine;
  return [
    name,
    'M5',
    ...(machine.coolant === 'off' ? [] : ['M9']),
    `G0 Z${format.place(Math.max(changeHeight, path.safeHeight))}`,
    `X${format.place(changeAt.x)} Y${format.place(changeAt.y)}`,
    ...changeCautions.flatMap((caution) => format.comments(`CAUTION: ${caution}`)),
    'M0',
  ];
}

function runLines(run: ToolRun, first: boolean, writing: Writing): string[] {
  const { path, machine, format } = writing;
  const safe = format.place(path.safeHeight);
  const lines = [
    ...changeLines(run, first, writing),
    `S${decimal(run.spindle, 0)} M3`,
    ...(machine.spinUp > 0 ? [`G4 P${decimal(machine.spinUp, 1)}`] : []),
    ...coolantWords[machine.coolant],
    `G0 Z${safe}`,
  ];
  const written: Written = { ...unknown(), z: safe, motion: 'G0' };
  let at: Point3 | null = null;
  for (const { title, moves } of commandedMoves(run.cuts, path.axes)) {
    lines.push(format.comment(title));
    for (const move of moves) {
      const line = moveLine(move, at, written, format);
      if (line !== null) lines.push(line);
      at = move.to;
    }
  }
  return lines;
}

function lowest({ cuts }: ToolRun): number {
  return cuts.reduce((min, { moves }) => moves.reduce((low, { to }) => Math.min(low, to.z), min), 0);
}

/** The lowest travel of these runs, from cut to cut. */
function lowestTravel(runs: readonly ToolRun[]): number {
  return Math.min(...runs.flatMap(({ cuts }) => cuts.flatMap(({ moves }) => moves.at(-1)?.to.z ?? [])));
}

function head({ path, machine, format }: Writing, header: NgcHeader, runs: readonly ToolRun[], part: string): string[] {
  const { sheet, width, height, thickness } = path;
  const size = `${sidesText(width, height)} x ${decimal(thickness, 2)} mm`;
  const deepest = runs.reduce((min, run) => Math.min(min, lowest(run)), 0);
  const byHand = machine.toolChange === 'by-hand' && runs.length > 1;
  const [start] = runs;
  const hop = lowestTravel(runs);
  const hops = hop < path.safeHeight ? ` Between marks of a part at ${decimal(hop, 1)} mm.` : '';
  const minutes = Math.ceil(runs.reduce((sum, { seconds }) => sum + seconds, 0) / 60);
  return [
    ...format.comments(`dishwright - ${header.job} - sheet ${sheet}${part}`),
    ...format.comments(`${header.material}, ${size}`),
    ...format.comments(
      `Zero: X and Y at the lower left corner of the sheet, Z at its top face. ${unitNames[machine.programUnits]}.`,
    ),
    ...format.comments(
      `Lowest point: ${decimal(deepest, 3)} mm. Travel at ${decimal(path.safeHeight, 1)} mm: higher than every clamp?${hops}`,
    ),
    ...routerCautions.flatMap((caution) => format.comments(`CAUTION: ${caution}`)),
    ...(byHand ? changeCautions.flatMap((caution) => format.comments(`CAUTION: ${caution}`)) : []),
    ...(machine.toolChange === 'automatic' || start === undefined
      ? []
      : format.comments(`NOTE: The file starts with this bit in the spindle and set to zero: ${toolName(start)}.`)),
    ...format.comments(`NOTE: About ${minutes} minutes without tool changes.`),
    ...header.notes.flatMap((note) => format.comments(`NOTE: ${note}`)),
  ];
}

function fileText(writing: Writing, header: NgcHeader, runs: readonly ToolRun[], part: string): string {
  const { machine, format } = writing;
  const { toolChange, programUnits, lengthOffsets } = machine;
  const automatic = toolChange === 'automatic';
  const lines = [
    '%',
    ...head(writing, header, runs, part),
    `G17 ${programUnits === 'in' ? 'G20' : 'G21'} G40${automatic ? ' G49' : ''} G54 G80 G90 G94`,
    modeWord(machine, format),
    ...runs.flatMap((run, i) => runLines(run, i === 0, writing)),
    'M5',
    ...atRest(machine, format),
    ...(automatic && lengthOffsets ? ['G49'] : []),
    machine.end,
    '%',
  ];
  return `${numbered(lines, machine.lineNumbers).join('\n')}\n`;
}

/**
 * The files of one sheet by name, without folder: `<sheet>.ngc`, or, for a machine that changes no tools, one a tool,
 * numbered in the order in which they are run: `<sheet>-1-t<n>.ngc`. A tool path without cuts gives no file.
 * @throws RangeError for a place that is not a finite number
 */
export function writeNgc(path: ToolPath, header: NgcHeader): Map<string, string> {
  const { runs, machine } = path;
  if (runs.length === 0) return new Map();
  const writing: Writing = { path, machine, format: formatOf(machine) };
  if (machine.toolChange !== 'none') return new Map([[`${path.sheet}.ngc`, fileText(writing, header, runs, '')]]);
  return new Map(
    runs.map((run, i) => [
      `${path.sheet}-${i + 1}-t${run.tool.number}.ngc`,
      fileText(writing, header, [run], `, file ${i + 1} of ${runs.length}`),
    ]),
  );
}
