/** A Maker model as the user's own outlines: read, joined, checked and nested like a drawing. */
import makerjs, { type IModel, type IPath, type IPathArc, type IPathCircle, type IPathLine } from 'makerjs';
import { bulgeOfSweep, type Path } from '../geometry/index.js';
import {
  type ExtraDrawing,
  ExtraFault,
  type ExtraSource,
  placeText,
  type ReadingOptions,
  RunList,
} from '../parts/index.js';

/** Our own layers that are not cuts. */
const uncut = new Set(['scribe', 'countersink', 'sheet-edge']);

function unitOf({ units }: IModel, options: ReadingOptions, list: RunList): number {
  const known = Object.values<string | undefined>(makerjs.unitType).includes(units);
  const stated =
    units !== undefined && known ? makerjs.units.conversionScale(units, makerjs.unitType.Millimeter) : null;
  if (options.unit !== undefined) {
    if (stated !== null && Math.abs(stated - options.unit) > 1e-9 * stated)
      list.warn(
        'extra-two-units',
        `it states ${stated} mm per unit, but \`unit\` makes a drawing unit ${options.unit} mm, which was used`,
      );
    return options.unit;
  }
  if (stated !== null) return stated;
  throw new ExtraFault(
    'extra-no-unit',
    'the model states no known unit',
    'set its `units`, such as `makerjs.unitType.Millimeter`, or give `unit`',
  );
}

/** A path of a model as a run, scaled and moved; null for a kind that is none of Maker's three. */
function runOf(path: IPath, offset: makerjs.IPoint, scale: number): { closed: boolean; vertices: Path } | null {
  const place = (point: makerjs.IPoint): { x: number; y: number } => ({
    x: ((point[0] ?? NaN) + (offset[0] ?? 0)) * scale,
    y: ((point[1] ?? NaN) + (offset[1] ?? 0)) * scale,
  });
  const centre = place(path.origin);
  const onCircle = (radius: number, degrees: number): { x: number; y: number } => {
    const angle = (degrees * Math.PI) / 180;
    return { x: centre.x + scale * radius * Math.cos(angle), y: centre.y + scale * radius * Math.sin(angle) };
  };
  switch (path.type) {
    case 'line':
      return {
        closed: false,
        vertices: [
          { ...centre, bulge: 0 },
          { ...place((path as IPathLine).end), bulge: 0 },
        ],
      };
    case 'arc': {
      const arc = path as IPathArc;
      const end = makerjs.angle.ofArcEnd(arc);
      // in halves, so that no arc sweeps more than a half circle
      const middle = (arc.startAngle + end) / 2;
      const bulge = bulgeOfSweep(((middle - arc.startAngle) * Math.PI) / 180);
      return {
        closed: false,
        vertices: [
          { ...onCircle(arc.radius, arc.startAngle), bulge },
          { ...onCircle(arc.radius, middle), bulge },
          { ...onCircle(arc.radius, end), bulge: 0 },
        ],
      };
    }
    case 'circle': {
      const { radius } = path as IPathCircle;
      return {
        closed: true,
        vertices: [
          { ...onCircle(radius, 0), bulge: 1 },
          { ...onCircle(radius, 180), bulge: 1 },
        ],
      };
    }
    default:
      return null;
  }
}

function drawingOf(model: IModel, options: ReadingOptions): ExtraDrawing {
  const list = new RunList();
  const scale = unitOf(model, options, list);
  const left = new Map<string, number>();
  makerjs.model.walk(model, {
    onPath: ({ pathContext, offset, layer, routeKey }) => {
      if (list.full) return;
      if (uncut.has(layer)) {
        left.set(layer, (left.get(layer) ?? 0) + 1);
        return;
      }
      const what = `the ${pathContext.type} ${routeKey}`;
      const run = runOf(pathContext, offset, scale);
      if (run) list.add({ what, ...run, deviation: 0 });
      else list.error('extra-entity', `${what} is not supported`, 'make outlines of lines, arcs and circles');
    },
  });
  for (const [layer, count] of left)
    list.warn('extra-left-out', `${count} paths on layer ${layer} left out, as they are not cuts`);
  return {
    runs: list.runs,
    findings: list.findings,
    shown: ({ x, y }) => placeText(x / scale, y / scale),
  };
}

/**
 * A Maker model to be nested along with the dish: pass it to `buildJob` under the name that the design's `extra`
 * gives it. Closed chains of its paths become parts, chains within them openings, small circles holes; what is wrong
 * with it is reported as for a DXF or SVG file. The unit is the model's own.
 */
export function makerExtra(model: IModel): ExtraSource {
  return (options) => drawingOf(model, options);
}
