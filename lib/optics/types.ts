/**
 * What the forecast takes: plain numbers. Lengths in mm, z up along the axis from the vertex; every other unit is in
 * the name. The sections and keys are those of the design file, so that a message can name the key.
 */
import type { DishShape } from '../dish/index.js';

export type SunShapeName = 'uniform' | 'limb-darkened' | 'circumsolar';

export type VesselKind = 'pot' | 'plate' | 'coil' | 'cavity';

/** What stands in the focus: an upright cylinder, or one on the dish's axis, with a base, a side and a lid. */
export interface Vessel {
  readonly kind: VesselKind;
  /** Hung level whatever the dish's tilt, or fixed to the dish's axis. */
  readonly mount: 'level' | 'axis';
  readonly diameter: number;
  readonly height: number;
  /** Height of the base above the focus, plumb for a level one, else along the axis; negative for below. */
  readonly offset: number;
  /** Diameter of a cavity's mouth, in its base. */
  readonly opening: number;
  /** Share of the light that each takes up, 0 to 1; the lid as the side. */
  readonly baseAbsorptance: number;
  readonly sideAbsorptance: number;
  /** Share of a black body's heat radiation that it gives off, 0 to 1. */
  readonly emittance: number;
  readonly lid: boolean;
  readonly wall: {
    readonly thickness: number;
    readonly massKg: number;
    readonly heatCapacityJPerKgK: number;
    readonly conductivityWPerMK: number;
  };
  /** On side and lid, on all of a cavity but its mouth; thickness 0 for none. */
  readonly insulation: { readonly thickness: number; readonly conductivityWPerMK: number };
  /** Level bars that carry it. */
  readonly holder: { readonly arms: number; readonly width: number };
}

export type Filling = 'water' | 'milk' | 'juice' | 'oil' | 'solid';

export interface Load {
  readonly filling: Filling;
  readonly massKg: number;
  /** Constant specific heat capacity; null for that of the filling, by temperature. */
  readonly heatCapacityJPerKgK: number | null;
  readonly densityKgPerM3: number;
  readonly startC: number;
  readonly targetC: number;
  /** Null for what does not boil. */
  readonly boilingPointC: number | null;
  /** Heat that the wall may give the load in its brightest place before the load scorches; null for no limit. */
  readonly maxFluxWPerM2: number | null;
}

/** A value at hours of local clock time, straight in between and level before and after. */
export type Hourly = readonly (readonly [hour: number, value: number])[];

export interface Air {
  readonly ambientC: number;
  readonly windMPerS: number;
}

export interface Sun {
  /** Direct irradiance as named by the design, at noon where there is a site; null for the site's clear sky. */
  readonly irradianceWPerM2: number | null;
  /** Height of the sun when no site is named. */
  readonly elevationDeg: number;
  readonly shape: SunShapeName;
  /** Share of the light from around the disc, for shape `circumsolar`. */
  readonly circumsolarRatio: number;
  /** Waviness: standard deviation of the slope in each tangent direction, with usual, good and poor care. */
  readonly slopeErrorMrad: number;
  readonly slopeErrorGoodMrad: number;
  readonly slopeErrorPoorMrad: number;
  /** Standard deviation of the reflected ray in each direction across it. */
  readonly specularityMrad: number;
  /** Slope at the panel's edges, growing evenly from the mid-line; null to estimate it from the bending of the panel. */
  readonly edgeCurlMrad: number | null;
  /** Angle between the axis and the sun's centre. */
  readonly pointingErrorDeg: number;
  /** The least such angle over the day while the dish is parked; null when the design does not state it. */
  readonly parkedAngleDeg: number | null;
}

export interface Site {
  /** North positive. */
  readonly latitudeDeg: number;
  /** East positive. */
  readonly longitudeDeg: number;
  readonly altitudeM: number;
  /** A name such as Europe/Vienna, or hours ahead of UTC. */
  readonly timeZone: string | number;
}

/** What the forecast takes of the day. */
export interface Day {
  /** As 2026-06-21. */
  readonly date: string;
  /** Least height of the sun at which the dish is used. */
  readonly minElevationDeg: number;
  /** Clock time at which heating starts, hours; null for the first hour in which the dish is used. */
  readonly startHour: number | null;
  readonly ambientC: Hourly;
  readonly windMPerS: Hourly;
  /** Optical depth of the haze. */
  readonly haze: number;
  /** Water vapour overhead, mm. */
  readonly waterVapour: number;
  /** Relative humidity, 0 to 1. */
  readonly humidity: number;
}

export interface OpticsInput {
  readonly dish: DishShape;
  readonly reflector: {
    /** What it is, in words, and where its values come from. */
    readonly name: string;
    readonly source: string;
    /** Share of sunlight that it reflects, 0 to 1. */
    readonly reflectance: number;
    /** Side of flat tiles along the panel, mm; 0 for a mirror that bends with its panel. */
    readonly tile: number;
    /** Share of the panels' face that carries no mirror: tape, inset, joints between strips. */
    readonly stripSeamShare: number;
  };
  /** Null for the bare focus. */
  readonly vessel: Vessel | null;
  readonly load: Load | null;
  readonly sun: Sun;
  readonly site: Site | null;
  readonly day: Day;
}

/** A value with its standard error, in the unit that its name states. */
export interface Estimate {
  readonly value: number;
  readonly standardError: number;
}

/** What a value rests on. */
export interface Assumption {
  readonly quantity: string;
  readonly assumption: string;
  readonly source: string;
}
