/** Holes and marks in short, and lettering as strokes. */
import { type Path, placeVertices, type Point, strokeText } from '../geometry/index.js';
import type { Face, Hole, LineMark, TextMark } from './types.js';

/** A hole right through, drilled from the front. */
export function throughHole({ x, y }: Point, diameter: number): Hole {
  return { x, y, diameter, depth: 'through', from: 'front' };
}

/** An open line on the front. */
export function lineMark(vertices: Path): LineMark {
  return { kind: 'line', face: 'front', closed: false, vertices };
}

/** A closed line on the front. */
export function ringMark(vertices: Path): LineMark {
  return { kind: 'line', face: 'front', closed: true, vertices };
}

/** Text on the front: lower left corner, capital height (mm), direction (radians). */
export function textMark(text: string, { x, y }: Point, height: number, angle = 0): TextMark {
  return { kind: 'text', face: 'front', text, x, y, height, angle };
}

/** The strokes of a text in the part's own axes; those on the back are seen from the front, in mirror writing. */
export function textStrokes({ text, x, y, height, angle, face }: TextMark): Path[] {
  const strokes = strokeText(text, { x, y }, height, angle);
  const fromBehind = { x: 0, y: 0, rotationDeg: 0, mirrored: true };
  return face === 'front' ? strokes : strokes.map((stroke) => placeVertices(stroke, fromBehind));
}

/** The face that lies up where a part is laid. */
export function faceUp({ mirrored }: { readonly mirrored: boolean }): Face {
  return mirrored ? 'back' : 'front';
}
