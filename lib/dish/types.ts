/**
 * The solved dish: plain numbers. Heights are above the vertex of the reflecting surface (z up along the axis),
 * lengths in mm, angles in radians. `u` is the radius along a panel's reflecting mid-line, `r` the radius along a rib.
 */
import type { FittedPath } from '../geometry/index.js';
import type { Profile } from './profile.js';
import type { RibLayout } from './rib-layout.js';

export type Figure = 'panel' | 'rib';

/** What decides the optical shape; every function of the module takes it. */
export interface DishShape {
  readonly figure: Figure;
  readonly profile: Profile;
  readonly layout: RibLayout;
  /** Radius at which the ribs end (half the aperture). */
  readonly apertureRadius: number;
  readonly ribThickness: number;
  /** Panel thickness, and reflector with its glue; their sum is c of the formulas. */
  readonly panelThickness: number;
  readonly reflectorThickness: number;
  readonly facingThickness: number;
  /** Open seam between two panels over a rib, measured across the rib. */
  readonly seamGap: number;
  /** From the board's face up to the vertex. */
  readonly baseHeight: number;
  /** Radius at which the ribs start: the hub's apothem. */
  readonly innerRadius: number;
}

export interface Dish extends DishShape {
  readonly depth: number;
  readonly rimAngle: number;
  /** Angle of the profile against the level at the rim. */
  readonly rimSlopeAngle: number;
  /** Arc length of the profile from vertex to rim, and area of the whole surface. */
  readonly profileLength: number;
  readonly surfaceArea: number;
  readonly setBack: {
    /** Ribs clear each other from this radius. */
    readonly clearRadius: number;
    /** Their outer corners then lie on a circle of this radius. */
    readonly cornerRadius: number;
    /** Length of a hub flat at the inner radius, for an N-sided hub. */
    readonly flatLength: number;
  };
  /** The rib's top edge from inner radius to rim: x is the radius, y the height above the board's face. */
  readonly ribTop: FittedPath;
  /** Heights of the rib's ends above the board's face. */
  readonly innerEndHeight: number;
  readonly rimEndHeight: number;
  /** Radii of the panel's mid-line at which the reflecting surface begins and ends (u_min, u_max). */
  readonly litFrom: number;
  readonly litTo: number;
  /** Height above the vertex at which the mid-lines' rays are where the profile aims them; figure `rib` lowers it. */
  readonly focusHeight: { readonly atInner: number; readonly atRim: number };
  /** Greatest width of the wedge open between rib top and panel underside at the facing corner: where glue goes. */
  readonly glueWedge: number;
}
