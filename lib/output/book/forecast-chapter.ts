/** What the dish does in the sun: charts, values, what they rest on. */
import { markup, type Markup, raw } from '../markup.js';
import type { ForecastPlot } from '../plots/index.js';
import type { BookInput, ForecastRow } from './input.js';
import { type Block, block } from './leaves.js';
import type { Paper } from './paper.js';
import { printedHeight } from './printed-height.js';

/** Charts on paper: beside each other, and how high each is with its title, mm. */
const ABREAST = 3;
const CHART = 44;
const HIGHEST = 70;
/** Type of the tables on paper, of the usual. */
const SMALL = 0.93;

/** What a chapter's table is divided by, in the order of its rows. */
const groups: readonly { readonly caption: string; readonly of: RegExp }[] = [
  { caption: 'By the height of the sun, at the irradiance above', of: /^sun .*high$/ },
  { caption: 'By the hour', of: /^at \d/ },
  {
    caption: 'Clear days in the middle of each month',
    of: /^(?:January|February|March|April|May|June|July|August|September|October|November|December)$/,
  },
  { caption: 'What the work costs and gains', of: /^(?:costs|gains):/ },
  { caption: 'Where the light goes', of: /^(?:lost:|misses:|thrown)/ },
];
const USUAL = 'Forecast, with the standard error of what was traced';

interface Group {
  readonly caption: string;
  readonly rows: readonly ForecastRow[];
}

function grouped(rows: readonly ForecastRow[]): Group[] {
  const captionOf = ({ label }: ForecastRow): string => groups.find(({ of }) => of.test(label))?.caption ?? USUAL;
  return [USUAL, ...groups.map(({ caption }) => caption)]
    .map((caption) => ({ caption, rows: rows.filter((row) => captionOf(row) === caption) }))
    .filter((group) => group.rows.length > 0);
}

function table({ caption, rows }: Group): Markup {
  const errors = rows.some(({ error }) => error !== '');
  const notes = rows.some(({ note }) => note !== undefined && note !== '');
  const row = ({ label, value, error, note }: ForecastRow) =>
    markup`<tr><th scope="row">${label}</th><td>${value}</td>${errors ? markup`<td>${error}</td>` : null}${notes ? markup`<td class="words">${note ?? ''}</td>` : null}</tr>`;
  return markup`<div class="scroll" tabindex="0" role="region" aria-label="Table: ${caption}"><table class="forecast"><caption>${caption}</caption>
<thead><tr><th scope="col">quantity</th><th scope="col">value</th>${errors ? markup`<th scope="col">error</th>` : null}${notes ? markup`<th scope="col" class="words">remark</th>` : null}</tr></thead><tbody>${rows.map(row)}</tbody></table></div>`;
}

export function forecastBlocks({ forecast }: BookInput, { width }: Paper): Block[] {
  if (forecast.kind === 'none') return [block(markup`<p>The forecast could not be made: see the problems.</p>`, width)];
  if (forecast.kind === 'pending')
    return [block(markup`<p role="status">The forecast is being worked out and follows with the sheets.</p>`, width)];
  const plot = ({ title, svg }: ForecastPlot) =>
    markup`<figure class="plot">${raw(svg)}<figcaption>${title}</figcaption></figure>`;
  const care = markup`<div class="scroll" tabindex="0" role="region" aria-label="Table of the forecast by care"><table class="forecast"><caption>By care of the work: one number promises too much</caption>
<thead><tr><th scope="col">quantity</th><th scope="col">good</th><th scope="col">usual</th><th scope="col">poor</th></tr></thead><tbody>${forecast.care.map(([label, ...values]) => markup`<tr><th scope="row">${label}</th>${values.map((value) => markup`<td>${value}</td>`)}</tr>`)}</tbody></table></div>`;
  const rests = markup`<h3>What it rests on</h3><ul class="two">${forecast.assumptions.map((line) => markup`<li>${line}</li>`)}</ul>`;
  const all = grouped(forecast.rows);
  // both have no remarks, and lie beside each other
  const light = all.filter(({ caption }) => caption === groups.at(-1)?.caption).map(table);
  const pair = markup`<div class="pair">${care}${light}</div>`;
  const estimate = markup`<p>An estimate from the shape, the sun and the stated care of the work; not a promise.</p>`;
  const rows = Math.ceil(forecast.plots.length / ABREAST);
  const tall = Math.max(...[care, ...light].map((one) => printedHeight(one, width / 2, SMALL)));
  return [
    block(markup`${estimate}${pair}`, width, { height: 5 + tall }),
    block(markup`<div class="plots">${forecast.plots.map(plot)}</div>`, width, {
      height: 3 + CHART * rows,
      max: HIGHEST * rows,
      grows: true,
    }),
    ...all
      .slice(0, all.length - light.length)
      .map(table)
      .map((one) => block(one, width, { height: printedHeight(one, width, SMALL) })),
    block(rests, width, { height: 7 + printedHeight(rests, width / 2 - 3, 0.89) / 2 }),
  ];
}
