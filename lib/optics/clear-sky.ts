/** Direct irradiance under a clear sky. */

/** Solar constant of the clear-sky model's time, W/m². */
const SOLAR_CONSTANT = 1353;

/**
 * Air mass: Kasten and Young, Revised optical air mass tables and approximation formula, Applied Optics 28, 1989,
 * 4735-4738 (coefficients from memory).
 * @param elevation height of the sun, radians, above 0
 */
export function airMass(elevation: number): number {
  const degrees = (elevation * 180) / Math.PI;
  return 1 / (Math.sin(elevation) + 0.50572 * (degrees + 6.07995) ** -1.6364);
}

/**
 * Direct normal irradiance, W/m²: 1353·[(1 − 0.14h)·0.7^(AM^0.678) + 0.14h]/d², h in km (Meinel and Meinel, Applied
 * Solar Energy, 1976; height after Laue, Solar Energy 13, 1970; both from memory), d the sun's distance. It stands for
 * clean dry air; haze takes a tenth to a third of it.
 * @returns 0 while the sun is down
 */
export function clearSkyDirect(elevation: number, altitudeM: number, distanceAu: number): number {
  if (elevation <= 0) return 0;
  // the height term was fitted to the first few kilometres
  const h = 0.14 * Math.min(4, Math.max(0, altitudeM / 1000));
  return (SOLAR_CONSTANT * ((1 - h) * 0.7 ** (airMass(elevation) ** 0.678) + h)) / distanceAu ** 2;
}
