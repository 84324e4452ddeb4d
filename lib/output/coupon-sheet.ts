/** The measuring sheet of a coupon: what is measured, where and with which jaws, to print and to fill in at the bench. */
import { bounds, type Bounds, type Point } from '../geometry/index.js';
import { linesUp, type Part, ringsOf, textStrokes, textsUp } from '../part/index.js';
import { ringPath } from './book/ring-path.js';
import { policyOf } from './book/policy.js';
import { cautions } from './cautions.js';
import { decimal } from './decimal.js';
import { markup, type Markup, px, raw } from './markup.js';

/** One reading as the sheet shows it. */
export interface SheetReading {
  readonly id: string;
  readonly part: string;
  readonly nominal: number;
  readonly from: Point;
  readonly to: Point;
  readonly words: string;
}

export interface CouponSheet {
  readonly title: string;
  readonly material: string;
  readonly machine: string;
  /** Name of the file into which the readings go. */
  readonly file: string;
  /** The command that reads it. */
  readonly command: string;
  readonly parts: readonly Part[];
  readonly readings: readonly SheetReading[];
  readonly fits: readonly number[];
  readonly router: boolean;
  /** What cannot be made in this material. */
  readonly notes: readonly string[];
}

const style = `
@page{size:A4;margin:12mm}
*{box-sizing:border-box}
body{font:10.5pt/1.4 system-ui,"Segoe UI",Roboto,"Noto Sans",sans-serif;color:#111;margin:0 auto;padding:8mm;max-width:190mm}
h1{font-size:16pt;margin:0 0 2mm}
h2{font-size:12pt;margin:6mm 0 2mm;border-bottom:.4mm solid #111}
p,ol{margin:1.5mm 0}
li{margin:.8mm 0}
svg,tr,.caution{break-inside:avoid}
h2{break-after:avoid}
svg{display:block;max-width:100%;height:auto;margin:2mm 0}
.stuff{fill:#efe3c8;stroke:#111;stroke-width:.35;fill-rule:evenodd}
.hole{fill:#fff;stroke:#111;stroke-width:.35}
.mark{fill:none;stroke:#777;stroke-width:.3}
.dim{fill:none;stroke:#0d5a64;stroke-width:.5}
.no{fill:#0d5a64;font:bold 4px sans-serif;text-anchor:middle;dominant-baseline:central}
.disc{fill:#fff;stroke:#0d5a64;stroke-width:.4}
table{border-collapse:collapse;width:100%;font-size:9.5pt}
th,td{border-bottom:.2mm solid #999;padding:1mm 2mm 1mm 0;text-align:left;vertical-align:top}
td.n{text-align:right;white-space:nowrap}
td code{white-space:nowrap}
td.blank{width:26mm;border:.3mm solid #111}
.caution{border-left:1.2mm solid #8f2208;padding-left:3mm}
@media print{body{padding:0}}
`;

/** Free space round a part, for the numbers, mm. */
const around = 9;

function dimension({ from, to }: SheetReading, number: number, top: number): Markup {
  const at = ({ x, y }: Point): Point => ({ x, y: top - y });
  const [a, b] = [at(from), at(to)];
  const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  const [ux, uy] = [(b.x - a.x) / length, (b.y - a.y) / length];
  const tick = ({ x, y }: Point) => `M${px(x - 2 * uy)} ${px(y + 2 * ux)}L${px(x + 2 * uy)} ${px(y - 2 * ux)}`;
  // short dimensions have their number beside, long ones on the line, off the middle where lines cross
  const short = length < 18;
  const share = short ? 0.5 : 0.3;
  const middle = {
    x: a.x + (b.x - a.x) * share + (short ? 7 * uy : 0),
    y: a.y + (b.y - a.y) * share - (short ? 7 * ux : 0),
  };
  return markup`<path class="dim" d="M${px(a.x)} ${px(a.y)}L${px(b.x)} ${px(b.y)}${tick(a)}${tick(b)}"/><circle class="disc" cx="${px(middle.x)}" cy="${px(middle.y)}" r="3.2"/><text class="no" x="${px(middle.x)}" y="${px(middle.y)}">${number}</text>`;
}

function partPicture(
  part: Part,
  numbered: readonly { readonly reading: SheetReading; readonly number: number }[],
): Markup {
  const box: Bounds = bounds(part.outline);
  const top = box.maxY + around;
  const [width, height] = [box.maxX - box.minX + 2 * around, box.maxY - box.minY + 2 * around];
  const material = ringsOf(part).map((ring) => ringPath(ring, true, top));
  const marks = [
    ...linesUp(part).map(({ vertices, closed }) => ringPath(vertices, closed, top)),
    ...textsUp(part).flatMap((text) => textStrokes(text).map((stroke) => ringPath(stroke, false, top))),
  ];
  const holes = part.holes.map(
    ({ x, y, diameter }) => markup`<circle class="hole" cx="${px(x)}" cy="${px(top - y)}" r="${px(diameter / 2)}"/>`,
  );
  // printed at true size where it fits the page
  return markup`<svg viewBox="${px(box.minX - around)} 0 ${px(width)} ${px(height)}" width="${px(width)}mm" role="img" aria-label="${part.name}, showing where to measure">
<path class="stuff" d="${material.join('')}"/>${holes}<path class="mark" d="${marks.join('')}"/>${numbered.map(({ reading, number }) => dimension(reading, number, top))}</svg>`;
}

const rowOf = (number: string, what: string, about: string, id: string): Markup =>
  markup`<tr><td class="n">${number}</td><td>${what}</td><td class="n">${about}</td><td><code>${id}</code></td><td class="blank"></td></tr>`;

function partSection(part: Part, sheet: CouponSheet, first: number): Markup {
  const numbered = sheet.readings
    .filter((reading) => reading.part === part.id)
    .map((reading, i) => ({ reading, number: first + i }));
  const rows = numbered.map(({ reading: { words, nominal, id }, number }) =>
    rowOf(String(number), words, `${decimal(nominal, 2)} mm`, id),
  );
  const table =
    rows.length === 0
      ? null
      : markup`<table><thead><tr><th>No.</th><th>Jaws and place</th><th>About</th><th>Line</th><th>Read</th></tr></thead><tbody>${rows}</tbody></table>`;
  return markup`<section><h2>${part.name}</h2>${partPicture(part, numbered)}${table}</section>`;
}

function tried({ fits, router }: CouponSheet): Markup {
  const rows = [
    rowOf('', 'thickness of the sheet, outside jaws, at three places or more, away from the edges', '', 'thickness'),
    ...(fits.length === 0
      ? []
      : [
          rowOf(
            '',
            'press the tab into the slots by hand, starting with the narrowest: the number beside the first that it fits',
            fits.map((play) => play.toFixed(2)).join(', '),
            'fit',
          ),
        ]),
    ...(router
      ? [
          rowOf(
            '',
            'how the tabs performed: held, moved (a part came loose), too-strong (would not break by hand)',
            '',
            'tabs',
          ),
        ]
      : []),
  ];
  return markup`<section><h2>Other trials and measurements</h2><table><tbody>${rows}</tbody></table></section>`;
}

/** The page: one HTML file that asks the network for nothing, and prints. */
export function writeCouponSheet(sheet: CouponSheet): string {
  let first = 1;
  const sections = sheet.parts.map((part) => {
    const section = partSection(part, sheet, first);
    first += sheet.readings.filter((reading) => reading.part === part.id).length;
    return section;
  });
  const steps = [
    'Cut the sheet as nested, with its lower left corner at the machine’s zero and its edge along X: the axes are measured from it. Cut nothing by hand.',
    'Break or cut the parts free; sand off the tabs and the fuzz on the bottom edge, but do not touch any edge that is measured.',
    'Lay every part with its lettering up and readable, as in the drawings: that is how it lay on the machine. X runs to the right and Y away from you.',
    'Close the callipers and set them to zero. Measure with light pressure, square to the part, near the top face, at the numbered places. Take each reading twice, and write the mean.',
    `Write the readings into ${sheet.file}, which is in the same folder as this page, each after its colon; if you could not take one, write none.`,
    `Then, in the folder of this page: ${sheet.command}`,
  ];
  const body = markup`<h1>Measuring sheet: coupon in ${sheet.material}</h1>
<p>${sheet.title}. ${sheet.machine}</p>
<ol>${steps.map((step) => markup`<li>${step}</li>`)}</ol>
${sheet.notes.map((note) => markup`<p>${note}</p>`)}
${sections}
${tried(sheet)}
<section><h2>Does the printer print to scale?</h2>
<p>Print one of the full-size prints of the dish (folder prints) at 100 %, measure its 100 mm line with a steel rule and write it after print in ${sheet.file}. From then on templates and prints are drawn so that they come out to scale on that printer. If you print nothing, or cut only by machine, write none.</p></section>
<section class="caution"><h2>Caution</h2>${cautions
    .filter(({ title }) => title === 'Machines' || title === 'What comes first')
    .map(({ sentences }) => markup`<p>${sentences.join(' ')}</p>`)}</section>`.text;
  const page = `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width">POLICY
<title>${markup`Measuring sheet: ${sheet.material}`.text}</title><style>${raw(style).text}</style></head>
<body>${body}</body></html>
`;
  const policy = policyOf(page, '');
  return page.replace('POLICY', `<meta http-equiv="Content-Security-Policy" content="${policy}">`);
}
