/**
 * A tool path as RS-274/NGC text, as NISTIR 6556 (Kramer, Proctor and Messina, The NIST RS274NGC Interpreter -
 * Version 3, 2000) describes it; its tables are cited from memory. The words in use:
 *   table 5, G codes: G0 G1 G2 G3 motion, G4 dwell, G17 XY plane, G21 mm, G40 no cutter compensation, G43/G49 tool
 *     length offset, G54 coordinate system 1, G61/G64 path mode, G80 no canned cycle, G90 absolute, G94 feed a minute;
 *   table 7, M codes: M2 end, M3 spindle clockwise, M5 spindle stop, M6 tool change;
 *   further words F, H, I, J, P, S, T, X, Y, Z. Arcs are in centre form; I and J are measured from the arc's start.
 */
import type { Move, Point3, ToolPath, ToolRun } from '../../machining/index.js';
import { decimal } from '../decimal.js';
import { routerCautions } from './cautions.js';
import { comment, comments, placeDigits, word } from './words.js';

/** What the head of the file states in addition to the tool path. */
export interface NgcHeader {
  /** Name of the job. */
  readonly job: string;
  readonly material: string;
  /** Further full sentences, such as warnings of the plan. */
  readonly notes: readonly string[];
}

interface Machine {
  /** As written: what the reader of the file knows. */
  x: string;
  y: string;
  z: string;
  motion: string;
  feed: string;
}

const unknown = (): Machine => ({ x: '', y: '', z: '', motion: '', feed: '' });

const printed = (value: number): string => decimal(value, placeDigits);

/** Words of one move; nothing when the tool stands there already, to the last decimal. */
function moveLine(move: Move, from: Point3 | null, machine: Machine): string | null {
  const { to } = move;
  const x = printed(to.x);
  const y = printed(to.y);
  const z = printed(to.z);
  const still = x === machine.x && y === machine.y;
  if (still && z === machine.z) return null;
  const words: string[] = [];
  // an arc whose ends fall together in print would read as a full turn
  const arc = move.kind === 'arc' && !still && from !== null ? move : null;
  const motion = move.kind === 'rapid' ? 'G0' : arc === null ? 'G1' : arc.clockwise ? 'G2' : 'G3';
  if (motion !== machine.motion) words.push(motion);
  if (arc !== null || x !== machine.x) words.push(`X${x}`);
  if (arc !== null || y !== machine.y) words.push(`Y${y}`);
  if (z !== machine.z) words.push(`Z${z}`);
  if (arc !== null) {
    // the centre is given from where the file has the tool, so that rounding does not add up
    words.push(word('I', arc.centre.x - Number(machine.x)), word('J', arc.centre.y - Number(machine.y)));
  }
  if (move.kind !== 'rapid') {
    const feed = decimal(move.feed, 1);
    if (feed !== machine.feed) words.push(`F${feed}`);
    machine.feed = feed;
  }
  Object.assign(machine, { x, y, z, motion });
  return words.join(' ');
}

function runLines({ tool, spindle, cuts }: ToolRun, path: ToolPath): string[] {
  const { safeHeight, dwell } = path;
  const names = { mill: 'end mill', drill: 'drill bit', v: 'V-bit of 90 degrees' };
  const lines = [
    comment(`tool ${tool.number}: ${decimal(tool.diameter, 3)} mm ${names[tool.kind]}, ${tool.flutes} flutes`),
    'M5',
    `T${tool.number} M6`,
    ...(path.lengthOffsets ? [`G43 H${tool.number}`] : []),
    `S${decimal(spindle, 0)} M3`,
    ...(dwell > 0 ? [`G4 P${decimal(dwell, 1)}`] : []),
    `G0 Z${printed(safeHeight)}`,
  ];
  const machine: Machine = { ...unknown(), z: printed(safeHeight), motion: 'G0' };
  let at: Point3 | null = null;
  for (const { title, moves } of cuts) {
    lines.push(comment(title));
    for (const move of moves) {
      const line = moveLine(move, at, machine);
      if (line !== null) lines.push(line);
      at = move.to;
    }
  }
  return lines;
}

function head(path: ToolPath, header: NgcHeader, runs: readonly ToolRun[], part: string): string[] {
  const { sheet, width, height, thickness } = path;
  const size = `${decimal(width, 1)} x ${decimal(height, 1)} x ${decimal(thickness, 2)} mm`;
  return [
    comment(`dishwright - ${header.job} - sheet ${sheet}${part}`),
    comment(`${header.material}, ${size}`),
    ...comments('Zero: X and Y at the lower left corner of the sheet, Z at its upper face. Millimetres.'),
    ...comments(
      `Lowest point: ${decimal(
        runs.reduce((min, run) => Math.min(min, lowest(run)), 0),
        3,
      )} mm. Travel at ${decimal(path.safeHeight, 1)} mm: higher than every clamp?`,
    ),
    ...routerCautions.flatMap((caution) => comments(`CAUTION: ${caution}`)),
    ...header.notes.flatMap((note) => comments(`NOTE: ${note}`)),
  ];
}

function lowest({ cuts }: ToolRun): number {
  return cuts.reduce((min, { moves }) => moves.reduce((low, { to }) => Math.min(low, to.z), min), 0);
}

function fileText(path: ToolPath, header: NgcHeader, runs: readonly ToolRun[], part: string): string {
  const mode = path.pathMode === 'exact' ? 'G61' : 'G64';
  const lines = [
    '%',
    ...head(path, header, runs, part),
    `G17 G21 G40 G49 G54 ${mode} G80 G90 G94`,
    ...runs.flatMap((run) => runLines(run, path)),
    'M5',
    ...(path.lengthOffsets ? ['G49'] : []),
    'M2',
    '%',
  ];
  return `${lines.join('\n')}\n`;
}

/**
 * The files of one sheet by name, without folder: `<sheet>.ngc`, or one a tool, numbered in
 * the order in which they are run: `<sheet>-1-t<n>.ngc`. A tool path without cuts gives no file.
 * @throws RangeError for a place that is not a finite number
 */
export function writeNgc(path: ToolPath, header: NgcHeader, files: 'one' | 'each-tool'): Map<string, string> {
  if (path.runs.length === 0) return new Map();
  if (files === 'one') return new Map([[`${path.sheet}.ngc`, fileText(path, header, path.runs, '')]]);
  const { runs } = path;
  return new Map(
    runs.map((run, i) => [
      `${path.sheet}-${i + 1}-t${run.tool.number}.ngc`,
      fileText(path, header, [run], `, file ${i + 1} of ${runs.length}`),
    ]),
  );
}
