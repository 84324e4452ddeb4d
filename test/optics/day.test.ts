/** The day by the hour: nothing is lost, the clock is right, and water and heat follow published values. */
import { describe, expect, it } from 'vitest';
import { clockAhead, hourOf, momentOf } from '../../lib/optics/clock.js';
import { heatBetween } from '../../lib/optics/filling.js';
import { bareLoss, evaporation } from '../../lib/optics/heat.js';
import { forecast, type Site } from '../../lib/optics/index.js';
import { heatThrough, secondsBetween } from '../../lib/optics/warming.js';
import { heatedOf } from '../../lib/optics/heat-forecast.js';
import { evaporationHeat, meltingHeat, steamDensity, waterHeatCapacity, waterVolume } from '../../lib/optics/water.js';
import { discOf, inputOf } from './dishes.js';

const site: Site = { latitudeDeg: 48.2, longitudeDeg: 16.4, altitudeM: 200, timeZone: 'Europe/Vienna' };
const pot = { ...discOf(260), mount: 'level' as const, height: 270 };
const input = inputOf({
  site,
  vessel: pot,
  sun: { irradianceWPerM2: null },
  load: { heatCapacityJPerKgK: null, startC: -5, targetC: 120 },
});
const { byHour } = forecast(input, { rays: 8192, seed: 1 });

describe('the day by the hour', () => {
  it('has light that adds up to what fell on the aperture, hour by hour', () => {
    expect(byHour!.hours.length).toBeGreaterThan(10);
    for (const { light, irradianceWPerM2 } of byHour!.hours) {
      const { incoming, ...rest } = light;
      expect(Object.values(rest).reduce((a, b) => a + b, 0) / incoming).toBeCloseTo(1, 9);
      expect(incoming).toBeCloseTo(irradianceWPerM2 * Math.PI * 0.75 ** 2, 6);
      for (const watts of Object.values(rest)) expect(watts).toBeGreaterThanOrEqual(0);
    }
  });

  it('has heat that adds up to what was taken up, from ice to steam', () => {
    const { hours, steamKg, reachedHour } = byHour!.heating!;
    for (const { ledger } of hours) {
      const { takenUp, lost, evaporated, stored } = ledger;
      expect((lost + evaporated + stored) / takenUp).toBeCloseTo(1, 9);
    }
    const stored = hours.reduce((sum, { ledger }) => sum + ledger.stored, 0);
    // 12 kg from −5 °C: ice, melting, water to the boil
    expect(stored / (12 * (5 * 2097 + meltingHeat + heatBetween(input.load!, 0, 100)))).toBeCloseTo(1, 3);
    const steam = hours.reduce((sum, { ledger }) => sum + ledger.evaporated, 0) / evaporationHeat(100);
    expect(steam / steamKg).toBeCloseTo(1, 3);
    expect(reachedHour).toBeGreaterThan(byHour!.heating!.startHour);
  });

  it('runs on the clock of the place, summer time with it', () => {
    // Central European Time is UTC + 1, from the last Sunday of March to that of October + 2 (Directive 2000/84/EC)
    expect(clockAhead(site, Date.UTC(2026, 0, 15)) / 3_600_000).toBe(1);
    expect(clockAhead(site, Date.UTC(2026, 6, 15)) / 3_600_000).toBe(2);
    const start = Date.UTC(2026, 5, 21);
    expect(momentOf(site, start, 13)).toBe(Date.UTC(2026, 5, 21, 11));
    expect(hourOf(site, start, Date.UTC(2026, 5, 21, 11))).toBe(13);
    // noon by the sun: 12:00 − (16.4° − 15°)·4 min + 1 h, and the equation of time of −1.9 min in late June
    const best = byHour!.hours.reduce((a, b) => (b.elevationDeg > a.elevationDeg ? b : a));
    expect(best.hour).toBe(13);
  });

  it('turns by what the sun moves: 15° an hour about the pole', () => {
    for (const { turn, elevationDeg } of byHour!.hours) {
      const along = turn.azimuthDeg * Math.cos((elevationDeg * Math.PI) / 180);
      const rate = (Math.hypot(along, turn.elevationDeg) / turn.minutes) * 60;
      // 15.04°·cos δ with δ = 23.4°
      expect(Math.abs(rate - 13.8)).toBeLessThan(0.4);
    }
  });

  it('has more hours and heat in June than in December', () => {
    const [december, june] = [byHour!.months[11]!, byHour!.months[5]!];
    expect(june.hours).toBeGreaterThan(1.5 * december.hours);
    expect(june.litres!).toBeGreaterThan(december.litres!);
  });
});

describe('water', () => {
  it('has the check values of the Industrial Formulation', () => {
    // IAPWS R7-97(2012), table 5: v and cp at 300 K and 3 MPa, 300 K and 80 MPa, 500 K and 3 MPa
    for (const [kelvin, pa, volume, capacity] of [
      [300, 3e6, 0.00100215168, 4173.01218],
      [300, 80e6, 0.000971180894, 4010.08987],
      [500, 3e6, 0.001202418, 4655.80682],
    ] as const) {
      expect(waterVolume(kelvin - 273.15, pa) / volume).toBeCloseTo(1, 8);
      expect(waterHeatCapacity(kelvin - 273.15, pa) / capacity).toBeCloseTo(1, 8);
    }
    // IAPWS SR1-86: density of saturated steam at 373.1243 K; steam tables: 2256.5 kJ/kg at 100 °C, 2453.5 at 20 °C
    expect(steamDensity(99.9743)).toBeCloseTo(0.597586, 5);
    expect(Math.abs(evaporationHeat(100) / 2_256_500 - 1)).toBeLessThan(5e-4);
    expect(Math.abs(evaporationHeat(20) / 2_453_500 - 1)).toBeLessThan(5e-4);
  });
});

describe('warming', () => {
  it('takes as long by small steps as by the integral', () => {
    const heated = heatedOf(inputOf({ vessel: { ...pot, wall: { ...pot.wall, massKg: 3 } } }))!;
    const air = { ambientC: 20, windMPerS: 2 };
    const seconds = secondsBetween(heated, air, 900, 12, 78);
    const [end] = heatThrough(heated, 12, [{ seconds, at: () => ({ powerW: 900, air }) }]);
    expect(end!.temperatureC).toBeCloseTo(78, 0);
  });

  it('loses steam from an open pot as the handbooks have it', () => {
    // still air, half damp, 20 °C: water at 60 °C loses about 1 kg/(m² h) by the analogy, Carrier's formula for still
    // pools gives 1.5 (ASHRAE Handbook, Applications; both from memory); nothing where the air is as damp as the water
    const air = { ambientC: 20, windMPerS: 0 };
    const perHour = 3600 * evaporation(1, 60, air, { humidity: 0.5, altitudeM: 0 });
    expect(perHour).toBeGreaterThan(0.7);
    expect(perHour).toBeLessThan(1.8);
    expect(evaporation(1, 20, air, { humidity: 1, altitudeM: 0 })).toBe(0);
    expect(bareLoss(0.9, 20, air)).toBeCloseTo(0, 12);
  });
});
