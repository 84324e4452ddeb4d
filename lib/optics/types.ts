/**
 * What the forecast takes: plain numbers. Lengths in mm, z up along the axis from the vertex; every other unit is in
 * the name. The sections and keys are those of the design file, so that a message can name the key.
 */
import type { DishShape } from '../dish/index.js';

export type SunShapeName = 'uniform' | 'limb-darkened' | 'circumsolar';

/**
 * What stands in the focus: a level disc that takes up the light that crosses it, from below and, from the part of a
 * deep dish above it, from above: a vessel takes that on its side.
 */
export interface Vessel {
  readonly diameter: number;
  /** Height of the underside above the focus; negative for below. */
  readonly offset: number;
  /** Share of the light that it takes up, 0 to 1. */
  readonly absorptance: number;
  /** Share of a black body's heat radiation that it gives off, 0 to 1. */
  readonly emittance: number;
}

export interface Load {
  readonly massKg: number;
  readonly heatCapacityJPerKgK: number;
  readonly densityKgPerM3: number;
  readonly startC: number;
  readonly targetC: number;
  readonly boilingPointC: number;
}

export interface Air {
  readonly ambientC: number;
  readonly windMPerS: number;
}

export interface Sun {
  /** Direct irradiance when no site is named. */
  readonly irradianceWPerM2: number;
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
  /** Day, as 2026-06-21. */
  readonly date: string;
  readonly altitudeM: number;
  /** Least height of the sun at which the dish is used. */
  readonly minElevationDeg: number;
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
  readonly vessel: Vessel;
  readonly load: Load | null;
  readonly air: Air;
  readonly sun: Sun;
  readonly site: Site | null;
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
