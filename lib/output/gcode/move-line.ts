/** One move as a line of a file. */
import type { Point } from '../../geometry/index.js';
import type { Move, Point3 } from '../../machining/index.js';
import type { Format } from './format.js';
import { word } from './words.js';

export interface Written {
  /** As written: what the reader of the file knows. */
  x: string;
  y: string;
  z: string;
  motion: string;
  feed: string;
}

/** Nothing is known of where the tool is. */
export const unknown = (): Written => ({ x: '', y: '', z: '', motion: '', feed: '' });

/** From here on both ends of an arc differ too much in their distance from its centre, mm; controllers refuse 2 µm. */
const maxDisagreement = 0.0015;

/**
 * The centre of an arc as printed, from its start: rounded, or where the ends as printed then differ too much in their
 * distance from it, the place next to it for which they differ least.
 * @param chord from the printed start to the printed end
 */
function agreeing(centre: Point, chord: Point, { digits, length }: Format): Point {
  const scale = 10 ** digits;
  const rounded = { x: Math.round(centre.x * scale), y: Math.round(centre.y * scale) };
  const off = ({ x, y }: Point): number => Math.abs(Math.hypot(chord.x - x, chord.y - y) - Math.hypot(x, y));
  const nearest = [0, -1, 1].flatMap((dx) =>
    [0, -1, 1].map((dy) => ({ x: (rounded.x + dx) / scale, y: (rounded.y + dy) / scale })),
  );
  const [first = centre] = nearest;
  if (off(first) <= length(maxDisagreement)) return first;
  return nearest.reduce((best, one) => (off(one) < off(best) ? one : best));
}

/** Words of one move; nothing when the tool stands there already, to the last decimal. */
export function moveLine(move: Move, from: Point3 | null, written: Written, format: Format): string | null {
  const { to } = move;
  const x = format.place(to.x);
  const y = format.place(to.y);
  const z = format.place(to.z);
  const still = x === written.x && y === written.y;
  if (still && z === written.z) return null;
  const words: string[] = [];
  // an arc whose ends fall together in print would read as a full turn
  const arc = move.kind === 'arc' && !still && from !== null ? move : null;
  const motion = move.kind === 'rapid' ? 'G0' : arc === null ? 'G1' : arc.clockwise ? 'G2' : 'G3';
  if (motion !== written.motion) words.push(motion);
  if (arc !== null || x !== written.x) words.push(`X${x}`);
  if (arc !== null || y !== written.y) words.push(`Y${y}`);
  if (z !== written.z) words.push(`Z${z}`);
  if (arc !== null) {
    // the centre is given from where the file has the tool, so that rounding does not add up
    const centre = {
      x: format.length(arc.centre.x) - Number(written.x),
      y: format.length(arc.centre.y) - Number(written.y),
    };
    const chord = { x: Number(x) - Number(written.x), y: Number(y) - Number(written.y) };
    const { x: i, y: j } = agreeing(centre, chord, format);
    words.push(word('I', i, format.digits), word('J', j, format.digits));
  }
  if (move.kind !== 'rapid') {
    const feed = format.feed(move.feed);
    if (feed !== written.feed) words.push(`F${feed}`);
    written.feed = feed;
  }
  Object.assign(written, { x, y, z, motion });
  return words.join(' ');
}
