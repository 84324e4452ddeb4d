import { placeVertices, type Vertex } from '../../geometry/index.js';
import type { Dish } from '../../dish/index.js';

/** A rib's ring as it stands in the dish: x from the axis (the part's own frame begins at its inner end), y above the board. */
export function ribInPlace(vertices: readonly Vertex[], dish: Dish): Vertex[] {
  return placeVertices(vertices, { x: dish.innerRadius, y: 0, rotationDeg: 0, mirrored: false });
}
