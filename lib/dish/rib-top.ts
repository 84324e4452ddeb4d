/** The rib's top edge, which carries the panels. */
import { fitArcs, type FittedPath, type Point } from '../geometry/index.js';
import { facetAt, facetOnRib } from './facet.js';
import type { DishShape } from './types.js';

/** Height of the rib's top above the vertex at radius `r` along the rib; exact (the profile itself for figure `rib`). */
export function ribTopHeight(shape: DishShape, r: number): number {
  return shape.figure === 'rib' ? shape.profile.height(r) : facetOnRib(shape, r).undersideZ;
}

/**
 * The rib's top edge from `from` to `to` along the rib, fitted by tangent-continuous arcs.
 * @param tolerance greatest distance from the true curve, mm
 * @returns x is the radius along the rib, y the height above the board's face
 */
export function fitRibTop(shape: DishShape, from: number, to: number, tolerance: number): FittedPath {
  const { profile, baseHeight, facingThickness: c, layout } = shape;
  const { halfAngle } = layout;
  if (shape.figure === 'rib') {
    return fitArcs(
      {
        from,
        to,
        at: (r) => ({ x: r, y: baseHeight + profile.height(r) }),
        tangent: (r) => ({ x: 1, y: profile.slope(r) }),
      },
      tolerance,
    );
  }
  const at = (u: number): Point => {
    const facet = facetAt(shape, u);
    return { x: facet.ribRadius, y: baseHeight + facet.undersideZ };
  };
  // derivatives by u of r = (u + c·sin ψ − o·sin α)/cos α and z(u) − c·cos ψ
  const tangent = (u: number): Point => {
    const psi = profile.slopeAngle(u);
    const turn = profile.turn(u);
    const along = 1 + c * Math.cos(psi) * turn;
    const edge = c * Math.cos(psi) * Math.sin(halfAngle) * turn;
    return {
      x: (along - edge * Math.sin(halfAngle)) / Math.cos(halfAngle),
      y: profile.slope(u) + c * Math.sin(psi) * turn,
    };
  };
  return fitArcs({ from: facetOnRib(shape, from).u, to: facetOnRib(shape, to).u, at, tangent }, tolerance);
}
