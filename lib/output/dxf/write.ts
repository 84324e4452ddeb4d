import type { Drawing, DrawingWriter, DrawnEntity } from '../types.js';
import { objectTags } from './objects.js';
import { blockTags, type NewHandle, type Spaces, tableTags } from './tables.js';
import { dxfText, pointTags, type Tag } from './tags.js';

/** $INSUNITS for millimetres; $MEASUREMENT for metric. */
const MILLIMETRES = 4;
const METRIC = 1;

function headerTags({ width, height }: Drawing, nextHandle: string): Tag[] {
  return [
    [0, 'SECTION'],
    [2, 'HEADER'],
    // the first version whose layers know true colours
    [9, '$ACADVER'],
    [1, 'AC1018'],
    [9, '$DWGCODEPAGE'],
    [3, 'ANSI_1252'],
    [9, '$INSUNITS'],
    [70, MILLIMETRES],
    [9, '$MEASUREMENT'],
    [70, METRIC],
    [9, '$EXTMIN'],
    ...pointTags(10, 0, 0, 0),
    [9, '$EXTMAX'],
    ...pointTags(10, width, height, 0),
    [9, '$LIMMIN'],
    ...pointTags(10, 0, 0),
    [9, '$LIMMAX'],
    ...pointTags(10, width, height),
    [9, '$HANDSEED'],
    [5, nextHandle],
    [0, 'ENDSEC'],
  ];
}

function entityTags(entity: DrawnEntity, space: string, newHandle: NewHandle): Tag[] {
  const common = (type: string): Tag[] => [
    [0, type],
    [5, newHandle()],
    [330, space],
    [100, 'AcDbEntity'],
    [8, entity.layer],
  ];
  if (entity.kind === 'circle') {
    return [
      ...common('CIRCLE'),
      [100, 'AcDbCircle'],
      ...pointTags(10, entity.x, entity.y, 0),
      [40, entity.diameter / 2],
    ];
  }
  return [
    ...common('LWPOLYLINE'),
    [100, 'AcDbPolyline'],
    [90, entity.vertices.length],
    [70, entity.closed ? 1 : 0],
    [43, 0],
    ...entity.vertices.flatMap(({ x, y, bulge }): Tag[] =>
      bulge === 0 ? pointTags(10, x, y) : [...pointTags(10, x, y), [42, bulge]],
    ),
  ];
}

/** Every tag of the file, in order: what `writeDxf` serialises. */
export function dxfTags(drawing: Drawing): Tag[] {
  let given = 0;
  const newHandle = () => (++given).toString(16).toUpperCase();
  const spaces: Spaces = {
    model: newHandle(),
    paper: newHandle(),
    modelLayout: newHandle(),
    paperLayout: newHandle(),
    plotStyle: newHandle(),
  };
  const body: Tag[] = [
    [0, 'SECTION'],
    [2, 'CLASSES'],
    [0, 'ENDSEC'],
    ...tableTags(drawing, spaces, newHandle),
    ...blockTags(spaces, newHandle),
    [0, 'SECTION'],
    [2, 'ENTITIES'],
    ...drawing.entities.flatMap((entity) => entityTags(entity, spaces.model, newHandle)),
    [0, 'ENDSEC'],
    ...objectTags(drawing, spaces, newHandle),
    [0, 'EOF'],
  ];
  // the seed of further handles stands at the head, and is known only now
  return [...headerTags(drawing, newHandle()), ...body];
}

/**
 * A drawing as a DXF file (version AC1018, group codes by Autodesk's DXF Reference): millimetres, y up; paths as
 * LWPOLYLINE with bulges, drills as CIRCLE, each on the layer of its operation, in cutting order.
 * @throws RangeError for a number that is not finite, or a layer name that is not printable ASCII
 */
export const writeDxf: DrawingWriter = (drawing) => dxfText(dxfTags(drawing));
