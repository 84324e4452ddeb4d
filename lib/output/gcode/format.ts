/** Numbers, comments and lines as a machine's controller reads them. */
import type { Move, Point3, RouterMachine } from '../../machining/index.js';
import { decimal } from '../decimal.js';
import { comment, comments } from './words.js';

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
  return text.toUpperCase().replace(/[^A-Z0-9 .,:;=+/-]/g, ' ');
}

export function formatOf(machine: RouterMachine): Format {
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

/**
 * A move as one or more: an arc as short lines that stand off it by at most `tolerance` (mm). A chord over the angle w
 * stands off by r (1 - cos(w/2)).
 */
export function inLines(move: Move, from: Point3 | null, tolerance: number): readonly Move[] {
  if (move.kind !== 'arc' || from === null) return [move];
  const { to, centre, clockwise, feed } = move;
  const radius = Math.hypot(from.x - centre.x, from.y - centre.y);
  const start = Math.atan2(from.y - centre.y, from.x - centre.x);
  const end = Math.atan2(to.y - centre.y, to.x - centre.x);
  const turn = 2 * Math.PI;
  const raw = (clockwise ? start - end : end - start) % turn;
  const sweep = raw <= 1e-9 ? raw + turn : raw;
  const widest = radius <= tolerance ? Math.PI / 2 : Math.min(Math.PI / 2, 2 * Math.acos(1 - tolerance / radius));
  const count = Math.max(1, Math.ceil(sweep / widest));
  return Array.from({ length: count }, (_, i): Move => {
    if (i === count - 1) return { kind: 'line', to, feed };
    const angle = start + ((clockwise ? -1 : 1) * sweep * (i + 1)) / count;
    const z = from.z + ((to.z - from.z) * (i + 1)) / count;
    return {
      kind: 'line',
      to: { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle), z },
      feed,
    };
  });
}
