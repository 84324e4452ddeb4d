/** Air pressure by altitude, and the temperature at which water boils under it. */

const ZERO_C = 273.15;

/** Radius of the earth in the standard atmosphere, m: weight falls with height, so the air counts H = r·h/(r + h). */
const EARTH_RADIUS_M = 6_356_766;

/**
 * Pressure of the standard atmosphere, hPa: 1013.25·(1 − 0.0065·H/288.15)^5.25588 (ISO 2533:1975, layer up to 11 km;
 * the same as ICAO Doc 7488).
 * @param altitudeM above the sea, −1000 to 11 000 m
 */
export function standardPressure(altitudeM: number): number {
  const geopotentialM = (EARTH_RADIUS_M * altitudeM) / (EARTH_RADIUS_M + altitudeM);
  return 1013.25 * (1 - (0.0065 * geopotentialM) / 288.15) ** 5.25588;
}

/** Critical point of water, and the coefficients and exponents of its saturation line. */
const CRITICAL_K = 647.096;
const CRITICAL_HPA = 220_640;
const SATURATION = [
  [-7.85951783, 1],
  [1.84408259, 1.5],
  [-11.7866497, 3],
  [22.6807411, 3.5],
  [-15.9618719, 4],
  [1.80122502, 7.5],
] as const;

/**
 * Vapour pressure of water, hPa: the saturation equation of Wagner and Pruss (Journal of Physical and Chemical
 * Reference Data 22, 1993, 783; IAPWS SR1-86(1992); coefficients from memory, held against a table in the tests).
 * @param temperatureC 0.01 to 373.9 °C
 */
export function vapourPressure(temperatureC: number): number {
  const kelvin = temperatureC + ZERO_C;
  const theta = 1 - kelvin / CRITICAL_K;
  const sum = SATURATION.reduce((total, [factor, power]) => total + factor * theta ** power, 0);
  return CRITICAL_HPA * Math.exp((CRITICAL_K / kelvin) * sum);
}

/** Temperature at which water boils under a pressure (hPa, 10 to 10 000), °C, to 1e-6 K. */
export function waterBoilingC(pressureHPa: number): number {
  let [low, high] = [1, 200];
  while (high - low > 1e-6) {
    const middle = (low + high) / 2;
    if (vapourPressure(middle) < pressureHPa) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
