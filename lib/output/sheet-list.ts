/** `sheet-list.csv`: every sheet with the time that its machine takes. */
import { type LengthUnit, mmPer } from '../units/index.js';
import { type Cell, writeCsv } from './csv.js';

export interface ListedSheet {
  /** Path of its drawings, without the ending. */
  readonly file: string;
  readonly width: number;
  readonly height: number;
  readonly parts: number;
  readonly cutBy: string;
  /** Null where a machine is not known, or none cuts. */
  readonly seconds: number | null;
  /** Whether the time leaves out how the machine gathers speed. */
  readonly atLeast: boolean;
}

const secondsInMinute = 60;

/** A row for each sheet, those of templates and gauges too. Sizes are in `unit`; times do not count changes of tool. */
export function writeSheetList(sheets: readonly ListedSheet[], unit: LengthUnit): string {
  const length = (mm: number): Cell => ({ value: mm / mmPer[unit], digits: 3 });
  const heading = ['sheet', `width (${unit})`, `height (${unit})`, 'parts', 'cut by', 'machine (min)', 'notes'];
  const rows = sheets.map(({ file, width, height, parts, cutBy, seconds, atLeast }): Cell[] => [
    file,
    length(width),
    length(height),
    { value: parts, digits: 0 },
    cutBy,
    seconds === null ? '' : { value: seconds / secondsInMinute, digits: 1 },
    seconds !== null && atLeast ? 'at least: the machine’s acceleration is not stated' : '',
  ]);
  return writeCsv([heading, ...rows]);
}
