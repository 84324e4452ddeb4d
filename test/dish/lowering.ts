/** A panel let down onto a rib: points of its underside in space, and the square top of the rib as a height over the plan. */
import { type DishShape, ribTopHeight } from '../../lib/dish/index.js';

/** One level chord of the underside in the plane that bisects two ribs: radius, height, and half its width. */
export interface Chord {
  readonly x: number;
  readonly z: number;
  readonly half: number;
}

/** How far a chord may come down before it meets the rib's square top, over all its points above the rib. */
export function gapUnder(shape: DishShape, { x, z, half }: Chord): number {
  const [cos, sin] = [Math.cos(shape.layout.halfAngle), Math.sin(shape.layout.halfAngle)];
  let min = Infinity;
  const steps = 60;
  // from the chord's end inward to where it leaves the rib's thickness
  const inner = half - shape.ribThickness / cos;
  for (let i = 0; i <= steps; i++) {
    const w = half + ((inner - half) * i) / steps;
    const across = w * cos - x * sin;
    const along = x * cos + w * sin;
    if (Math.abs(across) > shape.ribThickness / 2) continue;
    min = Math.min(min, z - ribTopHeight(shape, along));
  }
  return min;
}
