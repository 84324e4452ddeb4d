/** The rib's top edge, which carries the panels. */
import { fitArcs, type FittedPath, type Point } from '../geometry/index.js';
import { facetAt, facetOnRib } from './facet.js';
import { parabolaHeight } from './paraboloid.js';
import type { DishShape } from './types.js';

/** Height of the rib's top above the vertex at radius `r` along the rib; exact (closed form for figure `rib`). */
export function ribTopHeight(shape: DishShape, r: number): number {
  return shape.figure === 'rib' ? parabolaHeight(r, shape.focalLength) : facetOnRib(shape, r).undersideZ;
}

/**
 * The rib's top edge from `from` to `to` along the rib, fitted by tangent-continuous arcs.
 * @param tolerance greatest distance from the true curve, mm
 * @returns x is the radius along the rib, y the height above the board's face
 */
export function fitRibTop(shape: DishShape, from: number, to: number, tolerance: number): FittedPath {
  const { focalLength, baseHeight, facingThickness: c, halfAngle } = shape;
  if (shape.figure === 'rib') {
    return fitArcs(
      {
        from,
        to,
        at: (r) => ({ x: r, y: baseHeight + parabolaHeight(r, focalLength) }),
        tangent: (r) => ({ x: 1, y: r / (2 * focalLength) }),
      },
      tolerance,
    );
  }
  const at = (u: number): Point => {
    const facet = facetAt(shape, u);
    return { x: facet.ribRadius, y: baseHeight + facet.undersideZ };
  };
  // derivatives by u of r = (u + c·sin ψ − o·sin α)/cos α and z = u²/4f − c·cos ψ, with dψ/du = cos²ψ/2f
  const tangent = (u: number): Point => {
    const psi = Math.atan(u / (2 * focalLength));
    const turn = Math.cos(psi) ** 2 / (2 * focalLength);
    const along = 1 + c * Math.cos(psi) * turn;
    const edge = c * Math.cos(psi) * Math.sin(halfAngle) * turn;
    return {
      x: (along - edge * Math.sin(halfAngle)) / Math.cos(halfAngle),
      y: u / (2 * focalLength) + c * Math.sin(psi) * turn,
    };
  };
  return fitArcs({ from: facetOnRib(shape, from).u, to: facetOnRib(shape, to).u, at, tangent }, tolerance);
}
