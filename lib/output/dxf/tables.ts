/** The tables, block records and objects without which a reader that goes by the book takes no file of this version. */
import type { Drawing, Layer } from '../types.js';
import { nearestIndex, trueColour } from './colour-index.js';
import { pointTags, type Tag } from './tags.js';

/** Gives out handles, hexadecimal and each once in a file. */
export type NewHandle = () => string;

/** Handles that other sections refer to. */
export interface Spaces {
  readonly model: string;
  readonly paper: string;
  readonly modelLayout: string;
  readonly paperLayout: string;
  readonly plotStyle: string;
}

interface RecordKind {
  readonly name: string;
  readonly subclass: string;
}

/** One table with its records; each record gets its handle, owner and subclass tags. */
function table(
  kind: RecordKind,
  records: readonly { readonly tags: readonly Tag[]; readonly handle: string }[],
  owner: string,
): Tag[] {
  // the handle of a dimension style has a code of its own
  const handleCode = kind.name === 'DIMSTYLE' ? 105 : 5;
  return [
    [0, 'TABLE'],
    [2, kind.name],
    [5, owner],
    [330, '0'],
    [100, 'AcDbSymbolTable'],
    [70, records.length],
    ...(kind.name === 'DIMSTYLE' ? ([[100, 'AcDbDimStyleTable']] satisfies Tag[]) : []),
    ...records.flatMap(({ tags, handle }): Tag[] => [
      [0, kind.name],
      [handleCode, handle],
      [330, owner],
      [100, 'AcDbSymbolTableRecord'],
      [100, kind.subclass],
      ...tags,
    ]),
    [0, 'ENDTAB'],
  ];
}

function lineType(name: string): Tag[] {
  return [
    [2, name],
    [70, 0],
    [3, name === 'Continuous' ? 'Solid line' : ''],
    [72, 65],
    [73, 0],
    [40, 0],
  ];
}

function layer(name: string, colour: readonly Tag[], plotStyle: string): Tag[] {
  return [[2, name], [70, 0], ...colour, [6, 'Continuous'], [390, plotStyle]];
}

/** The layers in use, after layer 0, which every file has. */
function layerRecords(layers: readonly Layer[], plotStyle: string): Tag[][] {
  const colours = ({ colour }: Layer): Tag[] => [
    [62, nearestIndex(colour)],
    [420, trueColour(colour)],
  ];
  return [layer('0', [[62, 7]], plotStyle), ...layers.map((one) => layer(one.name, colours(one), plotStyle))];
}

/** The view with which the file opens: the whole drawing, with a little room around it. */
function view({ width, height }: Drawing): Tag[] {
  return [
    [2, '*Active'],
    [70, 0],
    ...pointTags(10, 0, 0),
    ...pointTags(11, 1, 1),
    ...pointTags(12, width / 2, height / 2),
    ...pointTags(13, 0, 0),
    ...pointTags(14, 10, 10),
    ...pointTags(15, 10, 10),
    ...pointTags(16, 0, 0, 1),
    ...pointTags(17, 0, 0, 0),
    [40, height * 1.1],
    [41, width / height],
    [42, 50],
  ];
}

/** The TABLES section. */
export function tableTags(drawing: Drawing, spaces: Spaces, newHandle: NewHandle): Tag[] {
  const make = (name: string, subclass: string, records: readonly (readonly Tag[])[]) =>
    table(
      { name, subclass },
      records.map((tags) => ({ tags, handle: newHandle() })),
      newHandle(),
    );
  return [
    [0, 'SECTION'],
    [2, 'TABLES'],
    ...make('VPORT', 'AcDbViewportTableRecord', [view(drawing)]),
    ...make('LTYPE', 'AcDbLinetypeTableRecord', ['ByBlock', 'ByLayer', 'Continuous'].map(lineType)),
    ...make('LAYER', 'AcDbLayerTableRecord', layerRecords(drawing.layers, spaces.plotStyle)),
    ...make('STYLE', 'AcDbTextStyleTableRecord', [
      [
        [2, 'Standard'],
        [70, 0],
        [40, 0],
        [41, 1],
        [50, 0],
        [71, 0],
        [42, 2.5],
        [3, 'txt'],
        [4, ''],
      ],
    ]),
    ...make('VIEW', 'AcDbViewTableRecord', []),
    ...make('UCS', 'AcDbUCSTableRecord', []),
    ...make('APPID', 'AcDbRegAppTableRecord', [
      [
        [2, 'ACAD'],
        [70, 0],
      ],
    ]),
    ...make('DIMSTYLE', 'AcDbDimStyleTableRecord', [
      [
        [2, 'Standard'],
        [70, 0],
      ],
    ]),
    ...table(
      { name: 'BLOCK_RECORD', subclass: 'AcDbBlockTableRecord' },
      [
        {
          handle: spaces.model,
          tags: [
            [2, '*Model_Space'],
            [340, spaces.modelLayout],
          ],
        },
        {
          handle: spaces.paper,
          tags: [
            [2, '*Paper_Space'],
            [340, spaces.paperLayout],
          ],
        },
      ],
      newHandle(),
    ),
    [0, 'ENDSEC'],
  ];
}

/** The BLOCKS section: the two spaces every file has, and no block besides. */
export function blockTags(spaces: Spaces, newHandle: NewHandle): Tag[] {
  const space = (name: string, record: string, inPaper: readonly Tag[]): Tag[] => [
    [0, 'BLOCK'],
    [5, newHandle()],
    [330, record],
    [100, 'AcDbEntity'],
    ...inPaper,
    [8, '0'],
    [100, 'AcDbBlockBegin'],
    [2, name],
    [70, 0],
    ...pointTags(10, 0, 0, 0),
    [3, name],
    [1, ''],
    [0, 'ENDBLK'],
    [5, newHandle()],
    [330, record],
    [100, 'AcDbEntity'],
    ...inPaper,
    [8, '0'],
    [100, 'AcDbBlockEnd'],
  ];
  return [
    [0, 'SECTION'],
    [2, 'BLOCKS'],
    ...space('*Model_Space', spaces.model, []),
    ...space('*Paper_Space', spaces.paper, [[67, 1]]),
    [0, 'ENDSEC'],
  ];
}
