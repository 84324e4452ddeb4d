/** The brightness in the receiver's plane, as nested levels that darken (on light paper) towards the brightest. */
import * as Plot from '@observablehq/plot';
import type { Forecast } from '../../optics/index.js';
import { formatLength, type LengthUnit, mmPer } from '../../units/index.js';
import { writeCsv } from '../csv.js';
import { colours, draw, type ForecastFigure, halo } from './draw.js';

const LEVELS = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000];
const CIRCLE_POINTS = 96;

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

export function fluxFigure({ map, receiver, concentration }: Forecast, unit: LengthUnit): ForecastFigure {
  const { cells, suns } = map;
  const half = map.halfSide / mmPer[unit];
  const radius = receiver.radius / mmPer[unit];
  const reached = LEVELS.filter((level) => level < map.peak.value);
  const circle = Array.from({ length: CIRCLE_POINTS + 1 }, (_, i) => {
    const angle = (2 * Math.PI * i) / CIRCLE_POINTS;
    return [radius * Math.cos(angle), radius * Math.sin(angle)] as const;
  });
  const title = 'Brightness in the receiver’s plane';
  const description = `Map of the brightness in suns (times the direct sunlight) round the axis, in levels of ${reached.join(', ')}: at most ${map.peak.value.toFixed(0)}, ${concentration.mean.value.toFixed(1)} as the mean over the receiver of ${formatLength(2 * receiver.radius, unit)} (dashed circle).`;
  const range = [-half, half] as [number, number];
  const svg = draw('flux', title, description, {
    width: 560,
    height: 568,
    marginLeft: 60,
    marginBottom: 48,
    marginRight: 24,
    marginTop: 36,
    x: { label: `across (${unit})`, domain: range },
    y: { label: `across (${unit})`, domain: range, tickSpacing: 50 },
    marks: [
      // Plot takes the rows of a grid from y1 to y2
      Plot.contour(suns, {
        width: cells,
        height: cells,
        x1: -half,
        x2: half,
        y1: -half,
        y2: half,
        thresholds: reached,
        fill: colours.vermilion,
        fillOpacity: 0.16,
        stroke: 'currentColor',
        strokeOpacity: 0.45,
        strokeWidth: 0.75,
      }),
      Plot.line(circle, { stroke: 'currentColor', strokeWidth: 1.5, strokeDasharray: '6 4' }),
      Plot.text(labels(suns, cells, half, reached), {
        x: 'x',
        y: 'y',
        text: ({ level }: LevelLabel) => String(level),
        fontSize: 12,
        ...halo,
      }),
      Plot.frame({ strokeOpacity: 0.3 }),
    ],
  });
  const side = (2 * map.halfSide) / cells;
  const centre = (i: number) => ({ value: -map.halfSide + (i + 0.5) * side, digits: 3 });
  const csv = writeCsv([
    ['x mm', 'y mm', 'suns'],
    ...suns.map((value, i) => [centre(i % cells), centre(Math.floor(i / cells)), { value, digits: 3 }]),
  ]);
  return { name: 'flux', title, description, svg, csv };
}
