import { diagnosticText, pathText } from '../../lib/diagnostic/index.js';
import { describe, expect, it } from 'vitest';
import {
  advise,
  adviceRows,
  forecast,
  forecastProblems,
  inputProblems,
  opticsInput,
  summaryRows,
} from '../../lib/optics/index.js';
import { designOf, fixture, fixtureText } from '../helpers/fixtures.js';
import { dishOf, inputOf } from './dishes.js';

const quick = { rays: 8192, seed: 1 };

describe('advice', () => {
  const input = inputOf();
  const advice = advise(input, quick)!;

  it('finds the fewest ribs that give all but 1 %, near the closed form', () => {
    const { ribs } = advice;
    const max = Math.max(...ribs.alternatives.map(({ takenUpW }) => takenUpW.value));
    const of = (n: number) => ribs.alternatives.find((one) => one.ribs === n)!;
    expect(of(ribs.best).takenUpW.value).toBeGreaterThanOrEqual(0.99 * max);
    for (const one of ribs.alternatives.filter((other) => other.ribs < ribs.best))
      expect(one.takenUpW.value).toBeLessThan(0.99 * max);
    expect(ribs.flatWidthFits).toBe(19);
    expect(Math.abs(ribs.best - 19)).toBeLessThanOrEqual(5);
  });

  it('weighs a wider vessel’s light against its losses', () => {
    const { vessel } = advice;
    const best = vessel.alternatives.find(({ diameter }) => diameter === vessel.bestDiameter)!;
    for (const one of vessel.alternatives) {
      expect(one.keptW.value).toBeLessThanOrEqual(best.keptW.value);
      expect(one.keptW.value).toBeCloseTo(one.takenUpW.value - one.lostW, 9);
    }
    // in a storm the narrower vessel is better or as good
    const storm = advise(inputOf({ day: { windMPerS: [[0, 12]] } }), quick)!.vessel;
    expect(storm.bestDiameter).toBeLessThanOrEqual(vessel.bestDiameter);
  });

  it('never advises a negative power or a length of -0', () => {
    // a gale and a weak sun: the wide vessels lose more than they catch, then all of them do
    for (const irradianceWPerM2 of [120, 10]) {
      const weak = inputOf({ day: { windMPerS: [[0, 15]] }, sun: { irradianceWPerM2 } });
      const advised = advise(weak, { ...quick, rays: 2048 })!;
      const { alternatives } = advised.vessel;
      expect(alternatives.some(({ keptW }) => keptW.value < 0)).toBe(true);
      const result = adviceRows(advised).find(({ label }) => label === 'best vessel diameter')!;
      expect(`${result.value} ${result.note}`).not.toMatch(/-\d/);
      if (alternatives.every(({ keptW }) => keptW.value < 0)) expect(result.value).toBe('none');
      else expect(result.note).toMatch(/nothing/);
    }
    // a vessel whose best place is all but the focus
    const high = inputOf({ vessel: { diameter: 120, offset: 150 } });
    const made = forecast(high, quick);
    const hanging = { ...made.vessel!.hanging!, bestOffset: -0.2 };
    const near = { ...made, vessel: { ...made.vessel!, hanging } };
    expect(forecastProblems(high, near).find(({ code }) => code === 'spot-misses-vessel')!.remedy).toMatch(
      /vessel.offset 0 mm/,
    );
    const loss = { ...made.power.losses[0]!, watts: { value: -0.01, standardError: 0 } };
    const row = summaryRows({ ...made, power: { ...made.power, losses: [loss] } }).at(-1)!;
    expect(Object.is(row.value, 0)).toBe(true);
  });

  it('finds the focal length nearest to the design’s that gives all but 1 %', () => {
    const { focalLength } = advice;
    const best = focalLength.alternatives.find((one) => one.focalLength === focalLength.bestFocalLength)!;
    const max = Math.max(...focalLength.alternatives.map(({ takenUpW }) => takenUpW.value));
    expect(best.takenUpW.value).toBeGreaterThanOrEqual(0.99 * max);
    for (const one of focalLength.alternatives)
      if (Math.abs(one.focalLength - 550) < Math.abs(best.focalLength - 550))
        expect(one.takenUpW.value).toBeLessThan(0.99 * max);
    expect(focalLength.alternatives.some((one) => one.focalLength === 550)).toBe(true);
    expect(focalLength.alternatives.every((one) => one.focalLength >= 375)).toBe(true);
  });

  it('tells what figure panel gains, and that rib must stand lower', () => {
    const few = advise(inputOf({ dish: dishOf({ ribCount: 8 }), vessel: { diameter: 200 } }), quick)!.figure;
    const [panel, rib] = few.alternatives;
    expect(few.gainW.value).toBeGreaterThan(0);
    // at 8 ribs f·cos²α is 81 mm below f
    expect(panel!.bestHeight.value - rib!.bestHeight.value).toBeGreaterThan(60);
    expect(rib!.takenUpInBestPlaneW.value).toBeGreaterThan(rib!.takenUpW.value);
  });

  it('is result in rows with the alternatives beside', () => {
    const rows = adviceRows(advice);
    expect(rows).toHaveLength(4);
    for (const { note } of rows) expect(note!.split(/[,;] /).length).toBeGreaterThan(1);
  });
});

describe('bad input', () => {
  const of = (change: Parameters<typeof inputOf>[0]) => inputProblems(inputOf(change));
  const site = { latitudeDeg: 47, longitudeDeg: 11, altitudeM: 0, timeZone: 1 };

  it('finds nothing wrong with the demo', () => {
    expect(of({})).toEqual([]);
    expect(of({ site })).toEqual([]);
  });

  it.each([
    ['vessel below the vertex', { vessel: { offset: -560 } }, 'vessel.offset', /below the vertex/],
    [
      'vessel larger than the aperture',
      { vessel: { diameter: 1600 } },
      'vessel.diameter',
      /larger than the aperture of 1500 mm/,
    ],
    ['no vessel to speak of', { vessel: { diameter: 0 } }, 'vessel.diameter', /diameter is 0 mm; a tenth/],
    [
      'reflectance over 1',
      { reflector: { reflectance: 1.2 } },
      'reflector.reflectance',
      /is 1.2; it must be above 0 and at most 1/,
    ],
    ['reflectance that is no number', { reflector: { reflectance: NaN } }, 'reflector.reflectance', /at most 1/],
    ['absorptance of nothing', { vessel: { baseAbsorptance: 0 } }, 'vessel.baseAbsorptance', /above 0/],
    ['an empty load', { load: { massKg: 0 } }, 'load.mass', /nothing is heated/],
    ['a clock that is none', { site: { ...site, timeZone: 'Mars/Base' } }, 'site.timeZone', /Europe/],
    [
      'a vessel that hangs in the mirror',
      { vessel: { mount: 'level', diameter: 1300, height: 500, offset: -200 } },
      'vessel.diameter',
      /hits the mirror when the sun is \d+° high/,
    ],
    ['emittance over 1', { vessel: { emittance: 2 } }, 'vessel.emittance', /at most 1/],
    ['mirror all taped over', { reflector: { stripSeamShare: 1 } }, 'reflector', /no mirror/],
    ['more sun than there is', { sun: { irradianceWPerM2: 5000 } }, 'sun.irradiance', /at most 1400/],
    ['too much aureole', { sun: { circumsolarRatio: 0.9 } }, 'sun.circumsolarRatio', /0 to 0.8/],
    ['aimed at the ground', { sun: { pointingErrorDeg: 40 } }, 'sun.pointingError', /0 to 20/],
    [
      'latitude over 90°',
      { site: { ...site, latitudeDeg: 91 } },
      'site.latitude',
      /latitude is 91 deg; it must be -90 to 90/,
    ],
    ['longitude over 180°', { site: { ...site, longitudeDeg: 200 } }, 'site.longitude', /-180 to 180/],
    ['no such day', { site, day: { date: '2026-02-30' } }, 'day.date', /not a calendar date/],
    [
      'polar night',
      { site: { ...site, latitudeDeg: 80 }, day: { date: '2026-12-21' } },
      'day.date',
      /the sun only reaches -13.4°/,
    ],
    ['start at boiling', { load: { startC: 100, targetC: 101, boilingPointC: 100 } }, 'load.start', /not below/],
    ['target below start', { load: { targetC: 5 } }, 'load.target', /not above load.start/],
    ['wind the wrong way', { day: { windMPerS: [[0, -1]] } }, 'day.wind', /from 0 to 7/],
    [
      'a gale',
      {
        day: {
          windMPerS: [
            [0, 2],
            [14, 9],
          ],
        },
      },
      'day.wind',
      /is 9 m\/s/,
    ],
  ] as const)('names the key: %s', (_, change, key, message) => {
    const found = of(change);
    const named = found.find(({ place }) => place && pathText(place.path) === key);
    expect(found.every(({ severity }) => severity === 'error')).toBe(true);
    expect(diagnosticText(named!)).toMatch(message);
  });

  it('says what is reachable when the target is not', () => {
    const input = inputOf({
      load: { targetC: 99 },
      vessel: { diameter: 500 },
      sun: { irradianceWPerM2: 300 },
      day: { windMPerS: [[0, 7]] },
    });
    const result = forecastProblems(input, forecast(input, quick));
    expect(result).toHaveLength(1);
    expect(diagnosticText(result[0]!)).toMatch(
      /load.target of 99 °C is out of reach: this dish heats the load to \d+ °C/,
    );
  });

  it('says what would do when the spot misses the vessel', () => {
    const small = inputOf({ vessel: { diameter: 60 } });
    const result = forecastProblems(small, forecast(small, quick));
    expect(result.map(({ code }) => code)).toEqual(['spot-misses-vessel']);
    expect(diagnosticText(result[0]!)).toMatch(/a diameter of 14\d mm would catch 90 %/);
    const high = inputOf({ vessel: { offset: 120 } });
    expect(diagnosticText(forecastProblems(high, forecast(high, quick))[0]!)).toMatch(
      /; 1\d\d mm lower \(vessel.offset -?\d+ mm\)/,
    );
    expect(forecastProblems(inputOf(), forecast(inputOf(), quick))).toEqual([]);
  });
});

/** The demo, at no place and on no day of its own. */
const anywhere = () => designOf(fixtureText('press-house').replace(/^site:.*\nday:.*\n/m, ''));

describe('from a design', () => {
  it('takes every section over', () => {
    const design = fixture('press-house');
    const input = opticsInput(design, dishOf());
    expect(input.vessel).toMatchObject({ kind: 'pot', mount: 'level', diameter: 260, sideAbsorptance: 0.9 });
    // 12 kg of juice of 1050 kg/m³ fill 83 % of it
    expect(input.vessel!.height * 0.83 * Math.PI * 0.13 ** 2 * 1050).toBeCloseTo(12_000, 3);
    expect(input.load).toMatchObject({ massKg: 12, startC: 12, targetC: 78 });
    expect(input.sun.edgeCurlMrad).toBeNull();
    expect(input.reflector.stripSeamShare).toBe(0);
    expect(inputProblems(input)).toEqual([]);
  });

  it('takes a light breeze and 20 °C where the design does not say', () => {
    // 2 Beaufort, light breeze: 1.6 to 3.3 m/s (World Meteorological Organization, Manual on Codes, from memory)
    const design = anywhere();
    const { day } = opticsInput(design, dishOf());
    expect(day.ambientC).toEqual([[0, 20]]);
    expect(day.windMPerS[0]![1]).toBeGreaterThanOrEqual(1.6);
    expect(day.windMPerS[0]![1]).toBeLessThanOrEqual(3.3);
  });

  it('boils water at the altitude of the site', () => {
    // water boils at 100 °C at the sea and near 88 °C in La Paz, 3640 m (ISO 2533 and the steam tables)
    const design = anywhere();
    const at = (altitude: number, boilingPoint?: number) =>
      opticsInput(
        {
          ...design,
          load: { ...design.load!, boilingPoint },
          site: { latitude: -16.5, longitude: -68.1, altitude },
        },
        dishOf(),
      );
    expect(opticsInput(design, dishOf()).load!.boilingPointC).toBe(100);
    expect(at(0).load!.boilingPointC).toBe(100);
    expect(at(3640).load!.boilingPointC).toBe(88);
    expect(at(3640, 300).load!.boilingPointC).toBe(300);
    // and the standard test's readings end below it: fewer of them than at the sea
    const intervals = (altitude: number) => {
      const { cooking } = forecast(at(altitude, 300), quick).heat!;
      return cooking.kind === 'fitted' ? cooking.intervals : NaN;
    };
    expect(intervals(3640)).toBeLessThan(intervals(0));
  });

  it('takes off what tape and inset cover', () => {
    const design = fixture('press-house');
    const taped = opticsInput({ ...design, reflector: { ...design.reflector, tape: 12 } }, dishOf());
    // 5 mm beyond the seam along both edges of a panel that is 97 mm wide on average and more
    expect(taped.reflector.stripSeamShare).toBeGreaterThan(0.08);
    expect(taped.reflector.stripSeamShare).toBeLessThan(0.1);
    expect(opticsInput(design, dishOf(), 0.02).reflector.stripSeamShare).toBe(0.02);
  });

  it('forecasts the bare focus without a vessel', () => {
    const input = opticsInput({ ...fixture('press-house'), vessel: undefined }, dishOf());
    const result = forecast(input, quick);
    expect(result.vessel).toBeNull();
    expect(result.heat).toBeNull();
    expect(advise(input, quick)).toBeNull();
    const lost = result.power.losses.reduce((sum, { watts }) => sum + watts.value, 0);
    expect((lost + result.power.takenUpW.value) / result.power.incomingW).toBeCloseTo(1, 12);
    expect(result.spot.radius90.value).toBeGreaterThan(result.spot.radius50.value);
    expect(forecastProblems(input, result)).toEqual([]);
  });
});
