import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { printerScale, withPrint } from '../../lib/coupon/write-print.js';
import { withValues } from '../../lib/coupon/write-values.js';
import type { Answer } from '../../lib/coupon/index.js';
import { readDesign } from '../../lib/design/index.js';
import { fixtureText } from '../helpers/fixtures.js';

const estimate = { value: 0, uncertainty: 0 };
const answer = {
  material: 'birch12',
  axes: {
    cutBy: 'router',
    date: '2026-05-31',
    scaleX: 1.0004,
    scaleY: 0.9991,
    scaleUncertaintyMmPerM: 0.06,
    squarenessMmPerM: -0.2,
    squarenessUncertaintyMmPerM: 0.12,
  },
  values: {
    cutBy: 'router',
    date: '2026-05-31',
    thickness: 11.9,
    width: 6.08,
    widthUncertainty: 0.006,
    toolDiameter: 6,
  },
  solved: {
    width: estimate,
    bore: null,
    drilled: null,
    depth: null,
    scaleX: estimate,
    scaleY: estimate,
    lean: estimate,
    worst: { id: '', off: 0 },
  },
  fit: null,
  tabs: null,
  print: null,
} as const satisfies Answer;

function written(text: string, own: boolean, one: Answer = answer): string {
  const made = withValues(text, own, one);
  if (made.kind === 'refused') throw new Error(made.message);
  return made.text;
}

/** Lines of a that are not in b. */
const lost = (a: string, b: string): string[] => a.split('\n').filter((line) => !b.split('\n').includes(line));

describe('calibrated values in a file', () => {
  const own = `# the router in the shed
area: 1300 x 2500   # without the clamps
spindle: { min: 8000, max: 18000 }

# air, as the extraction is poor
coolant: mist
`;

  it('are added to a machine’s own file without touching a letter of it', () => {
    const text = written(own, true);
    expect(text.startsWith(own)).toBe(true);
    expect(parse(text)).toMatchObject({
      calibration: { axes: { scaleX: 1.0004 }, materials: { birch12: { width: '6.08 mm', date: '2026-05-31' } } },
    });
  });

  it('take the place of earlier ones, and leave those of other materials and every comment', () => {
    const first = written(own, true).replace('    birch12:', '    # the old sheet\n    birch12:');
    const other = written(first, true, { ...answer, material: 'mdf6', values: { ...answer.values, width: 6.1 } });
    const again = written(other, true, { ...answer, values: { ...answer.values, width: 6.05 } });
    expect(lost(own, again)).toEqual([]);
    expect(again).toContain('# the old sheet');
    expect(again.match(/calibration:/g)).toHaveLength(1);
    expect(parse(again)).toMatchObject({
      calibration: { materials: { birch12: { width: '6.05 mm' }, mdf6: { width: '6.1 mm' } } },
    });
  });

  it.each([
    ['without a machine', fixtureText('press-house')],
    ['with one', `${fixtureText('press-house')}machine:\n  # by hand\n  toolChange: by-hand\n  coolant: mist\n`],
    ['with one in the middle', fixtureText('press-house').replace('site:', 'machine:\n    coolant: mist\n\nsite:')],
    [
      'in inches',
      `units: in\n${fixtureText('press-house')
        .replace('units: mm', '')
        .replace(/: (\d+)([,}\n ])/g, ': $1$2')}`,
    ],
  ])('go into a design %s, which then has them', (name, text) => {
    const made = written(text, false);
    expect(lost(text, made)).toEqual([]);
    if (name === 'in inches') return;
    const reading = readDesign(made);
    expect(reading.kind === 'refused' ? reading.problems : []).toEqual([]);
    const design = reading.kind === 'design' ? reading.design : null;
    expect(design?.machine.calibration.materials['birch12']).toMatchObject({ width: 6.08, thickness: 11.9 });
    expect(design?.machine.calibration.axes).toMatchObject({ scaleY: 0.9991, squarenessMmPerM: -0.2 });
  });

  it('are refused where a file is written so that they have no place', () => {
    expect(withValues('{ coolant: mist }', true, answer).kind).toBe('refused');
    expect(withValues('name: x\nmachine: { coolant: mist }\n', false, answer).kind).toBe('refused');
    expect(withValues('calibration: { axes: { cutBy: router, date: 2026-01-01 } }\n', true, answer).kind).toBe(
      'refused',
    );
  });
});

describe('what the printer makes of 100 mm in a design file', () => {
  const file = (print: string): string => `name: dish # of the shed\n${print}dish: { aperture: 1500 }\n`;
  const written = (text: string): string => {
    const made = withPrint(text, 99.4, 'mm');
    if (made.kind === 'refused') throw new Error(made.message);
    return made.text;
  };

  it.each([
    ['', `${file('')}print: { measured: 99.4 mm }\n`],
    ['print: { paper: a3 } # big\n', file('print: { paper: a3, measured: 99.4 mm } # big\n')],
    ['print: {}\n', file('print: { measured: 99.4 mm }\n')],
    ['print: { measured: 98, paper: a3 }\n', file('print: { measured: 99.4 mm, paper: a3 }\n')],
    ['print:\n  # ours\n  paper: a3\n', file('print:\n  # ours\n  paper: a3\n  measured: 99.4 mm\n')],
    ['print:\n  paper: a3\n  measured: 98 mm # in May\n', file('print:\n  paper: a3\n  measured: 99.4 mm # in May\n')],
  ])('goes into %j', (print, text) => {
    expect(written(file(print))).toBe(text);
    expect(parse(text)).toMatchObject({ print: { measured: '99.4 mm' }, dish: { aperture: 1500 } });
  });

  it('is refused where there is no place for it', () => {
    for (const text of ['print: a4\n', 'print: [1\n']) expect(withPrint(text, 99.4, 'mm').kind).toBe('refused');
  });

  it('is what the 4 in line measures in an inch design', () => {
    expect(withPrint(file(''), 101, 'in')).toMatchObject({ text: `${file('')}print: { measured: 3.9764 in }\n` });
    expect(withPrint(file(''), 91, 'in').kind).toBe('refused');
    // a line of 4 in (101.6 mm) that measures 100 mm, on a print that was drawn true and on one drawn for that printer
    expect(printerScale(100, undefined, 'in')).toBe(100);
    expect(printerScale(101.6, 100, 'in')).toBe(100);
  });

  it('is refused where no design would take it', () => {
    for (const measured of [89.9, 110.1]) expect(withPrint(file(''), measured, 'mm').kind).toBe('refused');
    for (const measured of [90, 110]) expect(withPrint(file(''), measured, 'mm').kind).toBe('text');
  });
});
