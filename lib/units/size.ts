import { LengthError, type LengthUnit, parseLength } from './length.js';
import { commaSlip, withinTypographic } from './slips.js';
import { refuseOtherUnit, type UsualRange } from './usual.js';

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** How a text that is not a size would be one. */
function sizeHint(source: string): string {
  const [first, second, more] = source.match(/\d[\d./-]*/g) ?? [];
  const written = first !== undefined && second !== undefined && more === undefined;
  return written
    ? `write ${first} x ${second}, with a unit unless it is that of the file`
    : 'write width x height, such as 2440x1220 or 8 ft x 4 ft';
}

/**
 * Reads a sheet size: `2440x1220`, `2440 x 1220 mm`, `8 ft x 4 ft`, `8x4 ft` (a unit at the end serves both).
 * @returns width by height in mm, as written
 * @throws LengthError
 */
export function parseSize(source: string, unit: LengthUnit): Size {
  const within = withinTypographic(source);
  if (within !== null)
    throw new LengthError(`"${source}" is in typographic quotation marks`, `write ${within}, or use straight marks`);
  const comma = commaSlip(source);
  if (comma) throw new LengthError(comma.message, comma.remedy);
  const sides = source.trim().split(/\s*[x×*]\s*/i);
  const [first, second] = sides;
  if (sides.length !== 2 || !first || !second) throw new LengthError(`"${source}" is not a size`, sizeHint(source));
  const tail = /[a-zA-Z"'″′]+$/.exec(second)?.[0];
  const bare = /^[\d./\s-]+$/.test(first) && tail !== undefined;
  const width = parseLength(bare ? `${first} ${tail}` : first, unit);
  const height = parseLength(second, unit);
  if (!(width > 0) || !(height > 0)) throw new LengthError(`"${source}" is not a size`, 'both sides must be above 0');
  return { width, height };
}

/** Sides of what is sold as a sheet, or laid on the bed of a machine (mm): common practice, no source. */
const usualSides: UsualRange = [50, 6000];

/**
 * Reads a sheet size, and refuses one that another unit would make usual: `1525x1525` in an inch file.
 * @throws LengthError
 */
export function parseUsualSize(source: string, unit: LengthUnit): Size {
  const size = parseSize(source, unit);
  const sides = (other: LengthUnit) => {
    const { width, height } = parseSize(source, other);
    return [width, height];
  };
  refuseOtherUnit(source, sides, unit, usualSides);
  return size;
}
