/** The brightness in the vessel's plane, as nested levels that darken (on light paper) towards the brightest. */
import { contours } from 'd3-contour';
import type { Forecast } from '../../optics/index.js';
import { formatLength, type LengthUnit, mmPer } from '../../units/index.js';
import { writeCsv } from '../csv.js';
import { decimal } from '../decimal.js';
import { markup, type Markup } from '../markup.js';
import { colours, type PlotArea, frame, label, picture, type ChartSize } from './chart.js';
import type { ForecastPlot } from './plot.js';

const LEVELS = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000];
const size: ChartSize = { width: 318, height: 330, left: 62, right: 18, top: 34, bottom: 58 };

interface LevelLabel {
  readonly x: number;
  readonly y: number;
  readonly level: number;
}

/** Eighths of a turn by which the label of each level is turned from the last, so that neighbours keep apart. */
const LABEL_STEP = 3;

/** Where each level is first met on the way in, each on another ray. */
function labels(suns: readonly number[], cells: number, half: number, levels: readonly number[]): LevelLabel[] {
  const at = (x: number, y: number): number => {
    const column = Math.floor(((x + half) / (2 * half)) * cells);
    const row = Math.floor(((y + half) / (2 * half)) * cells);
    return suns[row * cells + column] ?? 0;
  };
  return levels.flatMap((level, i) => {
    const angle = (i * LABEL_STEP * Math.PI) / 4 + 0.2;
    for (let r = 0.97 * half; r > 0; r -= half / 200) {
      const [x, y] = [r * Math.cos(angle), r * Math.sin(angle)];
      if (at(x, y) >= level) return [{ x, y, level }];
    }
    return [];
  });
}

/** Room for a label, px. */
const LABEL_ROOM = { x: 26, y: 15 };

/** Labels that keep clear of each other; the brighter goes first. */
function apart(all: readonly LevelLabel[], { x, y }: PlotArea): LevelLabel[] {
  const kept: LevelLabel[] = [];
  for (const one of [...all].reverse()) {
    const clear = kept.every(
      (other) => Math.abs(x(one.x) - x(other.x)) >= LABEL_ROOM.x || Math.abs(y(one.y) - y(other.y)) >= LABEL_ROOM.y,
    );
    if (clear) kept.push(one);
  }
  return kept;
}

/** Regions of at least each level's brightness, one on the other: the more lie on a place, the darker it is. */
function regions(plot: PlotArea, { cells, suns }: Forecast['map'], half: number, levels: readonly number[]): Markup[] {
  // the middle of cell i stands at i + 1/2
  const place = (cell: number) => ((2 * cell) / cells - 1) * half;
  const rings = contours()
    .size([cells, cells])
    .thresholds([...levels])([...suns]);
  return rings.map(({ coordinates }) => {
    const path = coordinates
      .flat()
      .map((ring) => {
        const points = ring.map(
          ([column = 0, row = 0]) => `${decimal(plot.x(place(column)), 2)},${decimal(plot.y(place(row)), 2)}`,
        );
        return `M${points.slice(0, -1).join('L')}Z`;
      })
      .join('');
    return markup`<path d="${path}" fill="${colours.vermilion}" fill-opacity="0.16" stroke="currentColor" stroke-opacity="0.45" stroke-width="0.75"/>`;
  });
}

export function fluxPlot({ map, vessel }: Forecast, unit: LengthUnit): ForecastPlot {
  const { cells, suns } = map;
  const half = map.halfSide / mmPer[unit];
  const radius = vessel === null ? 0 : vessel.radius / mmPer[unit];
  const reached = LEVELS.filter((level) => level < map.peak.value);
  const title = `Brightness across the axis at the ${vessel === null ? 'focus' : 'vessel’s base'}`;
  const description = `Map of the brightness in suns (times the direct sunlight) round the axis, in levels of ${reached.join(', ')}: at most ${map.peak.value.toFixed(0)}${vessel === null ? '' : `; the dashed circle is as wide as the vessel, ${formatLength(2 * vessel.radius, unit)}`}.`;
  const axis = { label: `across (${unit})`, domain: [-half, half] as const };
  const plot = frame(size, axis, axis);
  const { left, right, top, bottom, width, height } = size;
  const svg = picture('flux', title, description, size, [
    plot.axes,
    ...regions(plot, map, half, reached),
    markup`<circle cx="${decimal(plot.x(0), 2)}" cy="${decimal(plot.y(0), 2)}" r="${decimal(plot.x(radius) - plot.x(0), 2)}" fill="none" stroke="currentColor" stroke-width="1.5" stroke-dasharray="6 4"/>`,
    ...apart(labels(suns, cells, half, reached), plot).map(({ x, y, level }) =>
      label(plot, [x, y], String(level), { anchor: 'middle', fontSize: 14 }),
    ),
    ...(vessel === null ? [] : [label(plot, [0, -radius], 'vessel', { anchor: 'middle', dy: 10 })]),
    markup`<rect x="${left}" y="${top}" width="${width - left - right}" height="${height - top - bottom}" fill="none" stroke="currentColor" stroke-opacity="0.3"/>`,
  ]);
  const side = (2 * map.halfSide) / cells;
  const centre = (i: number) => ({ value: -map.halfSide + (i + 0.5) * side, digits: 3 });
  const csv = writeCsv([
    ['x mm', 'y mm', 'suns'],
    ...suns.map((value, i) => [centre(i % cells), centre(Math.floor(i / cells)), { value, digits: 3 }]),
  ]);
  return { name: 'flux', title, description, svg, csv };
}
