import { edgeArc } from '../geometry/index.js';
import { decimal } from './decimal.js';
import { keyOf } from './key.js';
import { splitArcs } from './split-arcs.js';
import type { Drawing, DrawingWriter, DrawnEntity, DrawnPath } from './types.js';
import { escapeXml } from './xml.js';

/**
 * Thin enough for laser drivers to take as a cut and not as a shape to be filled, mm; where the effect below is known,
 * as nearly everywhere, in pixels of the screen at any zoom, so that a line shows.
 */
const STROKE = 0.5;
/** SVG 2, 8.12: on each shape, because it is not inherited. It moves no line. */
const EFFECT = 'vector-effect="non-scaling-stroke"';

/** Every number of the file: mm to a nanometre. */
const number = (value: number): string => decimal(value, 6);

/** Path data. SVG counts y downwards, so y is turned over here, and an anticlockwise arc has sweep flag 0. */
function pathData({ vertices, closed }: DrawnPath, height: number): string {
  // up to a quarter circle, the rounding of the radius moves no point of the arc by more than itself
  const divided = splitArcs(vertices, closed, Math.PI / 2);
  const last = divided.length - 1;
  const parts = divided.map((vertex, i) => {
    const next = divided[i + 1] ?? divided[0]!;
    const start = i === 0 ? `M${number(vertex.x)} ${number(height - vertex.y)}` : '';
    if (i === last && !closed) return start;
    const end = `${number(next.x)} ${number(height - next.y)}`;
    const edge = edgeArc(vertex, next);
    if (edge.kind === 'arc') {
      const radius = number(edge.radius);
      return `${start}A${radius} ${radius} 0 0 ${vertex.bulge > 0 ? 0 : 1} ${end}`;
    }
    return i === last ? start : `${start}L${end}`;
  });
  return parts.join('') + (closed ? 'Z' : '');
}

function element(entity: DrawnEntity, height: number): string {
  if (entity.kind === 'circle') {
    return `<circle cx="${number(entity.x)}" cy="${number(height - entity.y)}" r="${number(entity.diameter / 2)}" ${EFFECT}/>`;
  }
  const data = `<path d="${pathData(entity, height)}" ${EFFECT}`;
  return entity.title === undefined ? `${data}/>` : `${data}><title>${escapeXml(entity.title)}</title></path>`;
}

/** The entities in their order, as runs of one layer: a laser that takes the file from top to bottom keeps the order. */
function runsOf(entities: readonly DrawnEntity[]): DrawnEntity[][] {
  const runs: DrawnEntity[][] = [];
  for (const entity of entities) {
    const run = runs.at(-1);
    if (run?.[0]?.layer === entity.layer) run.push(entity);
    else runs.push([entity]);
  }
  return runs;
}

function group(run: readonly DrawnEntity[], { height, layers }: Drawing): string {
  const layer = layers.find(({ name }) => name === run[0]?.layer);
  if (layer === undefined) throw new RangeError('an entity stands on a layer that the drawing does not list');
  const lines = run.map((entity) => `    ${element(entity, height)}\n`);
  return `  <g class="${escapeXml(layer.name)}" stroke="${escapeXml(layer.colour)}">\n${lines.join('')}  </g>\n`;
}

/**
 * A drawing as an SVG file at true size: user units are mm, y is turned over once, everything in cutting order, a group
 * for each run of one operation with the operation's name as its class; thin lines without fill that show at any zoom.
 * @throws RangeError for a number that is not finite, or an entity on a layer that is not listed
 */
export const writeSvg: DrawingWriter = (drawing) => {
  const width = number(drawing.width);
  const height = number(drawing.height);
  return `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" fill="none" stroke-width="${STROKE}">
  <title>${escapeXml(drawing.title)}</title>
  <desc>${escapeXml(keyOf(drawing).join('\n'))}</desc>
${runsOf(drawing.entities)
  .map((run) => group(run, drawing))
  .join('')}</svg>
`;
};
