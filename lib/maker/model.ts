/**
 * Parts and sheets as Maker models: plain objects for people who script with makerjs. Lines, arcs and
 * circles in millimetres, y up, each on the layer of its operation.
 */
import type { IModel, IPath, IPathArc, IPathCircle, IPathLine } from 'makerjs';
import { edgesOf, edgesOfPath, type Edge } from '../geometry/index.js';
import {
  type CutSheetToDraw,
  type DrawnEntity,
  type PartToDraw,
  partEntities,
  sheetEntities,
} from '../output/index.js';

const degrees = (radians: number): number => (radians * 180) / Math.PI;

/** An edge as a Maker path; an arc runs anticlockwise there, whichever way the edge runs. */
function pathOf(edge: Edge): IPathLine | IPathArc {
  if (edge.kind === 'straight')
    return { type: 'line', origin: [edge.from.x, edge.from.y], end: [edge.to.x, edge.to.y] };
  const { centre, radius, startAngle, sweep } = edge;
  const start = sweep > 0 ? startAngle : startAngle + sweep;
  return {
    type: 'arc',
    origin: [centre.x, centre.y],
    radius,
    startAngle: degrees(start),
    endAngle: degrees(start + Math.abs(sweep)),
  };
}

function pathsOf(entity: DrawnEntity): IPath[] {
  if (entity.kind === 'circle') {
    const circle: IPathCircle = { type: 'circle', origin: [entity.x, entity.y], radius: entity.diameter / 2 };
    return [circle];
  }
  return (entity.closed ? edgesOf(entity.vertices) : edgesOfPath(entity.vertices)).map(pathOf);
}

/** One model per line, in order: `1 scribe`, `2 drill-4mm`, `3 outline rib 2`. */
function modelOf(entities: readonly DrawnEntity[]): IModel {
  const models = entities.map((entity, i): [string, IModel] => {
    const title = entity.kind === 'path' && entity.title !== undefined ? ` ${entity.title}` : '';
    const paths = pathsOf(entity).map((path, k) => [String(k + 1), path] as const);
    return [`${i + 1} ${entity.layer}${title}`, { layer: entity.layer, paths: Object.fromEntries(paths) }];
  });
  return { units: 'mm', models: Object.fromEntries(models) };
}

/**
 * A part as a Maker model, at its true, finished size and in its own axes, lettering and scribes included.
 * @throws RangeError for a label without height
 */
export function partModel(part: PartToDraw): IModel {
  return modelOf(partEntities(part));
}

/**
 * A sheet as a Maker model: what the machine runs, compensated as its files are, in cutting order.
 * @throws RangeError for a drill or countersink without centre or diameter
 */
export function sheetModel(sheet: CutSheetToDraw): IModel {
  return modelOf(sheetEntities(sheet));
}
