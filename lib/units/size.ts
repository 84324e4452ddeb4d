import { LengthError, type LengthUnit, parseLength } from './length.js';

export interface Size {
  readonly width: number;
  readonly height: number;
}

/**
 * Reads a sheet size: `2440x1220`, `2440 x 1220 mm`, `8 ft x 4 ft`, `8x4 ft` (a unit at the end serves both).
 * @returns width by height in mm, as written
 * @throws LengthError
 */
export function parseSize(source: string, unit: LengthUnit): Size {
  const sides = source
    .trim()
    .split(/\s*[x×*]\s*/i)
    .map((side) => side.trim());
  const [first, second] = sides;
  if (sides.length !== 2 || !first || !second)
    throw new LengthError(`"${source}" is not a size`, 'write width x height, such as 2440x1220 or 8 ft x 4 ft');
  const tail = /[a-zA-Z"'″′]+$/.exec(second)?.[0];
  const bare = /^[\d./\s-]+$/.test(first) && tail !== undefined;
  const width = parseLength(bare ? `${first} ${tail}` : first, unit);
  const height = parseLength(second, unit);
  if (!(width > 0) || !(height > 0)) throw new LengthError(`"${source}" is not a size`, 'both sides must be above 0');
  return { width, height };
}
