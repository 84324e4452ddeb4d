/**
 * Direct irradiance under a clear sky: Bird and Hulstrom, A simplified clear sky model for direct and diffuse
 * insolation on horizontal surfaces, SERI/TR-642-761, 1981. Of the sun's light each part of the air lets through a
 * share, and the shares multiply.
 */
import { standardPressure } from './atmosphere.js';

/** Solar constant, W/m² (Kopp and Lean, Geophysical Research Letters 38, 2011, L01706). */
const SOLAR_CONSTANT = 1361;
/** Sea-level pressure of the model, hPa. */
const SEA_LEVEL_HPA = 1013;

/** What the air holds. */
export interface Sky {
  /** Ozone and water vapour in a column straight up, cm. */
  readonly ozoneCm: number;
  readonly waterCm: number;
  /** Optical depth of the haze straight up, at wavelengths of 380 and 500 nm. */
  readonly haze380: number;
  readonly haze500: number;
}

/** A clear day: ozone, water and haze of the middle latitudes; the report's own example is near it. */
export const clearSky: Sky = { ozoneCm: 0.3, waterCm: 1.5, haze380: 0.1, haze500: 0.1 };

/**
 * Air mass at sea level, as the model takes it: Kasten, Archiv für Meteorologie, Geophysik und Bioklimatologie B 14,
 * 1966, 206-223.
 * @param elevation height of the sun's centre, radians, 0 to π/2
 */
export function airMass(elevation: number): number {
  const zenithDeg = 90 - (elevation * 180) / Math.PI;
  return 1 / (Math.sin(elevation) + 0.15 * (93.885 - zenithDeg) ** -1.25);
}

/**
 * Direct normal irradiance, W/m².
 * @param elevation height of the sun's centre, radians
 * @param pressureHPa of the air at the place
 * @param distanceAu of the sun, astronomical units
 * @returns 0 while the sun is down
 */
export function beamIrradiance(elevation: number, pressureHPa: number, distanceAu: number, sky: Sky): number {
  if (elevation <= 0) return 0;
  const mass = airMass(elevation);
  const massHere = (mass * pressureHPa) / SEA_LEVEL_HPA;
  const rayleigh = Math.exp(-0.0903 * massHere ** 0.84 * (1 + massHere - massHere ** 1.01));
  const mixedGases = Math.exp(-0.0127 * massHere ** 0.26);
  const o = sky.ozoneCm * mass;
  const ozone = 1 - 0.1611 * o * (1 + 139.48 * o) ** -0.3035 - (0.002715 * o) / (1 + 0.044 * o + 0.0003 * o * o);
  const w = sky.waterCm * mass;
  const water = 1 - (2.4959 * w) / ((1 + 79.034 * w) ** 0.6828 + 6.385 * w);
  const depth = 0.2758 * sky.haze380 + 0.35 * sky.haze500;
  const haze = Math.exp(-(depth ** 0.873) * (1 + depth - depth ** 0.7088) * mass ** 0.9108);
  return ((0.9662 * SOLAR_CONSTANT) / distanceAu ** 2) * rayleigh * ozone * mixedGases * water * haze;
}

/** The same under the standard atmosphere of an altitude. */
export function clearSkyDirect(elevation: number, altitudeM: number, distanceAu: number, sky: Sky = clearSky): number {
  return beamIrradiance(elevation, standardPressure(altitudeM), distanceAu, sky);
}

/** The sky of a day with haze (optical depth at both wavelengths) and water vapour (mm). */
export function skyOf({ haze, waterVapour }: { readonly haze: number; readonly waterVapour: number }): Sky {
  return { ...clearSky, haze380: haze, haze500: haze, waterCm: waterVapour / 10 };
}
