/** From a plot's description to the text of an SVG that stands by itself or within a page. */
import * as Plot from '@observablehq/plot';
import { parseHTML } from 'linkedom';
import { decimal } from '../decimal.js';
import { escapeXml } from '../xml.js';

/** A drawing and its numbers. */
export interface ForecastFigure {
  /** File-safe: `intercept`. */
  readonly name: string;
  readonly title: string;
  /** What it shows, in words, for those who do not see it. */
  readonly description: string;
  readonly svg: string;
  readonly csv: string;
}

/** Okabe and Ito's palette (2002); these three stand out from white and from dark paper by 3:1 or more. */
export const colours = { blue: '#0072B2', green: '#009E73', vermilion: '#D55E00' } as const;

/** Ink and paper of a page are taken over where it has such variables (`--ink`, `--leaf`). */
const style = `
.forecast-plot{color:var(--ink,#1f2d36);--plot-background:var(--leaf,#fff);background:var(--leaf,#fff)}
.forecast-plot text{fill:currentColor}
@media screen and (prefers-color-scheme:dark){.forecast-plot{color:var(--ink,#ebe6da);--plot-background:var(--leaf,#1a2226);background:var(--leaf,#1a2226)}}`;

/** Text that may cross a line: a halo of paper round the letters. */
export const halo = { fill: 'currentColor', stroke: 'var(--plot-background)', strokeWidth: 4 } as const;

const className = 'forecast-plot';

/** Draws; same description, same text. Numbers are rounded to a hundredth of a pixel. */
export function draw(name: string, title: string, description: string, options: Plot.PlotOptions): string {
  // the types of a browser's document are not at hand here; these are the members in use
  const { document } = parseHTML('<!doctype html><html></html>') as unknown as { readonly document: object };
  const common = { width: 640, height: 400, marginTop: 36, style: { fontSize: '14px' } };
  const plot = Plot.plot({ ...common, ...options, className, document }) as unknown as { readonly outerHTML: string };
  const text = plot.outerHTML;
  const end = text.indexOf('>');
  const id = `plot-${name}`;
  const head = text
    .slice(0, end)
    .replace(
      '<svg',
      `<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-labelledby="${id}-title ${id}-description"`,
    );
  const named =
    `<title id="${id}-title">${escapeXml(title)}</title>` +
    `<desc id="${id}-description">${escapeXml(description)}</desc><style>${style}</style>`;
  const body = text
    .slice(end + 1)
    // the picture is one image with a name of its own; names of its groups are barred by ARIA 1.2 (role `generic`)
    .replace(/ aria-label="[^"]*"/g, '')
    .replace(/(?<=[\s,("MLCZHVQ-])\d+\.\d{3,}(?![\d%])/g, (number: string) => decimal(Number(number), 2));
  return `${head}>${named}${body}\n`;
}
