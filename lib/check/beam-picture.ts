/** The sheet as a laser leaves it, read from its own cut file: what has come free, what has fallen out, what stays. */
import { layerKind, type ReadBack } from './drawn.js';
import { drawnEdge, edgeOnward, faceColour, printed, throughColour } from './picture-ink.js';
import { ringArea } from './ring.js';
import { readSvg } from './svg-reader.js';

/** A part that has come free lies paler on the sheet that it is cut from. */
const freeColour = '#fdf6e6';
const markColour = '#8a6a45';
/** A kerf is drawn as wide as it is, and no finer than a page can show: this share of the sheet's length. */
const FINEST = 1 / 700;

interface Shape {
  readonly area: number;
  readonly fill: string;
  readonly data: string;
}

/** A closed cut as a filled shape; null for marks and what is no cut. */
function shapeOf(entity: ReadBack, height: number): Shape | null {
  const kind = layerKind(entity.layer);
  if (kind !== 'outline' && kind !== 'opening' && kind !== 'drill') return null;
  const fill = kind === 'outline' ? freeColour : throughColour;
  if (entity.kind === 'circle') {
    const r = printed(entity.diameter / 2);
    const [x, y] = [printed(entity.x - entity.diameter / 2), printed(height - entity.y)];
    const across = printed(entity.diameter);
    return {
      area: (Math.PI / 4) * entity.diameter ** 2,
      fill,
      data: `M${x} ${y}a${r} ${r} 0 1 0 ${across} 0a${r} ${r} 0 1 0 -${across} 0Z`,
    };
  }
  const { edges, closed } = entity.line;
  const first = edges[0];
  if (!closed || first === undefined) return null;
  const start = `M${printed(first.ax)} ${printed(height - first.ay)}`;
  const data = `${start}${edges.map((edge) => edgeOnward(edge, height)).join('')}Z`;
  return { area: Math.abs(ringArea(edges)), fill, data };
}

/**
 * A picture of a sheet by the file that the laser runs. What lies within a cut is drawn over it: a part that lies in an
 * opening of another is free, as the opening's waste is not.
 * @param text of the SVG file
 * @param kerf width that the beam takes away, mm
 * @returns an SVG of one user unit a millimetre, the sheet's upper edge up
 * @throws Unreadable where the text is no cut file
 */
export function drawBeamCut(text: string, kerf: number): string {
  const { width, height, entities } = readSvg(text).sheet;
  const shapes = entities
    .map((entity) => shapeOf(entity, height))
    .filter((shape) => shape !== null)
    .sort((a, b) => b.area - a.area);
  const marks = entities
    .filter(({ layer }) => layerKind(layer) === 'scribe')
    .flatMap((entity) => (entity.kind === 'path' ? entity.line.edges.map((edge) => drawnEdge(edge, height)) : []));
  const finest = Math.max(width, height) * FINEST;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${printed(width)} ${printed(height)}" role="img">`,
    '<title>The sheet as the laser leaves it: parts that have come free are pale, what has fallen out is dark</title>',
    `<rect width="${printed(width)}" height="${printed(height)}" fill="${faceColour}"/>`,
    `<g stroke="${throughColour}" stroke-width="${printed(Math.max(kerf, finest))}" stroke-linejoin="round">`,
    ...shapes.map(({ fill, data }) => `<path fill="${fill}" d="${data}"/>`),
    '</g>',
    ...(marks.length > 0
      ? [`<path fill="none" stroke="${markColour}" stroke-width="${printed(finest)}" d="${marks.join('')}"/>`]
      : []),
    '</svg>',
  ].join('\n');
}
