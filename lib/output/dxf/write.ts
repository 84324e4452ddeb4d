/**
 * Drawings as DXF, by the library dxf-writer (group codes: Autodesk, DXF Reference, edition of 2012). Two things are
 * added to it: entities stay in cutting order, where the library sorts them by layer; and a layer has its colour both
 * as an index and as a true colour.
 */
import Dxf from 'dxf-writer/src/Drawing.js';
import Handle from 'dxf-writer/src/Handle.js';
import Layer, { type Shape, type TagsManager } from 'dxf-writer/src/Layer.js';
import { decimal } from '../decimal.js';
import { keyOf } from '../key.js';
import type { Drawing, DrawingWriter } from '../types.js';
import { nearestIndex, trueColour } from './colour-index.js';

/** A nanometre. */
const length = (value: number): string => decimal(value, 6);
/** A ratio, which needs more decimals than a length to place an arc as well. */
const bulge = (value: number): string => decimal(value, 12);

/** A layer whose shapes go into one list with those of all others. */
class OrderedLayer extends Layer {
  readonly #colour: string;
  readonly #order: Shape[];

  constructor(name: string, colour: string, order: Shape[]) {
    super(name, nearestIndex(colour), 'CONTINUOUS');
    this.#colour = colour;
    this.#order = order;
  }

  override addShape(shape: Shape): void {
    shape.layer = this;
    this.#order.push(shape);
  }

  override tags(manager: TagsManager): void {
    super.tags(manager);
    manager.push(420, trueColour(this.#colour));
  }
}

/** Text of a comment: printable ASCII, as a line break would begin a tag of its own. */
function comment(text: string): string {
  return `999\n${text.replace(/[^\x20-\x7e]/g, '?').slice(0, 250)}\n`;
}

function documentOf({ width, height, layers, entities }: Drawing): Dxf {
  // the same drawing gets the same handles, whatever was written before it
  Handle.seed = 0;
  const dxf = new Dxf();
  dxf.setUnits('Millimeters');
  dxf.header(
    'EXTMIN',
    [10, 20, 30].map((code) => [code, '0'] as const),
  );
  dxf.header('EXTMAX', [
    [10, length(width)],
    [20, length(height)],
    [30, '0'],
  ]);
  // layer 0, which every file has and nothing stands on, keeps the list
  const order = dxf.layers['0']?.shapes ?? [];
  for (const { name, colour } of layers) dxf.layers[name] = new OrderedLayer(name, colour, order);
  for (const entity of entities) {
    if (dxf.layers[entity.layer] === undefined) throw new RangeError(`the drawing lists no layer ${entity.layer}`);
    dxf.setActiveLayer(entity.layer);
    if (entity.kind === 'circle') dxf.drawCircle(length(entity.x), length(entity.y), length(entity.diameter / 2));
    else
      dxf.drawPolyline(
        entity.vertices.map((v) => [length(v.x), length(v.y), ...(v.bulge === 0 ? [] : [bulge(v.bulge)])]),
        entity.closed,
      );
  }
  return dxf;
}

/**
 * A drawing as a DXF file: millimetres, y up; paths as LWPOLYLINE with bulges, drills as CIRCLE, each on the layer of
 * its operation, in cutting order; a key to the layers at its head.
 * @throws RangeError for a number that is not finite, or what is no colour
 */
export const writeDxf: DrawingWriter = (drawing) => {
  const head = [drawing.title, ...keyOf(drawing)].map(comment).join('');
  return `${head}${documentOf(drawing).toDxfString()}\n`;
};
