/**
 * The dish as plain solids in space: x and y in plan, z up from the board's upper face, mm. Shared by the drawn
 * pictures and by the page's own script, so it needs nothing but numbers.
 */

import type { Vec3 } from '../../geometry/index.js';

export type { Vec3 };
export type Vec2 = readonly [number, number];

/** What a solid is to the eye; decides its colour. */
export type Role = 'board' | 'hub' | 'cleat' | 'rib' | 'panel' | 'mirror' | 'vessel' | 'ray';

/** One cross-section of a bent sheet: radius and height of both faces' mid-lines, and half the width. */
export interface BentSection {
  readonly top: Vec2;
  readonly bottom: Vec2;
  readonly halfWidth: number;
}

export type SolidShape =
  /** A sheet lying level, from height `z` up. Rings in plan; the outline runs anticlockwise, holes clockwise. */
  | {
      readonly kind: 'flat';
      readonly outline: readonly Vec2[];
      readonly holes: readonly (readonly Vec2[])[];
      readonly z: number;
      readonly thickness: number;
    }
  /** A sheet on edge in the radial plane: rings as radius and height, the thickness half on either side. */
  | {
      readonly kind: 'upright';
      readonly outline: readonly Vec2[];
      readonly holes: readonly (readonly Vec2[])[];
      readonly thickness: number;
    }
  /** A sheet bent along the radius, level across. */
  | { readonly kind: 'bent'; readonly sections: readonly BentSection[] };

export interface Solid {
  /** Ids of the parts that it stands for. */
  readonly parts: readonly string[];
  readonly name: string;
  readonly role: Role;
  readonly shape: SolidShape;
  /** Lines scribed on the upper face of a flat solid, in plan. */
  readonly scribes?: readonly (readonly [Vec2, Vec2])[];
  readonly instances: readonly SolidInstance[];
}

/** A copy: turned about the dish's axis by `turn` radians, lifted by `lift` mm. */
export interface SolidInstance {
  readonly turn: number;
  readonly lift: number;
  /** How far it goes when the view is fully exploded: outward and up, mm. */
  readonly out: number;
  readonly up: number;
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
      const to = ring[(i + 1) % ring.length]!;
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
    const a = sections[i]!;
    const b = sections[i + 1]!;
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

/** The faces of a solid's shape, before any instance's turn and lift. */
export function facesOf(shape: SolidShape): SolidFace[] {
  if (shape.kind === 'bent') return bentFaces(shape.sections);
  const { outline, holes, thickness } = shape;
  if (shape.kind === 'flat')
    return plate(
      outline,
      holes,
      ([x, y]) => [x, y, shape.z],
      ([x, y]) => [x, y, shape.z + thickness],
    );
  // radius and height make a right-handed pair seen from -y, so the face with the ring's own sense looks to -y
  return plate(
    outline,
    holes,
    ([r, z]) => [r, thickness / 2, z],
    ([r, z]) => [r, -thickness / 2, z],
  );
}

/** A point of a solid where an instance has it; `spread` from 0 (together) to 1 (fully exploded). */
export function placed([x, y, z]: Vec3, { turn, lift, out, up }: SolidInstance, spread: number): Vec3 {
  const cos = Math.cos(turn);
  const sin = Math.sin(turn);
  const radial = x + out * spread;
  return [radial * cos - y * sin, radial * sin + y * cos, z + lift + up * spread];
}
