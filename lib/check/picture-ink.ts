/** What the pictures of cut sheets have in common: colours, numbers and lines as SVG has them. */
import type { ProofEdge } from './edge.js';

/** The upper face of the sheet. */
export const faceColour = '#ecddc1';
/** Where the sheet is cut through one sees what it lies on. */
export const throughColour = '#1f1a17';

/** Decimals of a millimetre: finer than the eye on a page. */
const decimals = 2;

export const printed = (value: number): string => String(Number(value.toFixed(decimals)));

/** How an edge goes on from where it starts, y downwards. */
export function edgeOnward(edge: ProofEdge, height: number): string {
  const end = `${printed(edge.bx)} ${printed(height - edge.by)}`;
  if (edge.sweep === 0) return `L${end}`;
  const radius = printed(edge.radius);
  // an anticlockwise arc turns the other way with y downwards, which SVG calls sweep 0
  return `A${radius} ${radius} 0 ${Math.abs(edge.sweep) > Math.PI ? 1 : 0} ${edge.sweep > 0 ? 0 : 1} ${end}`;
}

/** An edge as SVG draws it, y downwards. */
export function drawnEdge(edge: ProofEdge, height: number): string {
  return `M${printed(edge.ax)} ${printed(height - edge.ay)}${edgeOnward(edge, height)}`;
}
