import { describe, expect, it } from 'vitest';
import { type Comparison, compareLog, readLog } from '../../../lib/optics/index.js';
import { straightLine, throughOrigin } from '../../../lib/optics/compare/line-fit.js';
import { comparisonRows } from '../../../lib/optics/compare/rows.js';
import { widthAt, widthFindings } from '../../../lib/optics/compare/spot-widths.js';
import { estimate } from '../../../lib/optics/estimate.js';
import { setUp, takenUpShares } from '../../../lib/optics/set-up.js';
import { trace } from '../../../lib/optics/trace.js';
import type { OpticsInput } from '../../../lib/optics/index.js';
import { inputOf, smoothDish } from '../dishes.js';

/** A small vessel, so that waviness shows. */
const input = inputOf({
  // as high as six litres and a fifth ask for; its side is bright, so that waviness shows
  vessel: { diameter: 110, height: (1.2 * 6e6) / (Math.PI * 55 ** 2), sideAbsorptance: 0 },
  load: { massKg: 6, targetC: 90, startC: 22 },
});

interface Yard {
  readonly minutes: number;
  readonly startC: number;
  /** Taken up for each W/m², m². */
  readonly gainM2: number;
  /** Losses at a temperature, W. */
  readonly lossW: (loadC: number, ambientC: number, wind: number) => number;
  readonly step: number;
  /** From this minute on the dish is covered. */
  readonly coveredFrom: number;
  readonly sun: (minute: number) => number;
  readonly wind: (minute: number) => number;
}

const AMBIENT = 22;
const HEAT_CAPACITY = 6 * 4186;

/** A log as an ideal yard would give it: the heat balance in steps of a second, by itself, rounded as read. */
function logOf({ minutes, startC, gainM2, lossW, step, coveredFrom, sun, wind }: Yard, digits = 2): string {
  const lines = ['time,load (°C),ambient (°C),irradiance (W/m2),wind (m/s),covered'];
  let loadC = startC;
  for (let second = 0; second <= minutes * 60; second++) {
    const minute = second / 60;
    const covered = minute >= coveredFrom;
    if (second % (step * 60) === 0) {
      const time = `${String(9 + Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
      // the reading at which the cover goes on is the last in the sun
      const state = minute > coveredFrom ? 'yes' : 'no';
      lines.push(
        `${time},${loadC.toFixed(digits)},${AMBIENT},${sun(minute).toFixed(1)},${wind(minute).toFixed(2)},${state}`,
      );
    }
    loadC += ((covered ? 0 : gainM2 * sun(minute)) - lossW(loadC, AMBIENT, wind(minute))) / HEAT_CAPACITY;
  }
  return lines.join('\n');
}

/** The published formulas for losses once more, by hand: a cylinder a fifth higher than its content. */
function losses(factor: number): Yard['lossW'] {
  const radius = 0.055;
  const face = Math.PI * radius ** 2;
  const area = 2 * face + 2 * Math.PI * radius * ((1.2 * 0.006) / face);
  return (loadC, ambientC, wind) =>
    factor *
    area *
    ((2.8 + 3 * wind) * (loadC - ambientC) + 0.9 * 5.670374419e-8 * ((loadC + 273.15) ** 4 - (ambientC + 273.15) ** 4));
}

/** Gain with a waviness, from a trace of another seed and number of rays than the comparison's. */
function gainWith(slopeErrorMrad: number, of: OpticsInput = input): number {
  const set = setUp(of);
  const rays = trace({ ...set.settings, slopeError: slopeErrorMrad / 1000, rays: 200_000, seed: 77 });
  const taken = estimate(takenUpShares(rays, set.solid, of)).value;
  return (taken * set.areas.mirror * of.reflector.reflectance) / 1e6;
}

const compared = (text: string, more: Partial<Parameters<typeof compareLog>[2]> = {}): Comparison => {
  const log = readLog(text, 'test.csv');
  expect(log.problems).toEqual([]);
  return compareLog(input, log, { seed: 1, ...more });
};

/** Rays for what hangs on the log alone, and not on the light. */
const few = { rays: 2048 };

const yard: Yard = {
  minutes: 110,
  startC: 25,
  gainM2: gainWith(11),
  lossW: losses(1.3),
  step: 1,
  coveredFrom: 30,
  sun: (minute) => 820 + 60 * Math.sin(minute / 9),
  wind: (minute) => 0.7 + 0.3 * Math.cos(minute / 7),
};

describe('a comparison', () => {
  const made = compared(logOf(yard));

  it('recovers the losses that a run under cover had', () => {
    const { ofForecast } = made.cooling!;
    expect(Math.abs(ofForecast.value - 1.3)).toBeLessThan(0.01);
    expect(Math.abs(ofForecast.value - 1.3)).toBeLessThan(4 * ofForecast.standardError + 0.005);
  });

  it('recovers the gain and the waviness behind it, within what it states', () => {
    const gain = made.gain!;
    expect(Math.abs(gain.measuredM2.value / yard.gainM2 - 1)).toBeLessThan(5e-3);
    if (gain.slope.kind !== 'found') throw new Error(gain.slope.kind);
    expect(Math.abs(gain.slope.slopeErrorMrad - 11)).toBeLessThan(0.3);
    expect(gain.slope.fromMrad - 0.15).toBeLessThan(11);
    expect(gain.slope.toMrad + 0.15).toBeGreaterThan(11);
    // or the mirror is dimmer by as much as the gain is less
    expect(gain.reflectance.value).toBeCloseTo((0.85 * yard.gainM2) / gainWith(3), 2);
  });

  it('draws the load as measured where gain and losses are those of the yard', () => {
    for (const { measuredC, fittedC } of made.points) expect(Math.abs(measuredC - fittedC)).toBeLessThan(0.5);
    expect(Math.max(...made.points.map(({ measuredC, forecastC }) => Math.abs(measuredC - forecastC)))).toBeGreaterThan(
      3,
    );
  });

  it('is less sure without a run under cover, and says so', () => {
    const short = compared(logOf({ ...yard, minutes: 30, lossW: losses(1) }));
    expect(short.cooling).toBeNull();
    const [wide, narrow] = [short.gain!.measuredM2, made.gain!.measuredM2];
    expect(wide.standardError).toBeGreaterThan(2 * narrow.standardError);
    expect(Math.abs(wide.value - yard.gainM2)).toBeLessThan(wide.standardError);
    expect(
      comparisonRows(short, 3)
        .map(({ note }) => note ?? '')
        .join(),
    ).toContain('no run under cover');
  });

  it('names no waviness where the yard did better than a mirror without any', () => {
    const better = compared(logOf({ ...yard, gainM2: 1.3 * gainWith(0) }));
    expect(better.gain!.slope).toEqual({ kind: 'too-good' });
    expect(better.gain!.reflectance.value).toBeGreaterThan(1);
  });
});

describe('the loss coefficient', () => {
  it('is that of the exponential by which a body cools with constant losses', () => {
    // Newton: T − air = (T0 − air)·exp(−k·t/C), here k = 2.5 W/K
    const minutes = Array.from({ length: 61 }, (_, i) => i);
    const lines = minutes.map((minute) => {
      const loadC = 20 + 60 * Math.exp((-2.5 * minute * 60) / HEAT_CAPACITY);
      return `${String(10 + Math.floor(minute / 60))}:${String(minute % 60).padStart(2, '0')},${loadC.toFixed(4)},20,0,0.5,yes`;
    });
    const text = ['time,load (°C),ambient (°C),irradiance (W/m2),wind (m/s),covered', ...lines].join('\n');
    const { cooling, gain } = compared(text, few);
    expect(Math.abs(cooling!.lossWPerK.value / 2.5 - 1)).toBeLessThan(1e-3);
    expect(gain).toBeNull();
  });
});

describe('the hours of the standard', () => {
  // 2026-04-15: the equation of time is 0 within 10 s (Nautical Almanac, from memory), so that a sundial at longitude 0
  // keeps Greenwich time, and one at 15° east is an hour ahead of it
  const at = (longitudeDeg: number, text: string, timeZone = 0) =>
    compareLog(
      inputOf({
        vessel: { diameter: 110, height: (1.2 * 6e6) / (Math.PI * 55 ** 2), sideAbsorptance: 0 },
        load: { massKg: 6, targetC: 90, startC: 22 },
        site: { latitudeDeg: 51, longitudeDeg, altitudeM: 0, timeZone },
        day: { date: '2026-04-15' },
        sun: { irradianceWPerM2: 800 },
      }),
      readLog(text, 'test.csv'),
      { seed: 1, ...few },
    ).cooking;
  // from 9:00 on, ten minutes each
  const text = logOf({ ...yard, minutes: 110, coveredFrom: Infinity });
  const early = (test: Comparison['cooking']) =>
    test.points.map(({ against }) => against.some((reason) => reason.includes('solar time')));

  it('are those of the sun at the place', () => {
    expect(early(at(0, text))).toEqual([...Array<boolean>(6).fill(true), ...Array<boolean>(5).fill(false)]);
    expect(early(at(15, text))).toEqual(Array<boolean>(11).fill(false));
    // where the clock keeps the time of 15° east, it is the sundial's
    expect(early(at(15, text, 1)).indexOf(false)).toBe(6);
    // dated and with its zone: 9:00 two hours east of Greenwich is 7:00 there
    const zoned = text.replace(/^(\d\d:\d\d)/gm, '2026-04-15 $1+02:00');
    expect(early(at(0, zoned))).toEqual(Array<boolean>(11).fill(true));
    expect(early(at(30, zoned))).toEqual([...Array<boolean>(6).fill(true), ...Array<boolean>(5).fill(false)]);
  });

  it('are said not to be checked without a site', () => {
    expect(compared(text, few).cooking.against.join()).toContain('names no site');
    expect(at(0, text).against.join()).not.toContain('solar time is not checked');
  });
});

describe('standardised cooking power', () => {
  it('is read off the line at 50 K, scaled to 700 W/m² (ASAE S580.1; worked by hand from the definition)', () => {
    // a yard whose gain falls by straight 1.5 W for each kelvin: at 840 W/m² and 50 K it gives 0.4·840 − 75 = 261 W,
    // at 700 W/m² 261·700/840 = 217.5 W
    const { cooking } = compared(
      logOf(
        {
          ...yard,
          minutes: 40,
          coveredFrom: 1000,
          startC: 30,
          gainM2: 0.4,
          lossW: (loadC, ambientC) => 1.5 * (loadC - ambientC),
          sun: () => 840,
          wind: () => 0.5,
          step: 10,
        },
        4,
      ),
      few,
    );
    expect(cooking.points.map(({ against }) => against)).toEqual([[], [], [], []]);
    expect(Math.abs(cooking.fit!.powerW.value - 217.5)).toBeLessThan(0.5);
    expect(cooking.fit!.slopeWPerK).toBeCloseTo((-1.5 * 700) / 840, 2);
    expect(cooking.against.join()).toMatch(/4 intervals that count \(the standard asks for 30/);
  });

  it.each([
    ['weak sun', { sun: () => 440 }, /sun of 440/],
    ['fierce sun', { sun: () => 1110 }, /at most 1100/],
    ['clouds', { sun: (minute: number) => (minute % 10 < 5 ? 700 : 820) }, /changed by 120/],
    ['wind', { wind: () => 1.2 }, /wind of 1.2/],
    ['a cold load', { startC: 22 }, /above the air/],
    ['a load about to boil', { startC: 93 }, /below boiling/],
  ])('does not count an interval with %s', (_, change, reason) => {
    const { cooking } = compared(logOf({ ...yard, minutes: 20, coveredFrom: 1000, ...change }), few);
    expect(cooking.points[0]?.against.join()).toMatch(reason);
  });
});

describe('least squares', () => {
  // the first of four sets with one fit: y = 3.00 + 0.500·x, r² 0.667, standard error of the intercept 1.125 (Anscombe,
  // Graphs in statistical analysis, American Statistician 27, 1973; from memory)
  const xs = [10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5];
  const ys = [8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68];

  it('fits a published set', () => {
    const line = straightLine(xs, ys);
    expect(line.intercept).toBeCloseTo(3.0, 2);
    expect(line.slope).toBeCloseTo(0.5, 3);
    expect(line.r2).toBeCloseTo(0.667, 3);
    expect(line.at(0).standardError).toBeCloseTo(1.125, 3);
  });

  it('takes a slope through the origin with the scatter about it', () => {
    // by hand: (1·2 + 2·3)/(1 + 4) = 1.6; rests 0.4 and −0.2; √(0.2/1/5) = 0.2
    expect(throughOrigin([1, 2], [2, 3]).value).toBeCloseTo(1.6, 12);
    expect(throughOrigin([1, 2], [2, 3]).standardError).toBeCloseTo(0.2, 12);
  });
});

describe('the widths of the spot', () => {
  // a shallow mirror of long focus: the spot is a normal distribution of 2σf in each direction, widened by the sun
  // (uniform disc of 4.65 mrad: variance a quarter of its radius squared) and the haze of 1 mrad
  const f = 3000;
  const shallow = inputOf({
    dish: smoothDish({ apertureRadius: 300, focalLength: f }),
    sun: { slopeErrorMrad: 8, edgeCurlMrad: 0 },
  });
  const spread = f * Math.hypot(2 * 8e-3, 4.65e-3 / 2, 1e-3);
  const widthOf = (share: number) => 2 * spread * Math.sqrt(-2 * Math.log(share));

  it.each([0.5, 0.2, 0.1])('are those of the normal distribution at %d of the peak', (share) => {
    expect(Math.abs(widthAt(shallow, 8, share, 262_144, 4) / widthOf(share) - 1)).toBeLessThan(0.02);
  });

  it('give the waviness back', () => {
    const designed = { ...shallow, sun: { ...shallow.sun, slopeErrorMrad: 4 } };
    const [found] = widthFindings(designed, [{ share: 0.5, width: widthOf(0.5) }], 65_536, 2);
    if (found?.finding.kind !== 'found') throw new Error('no waviness');
    expect(Math.abs(found.finding.slopeErrorMrad - 8)).toBeLessThan(0.25);
    expect(found.finding.fromMrad).toBeLessThan(8);
    expect(found.finding.toMrad).toBeGreaterThan(8);
    expect(found.forecastWidth).toBeLessThan(0.6 * found.width);
  });
});
