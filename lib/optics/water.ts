/**
 * Heat of liquid water and steam. Liquid: region 1 of the Industrial Formulation 1997 (IAPWS R7-97(2012), table 2;
 * coefficients from memory, held against the release's own check values in the tests). Steam at saturation: density
 * after IAPWS SR1-86(1992).
 */
import { vapourPressure } from './atmosphere.js';

const ZERO_C = 273.15;
/** Specific gas constant of water, J/(kg K). */
const GAS_CONSTANT = 461.526;
const REFERENCE_K = 1386;
const REFERENCE_PA = 16.53e6;

/** Exponents of pressure and temperature, and coefficient. */
const LIQUID = [
  [0, -2, 0.14632971213167],
  [0, -1, -0.84548187169114],
  [0, 0, -3.756360367204],
  [0, 1, 3.3855169168385],
  [0, 2, -0.95791963387872],
  [0, 3, 0.15772038513228],
  [0, 4, -0.016616417199501],
  [0, 5, 0.81214629983568e-3],
  [1, -9, 0.28319080123804e-3],
  [1, -7, -0.60706301565874e-3],
  [1, -1, -0.018990068218419],
  [1, 0, -0.032529748770505],
  [1, 1, -0.021841717175414],
  [1, 3, -0.5283835796993e-4],
  [2, -3, -0.47184321073267e-3],
  [2, 0, -0.30001780793026e-3],
  [2, 1, 0.47661393906987e-4],
  [2, 3, -0.44141845330846e-5],
  [2, 17, -0.72694996297594e-15],
  [3, -4, -0.31679644845054e-4],
  [3, 0, -0.28270797985312e-5],
  [3, 6, -0.85205128120103e-9],
  [4, -5, -0.22425281908e-5],
  [4, -2, -0.65171222895601e-6],
  [4, 10, -0.14341729937924e-12],
  [5, -8, -0.40516996860117e-6],
  [8, -11, -0.12734301741641e-8],
  [8, -6, -0.17424871230634e-9],
  [21, -29, -0.68762131295531e-18],
  [23, -31, 0.14478307828521e-19],
  [29, -38, 0.26335781662795e-22],
  [30, -39, -0.11947622640071e-22],
  [31, -40, 0.18228094581404e-23],
  [32, -41, -0.93537087292458e-25],
] as const;

const ATMOSPHERE_PA = 101_325;

/** What the heat capacity has of each term apart from the temperature, at a pressure; terms that drop out left out. */
const capacityTerms = (pressurePa: number) =>
  LIQUID.flatMap(([i, j, n]) => {
    if (j === 0 || j === 1) return [];
    return [{ factor: n * (7.1 - pressurePa / REFERENCE_PA) ** i * j * (j - 1), power: j - 2 }];
  });
// asked some thousands of times for every minute of a day's heating
const atAtmosphere = capacityTerms(ATMOSPHERE_PA);

/**
 * Specific heat capacity of liquid water, J/(kg K).
 * @param temperatureC 0 to 350 °C
 * @param pressurePa at or above that of saturation
 */
export function waterHeatCapacity(temperatureC: number, pressurePa = ATMOSPHERE_PA): number {
  const tau = REFERENCE_K / (temperatureC + ZERO_C);
  const terms = pressurePa === ATMOSPHERE_PA ? atAtmosphere : capacityTerms(pressurePa);
  let sum = 0;
  for (const { factor, power } of terms) sum += factor * (tau - 1.222) ** power;
  return -GAS_CONSTANT * tau * tau * sum;
}

/** Specific volume of liquid water, m³/kg; same limits. */
export function waterVolume(temperatureC: number, pressurePa = ATMOSPHERE_PA): number {
  const kelvin = temperatureC + ZERO_C;
  const tau = REFERENCE_K / kelvin;
  const pi = pressurePa / REFERENCE_PA;
  let sum = 0;
  for (const [i, j, n] of LIQUID) sum -= n * i * (7.1 - pi) ** (i - 1) * (tau - 1.222) ** j;
  return (sum * GAS_CONSTANT * kelvin) / REFERENCE_PA;
}

const CRITICAL_K = 647.096;
const CRITICAL_DENSITY = 322;
const STEAM = [
  [-2.0315024, 2 / 6],
  [-2.6830294, 4 / 6],
  [-5.38626492, 8 / 6],
  [-17.2991605, 18 / 6],
  [-44.7586581, 37 / 6],
  [-63.9201063, 71 / 6],
] as const;

/** Density of saturated steam, kg/m³. */
export function steamDensity(temperatureC: number): number {
  const theta = 1 - (temperatureC + ZERO_C) / CRITICAL_K;
  return CRITICAL_DENSITY * Math.exp(STEAM.reduce((sum, [factor, power]) => sum + factor * theta ** power, 0));
}

/** Heat that turns water into steam, J/kg, by the equation of Clausius and Clapeyron: T·(v'' − v')·dp/dT. */
export function evaporationHeat(temperatureC: number): number {
  const step = 0.01;
  const rise = ((vapourPressure(temperatureC + step) - vapourPressure(temperatureC - step)) * 100) / (2 * step);
  const liquid = waterVolume(temperatureC, Math.max(ATMOSPHERE_PA, 100 * vapourPressure(temperatureC)));
  return (temperatureC + ZERO_C) * (1 / steamDensity(temperatureC) - liquid) * rise;
}

/** Heat that melts ice at 0 °C, J/kg, and heat capacity of ice near 0 °C, J/(kg K) (IAPWS R10-06; from memory). */
export const meltingHeat = 333_430;
export const iceHeatCapacity = 2097;
