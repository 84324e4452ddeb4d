/** The mechanics of a stand against handbook cases and a published code's numbers. */
import { AstroTime, Body, Equator, Horizon, Observer } from 'astronomy-engine';
import { describe, expect, it } from 'vitest';
import { pipeFor, pipeInertia, pipeName, pipes, pipeSag, pipeStress } from '../../lib/hardware/index.js';
import { highestSunDeg, parkedPlace } from '../../lib/optics/index.js';
import { counterweightFor, discsOf, tiltTorque } from '../../lib/stand/balance.js';
import { cantileverSag, cantileverTurn, twoLoadSag } from '../../lib/stand/deflection.js';
import { ballastFor, factorOf, type Standing, windFor } from '../../lib/stand/tipping.js';
import { plateCoefficient, plateForce, windPressure } from '../../lib/stand/wind.js';

describe('wind', () => {
  it('has the velocity pressures of EN 1991-1-4, 0.39 and 0.56 kN/m² at 25 and 30 m/s (from memory)', () => {
    expect(windPressure(25) / 1000).toBeCloseTo(0.39, 2);
    expect(windPressure(30) / 1000).toBeCloseTo(0.56, 2);
  });

  it('takes the dish for a canopy up to 30 degrees and for a signboard above (EN 1991-1-4, table 7.6 and 7.4.3, from memory)', () => {
    const at = (degrees: number) => plateCoefficient((degrees * Math.PI) / 180);
    expect([0, 10, 20, 30, 31, 75].map(at)).toEqual(
      [0.5, 0.9, 1.3, 1.8, 1.8, 1.8].map((c) => expect.closeTo(c, 9) as number),
    );
    expect(at(27.5)).toBeCloseTo(1.7, 9);
  });

  it('presses on a board of 2 m² upright in 20 m/s with 900 N: 1.8 x 250 N/m² x 2 m²', () => {
    expect(plateForce({ radius: Math.sqrt(2 / Math.PI) * 1000, depth: 0 }, Math.PI / 2, 20)).toBeCloseTo(900, 6);
  });
});

describe('beams', () => {
  it('sag under two loads as handbooks have it: 23FL³/648EI at the thirds, FL³/24EI in the middle (Roark, from memory)', () => {
    expect(twoLoadSag(100, 500, 1500, 1e9)).toBeCloseTo((23 * 100 * 1500 ** 3) / (648 * 1e9), 9);
    // two loads in one place are one of twice the size: 2F·L³/48EI
    expect(twoLoadSag(100, 750, 1500, 1e9)).toBeCloseTo((2 * 100 * 1500 ** 3) / (48 * 1e9), 9);
  });

  it('sag as the beam equation has it, integrated by steps', () => {
    const [force, from, span, stiffness, steps] = [120, 540, 1526, 3e9, 20_000];
    // curvature M/EI; from the middle, where the slope is 0, to the support
    let [slope, fall] = [0, 0];
    const dx = span / 2 / steps;
    for (let i = 0; i < steps; i++) {
      const x = span / 2 - (i + 0.5) * dx;
      slope += ((force * Math.min(x, from)) / stiffness) * dx;
      fall += slope * dx;
    }
    expect(twoLoadSag(force, from, span, stiffness)).toBeCloseTo(fall, 3);
  });

  it('turn at the free end by FL²/2EI and sag there by FL³/3EI (Roark, from memory)', () => {
    expect(cantileverTurn(10, 1000, 1e8)).toBeCloseTo(0.05, 12);
    expect(cantileverSag(10, 1000, 1e8)).toBeCloseTo(100 / 3, 9);
  });
});

describe('pipes', () => {
  it('have the second moments of area of EN 10255, medium: 3/4 in 1.48 cm⁴, 1 in 3.65 cm⁴ (from memory)', () => {
    const of = (size: string) => pipeInertia(pipes.find((pipe) => pipe.size === size)!) / 1e4;
    expect(of('3/4 in')).toBeCloseTo(1.48, 2);
    expect(of('1 in')).toBeCloseTo(3.6, 1);
  });

  it('are called by their nominal size where they are metric: DN 15 to DN 50 (ISO 6708, from memory)', () => {
    expect(pipes.map((pipe) => pipeName(pipe, false))).toEqual(['DN 15', 'DN 20', 'DN 25', 'DN 32', 'DN 40', 'DN 50']);
    expect(pipes.map((pipe) => pipeName(pipe, true))).toEqual(pipes.map(({ size }) => size));
  });

  it('are as thick as their load needs, and no thicker', () => {
    for (const force of [50, 150, 400, 900]) {
      const found = pipeFor(1600, force);
      const index = pipes.findIndex((pipe) => pipe === found);
      expect(pipeSag(pipes[index]!, 1600, force)).toBeLessThanOrEqual(1600 / 300);
      const thinner = pipes[index - 1];
      if (thinner)
        expect(
          Math.max(pipeSag(thinner, 1600, force) / (1600 / 300), pipeStress(thinner, 1600, force) / 80),
        ).toBeGreaterThan(1);
    }
    expect(pipeFor(1600, 1e5)).toBeNull();
  });
});

describe('tipping', () => {
  const state: Standing = { tilt: Math.PI / 2, kg: 100, centre: [0, 0, 500], face: [0, 0, 1000] };
  const stance = { halfX: 400, halfY: 800 };
  const face = { radius: 500, depth: 0 };

  it('of a dish on its edge is that of a block: weight times half its foot over wind times its height', () => {
    // 1.8 x 62.5 N/m² x 0.785 m² = 88.36 N at 1 m, moved half the radius up or down
    const wind = 1.8 * 62.5 * Math.PI * 0.25;
    const factor = (100 * 9.81 * 0.4) / (wind * 1.25);
    expect(factorOf([state], stance, face, 10, 0)).toBeCloseTo(factor, 9);
  });

  it('reaches the factor asked for with the ballast, and at the wind that is said', () => {
    const kg = ballastFor([state], stance, face, 20);
    expect(kg).toBeGreaterThan(0);
    expect(factorOf([state], stance, face, 20, kg)).toBeCloseTo(1.5, 9);
    expect(windFor([state], stance, face, kg)).toBeCloseTo(20, 9);
    expect(windFor([state], stance, face, 0)).toBeLessThan(20);
  });

  it('falls to nothing when the centre of gravity leaves the castors', () => {
    expect(factorOf([{ ...state, centre: [-401, 0, 500] }], stance, face, 1, 0)).toBe(0);
  });

  it('lifts a dish that looks up, from below, and is worse for one that leans', () => {
    const up = factorOf([{ ...state, tilt: 0 }], stance, face, 20, 0);
    const leaning = factorOf([{ ...state, tilt: Math.PI / 3 }], stance, face, 20, 0);
    // uplift alone: 0.5 x 250 N/m² x 0.785 m² = 98 N, at 250 mm off the middle towards the edge and beyond it
    expect(up).toBeCloseTo((100 * 9.81 * 400) / (0.5 * 250 * Math.PI * 0.25 * (400 + 250)), 6);
    expect(leaning).toBeLessThan(up);
  });
});

describe('balance', () => {
  it('is weight times lever times the sine of the tilt', () => {
    expect(tiltTorque(40, 500, Math.PI / 6)).toBeCloseTo(40 * 9.81 * 0.5 * 0.5, 9);
  });

  it('leaves the torque that is allowed', () => {
    const tilt = (75 * Math.PI) / 180;
    const torque = tiltTorque(54, 534, tilt);
    const each = counterweightFor(torque, 121, 440, tilt);
    expect(torque - 2 * tiltTorque(each, 440, tilt)).toBeCloseTo(121, 9);
    expect(counterweightFor(100, 121, 440, tilt)).toBe(0);
  });

  it('is sold in steps of 1.25 kg, and stacks of grey cast iron are no thinner than its density allows', () => {
    const discs = discsOf(18.3);
    expect(discs.each).toBe(18.75);
    expect(discs.thickness * Math.PI * discs.radius ** 2 * 7200e-9).toBeGreaterThan(18.75);
    expect(discsOf(0)).toMatchObject({ each: 0, thickness: 0 });
  });
});

describe('the year’s highest sun', () => {
  // every minute round the noon of every day, by an independent library
  it.each([
    [47.5, 9.5],
    [-33.9, 18.4],
    [5, -75],
  ])('at %d, %d agrees with an independent library', (latitude, longitude) => {
    const observer = new Observer(latitude, longitude, 0);
    let best = -90;
    for (let day = 0; day < 366; day++)
      for (let minute = -20; minute <= 20; minute++) {
        const when = new AstroTime(new Date(Date.UTC(2026, 0, 1 + day, 12, minute) - longitude * 240_000));
        const seen = Equator(Body.Sun, when, observer, true, true);
        best = Math.max(best, Horizon(when, observer, seen.ra, seen.dec).altitude);
      }
    const found = highestSunDeg({ latitudeDeg: latitude, longitudeDeg: longitude }, Date.UTC(2026, 0, 1));
    expect(Math.abs(found - best)).toBeLessThan(0.13);
  });
});

describe('parking', () => {
  it.each([
    [47.5, 9.5, 15],
    [-33.9, 18.4, 15],
    [3, 101, 20],
  ])(
    'at %d, %d no sun of an independent library comes nearer than is said, and one comes near to it',
    (latitude, longitude, lowest) => {
      const { towards, angleDeg } = parkedPlace(
        { latitudeDeg: latitude, longitudeDeg: longitude },
        lowest,
        Date.UTC(2026, 0, 1),
      );
      const observer = new Observer(latitude, longitude, 0);
      const rad = Math.PI / 180;
      let nearest = 180;
      for (let day = 0; day < 366; day += 2)
        for (let minute = 0; minute < 1440; minute += 15) {
          const when = new AstroTime(new Date(Date.UTC(2026, 0, 1 + day, 0, minute)));
          const seen = Equator(Body.Sun, when, observer, true, true);
          const { altitude, azimuth } = Horizon(when, observer, seen.ra, seen.dec);
          if (altitude < 0) continue;
          const level =
            Math.cos(altitude * rad) *
            Math.cos(lowest * rad) *
            Math.cos((azimuth - (towards === 'north' ? 0 : 180)) * rad);
          nearest = Math.min(nearest, Math.acos(level + Math.sin(altitude * rad) * Math.sin(lowest * rad)) / rad);
        }
      expect(nearest).toBeGreaterThanOrEqual(angleDeg);
      expect(nearest).toBeLessThan(angleDeg + 5);
      expect(angleDeg).toBeGreaterThan(45);
    },
  );
});
