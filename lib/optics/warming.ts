/** How a load warms: the balance of what the vessel takes up, what it loses and what load and wall store. */
import { heatBetween, heatCapacity, meltingHeatOf } from './filling.js';
import { type Body, type Damp, heatLoss } from './heat.js';
import { evaporationHeat } from './water.js';
import type { Air, Load, Vessel } from './types.js';

export interface HeatPoint {
  readonly minutes: number;
  readonly temperatureC: number;
}

/** A vessel with its load, as the balance sees it. */
export interface Heated {
  readonly load: Load;
  readonly body: Body;
  /** Heat that the empty vessel takes for a kelvin, J/K. */
  readonly wallJPerK: number;
  readonly damp: Damp;
}

/** Where the warming ends: at the target, or at the boil. */
export function endOf(load: Load): number {
  return load.boilingPointC === null ? load.targetC : Math.min(load.targetC, load.boilingPointC);
}

export const wallHeat = ({ wall }: Vessel): number => wall.massKg * wall.heatCapacityJPerKgK;

/** Points of the heat-up curve, and intervals of an integral. */
const CURVE_POINTS = 120;
const MAX_INTERVALS = 200;

/** Seconds from one temperature to another on one side of 0 °C. */
function secondsWithin(heated: Heated, air: Air, powerW: number, fromC: number, toC: number): number {
  if (!(toC > fromC)) return 0;
  const { load, body, wallJPerK, damp } = heated;
  const intervals = Math.min(MAX_INTERVALS, 2 * Math.ceil(toC - fromC) + 2);
  const step = (toC - fromC) / intervals;
  let sum = 0;
  for (let i = 0; i <= intervals; i++) {
    const t = fromC + i * step;
    const gain = powerW - heatLoss(body, t, air, damp);
    if (gain <= 0) return Infinity;
    const inside = Math.min(toC - 1e-9, Math.max(fromC + 1e-9, t));
    const weight = i === 0 || i === intervals ? 1 : i % 2 === 0 ? 2 : 4;
    sum += (weight * (load.massKg * heatCapacity(load, inside) + wallJPerK)) / gain;
  }
  return (sum * step) / 3;
}

/**
 * Seconds to bring a load from one temperature to another under steady power: ∫ C/(P − loss) dT by Simpson's rule, and
 * the melting at 0 °C; infinite when the power cannot hold the end.
 */
export function secondsBetween(heated: Heated, air: Air, powerW: number, fromC: number, toC: number): number {
  const { load, body, damp } = heated;
  const cold = secondsWithin(heated, air, powerW, fromC, Math.min(0, toC));
  const warm = secondsWithin(heated, air, powerW, Math.max(0, fromC), toC);
  if (!(fromC < 0 && toC > 0)) return cold + warm;
  const gain = powerW - heatLoss(body, 0, air, damp);
  return gain > 0 ? cold + (load.massKg * meltingHeatOf(load)) / gain + warm : Infinity;
}

/** The heat-up from start to `toC` under steady power, evenly spaced in temperature; melting is a level stretch. */
export function heatCurve(heated: Heated, air: Air, powerW: number, toC: number): HeatPoint[] {
  const { startC } = heated.load;
  const melts = startC < 0 && toC > 0 && meltingHeatOf(heated.load) > 0;
  const even = Array.from({ length: CURVE_POINTS + 1 }, (_, i) => startC + ((toC - startC) * i) / CURVE_POINTS);
  const temperatures = melts ? [...even.filter((t) => t < 0), 0, 1e-6, ...even.filter((t) => t > 0)] : even;
  let seconds = 0;
  return temperatures.map((temperatureC, i) => {
    const before = temperatures[i - 1];
    if (before !== undefined) seconds += secondsBetween(heated, air, powerW, before, temperatureC);
    return { minutes: seconds / 60, temperatureC: Math.abs(temperatureC) < 1e-5 ? 0 : temperatureC };
  });
}

/** Steam that the power makes at the boil, kg/h; 0 when it does not boil. */
export function steamRate(heated: Heated, air: Air, powerW: number): number {
  const { load, body, damp } = heated;
  if (load.boilingPointC === null) return 0;
  const left =
    powerW - heatLoss({ ...body, openArea: 0, bareArea: body.bareArea + body.openArea }, load.boilingPointC, air, damp);
  return left > 0 ? (3600 * left) / evaporationHeat(load.boilingPointC) : 0;
}

/** What became of the heat of an interval, J: it adds up to what was taken up. */
export interface HeatLedger {
  readonly takenUp: number;
  readonly lost: number;
  readonly evaporated: number;
  readonly stored: number;
}

export interface Course {
  /** Temperature at the end of each step. */
  readonly temperatureC: number;
  readonly steamKg: number;
  readonly ledger: HeatLedger;
}

/** Temperature of a load and its wall that hold so many joules more than at `fromC`. */
function temperatureOf({ load, wallJPerK }: Heated, fromC: number, joules: number): number {
  const stored = (t: number) => load.massKg * heatBetween(load, fromC, t) + wallJPerK * (t - fromC);
  let [low, high] = [fromC, fromC + 10];
  if (joules < 0) {
    // cooling: the same the other way round
    const given = (t: number) => load.massKg * heatBetween(load, t, fromC) + wallJPerK * (fromC - t);
    [low, high] = [fromC - 10, fromC];
    while (given(low) < -joules) low -= 10;
    for (let i = 0; i < 40; i++) {
      const middle = (low + high) / 2;
      if (given(middle) > -joules) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  }
  while (stored(high) < joules) high += 10;
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (stored(middle) < joules) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** A stretch of time, with what a share of it (0 to 1) brings. */
export interface Stretch {
  readonly seconds: number;
  readonly at: (share: number) => { readonly powerW: number; readonly air: Air };
}

/** Longest step of the balance. */
const STEP_SECONDS = 60;

/**
 * Stretches of time with power and air that change: small explicit steps; what would heat beyond the boil makes steam.
 * What load and wall have stored decides their temperature, so that ice can melt at 0 °C.
 */
export function heatThrough(heated: Heated, fromC: number, stretches: readonly Stretch[]): Course[] {
  const { load, body, damp } = heated;
  const dry: Body = { ...body, openArea: 0, bareArea: body.bareArea + body.openArea };
  const boil = load.boilingPointC;
  const capacity =
    boil === null ? Infinity : load.massKg * heatBetween(load, fromC, boil) + heated.wallJPerK * (boil - fromC);
  let t = fromC;
  let stored = 0;
  return stretches.map(({ seconds, at }) => {
    const steps = Math.max(1, Math.ceil(seconds / STEP_SECONDS));
    const h = seconds / steps;
    const ledger = { takenUp: 0, lost: 0, evaporated: 0, stored: 0 };
    let steamKg = 0;
    for (let i = 0; i < steps; i++) {
      const { powerW, air } = at((i + 0.5) / steps);
      const lost = heatLoss(dry, t, air, damp);
      // at the boil steam is what the power makes, below it what the open surface lets go
      const open = stored >= capacity - 1e-6 ? 0 : heatLoss(body, t, air, damp) - lost;
      const change = (powerW - lost - open) * h;
      const over = Math.max(0, stored + change - capacity);
      stored += change - over;
      ledger.takenUp += powerW * h;
      ledger.lost += lost * h;
      ledger.evaporated += open * h + over;
      ledger.stored += change - over;
      steamKg += (open * h + over) / evaporationHeat(Math.max(1, Math.min(t, 350)));
      t = temperatureOf(heated, fromC, stored);
    }
    return { temperatureC: t, steamKg, ledger };
  });
}
