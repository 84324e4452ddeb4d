/** What a picture shows: solids at their places, what is new among them, and what is written and pointed at. */
import type { Standpoint } from './camera.js';
import type { Role, Solid, SolidInstance, SolidShape, Vec2, Vec3 } from './solids.js';

/** Whether a copy of a solid is drawn, and whether it is what the picture is about. */
export type Look = 'hidden' | 'there' | 'new';

/** A line on the surface of a solid, in the solid's own axes: seen where that solid is seen. */
export interface SurfaceLine {
  readonly points: readonly Vec3[];
  /** What it is, for its look: a scribed line, a hole's edge, glue, tape. */
  readonly kind: 'scribe' | 'drill' | 'glue' | 'tape';
}

/** Turned about its own z axis: radius and height, from its lower end up. */
export interface Turned {
  readonly kind: 'turned';
  readonly profile: readonly Vec2[];
}

/** A solid of the dish, or what is only there while it is built: hardware, aids, covers. */
export interface Body extends Pick<Solid, 'parts' | 'scribes'> {
  readonly role: Role | 'metal' | 'aid' | 'cover';
  readonly shape: SolidShape | Turned;
}

export interface Piece {
  readonly body: Body;
  readonly frame: SolidInstance['frame'];
  /** How far it is pulled away from its place. */
  readonly moved: Vec3;
  readonly look: 'there' | 'new';
  readonly lines?: readonly SurfaceLine[];
}

/** A place in space, or the middle of what is seen best of some pieces. */
export type Target = Vec3 | { readonly pieces: readonly Piece[] };

export type Note =
  /** A number of the part list, with a line to the place. */
  | { readonly kind: 'balloon'; readonly at: Target; readonly text: string }
  /** Words near a place, with a line to it. */
  | { readonly kind: 'label'; readonly at: Target; readonly text: string }
  /** Words right at a place, such as the number of a rib. */
  | { readonly kind: 'mark'; readonly at: Vec3; readonly text: string }
  /** The way in which something moves. */
  | { readonly kind: 'way'; readonly from: Vec3; readonly to: Vec3 }
  /** The line along which something goes in, or the axis of the dish. */
  | { readonly kind: 'axis'; readonly from: Vec3; readonly to: Vec3 };

export interface Scene {
  readonly pieces: readonly Piece[];
  readonly notes: readonly Note[];
  readonly from: Standpoint;
  /** What the picture shows, for those who do not see it. */
  readonly label: string;
  /** What has to be in the picture; all pieces where it is left out. */
  readonly fit?: readonly Vec3[];
}
