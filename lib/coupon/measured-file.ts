/** The file of readings: written empty with the coupon, and read back filled in. */
import { isMap, isNode, isScalar, LineCounter, parseDocument, type Document } from 'yaml';
import { type Diagnostic, type DiagnosticCode, visible } from '../diagnostic/index.js';
import { checkLineOf, LengthError, type LengthUnit, lengthUnits, parseLength } from '../units/index.js';
import { couponOf } from './parts.js';
import type { Measured } from './solve.js';
import type { Coupon, CouponCut, Reading } from './types.js';

/** What a person has filled in. */
export interface Readings {
  readonly coupon: Coupon;
  readonly date: string;
  /** Step of the callipers, mm. */
  readonly step: number;
  /** Thickness of the sheet at several places. */
  readonly thickness: readonly number[];
  readonly measured: readonly Measured[];
  /** Play at which the tab went in; null where none was tried. */
  readonly fit: number | null;
  /** How the parts were held until the sheet was done; of a router. */
  readonly tabs: TabsHeld | null;
  /** What the check line of a full-size print measures, mm; null where none was printed. */
  readonly print: number | null;
}

export const tabAnswers = ['held', 'moved', 'too-strong'] as const;
export type TabsHeld = (typeof tabAnswers)[number];

export type ReadingsRead =
  | { readonly kind: 'readings'; readonly readings: Readings; readonly locate: (id: string) => Diagnostic['place'] }
  | { readonly kind: 'refused'; readonly problems: readonly Diagnostic[] };

/** Steps of callipers and rules that are of use, mm. */
const steps = { min: 0.001, max: 0.1 };
/** A reading this far off its nominal value (mm, and as a share of it) is a slip. */
const slip = { mm: 0.8, share: 0.02 };
const none = 'none';
const num = (value: number): string => String(Number(value.toFixed(4)));

/** A value of the file in words. */
const words = (value: unknown): string =>
  typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean'
    ? String(value)
    : 'not a plain value';

/** The check line of the design's prints: 4 in or 100 mm. */
const lineOf = ({ printLine }: CouponCut) => checkLineOf(printLine === checkLineOf('in').length ? 'in' : 'mm');

/** The values that the files were made for, as they stand in the file. */
function cutLines({
  material,
  cutBy,
  toolDiameter,
  width,
  bore,
  thickness,
  drills,
  axes,
  printLine,
}: CouponCut): string[] {
  return [
    'cut: # what the coupon was cut with: do not change this',
    `  material: ${JSON.stringify(material)}`,
    `  cutBy: ${cutBy}`,
    ...(toolDiameter === undefined ? [] : [`  toolDiameter: ${num(toolDiameter)}`]),
    `  width: ${num(width)}`,
    `  bore: ${num(bore)}`,
    `  thickness: ${num(thickness)}`,
    `  drills: [${drills.map(num).join(', ')}]`,
    `  axes: { scaleX: ${axes.scaleX}, scaleY: ${axes.scaleY}, lean: ${axes.lean} }`,
    `  printLine: ${num(printLine)}`,
  ];
}

/** The file to fill in, each reading with its nominal value, its place and its jaws. */
export function readingsTemplate({ cut, readings, fits }: Coupon, title: string): string {
  const wide = Math.max(...readings.map(({ id }) => id.length)) + 3;
  const line = ({ id, nominal, words }: Reading): string => `  ${`${id}:`.padEnd(wide)} # ${num(nominal)}: ${words}`;
  return [
    `# Readings of the coupon in ${cut.material}: ${title.replace(/[^\x20-\x7e]/g, '?')}`,
    '# Write each reading after its colon. The measuring sheet shows where to measure. If you could not measure one, write none.',
    'units:            # of the readings: mm or in',
    'date:             # day of the measurement, such as 2026-05-31',
    'step:             # smallest step of the callipers, such as 0.02',
    `thickness: []     # of the sheet at three places or more, such as [${num(cut.thickness)}, ${num(cut.thickness + 0.1)}, ${num(cut.thickness)}]`,
    '',
    'readings:',
    ...readings.map(line),
    '',
    ...(fits.length === 0
      ? []
      : [
          `fit:              # number beside the first slot that the tab can be pushed into by hand: ${fits.map((play) => play.toFixed(2)).join(', ')}`,
        ]),
    ...(cut.cutBy === 'router'
      ? [`tabs:             # held, moved (a part came loose), or too-strong (the tabs would not break by hand)`]
      : []),
    `print:            # what the ${lineOf(cut).name} line of a full-size print of this dish (folder prints) measures, or none`,
    '',
    ...cutLines(cut),
    '',
  ].join('\n');
}

class Reader {
  readonly problems: Diagnostic[] = [];
  readonly #document: Document;
  readonly #lines: LineCounter;
  readonly #file: string;
  unit: LengthUnit = 'mm';

  constructor(document: Document, lines: LineCounter, file: string) {
    this.#document = document;
    this.#lines = lines;
    this.#file = file;
  }

  place(path: readonly string[]): NonNullable<Diagnostic['place']> {
    const parent: unknown = path.length > 1 ? this.#document.getIn(path.slice(0, -1), true) : this.#document.contents;
    const pair = isMap(parent) ? parent.items.find(({ key }) => isScalar(key) && key.value === path.at(-1)) : undefined;
    const node = isNode(pair?.key) ? pair.key : parent;
    const offset = isNode(node) ? (node.range?.[0] ?? 0) : 0;
    const { line, col } = this.#lines.linePos(offset);
    return { path: [...path], file: this.#file, line, column: col };
  }

  refuse(code: DiagnosticCode, path: readonly string[], message: string, remedy: string): null {
    this.problems.push({ code, severity: 'error', message: visible(message), remedy, place: this.place(path) });
    return null;
  }

  value(path: readonly string[]): unknown {
    const value: unknown = this.#document.getIn(path);
    return isNode(value) ? value.toJS(this.#document) : value;
  }

  /** A length in mm. */
  length(path: readonly string[], raw: unknown, nominal: number | null, name: string): number | null {
    const should = nominal === null ? '' : ` (about ${num(nominal)} mm)`;
    if (raw === null || raw === undefined || raw === '')
      return this.refuse(
        'reading-missing',
        path,
        `${name} is blank`,
        `measure it${should}, or write ${none} if that is not possible`,
      );
    if (typeof raw !== 'number' && typeof raw !== 'string')
      return this.refuse('reading-value', path, `${name} is not a length`, `write a number${should}`);
    try {
      const text = typeof raw === 'string' ? raw.replace(/^(\d+),(\d+)/, '$1.$2') : raw;
      return parseLength(text, this.unit);
    } catch (error) {
      if (!(error instanceof LengthError)) throw error;
      return this.refuse('reading-value', path, `${name}: ${error.message}`, error.remedy);
    }
  }
}

const object = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const positive = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value) && value > 0;

/** The values that the coupon was cut with; null where somebody has changed their form. */
function cutOf(raw: unknown): CouponCut | null {
  if (!object(raw) || !object(raw['axes']) || !Array.isArray(raw['drills'])) return null;
  const { material, cutBy, toolDiameter, width, bore, thickness, printLine } = raw;
  const { scaleX, scaleY, lean } = raw['axes'];
  const drills: unknown[] = raw['drills'];
  if (cutBy !== 'router' && cutBy !== 'laser') return null;
  if (typeof material !== 'string' || !/^[A-Za-z0-9][A-Za-z0-9_-]{0,39}$/.test(material)) return null;
  if (!positive(thickness) || typeof width !== 'number' || !(width >= 0) || typeof bore !== 'number') return null;
  if (!positive(scaleX) || !positive(scaleY) || typeof lean !== 'number' || !positive(printLine)) return null;
  if (!drills.every(positive) || (toolDiameter !== undefined && !positive(toolDiameter))) return null;
  const tool = toolDiameter === undefined ? {} : { toolDiameter };
  return { material, cutBy, ...tool, width, bore, thickness, drills, axes: { scaleX, scaleY, lean }, printLine };
}

/** A reading with what was written for it; nothing where it was not taken. */
function takeReading(reader: Reader, reading: Reading, given: Readonly<Record<string, unknown>>): Measured[] {
  const { id, nominal, words } = reading;
  const path = ['readings', id];
  if (!(id in given)) {
    reader.refuse('reading-missing', ['readings'], `${id} is missing`, `add it under readings: ${words}`);
    return [];
  }
  if (given[id] === none) return [];
  const value = reader.length(path, given[id], nominal, id);
  if (value === null) return [];
  if (Math.abs(value - nominal) > slip.mm + slip.share * nominal) {
    reader.refuse(
      'reading-value',
      path,
      `${id} is ${num(value)} mm, but it should be about ${num(nominal)} mm`,
      `measure it again (${words}), or check the unit: the file is in ${reader.unit}`,
    );
    return [];
  }
  return [{ reading, value }];
}

function takeHead(reader: Reader): { date: string; step: number; thickness: number[] } | null {
  const unit = reader.value(['units']);
  const known = lengthUnits.find((one) => one === unit);
  if (known === undefined)
    reader.refuse(
      'reading-unit',
      ['units'],
      unit ? `units is ${words(unit)}` : 'units is blank',
      'write units: mm, or units: in',
    );
  else reader.unit = known;
  const date = reader.value(['date']);
  const text = typeof date === 'string' && /^\d{4}-\d{2}-\d{2}$/.test(date) ? date : null;
  if (text === null)
    reader.refuse(
      'reading-missing',
      ['date'],
      date ? `date is ${words(date)}` : 'date is blank',
      'write the day of the measurement, such as 2026-05-31',
    );
  const step = reader.length(['step'], reader.value(['step']), null, 'step');
  if (step !== null && !(step >= steps.min && step <= steps.max))
    reader.refuse(
      'reading-value',
      ['step'],
      `step is ${num(step)} mm`,
      'write the smallest step of the callipers, such as 0.02 mm',
    );
  const list = reader.value(['thickness']);
  const places: unknown[] = Array.isArray(list) ? list : list === null || list === undefined ? [] : [list];
  const thickness = places.flatMap((one) => reader.length(['thickness'], one, null, 'thickness') ?? []);
  if (places.length === 0)
    reader.refuse(
      'reading-missing',
      ['thickness'],
      'thickness is blank',
      'measure the sheet at three places or more: [11.8, 12.0, 11.9]',
    );
  return text === null || step === null || thickness.length === 0 ? null : { date: text, step, thickness };
}

/** The play of the slot; null where none was tried or there is none. */
function takeFit(reader: Reader, { fits }: Coupon): number | null {
  if (fits.length === 0) return null;
  const raw = reader.value(['fit']);
  const known = `${fits.map((play) => play.toFixed(2)).join(', ')}, or none`;
  if (raw === none) return null;
  if (raw === null || raw === undefined)
    return reader.refuse('reading-missing', ['fit'], 'fit is blank', `write the number beside the slot: ${known}`);
  const fit = fits.find((play) => Math.abs(play - Number(raw)) < 0.001);
  return (
    fit ??
    reader.refuse('reading-value', ['fit'], `fit is ${words(raw)}, but no slot has that number`, `write ${known}`)
  );
}

function takeTabs(reader: Reader, { cut }: Coupon): TabsHeld | null {
  if (cut.cutBy !== 'router') return null;
  const raw = reader.value(['tabs']);
  if (raw === none) return null;
  const answer = tabAnswers.find((one) => one === raw);
  const shown = raw === null || raw === undefined ? 'tabs is blank' : `tabs is ${words(raw)}`;
  return answer ?? reader.refuse('reading-missing', ['tabs'], shown, `write ${tabAnswers.join(', ')} or none`);
}

function takePrint(reader: Reader, { cut }: Coupon): number | null {
  const { name, length, min, max } = lineOf(cut);
  const raw = reader.value(['print']);
  if (raw === none) return null;
  const line = reader.length(['print'], raw, length, 'print');
  if (line === null || (line >= min && line <= max)) return line;
  return reader.refuse(
    'reading-value',
    ['print'],
    `print is ${num(line)} mm`,
    `measure the ${name} line of the print, printed at 100 % ("actual size") and not fitted to the page, or write none`,
  );
}

/** The text as a document; the fault where it is none. */
function documentOf(text: string, lines: LineCounter, file: string): Document | Diagnostic {
  const document = parseDocument(text, { lineCounter: lines, prettyErrors: false, uniqueKeys: true, merge: false });
  const fault = document.errors[0];
  const at = (offset: number) => {
    const { line, col } = lines.linePos(offset);
    return { path: [], file, line, column: col };
  };
  if (fault)
    return {
      code: 'unreadable',
      severity: 'error',
      ...(fault.code === 'DUPLICATE_KEY'
        ? {
            message: 'the name on this line occurs twice',
            remedy: 'keep the correct reading, and delete the other line',
          }
        : {
            message: 'this line, or the one above it, cannot be read',
            remedy:
              'write each reading on a line of its own as name: value, with a space after the colon and no tab before it',
          }),
      place: at(fault.pos[0]),
    };
  if (isMap(document.contents)) return document;
  return {
    code: 'wrong-type',
    severity: 'error',
    message: 'this is not a file of readings',
    remedy: 'fill in the file that `dishwright coupon` wrote along with its sheets',
    place: at(0),
  };
}

/**
 * Reads a file of readings. Every fault is named with its line and how to fix it.
 * @param file its name, for the places of diagnostics
 */
export function readReadings(text: string, file: string): ReadingsRead {
  const lines = new LineCounter();
  const document = documentOf(text, lines, file);
  if ('code' in document) return { kind: 'refused', problems: [document] };
  const reader = new Reader(document, lines, file);
  const cut = cutOf(reader.value(['cut']));
  if (cut === null) {
    reader.refuse(
      'reading-value',
      ['cut'],
      'the section cut has been changed',
      'copy cut from a fresh copy of the file: it states what the coupon was cut with',
    );
    return { kind: 'refused', problems: reader.problems };
  }
  const coupon = couponOf(cut);
  const head = takeHead(reader);
  const given = reader.value(['readings']);
  const known = object(given) ? given : {};
  for (const id of Object.keys(known))
    if (!coupon.readings.some((reading) => reading.id === id))
      reader.refuse('reading-value', ['readings', id], `${id} is not a reading of this coupon`, 'delete the line');
  const measured = coupon.readings.flatMap((reading) => takeReading(reader, reading, known));
  const fit = takeFit(reader, coupon);
  const tabs = takeTabs(reader, coupon);
  const print = takePrint(reader, coupon);
  if (reader.problems.length > 0 || head === null) return { kind: 'refused', problems: reader.problems };
  return {
    kind: 'readings',
    readings: { coupon, ...head, measured, fit, tabs, print },
    locate: (id) => reader.place(id in known ? ['readings', id] : [id]),
  };
}
