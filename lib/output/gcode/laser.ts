/**
 * The way of a laser's beam as RS-274/NGC text (NISTIR 6556, from memory of its tables): G0 to G3, G17, G20 or G21,
 * G40, G54, G61, G61.1 or G64 P, G80, G90, G94; M3 or M4 with S switches the beam on and M5 off, as laser controllers
 * read the words of a spindle (common practice, no source). There is no Z.
 */
import type { Axes } from '../../geometry/index.js';
import type { LaserCut } from '../../machining/index.js';
import { decimal } from '../decimal.js';
import { drillLayer } from '../drawing.js';
import { laserCautions } from './cautions.js';
import { commandedMoves } from './commanded.js';
import {
  atRest,
  coolantWords,
  formatOf,
  modeWord,
  numbered,
  sidesText,
  type RestKeys,
  type TextKeys,
  unitNames,
} from './format.js';
import { moveLine, unknown } from './move-line.js';

/** The laser, as far as its files depend on it. */
export interface LaserWords extends TextKeys, RestKeys {
  readonly beam: 'M3' | 'M4';
  readonly lineNumbers: number;
  readonly end: 'M2' | 'M30';
}

/** One sheet to be written. */
export interface LaserPath {
  readonly sheet: string;
  readonly width: number;
  readonly height: number;
  readonly cuts: readonly LaserCut[];
  /** S words. */
  readonly cutPower: number;
  readonly markPower: number;
  readonly axes?: Axes | undefined;
}

export interface LaserHeader {
  /** Name of the job. */
  readonly job: string;
  /** With its thickness. */
  readonly material: string;
  /** Further full sentences. */
  readonly notes: readonly string[];
}

/** What a comment before a cut says: the layer of the drawings, the part and its copy. */
function titleOf({ operation, part, copy, diameter }: LaserCut): string {
  const layer = operation === 'drill' && diameter !== undefined ? drillLayer(diameter) : operation;
  return `${layer} ${part} ${copy}`;
}

/**
 * The file of one sheet for a laser.
 * @throws RangeError for a place that is not a finite number
 */
export function writeLaserNgc(path: LaserPath, laser: LaserWords, header: LaserHeader): string {
  const format = formatOf(laser);
  const { sheet, width, height, cuts, cutPower, markPower } = path;
  const said = (text: string): string[] => format.comments(text);
  const lines = [
    '%',
    ...said(`dishwright - ${header.job} - sheet ${sheet}`),
    ...said(`${header.material}, ${sidesText(width, height)} mm`),
    ...said(
      `Zero: X and Y at the lower left corner of the sheet. ${unitNames[laser.programUnits]}. No Z: set the focus.`,
    ),
    ...said(`Power: S${decimal(cutPower, 3)} where it cuts, S${decimal(markPower, 3)} where it marks.`),
    ...laserCautions.flatMap((caution) => said(`CAUTION: ${caution}`)),
    ...header.notes.flatMap((note) => said(`NOTE: ${note}`)),
    `G17 ${laser.programUnits === 'in' ? 'G20' : 'G21'} G40 G54 G80 G90 G94`,
    modeWord(laser, format),
    'M5',
    ...coolantWords[laser.coolant],
  ];
  const written = { ...unknown(), z: format.place(0) };
  const sent = commandedMoves(
    cuts.map((cut) => ({ title: titleOf(cut), moves: cut.moves })),
    path.axes,
  );
  sent.forEach(({ title, moves }, i) => {
    const power = cuts[i]?.marks === true ? markPower : cutPower;
    lines.push(format.comment(title));
    let at: (typeof moves)[number]['to'] | null = null;
    for (const move of moves) {
      const line = moveLine(move, at, written, format);
      if (line !== null) lines.push(line);
      if (move.kind === 'rapid') lines.push(`S${decimal(power, 3)} ${laser.beam}`);
      at = move.to;
    }
    lines.push('M5');
  });
  lines.push(...atRest(laser, format), laser.end, '%');
  return `${numbered(lines, laser.lineNumbers).join('\n')}\n`;
}
