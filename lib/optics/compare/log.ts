/** The log of a test in the yard, read and checked: every fault with its line. */
import { element } from '../../geometry/index.js';
import { type Diagnostic, type DiagnosticCode, hasError } from '../../diagnostic/index.js';
import { clockTime, type ClockTime } from './clock.js';
import { BrokenQuote, csvRows, type CsvRow } from './csv-lines.js';
import {
  type ColumnName,
  columnNames,
  headOf,
  optionalColumns,
  quantities,
  type QuantityName,
  type UnitTable,
} from './log-units.js';

/** One line of the log, in °C, W/m² and m/s. */
export interface Reading {
  readonly line: number;
  readonly seconds: number;
  readonly loadC: number;
  readonly ambientC: number;
  readonly irradianceWPerM2: number;
  readonly windMPerS: number;
  /** The dish is covered or turned away: the load cools. */
  readonly covered: boolean;
}

/** Readings without a gap between them, and all covered or none. */
export type Run = readonly [Reading, ...Reading[]];

export interface Log {
  readonly readings: readonly Reading[];
  readonly runs: readonly Run[];
  /** How its times are written; null for a log without readings. */
  readonly clock: { readonly dated: boolean; readonly zoned: boolean } | null;
  readonly problems: readonly Diagnostic[];
}

/** A log that is begun: what to write, in which units. */
export const logTemplate = [
  '# One reading per line, every 1 to 10 minutes. Numbers with a decimal point. Lines that begin with # are ignored.',
  '# time: 2026-06-21 10:00 or 10:00. Units may be changed in the heading: °F, K, kW/m², km/h, mph, kn.',
  '# irradiance: direct sunlight on a surface that faces the sun. load: stirred, in its middle.',
  '# covered: yes while the dish is covered or turned away from the sun and the load cools, else no.',
  'time,load (°C),ambient (°C),irradiance (W/m²),wind (m/s),covered',
  '',
].join('\n');

/** So many times the usual step between two readings is a gap. */
const GAP = 2.5;
const REMEDY_HEAD = `the heading of a log is ${logTemplate.trim().split('\n').at(-1) ?? ''}`;

type Add = (code: DiagnosticCode, line: number, message: string, remedy?: string, severity?: 'warning') => void;

interface Column {
  readonly at: number;
  readonly toUnit: (value: number) => number;
}
type Columns = Readonly<Partial<Record<ColumnName, Column>>>;

function columnsOf(head: CsvRow, add: Add): Columns {
  const found: Partial<Record<ColumnName, Column>> = {};
  const heads = head.fields.map(headOf);
  for (const name of columnNames) {
    const at = heads.findIndex((one) => one.name === name);
    if (at < 0) {
      if (!optionalColumns.includes(name)) add('log-column', head.line, `the log has no column ${name}`, REMEDY_HEAD);
      continue;
    }
    const units: UnitTable = name === 'time' || name === 'covered' ? {} : quantities[name].units;
    const known = Object.keys(units);
    const unit = heads[at]?.unit ?? '';
    const toUnit = Object.hasOwn(units, unit) ? units[unit] : undefined;
    if (known.length > 0 && toUnit === undefined) {
      const message = unit === '' ? 'has no unit' : `is in "${unit}", which is not a known unit`;
      add('log-unit', head.line, `column ${name} ${message}`, `write one of these after it: ${known.join(', ')}`);
    }
    found[name] = { at, toUnit: toUnit ?? ((value) => value) };
  }
  return found;
}

/** A number of a row; null where the cell is empty or wrong, which is reported. */
function numberIn(row: CsvRow, name: QuantityName, { at, toUnit }: Column, add: Add): number | null {
  const text = row.fields[at] ?? '';
  if (text === '') {
    add('log-gap', row.line, `no ${name} here; the line is ignored`, undefined, 'warning');
    return null;
  }
  if (/^[+-]?\d+,\d+$/.test(text)) {
    add('log-number', row.line, `${name} "${text}" has a decimal comma`, `write ${text.replace(',', '.')}`);
    return null;
  }
  if (!/^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i.test(text)) {
    add('log-number', row.line, `${name} "${text}" is not a number`, 'write a number, or nothing');
    return null;
  }
  const value = toUnit(Number(text));
  const { from, to, unit } = quantities[name];
  if (value >= from && value <= to) return value;
  const limits = `it must be ${from} to ${to} ${unit}: is the unit in the heading right?`;
  add('log-number', row.line, `${name} of ${text} is ${value.toFixed(1)} ${unit}`, limits);
  return null;
}

const words: Readonly<Record<string, boolean>> = {
  yes: true,
  no: false,
  true: true,
  false: false,
  '1': true,
  '0': false,
};

function coveredIn(row: CsvRow, column: Column | undefined, add: Add): boolean {
  const text = (column && row.fields[column.at])?.toLowerCase() ?? '';
  if (text === '') return false;
  const covered = Object.hasOwn(words, text) ? words[text] : undefined;
  if (covered === undefined) add('log-number', row.line, `covered is "${text}"`, 'write yes or no');
  return covered ?? false;
}

interface Timed extends Reading {
  readonly time: ClockTime;
}

function readingOf(row: CsvRow, columns: Columns, add: Add): Timed | null {
  const text = row.fields[columns.time?.at ?? -1] ?? '';
  const time = clockTime(text);
  if (time === null) add('log-time', row.line, `"${text}" is not a time`, 'write it as 10:05 or 2026-06-21 10:05');
  const value = (name: QuantityName) => (columns[name] ? numberIn(row, name, columns[name], add) : null);
  const [loadC, ambientC, irradianceWPerM2, windMPerS] = [
    value('load'),
    value('ambient'),
    value('irradiance'),
    value('wind'),
  ];
  const covered = coveredIn(row, columns.covered, add);
  if (time === null || loadC === null || ambientC === null || irradianceWPerM2 === null || windMPerS === null)
    return null;
  return { line: row.line, seconds: time.seconds, time, loadC, ambientC, irradianceWPerM2, windMPerS, covered };
}

/** Clocks that run back, or change their manner of writing. */
function checkClock(readings: readonly Timed[], add: Add): void {
  readings.slice(1).forEach(({ line, seconds, time }, i) => {
    const before = element(readings, i);
    if (time.dated !== before.time.dated || time.zoned !== before.time.zoned)
      add('log-time', line, 'the time is written differently from the one before', 'write all times in the same form');
    else if (seconds === before.seconds)
      add('log-time', line, `the time is the same as in line ${before.line}`, 'keep one of the two');
    else if (seconds < before.seconds)
      add(
        'log-time',
        line,
        `the clock jumps back by ${durationText(before.seconds - seconds)} from line ${before.line}`,
        time.dated ? 'correct the times; they must increase' : 'a log over midnight needs dates: 2026-06-21 10:05',
      );
  });
}

function durationText(seconds: number): string {
  const minutes = Math.round(seconds / 60);
  return minutes >= 60
    ? `${Math.floor(minutes / 60)} h ${minutes % 60} min`
    : minutes > 0
      ? `${minutes} min`
      : `${seconds} s`;
}

function runsOf(readings: readonly Reading[], add: Add): Run[] {
  const steps = readings.slice(1).map(({ seconds }, i) => seconds - element(readings, i).seconds);
  const usual = [...steps].sort((a, b) => a - b)[steps.length >> 1] ?? 0;
  const runs: [Reading, ...Reading[]][] = [];
  readings.forEach((reading, i) => {
    const before = readings[i - 1];
    const run = runs.at(-1);
    const gap = (steps[i - 1] ?? 0) > GAP * usual;
    if (gap && before)
      add(
        'log-gap',
        reading.line,
        `nothing was read for ${durationText(reading.seconds - before.seconds)} before this line (the clock may have jumped); that time is left out`,
        undefined,
        'warning',
      );
    if (run && before && !gap && before.covered === reading.covered) run.push(reading);
    // where the cover goes on or off, the last reading of the one state is the first of the other
    else if (run && before && !gap) runs.push([{ ...before, covered: reading.covered }, reading]);
    else runs.push([reading]);
  });
  return runs;
}

/**
 * Reads a log. With an error among the problems its readings must not be used.
 * @param file name of the log, for messages
 */
export function readLog(text: string, file: string): Log {
  const problems: Diagnostic[] = [];
  const add: Add = (code, line, message, remedy, severity) =>
    problems.push({
      code,
      severity: severity ?? 'error',
      message: `line ${line}: ${message}`,
      ...(remedy === undefined ? {} : { remedy }),
      place: { path: [], file, line },
    });
  const nothing = (): Log => ({ readings: [], runs: [], clock: null, problems });
  let rows: CsvRow[];
  try {
    rows = csvRows(text);
  } catch (error) {
    if (!(error instanceof BrokenQuote)) throw error;
    add('log-separator', error.line, 'a quoted field is not closed', 'close it with a quotation mark');
    return nothing();
  }
  const [head, ...body] = rows;
  if (head === undefined) {
    add('log-column', 1, 'the log is empty', REMEDY_HEAD);
    return nothing();
  }
  if (head.fields.length === 1 && /[;\t]/.test(head.fields[0] ?? '')) {
    const remedy = 'separate them by commas, and write numbers with a decimal point';
    add('log-separator', head.line, 'the fields are not separated by commas', remedy);
    return nothing();
  }
  const columns = columnsOf(head, add);
  if (hasError(problems)) return nothing();
  const readings = body.flatMap((row) => {
    if (row.fields.length <= head.fields.length) return readingOf(row, columns, add) ?? [];
    const fields = `there are ${row.fields.length} fields under ${head.fields.length} columns`;
    add('log-number', row.line, `${fields}: a number with a decimal comma?`, 'write 23.5 instead of 23,5');
    return [];
  });
  checkClock(readings, add);
  if (readings.length < 2 && !hasError(problems))
    add('log-gap', head.line, 'the log has fewer than two readings', 'log a test first');
  if (hasError(problems)) return nothing();
  return { readings, runs: runsOf(readings, add), clock: readings[0]?.time ?? null, problems };
}
