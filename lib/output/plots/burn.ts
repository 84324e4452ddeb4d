/** Where it burns, in small pictures: how bright it is round the dish for each way in which it may stand. */
import { contours } from 'd3-contour';
import type { BurnPicture, BurnResult } from '../../optics/index.js';
import { formatLength, type LengthUnit } from '../../units/index.js';
import { decimal } from '../decimal.js';
import { markup, type Markup } from '../markup.js';
import { colours, picture } from './chart.js';

/** A drawing with its words. */
export interface BurnPlot {
  readonly title: string;
  readonly description: string;
  readonly svg: string;
}

/** Pictures in a row, at the most: with the letters below, 6 point on a page. */
const COLUMNS = 8;
const CELL_WIDTH = 138;
const GAP = 10;
/** Letters of words, and the distance of their lines, px. */
const LETTERS = 14;
const LINE = 16;
/** Room for the key and the length of the rule. */
const FOOT = 34;

/** `45° off the sun, with vessel` in lines that fit over a picture. */
const linesOf = (label: string): string[] => label.split(', ');

const at = (value: number): string => decimal(value, 1);

/** Regions of at least each level, one on the other, in cells from the left and the bottom. */
function regions(
  levels: readonly number[],
  values: Float64Array,
  width: number,
  height: number,
  scale: number,
): Markup[] {
  const rings = contours()
    .size([width, height])
    .thresholds([...levels])([...values]);
  return rings.map(({ coordinates }) => {
    const path = coordinates
      .flat()
      .map((ring) => `M${ring.map(([x = 0, y = 0]) => `${at(x * scale)},${at((height - y) * scale)}`).join('L')}Z`)
      .join('');
    return markup`<path d="${path}" fill="${colours.vermilion}" fill-opacity="0.24" stroke="${colours.vermilion}" stroke-width="0.6"/>`;
  });
}

/** From −x to +x and from the vertex upward, with the section of the dish and the way to the sun. */
function sideView({ state, map }: BurnPicture, result: BurnResult, scale: number, rows: number): Markup {
  const { across, cell } = result.box;
  const x = (mm: number) => at((mm / cell + across) * scale);
  const y = (mm: number) => at((rows - mm / cell) * scale);
  const half = (side: 1 | -1) => result.section.map(([r, z]) => `${x(side * r)},${y(z)}`);
  const section = `M${[...half(-1).reverse(), ...half(1).slice(1)].join('L')}`;
  const { radius, height } = result.vessel;
  const angle = (state.angleDeg * Math.PI) / 180;
  const [sx, sy] = [Math.sin(angle), Math.cos(angle)];
  const tip = Math.min(
    (across - 2) / Math.max(Math.abs(sx), 1e-9),
    (rows - result.focusHeight / cell - 2) / Math.max(Math.abs(sy), 1e-9),
  );
  const ray = (share: number) => `${x(share * tip * sx * cell)},${y(result.focusHeight + share * tip * sy * cell)}`;
  return markup`${map && regions(result.levels, map.side, 2 * across, rows, scale)}<path d="${section}" fill="none" stroke="currentColor" stroke-width="2"/>${state.vessel ? markup`<path d="M${x(-radius)},${y(height)}L${x(radius)},${y(height)}" stroke="currentColor" stroke-width="4"/>` : null}<path d="M${ray(0.55)}L${ray(1)}" stroke="${colours.blue}" stroke-width="1.5" stroke-dasharray="4 3"/>`;
}

/** Seen down the axis, what lies outside the bowl: the brightest at any height. */
function planView({ map }: BurnPicture, result: BurnResult, scale: number, rows: number): Markup {
  const { across, cell } = result.box;
  const middle = rows / 2;
  const rim = (result.section.at(-1)?.[0] ?? 0) / cell;
  const width = 2 * across;
  // the far half is the mirror image of the near one
  const whole = new Float64Array(width * width);
  map?.plan.forEach((suns, place) => {
    const [row, column] = [Math.floor(place / width), place % width];
    whole[(across + row) * width + column] = suns;
    whole[(across - 1 - row) * width + column] = suns;
  });
  return markup`${map && regions(result.levels, whole, width, rows, scale)}<circle cx="${at(across * scale)}" cy="${at(middle * scale)}" r="${at(rim * scale)}" fill="none" stroke="currentColor" stroke-width="2"/><path d="M${at((across + rim + 1) * scale)},${at(middle * scale)}H${at((2 * across - 1) * scale)}" stroke="${colours.blue}" stroke-width="1.5" stroke-dasharray="4 3"/>`;
}

/** A length in which a viewer thinks, about a fifth of a picture wide. */
function ruleLength(result: BurnResult, unit: LengthUnit): number {
  const aim = (2 * result.box.across * result.box.cell) / 5;
  const foot = unit === 'in' || unit === 'ft';
  const step = foot ? 304.8 : 500;
  return Math.max(1, Math.round(aim / step)) * step;
}

function smallMultiples(result: BurnResult, unit: LengthUnit, view: 'side' | 'plan'): BurnPlot {
  const { across, up, cell } = result.box;
  const rows = view === 'side' ? up : 2 * across;
  const scale = CELL_WIDTH / (2 * across);
  const height = rows * scale;
  const { pictures } = result;
  const columns = Math.min(COLUMNS, Math.ceil(pictures.length / (pictures.some(({ state }) => state.vessel) ? 2 : 1)));
  const lines = Math.ceil(pictures.length / columns);
  const head = LINE * Math.max(...pictures.map(({ state }) => linesOf(state.label).length)) + 6;
  const size = {
    width: COLUMNS * (CELL_WIDTH + GAP) + GAP,
    height: Math.ceil(lines * (height + head + GAP) + GAP + FOOT),
    left: 0,
    right: 0,
    top: 0,
    bottom: 0,
  };
  // with the vessel first, then bare, each in the order of the angles
  const ordered = [...pictures.filter(({ state }) => state.vessel), ...pictures.filter(({ state }) => !state.vessel)];
  const drawn = ordered.map((one, i) => {
    const left = GAP + (i % columns) * (CELL_WIDTH + GAP);
    const top = GAP + Math.floor(i / columns) * (height + head + GAP);
    const drawing = view === 'side' ? sideView(one, result, scale, rows) : planView(one, result, scale, rows);
    const words = linesOf(one.state.label).map(
      (line, k) => markup`<text x="0" y="${LETTERS + k * LINE}" font-size="${LETTERS}">${line}</text>`,
    );
    return markup`<g transform="translate(${at(left)} ${at(top)})">${words}<g transform="translate(0 ${head})"><rect width="${CELL_WIDTH}" height="${at(height)}" fill="none" stroke="currentColor" stroke-opacity="0.3"/>${drawing}</g></g>`;
  });
  const marks = view === 'side' && pictures.some(({ state }) => state.vessel) ? 'Thick line: the vessel’s base. ' : '';
  const rule = ruleLength(result, unit);
  const foot = size.height - FOOT / 2;
  const key = `From pale to dark: ${result.levels.join(', ')} suns and more. ${marks}Dashed: towards the sun. The bar: ${formatLength(rule, unit)}.`;
  const scaleBar = markup`<path d="M${GAP},${at(foot)}h${at((rule / cell) * scale)}" stroke="currentColor" stroke-width="4"/><text x="${at(GAP + (rule / cell) * scale + 10)}" y="${at(foot)}" dy="0.34em" font-size="${LETTERS}">${key}</text>`;
  const title = view === 'side' ? 'Where it burns, from the side' : 'Where it burns, seen down the axis';
  const description = `${title}: brightness round the dish in levels of ${result.levels.join(', ')} suns, ${
    view === 'side' ? 'the brightest across the picture' : 'the brightest at any height outside the bowl'
  }, when it is ${ordered.map(({ state }) => state.label).join('; ')}.`;
  return { title, description, svg: picture(`burn-${view}`, title, description, size, [...drawn, scaleBar]) };
}

/** The two figures of the cautions. Same result, same bytes. */
export function burnPlots(result: BurnResult, unit: LengthUnit): BurnPlot[] {
  return [smallMultiples(result, unit, 'side'), smallMultiples(result, unit, 'plan')];
}
