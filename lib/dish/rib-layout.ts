/** Where the ribs stand, seen from above: x along rib 1, the axis at the origin, mm. */

/** The middle plane of a rib or of the bay between two ribs: radii along it count from its origin. */
export interface PlanFrame {
  readonly x: number;
  readonly y: number;
  /** Direction outward, degrees anticlockwise from x: a rib's place is exact in degrees. */
  readonly rotationDeg: number;
}

export interface RibLayout {
  readonly kind: string;
  /** Rib k stands at ribs[k − 1]. */
  readonly ribs: readonly PlanFrame[];
  /** The planes that bisect two neighbouring ribs: one panel each. Bay k follows rib k. */
  readonly bays: readonly PlanFrame[];
  /** Half the angle between two neighbouring ribs, radians; 0 where they are parallel. */
  readonly halfAngle: number;
  /** Half the distance of two neighbouring ribs' middles at the axis; 0 where they meet there. */
  readonly halfPitch: number;
}

/** N ribs evenly spread about the axis: half the angle between two of them is π/N. */
export function radialLayout(count: number): RibLayout {
  const frames = (from: number): PlanFrame[] =>
    Array.from({ length: count }, (_, k) => ({ x: 0, y: 0, rotationDeg: ((from + k) * 360) / count }));
  return { kind: 'radial', ribs: frames(0), bays: frames(0.5), halfAngle: Math.PI / count, halfPitch: 0 };
}

/** Numbers of the ribs, from 1. */
export function ribNumbers(layout: RibLayout): number[] {
  return layout.ribs.map((_, k) => k + 1);
}
