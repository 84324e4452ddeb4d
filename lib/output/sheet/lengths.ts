/** A long roll as a picture: its lengths below each other, so that what stands on the pieces can be read. */
import { bounds, placeVertices } from '../../geometry/index.js';
import type { LaidSheet, Part, PlacedPart } from '../../part/index.js';

/** What is longer than this many times its width is shown in several lengths. */
const LONGEST = 9;
/** Room between two lengths, of the roll's width: it holds a line of text. */
const GAP = 0.3;

/** A stretch of the sheet with the pieces whose middle lies on it, whole. */
export interface Length {
  /** Along the sheet, mm from its zero. */
  readonly from: number;
  readonly to: number;
  /** Lower edge in the picture, y up. */
  readonly bottom: number;
}

export interface LaidPicture {
  readonly width: number;
  readonly height: number;
  /** From above to below; the first begins at the sheet's zero, at x = 0. */
  readonly lengths: readonly [Length, ...Length[]];
  /** In the places that they have in the picture, in the order of the sheet. */
  readonly placed: readonly PlacedPart[];
}

interface Reach {
  readonly at: PlacedPart;
  readonly from: number;
  readonly to: number;
}

function reachOf(at: PlacedPart, parts: readonly Part[]): Reach {
  const part = parts.find(({ id }) => id === at.part);
  if (part === undefined) return { at, from: at.x, to: at.x };
  const { minX, maxX } = bounds(placeVertices(part.outline, at));
  return { at, from: minX, to: maxX };
}

/** How a sheet is shown: a long one in lengths below each other, any other as it is. */
export function laidOut({ width, height, placed }: LaidSheet, parts: readonly Part[]): LaidPicture {
  const count = Math.ceil(width / (LONGEST * height));
  if (count <= 1) return { width, height, placed, lengths: [{ from: 0, to: width, bottom: 0 }] };
  const reaches = placed.map((at) => reachOf(at, parts));
  const rowOf = ({ from, to }: Reach): number => Math.min(count - 1, Math.floor((count * (from + to)) / 2 / width));
  const step = height * (1 + GAP);
  const lengthAt = (i: number): Length => {
    const own = reaches.filter((one) => rowOf(one) === i);
    return {
      from: i === 0 ? 0 : Math.min((i * width) / count, ...own.map(({ from }) => from)),
      to: i === count - 1 ? width : Math.max(((i + 1) * width) / count, ...own.map(({ to }) => to)),
      bottom: (count - 1 - i) * step,
    };
  };
  const first = lengthAt(0);
  const rest = Array.from({ length: count - 1 }, (_, i) => lengthAt(i + 1));
  const lengths = [first, ...rest] as const;
  return {
    width: Math.max(...lengths.map(({ from, to }) => to - from)),
    height: height + (count - 1) * step,
    lengths: [first, ...rest],
    placed: reaches.map((one) => {
      const { from, bottom } = lengths[rowOf(one)] ?? first;
      return { ...one.at, x: one.at.x - from, y: one.at.y + bottom };
    }),
  };
}
