import { edgesOf, edgesOfPath, type Edge, type Vertex } from '../../geometry/index.js';

/** Millimetres to a hundredth: a picture's coordinates. */
const mm = (value: number): string => String(Number(value.toFixed(2)));

function segment(edge: Edge, y: (value: number) => number): string {
  const end = `${mm(edge.to.x)} ${mm(y(edge.to.y))}`;
  if (edge.kind === 'straight') return `L${end}`;
  const radius = Number(edge.radius.toPrecision(8));
  // y points down in a picture, which turns the sense of an arc round
  return `A${radius} ${radius} 0 ${Math.abs(edge.sweep) > Math.PI ? 1 : 0} ${edge.sweep > 0 ? 0 : 1} ${end}`;
}

/**
 * SVG path data of a ring or an open path.
 * @param top height in mm that becomes y = 0 of the picture
 */
export function ringPath(vertices: readonly Vertex[], closed: boolean, top: number): string {
  const first = vertices[0];
  if (first === undefined) return '';
  const y = (value: number) => top - value;
  const edges = closed ? edgesOf(vertices) : edgesOfPath(vertices);
  return `M${mm(first.x)} ${mm(y(first.y))}${edges.map((edge) => segment(edge, y)).join('')}${closed ? 'Z' : ''}`;
}
