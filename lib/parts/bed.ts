/** Whether a shape fits a machine's bed or a sheet, turned as it may be. */
import { type Contour, distance, element, flatten } from '../geometry/index.js';

interface Area {
  readonly width: number;
  readonly height: number;
}

/** Arcs count with this much to spare (mm). */
const flatness = 0.1;

/** Whether a ring lies within one of the areas in some direction, by whole degrees. */
export function ringFits(ring: Contour, areas: readonly Area[]): boolean {
  const points = flatten(ring, flatness, 'outside');
  const diagonal = Math.max(0, ...areas.map(({ width, height }) => Math.hypot(width, height)));
  const first = element(points, 0);
  if (points.some((place) => distance(place, first) > diagonal)) return false;
  for (let degrees = 0; degrees < 180; degrees++) {
    const cos = Math.cos((degrees * Math.PI) / 180);
    const sin = Math.sin((degrees * Math.PI) / 180);
    let [minX, maxX, minY, maxY] = [Infinity, -Infinity, Infinity, -Infinity];
    for (const { x, y } of points) {
      const turnedX = x * cos - y * sin;
      const turnedY = x * sin + y * cos;
      minX = Math.min(minX, turnedX);
      maxX = Math.max(maxX, turnedX);
      minY = Math.min(minY, turnedY);
      maxY = Math.max(maxY, turnedY);
    }
    // a part as large as its bed to the last bit still fits it
    const slack = 1e-6;
    if (areas.some(({ width, height }) => maxX - minX <= width + slack && maxY - minY <= height + slack)) return true;
  }
  return false;
}
