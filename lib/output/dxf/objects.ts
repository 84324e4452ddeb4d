import type { Drawing } from '../types.js';
import { pointTags, type Tag } from './tags.js';
import type { NewHandle, Spaces } from './tables.js';

function dictionary(
  handle: string,
  owner: string,
  entries: readonly (readonly [name: string, handle: string])[],
): Tag[] {
  return [
    [0, 'DICTIONARY'],
    [5, handle],
    [330, owner],
    [100, 'AcDbDictionary'],
    [281, 1],
    ...entries.flatMap(([name, entry]): Tag[] => [
      [3, name],
      [350, entry],
    ]),
  ];
}

/** The OBJECTS section: the root dictionary with the layouts of both spaces and the plot style that layers name. */
export function objectTags(drawing: Drawing, spaces: Spaces, newHandle: NewHandle): Tag[] {
  const root = newHandle();
  const groups = newHandle();
  const layouts = newHandle();
  const plotStyles = newHandle();
  const layout = (name: string, handle: string, record: string, order: number): Tag[] => [
    [0, 'LAYOUT'],
    [5, handle],
    [330, layouts],
    [100, 'AcDbPlotSettings'],
    [1, ''],
    // 1024: the settings belong to the model space
    [70, order === 0 ? 1024 : 0],
    [100, 'AcDbLayout'],
    [1, name],
    [70, 1],
    [71, order],
    ...pointTags(10, 0, 0),
    ...pointTags(11, drawing.width, drawing.height),
    [330, record],
  ];
  return [
    [0, 'SECTION'],
    [2, 'OBJECTS'],
    ...dictionary(root, '0', [
      ['ACAD_GROUP', groups],
      ['ACAD_LAYOUT', layouts],
      ['ACAD_PLOTSTYLENAME', plotStyles],
    ]),
    ...dictionary(groups, root, []),
    ...dictionary(layouts, root, [
      ['Model', spaces.modelLayout],
      ['Layout1', spaces.paperLayout],
    ]),
    ...layout('Model', spaces.modelLayout, spaces.model, 0),
    ...layout('Layout1', spaces.paperLayout, spaces.paper, 1),
    [0, 'ACDBDICTIONARYWDFLT'],
    [5, plotStyles],
    [330, root],
    [100, 'AcDbDictionary'],
    [281, 1],
    [3, 'Normal'],
    [350, spaces.plotStyle],
    [100, 'AcDbDictionaryWithDefault'],
    [340, spaces.plotStyle],
    [0, 'ACDBPLACEHOLDER'],
    [5, spaces.plotStyle],
    [330, plotStyles],
    [0, 'ENDSEC'],
  ];
}
