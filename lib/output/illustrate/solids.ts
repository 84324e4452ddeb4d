/**
 * The dish as plain solids in space: x and y in plan, z up from the board's upper face, mm. Shared by the drawn
 * pictures and by the page's own script, so it needs nothing but numbers.
 */

import { element, type Vec3, vecCross } from '../../geometry/index.js';

export type { Vec3 };
export type Vec2 = readonly [number, number];

/** What a solid is to the eye; decides its colour. */
export type Role = 'board' | 'hub' | 'cleat' | 'rib' | 'panel' | 'mirror' | 'batten' | 'vessel' | 'stand' | 'ray';

/** One cross-section of a bent sheet: radius and height of both faces' mid-lines, and half the width. */
export interface BentSection {
  readonly top: Vec2;
  readonly bottom: Vec2;
  readonly halfWidth: number;
}

export type SolidShape =
  /** A flat sheet in its own axes, from its back at 0 up. The outline runs anticlockwise, holes clockwise. */
  | {
      readonly kind: 'plate';
      readonly outline: readonly Vec2[];
      readonly holes: readonly (readonly Vec2[])[];
      readonly thickness: number;
    }
  /** A sheet bent along the radius, level across: x outward in the middle of its bay, z up. */
  | { readonly kind: 'bent'; readonly sections: readonly BentSection[] };

export interface Solid {
  /** Ids of the parts that it stands for. */
  readonly parts: readonly string[];
  readonly name: string;
  readonly role: Role;
  readonly shape: SolidShape;
  /** Lines scribed on the front of a plate, in its own axes. */
  readonly scribes?: readonly (readonly [Vec2, Vec2])[];
  readonly instances: readonly SolidInstance[];
}

/** A copy where it stands in the dish. */
export interface SolidInstance {
  /** Where its origin lies, and the ways of its own x and y. */
  readonly frame: { readonly origin: Vec3; readonly x: Vec3; readonly y: Vec3 };
  /** Where it goes when the view is fully exploded, mm. */
  readonly away: Vec3;
}

export interface Model {
  readonly solids: readonly Solid[];
  /** Radius of a sphere about `centre` (on the axis) that holds the closed dish and its vessel. */
  readonly reach: number;
  readonly centre: number;
}

/** One flat face: the ring runs anticlockwise as seen from outside, holes clockwise. */
export interface SolidFace {
  readonly ring: readonly Vec3[];
  readonly holes: readonly (readonly Vec3[])[];
}

type Lift = (point: Vec2) => Vec3;

function plate(outline: readonly Vec2[], holes: readonly (readonly Vec2[])[], bottom: Lift, top: Lift): SolidFace[] {
  const back = (ring: readonly Vec2[], lift: Lift) => ring.map(lift).reverse();
  const edges = [outline, ...holes].flatMap((ring) =>
    ring.map((from, i): SolidFace => {
      const to = element(ring, (i + 1) % ring.length);
      return { ring: [bottom(from), bottom(to), top(to), top(from)], holes: [] };
    }),
  );
  return [
    { ring: outline.map(top), holes: holes.map((hole) => hole.map(top)) },
    { ring: back(outline, bottom), holes: holes.map((hole) => back(hole, bottom)) },
    ...edges,
  ];
}

function bentFaces(sections: readonly BentSection[]): SolidFace[] {
  const faces: SolidFace[] = [];
  const corner = ([r, z]: Vec2, w: number): Vec3 => [r, w, z];
  const quad = (...ring: Vec3[]) => faces.push({ ring, holes: [] });
  for (let i = 0; i + 1 < sections.length; i += 1) {
    const a = element(sections, i);
    const b = element(sections, i + 1);
    const [wa, wb] = [a.halfWidth, b.halfWidth];
    quad(corner(a.top, -wa), corner(b.top, -wb), corner(b.top, wb), corner(a.top, wa));
    quad(corner(a.bottom, wa), corner(b.bottom, wb), corner(b.bottom, -wb), corner(a.bottom, -wa));
    quad(corner(a.bottom, -wa), corner(b.bottom, -wb), corner(b.top, -wb), corner(a.top, -wa));
    quad(corner(a.top, wa), corner(b.top, wb), corner(b.bottom, wb), corner(a.bottom, wa));
  }
  const first = sections[0];
  const last = sections.at(-1);
  if (first && last) {
    const [wf, wl] = [first.halfWidth, last.halfWidth];
    quad(corner(first.top, -wf), corner(first.top, wf), corner(first.bottom, wf), corner(first.bottom, -wf));
    quad(corner(last.top, wl), corner(last.top, -wl), corner(last.bottom, -wl), corner(last.bottom, wl));
  }
  return faces;
}

/** The faces of a solid's shape in its own axes. */
export function facesOf(shape: SolidShape): SolidFace[] {
  if (shape.kind === 'bent') return bentFaces(shape.sections);
  const { outline, holes, thickness } = shape;
  return plate(
    outline,
    holes,
    ([x, y]) => [x, y, 0],
    ([x, y]) => [x, y, thickness],
  );
}

/** The third axis of a copy: x cross y. */
export function thirdAxis({ x, y }: SolidInstance['frame']): Vec3 {
  return vecCross(x, y);
}

/** A point of a solid where a copy has it; `spread` from 0 (together) to 1 (fully exploded). */
export function placed(point: Vec3, { frame, away }: SolidInstance, spread: number): Vec3 {
  const { origin, x, y } = frame;
  const z = thirdAxis(frame);
  const along = (i: 0 | 1 | 2): number =>
    origin[i] + x[i] * point[0] + y[i] * point[1] + z[i] * point[2] + away[i] * spread;
  return [along(0), along(1), along(2)];
}
