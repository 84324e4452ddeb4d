import { SaxesParser } from 'saxes';
import { describe, expect, it } from 'vitest';
import { forecast } from '../../lib/optics/index.js';
import { forecastPlots } from '../../lib/output/plots/index.js';
import { inputOf } from '../optics/dishes.js';

const site = { latitudeDeg: 48.2, longitudeDeg: 16.4, altitudeM: 200, timeZone: 1 };
const result = forecast(inputOf({ vessel: { diameter: 160 }, site, sun: { irradianceWPerM2: null } }), {
  rays: 16_384,
  seed: 1,
});
const plots = forecastPlots(result);

/** Fields of a picture's numbers, below the heading. */
const cellsOf = (name: string) =>
  plots
    .find((one) => one.name === name)!
    .csv.trimEnd()
    .split('\r\n')
    .slice(1)
    .map((row) => row.split(','));

/** Relative luminance and contrast of WCAG 2.2, success criterion 1.4.3. */
function contrast(one: string, other: string): number {
  const luminance = (hex: string) => {
    const long = hex.length === 4 ? hex.replace(/[0-9a-f]/gi, '$&$&') : hex;
    const [r, g, b] = [1, 3, 5].map((at) => {
      const c = parseInt(long.slice(at, at + 2), 16) / 255;
      return c <= 0.03928 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
  };
  const [bright, dark] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (bright! + 0.05) / (dark! + 0.05);
}

interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  text: string;
}

function elements(svg: string): Element[] {
  const found: Element[] = [];
  const open: Element[] = [];
  const parser = new SaxesParser();
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('opentag', ({ name, attributes }) => {
    const element = { name, attributes, text: '' };
    found.push(element);
    open.push(element);
  });
  parser.on('text', (text) => {
    const last = open.at(-1);
    if (last) last.text += text;
  });
  parser.on('closetag', () => open.pop());
  parser.write(svg).close();
  return found;
}

describe.each(plots)('picture $name', ({ name, title, description, svg, csv }) => {
  const all = elements(svg);
  const root = all[0]!;

  it('is an SVG with title and description that its root names', () => {
    expect(root.name).toBe('svg');
    expect(root.attributes).toMatchObject({ xmlns: 'http://www.w3.org/2000/svg', role: 'img' });
    const [titleId, descriptionId] = root.attributes['aria-labelledby']!.split(' ');
    expect(all.find(({ attributes }) => attributes['id'] === titleId)).toMatchObject({ name: 'title', text: title });
    expect(all.find(({ attributes }) => attributes['id'] === descriptionId)).toMatchObject({
      name: 'desc',
      text: description,
    });
    expect(titleId).toContain(name);
  });

  it('has text and marks that stand out from light and from dark paper', () => {
    const colours = [...svg.matchAll(/color:var\(--ink,(#[0-9a-f]+)\);--plot-background:var\(--leaf,(#[0-9a-f]+)\)/g)];
    expect(colours).toHaveLength(2);
    for (const [, ink, paper] of colours) {
      expect(contrast(ink!, paper!)).toBeGreaterThan(4.5);
      // graphics: 3:1, success criterion 1.4.11
      const used = new Set([...svg.matchAll(/(?:stroke|fill)="(#[0-9A-Fa-f]{6})"/g)].map(([, colour]) => colour!));
      for (const colour of used) {
        // Okabe and Ito, Color universal design, 2002
        expect(['#0072B2', '#009E73', '#D55E00']).toContain(colour);
        expect(contrast(colour, paper!)).toBeGreaterThan(3);
      }
    }
    // text is in ink, on the map with a halo of paper
    for (const { name: tag, attributes } of all)
      if (tag === 'text') expect(attributes['fill'] ?? 'currentColor').toBe('currentColor');
  });

  it('is well formed: finite numbers, ids once', () => {
    expect(svg).not.toMatch(/NaN|Infinity|undefined/);
    const ids = all.flatMap(({ attributes }) => attributes['id'] ?? []);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('has its numbers as CSV, every row as long as the heading', () => {
    const rows = csv.trimEnd().split('\r\n');
    expect(rows.length).toBeGreaterThan(5);
    // commas outside quotes
    const width = (row: string) => row.replace(/"[^"]*"/g, '').split(',').length;
    for (const row of rows) expect(width(row)).toBe(width(rows[0]!));
  });
});

describe('pictures of a forecast', () => {
  it('are the same bytes for the same forecast', () => {
    expect(forecastPlots(result)).toEqual(plots);
    expect(plots.map(({ name }) => name)).toEqual([
      'intercept',
      'flux',
      'heat-up',
      'losses',
      'aim',
      'day-power',
      'day-heat',
      'months',
    ]);
  });

  it('hold the numbers of the forecast', () => {
    const curve = cellsOf('intercept');
    expect(curve).toHaveLength(result.spot.curve.length);
    expect(Number(curve[60]![1])).toBeCloseTo(result.spot.curve[60]!.intercept.value, 5);
    const losses = cellsOf('losses');
    const sum = losses.slice(1).reduce((total, row) => total + Number(row.at(-2)), 0);
    expect(sum).toBeCloseTo(Number(losses[0]!.at(-2)), 1);
    expect(cellsOf('flux')).toHaveLength(41 * 41);
    const warm = cellsOf('heat-up');
    expect(Number(warm[0]![1])).toBe(12);
  });

  it('follow the day by the clock', () => {
    const cells = (name: string) => cellsOf(name).map((row) => row.map(Number));
    const { hours, heating, months } = result.byHour!;
    expect(cells('day-power').map(([hour]) => hour)).toEqual(hours.map(({ hour }) => hour));
    for (const [, , , direct, incoming, takenUp] of cells('day-power')) {
      // a round aperture of 1.5 m
      expect(incoming! / (direct! * Math.PI * 0.75 ** 2)).toBeCloseTo(1, 3);
      expect(takenUp).toBeLessThan(incoming!);
    }
    const warm = cells('day-heat');
    expect(warm[0]).toEqual([Number(heating!.startHour.toFixed(3)), 12]);
    // it comes to the target when the table says so
    const after = warm.findIndex(([hour]) => hour! > heating!.reachedHour!);
    expect(warm[after - 1]![1]).toBeLessThanOrEqual(78);
    expect(warm[after]![1]).toBeGreaterThanOrEqual(78);
    expect(cells('months').map((row) => row[3])).toEqual(months.map(({ takenUpKWh }) => Number(takenUpKWh.toFixed(3))));
  });

  it('draw the curve where its numbers are', () => {
    // the intercept's line: its last point stands at the share of the last radius
    const paths = elements(plots[0]!.svg).flatMap(({ attributes }) => attributes['d'] ?? []);
    const line = paths.find((d) => d.split('L').length > 100 && !d.endsWith('Z'))!;
    const points = line
      .slice(1)
      .split('L')
      .map((pair) => pair.split(',').map(Number));
    const [first, last] = [points[0]!, points.at(-1)!];
    const share = result.spot.curve.at(-1)!.intercept.value;
    // from 0 % at the first point's height to 100 % at the top margin
    expect((first[1]! - last[1]!) / (first[1]! - 34)).toBeCloseTo(share, 2);
    expect(points).toHaveLength(result.spot.curve.length);
  });

  it('draw a bar for every loss that can be seen and one for all others, each as long as its watts', () => {
    const { svg, csv } = plots.find(({ name }) => name === 'losses')!;
    const rows = csv
      .trimEnd()
      .split('\r\n')
      .slice(2)
      .map((row) => ({
        kept:
          row.startsWith('absorbed by the base') ||
          row.startsWith('absorbed by the side') ||
          row.startsWith('absorbed by the lid'),
        watts: Number(row.split(',').at(-2)),
      }))
      .filter(({ watts }) => watts > 0);
    const max = Math.max(...rows.map(({ watts }) => watts));
    // a fiftieth of the longest bar, and less, is too short to be seen
    const small = rows.filter(({ kept, watts }) => !kept && watts < max / 50);
    expect(small.length).toBeGreaterThan(1);
    const expected = [
      small.reduce((sum, { watts }) => sum + watts, 0),
      ...rows.filter((row) => !small.includes(row)).map(({ watts }) => watts),
    ];
    const bars = elements(svg).flatMap(({ name, attributes }) => (name === 'rect' ? Number(attributes['width']) : []));
    expect(bars).toHaveLength(expected.length);
    expected.forEach((value, i) => expect(bars[i]! / Math.max(...bars)).toBeCloseTo(value / max, 3));
    for (const width of bars) expect(width).toBeGreaterThan(0);
    expect(svg).toContain(`${small.length} smaller losses together`);
  });

  it('leave the warming out without a load, and draw in the user’s unit', () => {
    const bare = forecast(inputOf({ load: null }), { rays: 4096, seed: 1 });
    expect(forecastPlots(bare).map(({ name }) => name)).toEqual(['intercept', 'flux', 'losses', 'aim']);
    const inches = forecastPlots(bare, 'in')[0]!;
    expect(inches.svg).toContain('radius (in)');
    expect(inches.description).toMatch(/90 % within (?:\d+-)?\d+\/\d+ in/);
    // the numbers stay in mm
    expect(inches.csv).toContain('radius mm');
  });
});
