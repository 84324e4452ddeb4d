/** The key to a drawing: what is to be done along lines of each colour. In the files, in the book, on the terminal. */
import type { Operation } from '../part/index.js';
import type { Colours, Drawing, Layer } from './types.js';

/** What is done first stands first: marks while all is fixed, outlines when nothing else is left to do. */
export const layerOrder: readonly (Operation | 'sheet-edge')[] = [
  'sheet-edge',
  'scribe',
  'drill',
  'countersink',
  'pocket',
  'opening',
  'outline',
];

const meanings: Readonly<Record<Operation | 'sheet-edge', string>> = {
  'sheet-edge': 'edge of the sheet, for reference: never cut',
  scribe: 'mark, not a cut: scratch, score or engrave',
  drill: 'hole: drill at a circle, cut along a path',
  countersink: 'countersink to this diameter: do not cut along the line',
  pocket: 'clear to the depth in the name, waste inside: do not cut through',
  opening: 'cut through, waste inside',
  outline: 'cut through, waste outside: after everything else on the part',
};

/** What an operation is, in a few words. */
export const shortMeaning = (operation: Operation | 'sheet-edge'): string => meanings[operation].split(':')[0] ?? '';

/**
 * The operation of a layer: `drill-4mm` is a drill, `pocket-4mm` a pocket.
 * @throws RangeError for a name that is no layer
 */
export function operationOf(layer: string): Operation | 'sheet-edge' {
  const found = layerOrder.find((operation) => layer === operation || layer.startsWith(`${operation}-`));
  if (found === undefined) throw new RangeError(`no operation has the layer ${layer}`);
  return found;
}

const line = ({ name, colour }: Layer): string => `${name} ${colour}: ${meanings[operationOf(name)]}`;

/** What a machine that sorts lines by their colour has to know. */
const orderNote = 'Cut in the order of the file: a part within an opening of another is cut free before that opening.';

/** The key of one drawing: what to do along the lines of each layer in use, and in which order. */
export function keyOf({ layers }: Drawing): string[] {
  return [...layers.map(line), orderNote];
}

/** The key of a whole job: a line for each operation, whether or not a sheet holds it. */
export function operationKey(colours: Colours): string[] {
  return [...layerOrder.map((name) => line({ name, colour: colours[name] })), orderNote];
}
