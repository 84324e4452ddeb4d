/** One move as a line of a file. */
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
    const { centre } = arc;
    const digits = format.digits;
    words.push(word('I', format.length(centre.x) - Number(written.x), digits));
    words.push(word('J', format.length(centre.y) - Number(written.y), digits));
  }
  if (move.kind !== 'rapid') {
    const feed = format.feed(move.feed);
    if (feed !== written.feed) words.push(`F${feed}`);
    written.feed = feed;
  }
  Object.assign(written, { x, y, z, motion });
  return words.join(' ');
}
