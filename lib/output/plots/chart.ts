/** The frame of a chart (axes, ticks, grid) and the marks that are drawn in it. */
import { scaleLinear, type ScaleLinear } from 'd3-scale';
import { area, curveLinear, curveMonotoneX, line } from 'd3-shape';
import { decimal } from '../decimal.js';
import { markup, type Markup, raw } from '../markup.js';

/** Okabe and Ito's palette (2002); these three stand out from white and from dark paper by 3:1 or more. */
export const colours = { blue: '#0072B2', green: '#009E73', vermilion: '#D55E00' } as const;

/** Ink and paper of a page are taken over where it has such variables (`--ink`, `--leaf`). */
const style = `
.forecast-plot{color:var(--ink,#1f2d36);--plot-background:var(--leaf,#fff);background:var(--leaf,#fff)}
.forecast-plot text{fill:currentColor}
.forecast-plot .halo{stroke:var(--plot-background);stroke-width:4;stroke-linejoin:round;paint-order:stroke}
@media screen and (prefers-color-scheme:dark){.forecast-plot{color:var(--ink,#ebe6da);--plot-background:var(--leaf,#1a2226);background:var(--leaf,#1a2226)}}`;

/** A coordinate, to a hundredth of a pixel. */
const at = (value: number): string => decimal(value, 2);

/** Pixels between ticks, about. */
const tickSpacing = { x: 64, y: 48 };
const tickLength = 6;

export interface Axis {
  /** Name and unit, or null where the ticks need neither. */
  readonly label: string | null;
  readonly domain: readonly [number, number];
  /** Extends the domain to round numbers. */
  readonly nice?: boolean;
}

/** Size of the picture and of the margins about the plotted area, px. */
export interface ChartSize {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export const usualSize: ChartSize = { width: 480, height: 316, left: 60, right: 18, top: 34, bottom: 58 };

type Point = readonly [x: number, y: number];

/** The plotted area of a chart, with what draws into it; points are in the units of the axes. */
export interface PlotArea {
  readonly x: ScaleLinear<number, number>;
  readonly y: ScaleLinear<number, number>;
  /** Ticks, grid and labels, to be drawn first. */
  readonly axes: Markup;
}

function scale({ domain, nice = false }: Axis, range: [number, number]): ScaleLinear<number, number> {
  const linear = scaleLinear([...domain], range);
  return nice ? linear.nice() : linear;
}

function ticks(along: ScaleLinear<number, number>, spacing: number): readonly { place: number; text: string }[] {
  const [from = 0, to = 0] = along.range();
  const count = Math.abs(to - from) / spacing;
  const format = along.tickFormat(count, 'f');
  return along.ticks(count).map((value) => ({ place: along(value), text: format(value) }));
}

/** A level axis at the foot of the plotted area. */
function acrossAxis(x: ScaleLinear<number, number>, label: string | null, size: ChartSize): Markup {
  const { width, height, left, right, top } = size;
  const foot = height - size.bottom;
  const marks = ticks(x, tickSpacing.x);
  const lines = (from: number, to: number) => marks.map(({ place }) => `M${at(place)},${at(from)}V${at(to)}`).join('');
  const texts = marks.map(
    ({ place, text }) => markup`<text x="${at(place)}" y="${foot + tickLength}" dy="1em">${text}</text>`,
  );
  const name =
    label === null ? null : markup`<text x="${(left + width - right) / 2}" y="${height - 6}">${label}</text>`;
  return markup`<path d="${lines(top, foot)}" stroke="currentColor" stroke-opacity="0.12"/><path d="${lines(foot, foot + tickLength)}" stroke="currentColor"/><g fill="currentColor" text-anchor="middle">${texts}${name}</g>`;
}

/** An upright axis on the left of the plotted area; its label stands above, to be read without turning one's head. */
function uprightAxis(y: ScaleLinear<number, number>, label: string | null, { left, right, width }: ChartSize): Markup {
  const marks = ticks(y, tickSpacing.y);
  const lines = (from: number, to: number) => marks.map(({ place }) => `M${at(from)},${at(place)}H${at(to)}`).join('');
  const texts = marks.map(
    ({ place, text }) => markup`<text x="${left - tickLength - 3}" y="${at(place)}" dy="0.34em">${text}</text>`,
  );
  const name = label === null ? null : markup`<text x="4" y="16" fill="currentColor">${label}</text>`;
  return markup`<path d="${lines(left, width - right)}" stroke="currentColor" stroke-opacity="0.12"/><path d="${lines(left - tickLength, left)}" stroke="currentColor"/><g fill="currentColor" text-anchor="end">${texts}</g>${name}`;
}

/** Scales and axes of a chart; without `y` the rows of a bar chart are the caller's. */
export function frame(size: ChartSize, x: Axis, y: Axis | null): PlotArea {
  const across = scale(x, [size.left, size.width - size.right]);
  const up = scale(y ?? { label: null, domain: [0, 1] }, [size.height - size.bottom, size.top]);
  const upright = y && uprightAxis(up, y.label, size);
  return { x: across, y: up, axes: markup`${acrossAxis(across, x.label, size)}${upright}` };
}

/** A line through points; `monotone` rounds it without overshooting (Steffen 1990, as d3-shape has it). */
export function curve({ x, y }: PlotArea, points: readonly Point[], colour: string, monotone = false): Markup {
  const path = line<Point>(
    ([px]) => x(px),
    ([, py]) => y(py),
  )
    .digits(2)
    .curve(monotone ? curveMonotoneX : curveLinear);
  return markup`<path d="${path(points) ?? ''}" fill="none" stroke="${colour}" stroke-width="2.5" stroke-linejoin="round"/>`;
}

/** The area between two curves, pale. */
export function band(
  { x, y }: PlotArea,
  points: readonly (readonly [number, number, number])[],
  colour: string,
): Markup {
  const path = area<readonly [number, number, number]>(
    ([px]) => x(px),
    ([, low]) => y(low),
    ([, , high]) => y(high),
  ).digits(2);
  return markup`<path d="${path(points) ?? ''}" fill="${colour}" fill-opacity="0.25"/>`;
}

/** A dashed line across the plotted area: upright at an x, or level at a y. */
export function limit({ x, y }: PlotArea, axis: 'x' | 'y', value: number): Markup {
  const [left = 0, right = 0] = x.range();
  const [foot = 0, top = 0] = y.range();
  const d = axis === 'x' ? `M${at(x(value))},${at(foot)}V${at(top)}` : `M${at(left)},${at(y(value))}H${at(right)}`;
  return markup`<path d="${d}" stroke="${colours.vermilion}" stroke-width="2" stroke-dasharray="6 4"/>`;
}

export function dotMark({ x, y }: PlotArea, [px, py]: Point, colour: string): Markup {
  return markup`<circle cx="${at(x(px))}" cy="${at(y(py))}" r="5" fill="${colour}"/>`;
}

/** A short stroke of a line's colour, for the key beside the plotted area. */
export function swatch(
  { x, y }: PlotArea,
  [px, py]: Point,
  colour: string,
  { dx = 0, dy = 0 }: LabelOptions = {},
): Markup {
  return markup`<path d="M${at(x(px) + dx)},${at(y(py) + dy)}h18" stroke="${colour}" stroke-width="4"/>`;
}

/** A level bar from the left end of the plotted area to a value, named on its left, with its value in words at its end. */
export interface LevelBar {
  readonly value: number;
  readonly name: string;
  readonly text: string;
  readonly colour: string;
  /** Middle and height on the picture, px. */
  readonly middle: number;
  readonly height: number;
  /** The name stands over the bar: it is too long for its left. */
  readonly over?: boolean;
}

export function levelBar(
  { x }: PlotArea,
  { value, name, text, colour, middle, height, over = false }: LevelBar,
): Markup {
  const [left = 0] = x.range();
  const end = x(Math.max(0, value));
  const named = over
    ? markup`<text class="halo" x="${left + 4}" y="${at(middle - height / 2 - 8)}">${name}</text>`
    : markup`<text x="${left - 9}" y="${middle}" dy="0.34em" text-anchor="end">${name}</text>`;
  return markup`<rect x="${left}" y="${middle - height / 2}" width="${at(end - left)}" height="${height}" fill="${colour}"/><g fill="currentColor">${named}<text x="${at(end + 6)}" y="${middle}" dy="0.34em">${text}</text></g>`;
}

export interface LabelOptions {
  /** Which end of the text stands at the point; `middle` is its middle. */
  readonly anchor?: 'start' | 'middle' | 'end';
  /** Moved by so many px, right and down. */
  readonly dx?: number;
  readonly dy?: number;
  readonly fontSize?: number;
}

/** Text beside a point, which may cross a line: it has a halo of paper round the letters. */
export function label({ x, y }: PlotArea, [px, py]: Point, text: string, options: LabelOptions = {}): Markup {
  const { anchor = 'start', dx = 0, dy = 0, fontSize } = options;
  const size = fontSize === undefined ? null : markup` font-size="${fontSize}"`;
  return markup`<text class="halo" x="${at(x(px) + dx)}" y="${at(y(py) + dy)}" dy="0.34em" text-anchor="${anchor}"${size} fill="currentColor">${text}</text>`;
}

/** The text of an SVG that stands by itself or within a page. Same marks, same text. */
export function picture(
  name: string,
  title: string,
  description: string,
  size: ChartSize,
  marks: readonly Markup[],
): string {
  const id = `plot-${name}`;
  const { width, height } = size;
  return markup`<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-labelledby="${id}-title ${id}-description" class="forecast-plot" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" font-family="system-ui, sans-serif" font-size="18"><title id="${id}-title">${title}</title><desc id="${id}-description">${description}</desc><style>${raw(style)}</style>${marks}</svg>
`.text;
}
