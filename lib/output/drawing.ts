/** Drawings of sheets and of single parts, for every writer to serialise. */
import { type Vertex, bounds, boundsOfAll, rectangle, strokeText } from '../geometry/index.js';
import { decimal } from './decimal.js';
import { layerOrder, operationOf } from './key.js';
import { splitArcs } from './split-arcs.js';
import type {
  Colours,
  CutSheetToDraw,
  Drawing,
  DrawnEntity,
  DrawnPath,
  Layer,
  PartToDraw,
  SheetOperation,
} from './types.js';

/** Free space around a part that is drawn by itself, so that no line lies on the drawing's edge, mm. */
const PART_MARGIN = 5;

/** Layer of a drill: `drill-4mm`, `drill-3.175mm`. Diameter in mm, written to 1 µm. */
export function drillLayer(diameter: number): string {
  return `drill-${decimal(diameter, 3)}mm`;
}

/** The layers in use; drills of several diameters in the order in which they are first met. */
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

function ofOperation(cut: SheetOperation): DrawnEntity {
  const { operation, closed, vertices, bore } = cut;
  if (operation === 'drill' || operation === 'countersink') {
    const centre = vertices[0];
    if (centre === undefined || cut.diameter === undefined || !(cut.diameter > 0))
      throw new RangeError(`a ${operation} of ${cut.part} lacks its centre or its diameter`);
    const layer = operation === 'drill' ? drillLayer(cut.diameter) : operation;
    // what the tool runs round is a path; a circle says: go in here with a bit of this diameter
    if (bore !== undefined) return pathOf(layer, true, bore);
    return { kind: 'circle', layer, x: centre.x, y: centre.y, diameter: cut.diameter };
  }
  const title = operation === 'outline' ? `${cut.part} ${cut.copy}` : undefined;
  return pathOf(operation, closed, vertices, title);
}

/**
 * A sheet with everything that is cut from it. The edge of the stock comes first (unless a laser would cut along it),
 * then lettering, then the operations in their order.
 * @param edge the outline of the stock when it is no rectangle of the sheet's width and height
 * @throws RangeError for a drill or countersink without centre or diameter
 */
export function drawSheet(sheet: CutSheetToDraw, colours: Colours, edge?: readonly Vertex[]): Drawing {
  const { width, height } = sheet;
  const entities = [
    ...(sheet.process.kind === 'laser' ? [] : [pathOf('sheet-edge', true, edge ?? rectangle(0, 0, width, height))]),
    ...(sheet.marks ?? []).map(({ vertices }) => pathOf('scribe', false, vertices)),
    ...sheet.operations.map(ofOperation),
  ];
  return { title: sheet.id, width, height, layers: layersOf(entities, colours), entities };
}

/**
 * One part by itself at true, finished size, moved so that it stands 5 mm clear of the drawing's edges. The number of
 * the copy (`{n}` in a label) is left blank, to be filled in by hand.
 * @throws RangeError for a part without contours, or a label without height
 */
export function drawPart(part: PartToDraw, colours: Colours): Drawing {
  const lettering = part.labels.flatMap(({ text, x, y, height, angle }) =>
    strokeText(text.replaceAll('{n}', '_'), { x, y }, height, angle),
  );
  const box = boundsOfAll([...part.contours.map(({ vertices }) => vertices), ...lettering].map(bounds));
  const dx = PART_MARGIN - box.minX;
  const dy = PART_MARGIN - box.minY;
  const moved = (vertices: readonly Vertex[]) => vertices.map(({ x, y, bulge }) => ({ x: x + dx, y: y + dy, bulge }));
  const paths = (operation: 'outline' | 'opening' | 'scribe') =>
    part.contours
      .filter((contour) => contour.operation === operation)
      .map(({ closed, vertices }) =>
        pathOf(operation, closed, moved(vertices), operation === 'outline' ? part.name : undefined),
      );
  const entities: DrawnEntity[] = [
    ...paths('scribe'),
    ...lettering.map((stroke) => pathOf('scribe', false, moved(stroke))),
    ...part.drills.map(({ x, y, diameter }): DrawnEntity => {
      return { kind: 'circle', layer: drillLayer(diameter), x: x + dx, y: y + dy, diameter };
    }),
    ...part.drills.flatMap(({ x, y, countersink }): DrawnEntity[] =>
      countersink === undefined
        ? []
        : [{ kind: 'circle', layer: 'countersink', x: x + dx, y: y + dy, diameter: countersink }],
    ),
    ...paths('opening'),
    ...paths('outline'),
  ];
  return {
    title: part.name,
    width: box.maxX - box.minX + 2 * PART_MARGIN,
    height: box.maxY - box.minY + 2 * PART_MARGIN,
    layers: layersOf(entities, colours),
    entities,
  };
}
