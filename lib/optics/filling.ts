/** What the load is: how much heat it takes, and how much of it a hot wall may give. */
import type { Filling, Load } from './types.js';
import { iceHeatCapacity, meltingHeat, waterHeatCapacity } from './water.js';

/** How a hot wall gives its heat to a liquid. */
interface Convection {
  /** g·β/(ν·a), 1/(m³ K): times length cubed and kelvin it is the Rayleigh number. */
  readonly rayleighPerM3K: number;
  readonly conductivityWPerMK: number;
}

interface Properties {
  readonly heatCapacityJPerKgK: number;
  /** Share of water, which freezes. */
  readonly water: number;
  readonly maxFluxWPerM2: number | null;
  /** Null for a solid: the spot's heat spreads within it. */
  readonly convection: Convection | null;
}

/** Water near 70 °C: β 5.8e-4, ν 4.1e-7, a 1.61e-7 m²/s (handbook, from memory). */
const watery: Convection = { rayleighPerM3K: (9.81 * 5.8e-4) / (4.1e-7 * 1.61e-7), conductivityWPerMK: 0.66 };
/** Cooking oil near 100 °C: β 7e-4, ν 9e-6, a 8e-8 m²/s (from memory). */
const oily: Convection = { rayleighPerM3K: (9.81 * 7e-4) / (9e-6 * 8e-8), conductivityWPerMK: 0.16 };

/**
 * Heat capacities: handbook values for whole milk, apple juice of 12 °Brix, rape-seed oil and stone, from memory. The
 * limits of flux: watt densities that makers of immersion heaters advise, for a load that is stirred now and then; from
 * memory.
 */
const properties: Readonly<Record<Filling, Properties>> = {
  water: { heatCapacityJPerKgK: 4186, water: 1, maxFluxWPerM2: null, convection: watery },
  milk: { heatCapacityJPerKgK: 3930, water: 0.87, maxFluxWPerM2: 15_000, convection: watery },
  juice: { heatCapacityJPerKgK: 3850, water: 0.88, maxFluxWPerM2: 40_000, convection: watery },
  oil: { heatCapacityJPerKgK: 2000, water: 0, maxFluxWPerM2: 45_000, convection: oily },
  solid: { heatCapacityJPerKgK: 900, water: 0, maxFluxWPerM2: null, convection: null },
};

/** Highest heat flux, W/m², that the filling stands in one place; null for no limit. */
export const usualMaxFlux = (filling: Filling): number | null => properties[filling].maxFluxWPerM2;

/** Whether it holds enough water to boil as water does. */
export const boils = (filling: Filling): boolean => properties[filling].water > 0.5;

/** Specific heat capacity at a temperature, J/(kg K); melting is apart. */
export function heatCapacity({ filling, heatCapacityJPerKgK: stated }: Load, temperatureC: number): number {
  const { water, heatCapacityJPerKgK } = properties[filling];
  if (temperatureC < 0 && water > 0)
    return water * iceHeatCapacity + (1 - water) * Math.min(stated ?? heatCapacityJPerKgK, iceHeatCapacity);
  if (stated !== null) return stated;
  return filling === 'water' ? waterHeatCapacity(Math.min(340, temperatureC)) : heatCapacityJPerKgK;
}

/** Heat that melts a kilogram of it at 0 °C, J. */
export const meltingHeatOf = ({ filling }: Load): number => properties[filling].water * meltingHeat;

/** Heat from one temperature up to another, J/kg, melting with it (Simpson's rule on either side of 0 °C). */
export function heatBetween(load: Load, fromC: number, toC: number): number {
  const over = (from: number, to: number): number => {
    if (!(to > from)) return 0;
    const cells = Math.max(2, 2 * Math.ceil((to - from) / 4));
    const step = (to - from) / cells;
    let sum = 0;
    // just inside the ends, where the capacity jumps at 0 °C
    const at = (i: number) => heatCapacity(load, Math.min(to - 1e-9, Math.max(from + 1e-9, from + i * step)));
    for (let i = 0; i <= cells; i++) sum += (i === 0 || i === cells ? 1 : i % 2 === 0 ? 2 : 4) * at(i);
    return (sum * step) / 3;
  };
  const melts = fromC < 0 && toC > 0 ? meltingHeatOf(load) : 0;
  return over(fromC, Math.min(toC, 0)) + melts + over(Math.max(fromC, 0), toC);
}

/**
 * How much hotter than the load its wall is where it gives it a flux: natural convection over a level plate,
 * Nu = 0.15·Ra^(1/3) (Lloyd and Moran 1974, in Incropera and DeWitt; from memory), and for what boils no more than
 * nucleate boiling needs: q = 5.56·ΔT⁴ W/m² above the boiling point (Jakob and Hawkins 1957, level surface at one
 * atmosphere, 16 to 240 kW/m², as in Holman, Heat Transfer; from memory).
 * @param fluxWPerM2 at least 0
 * @returns the temperature of the wall's inside, °C; null for a solid
 */
export function wallTemperature(load: Load, temperatureC: number, fluxWPerM2: number): number | null {
  const { convection } = properties[load.filling];
  if (convection === null) return null;
  const { rayleighPerM3K, conductivityWPerMK } = convection;
  // q = 0.15·k·(ra)^(1/3)·ΔT^(4/3): the length falls out
  const byConvection = temperatureC + (fluxWPerM2 / (0.15 * conductivityWPerMK * Math.cbrt(rayleighPerM3K))) ** 0.75;
  if (load.boilingPointC === null) return byConvection;
  return Math.min(byConvection, Math.max(temperatureC, load.boilingPointC + (fluxWPerM2 / 5.56) ** 0.25));
}
