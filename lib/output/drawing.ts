/** Drawings of sheets and of single parts, for every writer to serialise. */
import {
  type Axes,
  type Vertex,
  bounds,
  commandedPath,
  commandedPoint,
  boundsOfAll,
  type Contour,
  rectangle,
} from '../geometry/index.js';
import type { CutOperation } from '../machining/index.js';
import { type Hole, holesUp, linesUp, pocketsUp, textStrokes, textsUp } from '../part/index.js';
import { decimal } from './decimal.js';
import { layerOrder, operationOf } from './key.js';
import { splitArcs } from './split-arcs.js';
import type { Colours, CutSheetToDraw, Drawing, DrawnEntity, DrawnPath, Layer, PartToDraw } from './types.js';

/** Free space around a part that is drawn by itself, so that no line lies on the drawing's edge, mm. */
const PART_MARGIN = 5;

/** Layer of a drill: `drill-4mm`, `drill-3.175mm`. Diameter in mm, written to 1 µm. */
export function drillLayer(diameter: number): string {
  return `drill-${decimal(diameter, 3)}mm`;
}

/** Layer of a pocket with its depth, which no drawing shows: `pocket-4mm`. Depth in mm, written to 1 µm. */
function pocketLayer(depth: number): string {
  return `pocket-${decimal(depth, 3)}mm`;
}

/** The layers in use; drills of several diameters and pockets of several depths in the order in which they are first met. */
function layersOf(entities: readonly DrawnEntity[], colours: Colours): Layer[] {
  const names = [...new Set(entities.map(({ layer }) => layer))];
  return layerOrder.flatMap((operation) =>
    names.filter((name) => operationOf(name) === operation).map((name) => ({ name, colour: colours[operation] })),
  );
}

/** A path to draw. Arcs of more than a half circle are divided, because many readers get them wrong. */
function pathOf(layer: string, closed: boolean, vertices: readonly Vertex[], title?: string): DrawnPath {
  const divided = splitArcs(vertices, closed, Math.PI);
  return { kind: 'path', layer, closed, vertices: divided, ...(title === undefined ? {} : { title }) };
}

/** Where lines have to be drawn for a machine whose axes may not be true. */
interface Commanded {
  readonly path: (vertices: readonly Vertex[], closed: boolean) => readonly Vertex[];
  readonly point: (vertex: Vertex) => { readonly x: number; readonly y: number };
}

function commandedBy(axes: Axes | undefined): Commanded {
  if (axes === undefined) return { path: (vertices) => vertices, point: (vertex) => vertex };
  return {
    path: (vertices, closed) => commandedPath(axes, vertices, closed),
    point: (vertex) => commandedPoint(axes, vertex),
  };
}

function ofOperation(cut: CutOperation, { path, point }: Commanded): DrawnEntity {
  const { operation, closed, vertices, bore } = cut;
  if (operation === 'drill' || operation === 'countersink') {
    const centre = vertices[0];
    if (centre === undefined || cut.diameter === undefined || !(cut.diameter > 0))
      throw new RangeError(`a ${operation} of ${cut.part} lacks its centre or its diameter`);
    const layer = operation === 'drill' ? drillLayer(cut.diameter) : operation;
    // what the tool runs round is a path; a circle says: go in here with a bit of this diameter
    if (bore !== undefined) return pathOf(layer, true, path(bore, true));
    const { x, y } = point(centre);
    return { kind: 'circle', layer, x, y, diameter: cut.diameter };
  }
  if (operation === 'pocket') {
    if (cut.depth === 'through') throw new RangeError(`a pocket of ${cut.part} lacks its depth`);
    return pathOf(pocketLayer(cut.depth), closed, path(vertices, closed));
  }
  const title = operation === 'outline' ? `${cut.part} ${cut.copy}` : undefined;
  return pathOf(operation, closed, path(vertices, closed), title);
}

/**
 * Everything that is drawn of a sheet, in cutting order: the edge of the stock first (unless a laser would cut along
 * it), then lettering, then the operations. Where the axes of the machine are not true, all that is cut or marked is
 * drawn where the machine has to be sent; the edge of the stock stays as it is.
 * @param edge the outline of the stock when it is no rectangle of the sheet's width and height
 * @throws RangeError for a drill or countersink without centre or diameter, or a pocket without depth
 */
export function sheetEntities(sheet: CutSheetToDraw, edge?: readonly Vertex[]): DrawnEntity[] {
  const { width, height, process, marks = [], operations } = sheet;
  const axes = process.kind === 'hand' ? undefined : process.axes;
  const commanded = commandedBy(axes);
  return [
    ...(process.kind === 'laser' ? [] : [pathOf('sheet-edge', true, edge ?? rectangle(0, 0, width, height))]),
    ...marks.map(({ vertices }) => pathOf('scribe', false, commanded.path(vertices, false))),
    ...operations.map((operation) => ofOperation(operation, commanded)),
  ];
}

/** A sheet as a drawing; parameters and errors as for `sheetEntities`. */
export function drawSheet(sheet: CutSheetToDraw, colours: Colours, edge?: readonly Vertex[]): Drawing {
  const { id, width, height } = sheet;
  const entities = sheetEntities(sheet, edge);
  return { title: id, width, height, layers: layersOf(entities, colours), entities };
}

/**
 * Everything that is drawn of one part, in its own axes at true, finished size. The number of the copy (`{n}` in a
 * label) is left blank, to be filled in by hand.
 * @throws RangeError for a label without height
 */
export function partEntities(part: PartToDraw): DrawnEntity[] {
  const lettering = textsUp(part).flatMap((mark) => textStrokes({ ...mark, text: mark.text.replaceAll('{n}', '_') }));
  const ring = (layer: string, vertices: Contour, title?: string) => pathOf(layer, true, vertices, title);
  const circles = (layerOf: (hole: Hole) => readonly [string, number | undefined]) =>
    holesUp(part).flatMap((hole): DrawnEntity[] => {
      const [layer, diameter] = layerOf(hole);
      return diameter === undefined ? [] : [{ kind: 'circle', layer, x: hole.x, y: hole.y, diameter }];
    });
  return [
    ...linesUp(part).map(({ closed, vertices }) => pathOf('scribe', closed, vertices)),
    ...lettering.map((stroke) => pathOf('scribe', false, stroke)),
    ...circles(({ diameter }) => [drillLayer(diameter), diameter]),
    ...circles(({ countersink }) => ['countersink', countersink]),
    ...pocketsUp(part).map(({ ring: edge, depth }) => ring(pocketLayer(depth), edge)),
    ...part.openings.map((opening) => ring('opening', opening)),
    ring('outline', part.outline, part.name),
  ];
}

function moved(entity: DrawnEntity, dx: number, dy: number): DrawnEntity {
  if (entity.kind === 'circle') return { ...entity, x: entity.x + dx, y: entity.y + dy };
  return { ...entity, vertices: entity.vertices.map(({ x, y, bulge }) => ({ x: x + dx, y: y + dy, bulge })) };
}

/**
 * One part as a drawing of its own, moved so that it stands 5 mm clear of the edges.
 * @throws RangeError for a label without height
 */
export function drawPart(part: PartToDraw, colours: Colours): Drawing {
  const own = partEntities(part);
  const box = boundsOfAll(own.flatMap((one) => (one.kind === 'path' ? [bounds(one.vertices)] : [])));
  const entities = own.map((one) => moved(one, PART_MARGIN - box.minX, PART_MARGIN - box.minY));
  return {
    title: part.name,
    width: box.maxX - box.minX + 2 * PART_MARGIN,
    height: box.maxY - box.minY + 2 * PART_MARGIN,
    layers: layersOf(entities, colours),
    entities,
  };
}
