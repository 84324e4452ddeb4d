import { describe, expect, it } from 'vitest';
import { logTemplate, readLog } from '../../../lib/optics/index.js';

const head = 'time,load (°C),ambient (°C),irradiance (W/m²),wind (m/s),covered';
const log = (...lines: string[]) => [head, ...lines].join('\n');
const faults = (text: string) =>
  readLog(text, 'test.csv').problems.map(({ code, place, severity }) => [code, place?.line, severity]);

describe('a log', () => {
  it('is read in other units, other order, with notes and comments', () => {
    const text = [
      '\uFEFF# Saturday',
      'wind [km/h],time,note,irradiance kW/m2,"ambient (°F)",load (K),covered',
      '36,2026-06-21T10:00+02:00,"calm, clear",0.8,68,293.15,no',
      '',
      '18,2026-06-21T10:01+02:00,,0.81,50,294.15,yes',
    ].join('\r\n');
    const { readings, problems } = readLog(text, 'test.csv');
    expect(problems).toEqual([]);
    expect(readings.map(({ line }) => line)).toEqual([3, 5]);
    // 1 km/h is 1/3.6 m/s; 68 °F is 20 °C, 50 °F 10 °C; 0 °C is 273.15 K
    const [first, second] = readings;
    expect(first?.windMPerS).toBeCloseTo(10, 9);
    expect(first?.ambientC).toBeCloseTo(20, 9);
    expect(first?.loadC).toBeCloseTo(20, 9);
    expect(first?.irradianceWPerM2).toBeCloseTo(800, 9);
    expect(second?.ambientC).toBeCloseTo(10, 9);
    expect(second?.covered).toBe(true);
    // 10:00 at UTC+2 is 08:00 UTC
    expect(first?.seconds).toBe(Date.UTC(2026, 5, 21, 8) / 1000);
  });

  it('is begun by the template, which reads as a log without readings', () => {
    expect(faults(logTemplate)).toEqual([['log-gap', 5, 'error']]);
    expect(faults(`${logTemplate}10:00,20,20,800,1,no\n10:05,21,20,800,1,\n`)).toEqual([]);
  });

  it.each([
    ['no heading at all', '', 'log-column', 1],
    ['a column missing', 'time,load (°C),ambient (°C),wind (m/s)\n10:00,1,2,3', 'log-column', 1],
    ['a column without a unit', head.replace(' (W/m²)', ''), 'log-unit', 1],
    ['a unit that is not known', head.replace('m/s', 'Bft'), 'log-unit', 1],
    ['semicolons', `${head}\n10:00,20,20,800,1,no`.replaceAll(',', ';'), 'log-separator', 1],
    ['a quote left open', log('10:00,20,20,800,1,"no'), 'log-separator', 2],
    ['decimal commas', log('10:00,20,20,800,1,no', '10:01,20,5,20,800,1,no'), 'log-number', 3],
    ['a quoted decimal comma', log('10:00,"20,5",20,800,1,no'), 'log-number', 2],
    ['a word for a number', log('10:00,warm,20,800,1,no'), 'log-number', 2],
    ['a number out of reason', log('10:00,20,20,80000,1,no'), 'log-number', 2],
    ['no time', log('ten,20,20,800,1,no'), 'log-time', 2],
    ['a day that is none', log('2026-02-30 10:00,20,20,800,1,no'), 'log-time', 2],
    ['a clock that jumps back', log('10:00,20,20,800,1,no', '09:59,21,20,800,1,no'), 'log-time', 3],
    ['a clock that stands', log('10:00,20,20,800,1,no', '10:00,21,20,800,1,no'), 'log-time', 3],
    ['two manners of time', log('10:00,20,20,800,1,no', '2026-06-21 10:01,21,20,800,1,no'), 'log-time', 3],
    ['covered in other words', log('10:00,20,20,800,1,perhaps'), 'log-number', 2],
  ])('with %s is refused with its line', (_, text, code, line) => {
    expect(faults(text)).toContainEqual([code, line, 'error']);
    expect(readLog(text, 'test.csv').readings).toEqual([]);
  });

  it('with gaps is read in runs, and each gap is named', () => {
    const lines = ['10:00', '10:01', '10:02', '10:03', '11:03', '11:04', '11:05'].map(
      (time) => `${time},20,20,800,1,no`,
    );
    lines[1] = '10:01,,20,800,1,no';
    const { runs, problems } = readLog(log(...lines), 'test.csv');
    expect(problems.map(({ place, severity }) => [place?.line, severity])).toEqual([
      [3, 'warning'],
      [6, 'warning'],
    ]);
    expect(problems[1]?.message).toContain('1 h 0 min');
    expect(runs.map((run) => run.map(({ line }) => line))).toEqual([
      [2, 4, 5],
      [6, 7, 8],
    ]);
  });

  it('is parted where the cover goes on, and both parts hold that moment', () => {
    const { runs } = readLog(log('10:00,50,20,800,1,no', '10:05,52,20,800,1,no', '10:10,51,20,800,1,yes'), 'test.csv');
    expect(runs.map((run) => run.map(({ loadC, covered }) => [loadC, covered]))).toEqual([
      [
        [50, false],
        [52, false],
      ],
      [
        [52, true],
        [51, true],
      ],
    ]);
  });
});
