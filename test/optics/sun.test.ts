import { AstroTime, Body, Equator, Horizon, Observer } from 'astronomy-engine';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airMass, clearSkyDirect } from '../../lib/optics/clear-sky.js';
import { sunDay } from '../../lib/optics/index.js';
import { sunPlace } from '../../lib/optics/sun-position.js';
import { chiFor, radiance, shareOutsideDisc, sunShape } from '../../lib/optics/sun-shape.js';

const RAD = Math.PI / 180;

describe('place of the sun, against an independent library', () => {
  const moments = fc.record({
    day: fc.integer({ min: -14_600, max: 29_200 }),
    minute: fc.integer({ min: 0, max: 1439 }),
    latitude: fc.double({ min: -89, max: 89, noNaN: true }),
    longitude: fc.double({ min: -180, max: 180, noNaN: true }),
  });

  it('agrees within 0.02° in height and bearing, and in the size of the disc, from 1930 to 2049', () => {
    fc.assert(
      fc.property(moments, ({ day, minute, latitude, longitude }) => {
        const time = day * 86_400_000 + minute * 60_000;
        const ours = sunPlace(time, latitude, longitude);
        const observer = new Observer(latitude, longitude, 0);
        const when = new AstroTime(new Date(time));
        const seen = Equator(Body.Sun, when, observer, true, true);
        // without refraction, as ours; its parallax of 0.0024° is within the tolerance
        const horizon = Horizon(when, observer, seen.ra, seen.dec);
        expect(Math.abs(ours.elevation / RAD - horizon.altitude)).toBeLessThan(0.02);
        const turn = Math.abs(ours.azimuth / RAD - horizon.azimuth);
        expect(Math.min(turn, 360 - turn) * Math.cos(ours.elevation)).toBeLessThan(0.02);
        // 959.63 seconds of arc at one astronomical unit
        expect(Math.abs(ours.angularRadius / Math.asin(((959.63 / 3600) * RAD) / seen.dist) - 1)).toBeLessThan(2e-4);
      }),
      { seed: 4, numRuns: 300 },
    );
  });

  it('has the usual half-angle of 4.65 mrad as the mean of the year', () => {
    const radii = Array.from({ length: 365 }, (_, day) => sunPlace(day * 86_400_000, 0, 0).angularRadius);
    expect(radii.reduce((sum, radius) => sum + radius, 0) / 365).toBeCloseTo(4.65e-3, 5);
    expect(Math.max(...radii) / Math.min(...radii)).toBeCloseTo((1 + 0.0167) / (1 - 0.0167), 3);
  });
});

describe('day of a place', () => {
  const site = { latitudeDeg: 47, longitudeDeg: 11, date: '2026-06-21', altitudeM: 600, leastElevationDeg: 15 };

  it('puts noon at 90° less latitude plus declination', () => {
    // declination at the June solstice 23.44°
    expect(sunDay(site).noonElevationDeg).toBeCloseTo(90 - 47 + 23.44, 1);
  });

  it('has aiming hours that begin and end at the least height, as the library finds it', () => {
    const { aiming } = sunDay(site);
    if (aiming.kind !== 'from-to') throw new Error(aiming.kind);
    const observer = new Observer(47, 11, 0);
    for (const utc of [aiming.fromUtc, aiming.toUtc]) {
      const when = new AstroTime(new Date(utc));
      const seen = Equator(Body.Sun, when, observer, true, true);
      // to the minute that is printed: the sun climbs 0.18° in it here at most
      expect(Math.abs(Horizon(when, observer, seen.ra, seen.dec).altitude - 15)).toBeLessThan(0.12);
    }
  });

  it('knows polar night, polar day and the date line', () => {
    expect(sunDay({ ...site, latitudeDeg: 75, date: '2026-12-21' }).aiming.kind).toBe('never');
    expect(sunDay({ ...site, latitudeDeg: 89, leastElevationDeg: 10 }).aiming.kind).toBe('all-day');
    const east = sunDay({ ...site, longitudeDeg: 179.9 });
    const west = sunDay({ ...site, longitudeDeg: -179.9 });
    expect(Math.abs(east.noonElevationDeg - west.noonElevationDeg)).toBeLessThan(0.01);
  });

  it('refuses what is no day', () => {
    for (const date of ['2026-02-29', '2026-13-01', 'soon'])
      expect(() => sunDay({ ...site, date })).toThrow(RangeError);
  });
});

describe('clear sky', () => {
  it('has the published air masses', () => {
    // Kasten and Young 1989, table of relative optical air mass; from memory
    expect(airMass(90 * RAD)).toBeCloseTo(1, 3);
    expect(airMass(30 * RAD)).toBeCloseTo(1.994, 2);
    expect(airMass(10 * RAD)).toBeCloseTo(5.586, 1);
    expect(Math.abs(airMass(0) - 38)).toBeLessThan(0.2);
  });

  it('comes near the standard direct spectrum at air mass 1.5', () => {
    // ASTM G173-03: 900 W/m² direct with the circumsolar light, air mass 1.5; another model, so 10 % are granted
    const direct = clearSkyDirect(Math.asin(1 / 1.5), 0, 1);
    expect(Math.abs(direct / 900 - 1)).toBeLessThan(0.1);
  });

  it('rises with the sun and with height, and falls with distance', () => {
    expect(clearSkyDirect(1, 0, 1)).toBeGreaterThan(clearSkyDirect(0.5, 0, 1));
    expect(clearSkyDirect(0.5, 2000, 1)).toBeGreaterThan(clearSkyDirect(0.5, 0, 1));
    expect(clearSkyDirect(0.5, 0, 1.0167) / clearSkyDirect(0.5, 0, 0.9833)).toBeCloseTo((0.9833 / 1.0167) ** 2, 10);
    expect(clearSkyDirect(-0.01, 0, 1)).toBe(0);
    expect(clearSkyDirect(Math.PI / 2, 9000, 0.98)).toBeLessThan(1367);
  });
});

describe('shape of the sun', () => {
  it('needs the published correction of χ for a wanted share of circumsolar light', () => {
    // polynomials fitted to the shape of Buie, Monger and Dey for use in ray tracers; from memory
    const published = (share: number): number =>
      share > 0.145
        ? -0.04419909985804843 +
          share *
            (1.401323894233574 +
              share * (-0.3639746714505299 + share * (-0.9579768560161194 + 1.1550475450828657 * share)))
        : 0.022652077593662934 +
          share * (0.5252380349996234 + share * (2.5484334534423887 - 0.8763755326550412 * share));
    for (const share of [0.05, 0.1, 0.2, 0.4, 0.6]) {
      expect(Math.abs(chiFor(share) / published(share) - 1)).toBeLessThan(0.005);
      expect(shareOutsideDisc(chiFor(share))).toBeCloseTo(share, 5);
    }
  });

  it('samples each shape as its radiance says', () => {
    const within = (shape: ReturnType<typeof sunShape>, mrad: number) => {
      const table = shape.angleAtShare;
      const at = table.findIndex((angle) => angle >= mrad / 1000);
      return at / (table.length - 1);
    };
    // uniform: share within θ is (θ/θs)²
    expect(within(sunShape('uniform', 0), 2.325)).toBeCloseTo(0.25, 3);
    // the published radiance summed on a plain grid
    const summed = (chi: number, to: number) => {
      let sum = 0;
      for (let i = 0; i < 100_000; i++) {
        const angle = ((i + 0.5) * to) / 100_000;
        sum += radiance(angle, chi) * angle * (to / 100_000);
      }
      return sum;
    };
    const limb = sunShape('limb-darkened', 0.3);
    expect(within(limb, 3)).toBeCloseTo(summed(0, 3) / summed(0, 4.65), 3);
    expect(limb.angleAtShare.at(-1)).toBeCloseTo(4.65e-3, 9);
    const chi = chiFor(0.2);
    const wide = sunShape('circumsolar', 0.2);
    for (const mrad of [3, 4.65, 10, 30])
      expect(within(wide, mrad)).toBeCloseTo(summed(chi, mrad) / summed(chi, 43.6), 2);
    expect(wide.angleAtShare.at(-1)).toBeCloseTo(43.6e-3, 6);
  });

  it('darkens towards the edge', () => {
    expect(radiance(0, 0)).toBe(1);
    for (let angle = 0.2; angle < 4.65; angle += 0.2) expect(radiance(angle, 0)).toBeLessThan(radiance(angle - 0.2, 0));
    expect(radiance(4.7, 0)).toBe(0);
  });
});
