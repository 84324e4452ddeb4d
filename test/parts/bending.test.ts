/** Bending of the panels, against the beam formula and the circle that a parabola fits at its vertex. */
import { describe, expect, it } from 'vitest';
import { diagnosticText } from '../../lib/diagnostic/index.js';
import { make } from './making.js';

type Change = readonly [string | RegExp, string];

const stiff = (changes: readonly Change[]) =>
  make('press-house', changes).problems.filter(({ code }) => code === 'panel-stiff');

const panelOf = (kind: string, thickness: number): Change => [
  'hardboard3: { kind: hardboard, thickness: 3,',
  `hardboard3: { kind: ${kind}, thickness: ${thickness},`,
];

describe('panels bent to the dish', () => {
  it('of 3 mm hardboard are no strain at a focal length of 550 mm', () => {
    expect(stiff([])).toEqual([]);
  });

  it('carry E·t/2ρ at their faces', () => {
    // the circle of curvature of z = r²/4f at its vertex has the radius 2f (any table of curves): at the hub, 51 mm
    // out, 2f·(1 + (r/2f)²)^(3/2) = 1103.5 mm; the panel's middle lies 3.3 mm below the mirror. 4763·6/2/1107 = 12.9 MPa
    // across the grain, 29 MPa · 0.4 = 11.6 MPa for years (five-ply birch of 6.5 mm, Handbook of Finnish Plywood, from memory)
    const [found] = stiff([panelOf('plywood', 6)]);
    expect(found?.severity).toBe('warning');
    expect(diagnosticText(found!)).toMatch(/6 mm bent to a radius of 110\d mm carries about 13 MPa/);
  });

  it('carry more along the grain, where the sheet takes them no other way', () => {
    // a strip of 2440 x 300 mm takes a panel of 770 x 190 mm lengthwise only: 9000·6/2/1107 = 24.4 MPa
    const narrow: Change = [
      '{ material: hardboard3, size: 2440 x 1220, price: 12 }',
      '{ material: hardboard3, size: 2440 x 300 }',
    ];
    const [found] = stiff([panelOf('plywood', 6), narrow]);
    expect(diagnosticText(found!)).toMatch(/along its grain carries about 24 MPa/);
    expect(diagnosticText(found!)).toContain('sheets on which they lie across the grain');
  });

  it('of aluminium take no set', () => {
    // 70 GPa · 0.5 / 2 / 1104 = 16 MPa of 120
    expect(stiff([panelOf('aluminium', 0.5)])).toEqual([]);
    expect(stiff([panelOf('aluminium', 4)])).toHaveLength(1);
  });

  it('break where the stress passes the strength, and what would do, does', () => {
    // 6 mm at 2f = 220 mm with 4763 MPa across the grain is 4763·6/440 = 65 MPa; the hub lies a little further out
    const deep: Change[] = [
      ['aperture: 1500', 'aperture: 400'],
      ['focalLength: 550', 'focalLength: 110'],
      ['ribs: 24', 'ribs: 8'],
      ['size: 1180', 'size: 360'],
    ];
    const [found] = stiff([...deep, panelOf('plywood', 6)]);
    expect(found?.severity).toBe('error');
    expect(Number(/about (\d+) MPa/.exec(found!.message)![1])).toBeGreaterThan(55);
    const max = Number(/panels of at most ([\d.]+) mm/.exec(found!.remedy!)![1]);
    expect(stiff([...deep, panelOf('plywood', max)])).toEqual([]);
    expect(stiff([...deep, panelOf('plywood', max + 0.3)])).toHaveLength(1);
  });
});
