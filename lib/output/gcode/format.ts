/** Numbers, comments and lines as a machine's controller reads them. */
import type { RouterMachine } from '../../machining/index.js';
import { decimal } from '../decimal.js';
import { comment, comments, plainAscii } from './words.js';

const mmInInch = 25.4;
/** Decimals of a place by unit where the machine does not state them: well under the 2 µm by which an arc's ends may differ. */
const usualDecimals = { mm: 4, in: 5 } as const;
/** Decimals of a feed: a tenth of a millimetre, or a hundredth of an inch, a minute. */
const feedDecimals = { mm: 1, in: 2 } as const;
/** Line numbers have five digits at most, and may come again. */
const highestNumber = 99_999;

export interface Format {
  readonly place: (mm: number) => string;
  readonly feed: (mmPerMinute: number) => string;
  readonly digits: number;
  /** A length in the unit of the file. */
  readonly length: (mm: number) => number;
  readonly comment: (text: string) => string;
  readonly comments: (text: string) => string[];
}

/** Capital letters, digits and the signs that every controller takes. */
function capitals(text: string): string {
  return plainAscii(text)
    .toUpperCase()
    .replace(/[^A-Z0-9 .,:;=+/-]/g, ' ');
}

/** What a file's text depends on. */
export type TextKeys = Pick<
  RouterMachine,
  'programUnits' | 'decimals' | 'commentLength' | 'commentCharacters' | 'pathMode' | 'pathTolerance'
>;

export function formatOf(machine: TextKeys): Format {
  const { programUnits, commentLength, commentCharacters } = machine;
  const digits = machine.decimals ?? usualDecimals[programUnits];
  const length = (mm: number): number => (programUnits === 'in' ? mm / mmInInch : mm);
  const plain = (text: string): string => (commentCharacters === 'capitals' ? capitals(text) : text);
  return {
    digits,
    length,
    place: (mm) => decimal(length(mm), digits),
    feed: (mmPerMinute) => decimal(length(mmPerMinute), feedDecimals[programUnits]),
    comment: (text) => comment(plain(text), commentLength),
    comments: (text) => comments(plain(text), commentLength),
  };
}

/** Digits of a number in the record, by which a length in the head is rounded alike wherever it is read. */
const recordDigits = 12;

/** Sides of a sheet for the head of its file, mm. */
export function sidesText(...sides: readonly number[]): string {
  return sides.map((side) => decimal(Number(side.toPrecision(recordDigits)), 1)).join(' x ');
}

/** Lines with their numbers; comments and the marks of the file's ends have none. */
export function numbered(lines: readonly string[], step: number): readonly string[] {
  if (step === 0) return lines;
  let count = 0;
  const perRound = Math.floor(highestNumber / step);
  return lines.map((line) => {
    if (line === '%' || line.startsWith('(')) return line;
    count = (count % perRound) + 1;
    return `N${count * step} ${line}`;
  });
}

/** The word of the path mode; bare G64 is never written. */
export function modeWord({ pathMode, pathTolerance }: TextKeys, format: Format): string {
  if (pathMode === 'continuous') return `G64 P${format.place(pathTolerance)}`;
  return pathMode === 'exact' ? 'G61' : 'G61.1';
}

export const unitNames = { mm: 'Millimetres', in: 'Inches' } as const;

export const coolantWords = { off: [], mist: ['M7'], flood: ['M8'] } as const;

/** What the end of a program depends on. */
export type RestKeys = Pick<RouterMachine, 'coolant' | 'parking'>;

/** Lines that bring the machine to rest once nothing turns or burns. */
export function atRest({ coolant, parking }: RestKeys, format: Format): string[] {
  return [
    ...(coolant === 'off' ? [] : ['M9']),
    ...(parking === undefined ? [] : [`G0 X${format.place(parking.x)} Y${format.place(parking.y)}`]),
  ];
}
