/** Times what grows with the square of its input when it is done carelessly; one JSON line a case. */
import { readFileSync } from 'node:fs';
import { verify } from '../../lib/check/index.js';
import { buildJob, readDesign } from '../../lib/index.js';
import { shortRoute, travelLength } from '../../lib/machining/travel.js';
import { readExtras } from '../../lib/parts/index.js';
import { routeSheets } from '../../lib/pipeline/router-files.js';

function report(what: string, size: number, run: () => number): void {
  const start = performance.now();
  const result = run();
  const seconds = (performance.now() - start) / 1000;
  console.log(JSON.stringify({ what, size, seconds: Number(seconds.toPrecision(4)), result }));
}

const many = (count: number, of: (k: number) => string): string =>
  Array.from({ length: count }, (_, k) => of(k)).join('');

/** Drawings that a careless reader would sit over for minutes. The count is the size. */
const drawings: readonly (readonly [string, number, string])[] = [
  ['cusps', 20_000, `<path d="M0 0${many(5000, (k) => `C100 100 0 100 100 ${k}`)}Z"/>`],
  ['path commands', 500_000, `<path d="M0 0${'l1 1'.repeat(500_000)}Z"/>`],
  ['nested groups', 100_000, `${'<g>'.repeat(100_000)}${'</g>'.repeat(100_000)}`],
  ['teeth', 1900, `<path d="M0 0${many(1900, (k) => `L${k * 10} ${(k % 2) * 1000}`)}L19000 5000L0 5000Z"/>`],
];

/** Runs all cases; the result is the length of the path, the number of sheets, or of parts and messages. @param file the demo's design */
export async function benchLimits(file: string): Promise<void> {
  const origin = { x: 0, y: 0 };
  const stops = Array.from({ length: 1500 }, (_, k) => {
    const at = { x: (k * 7919) % 2400, y: (k * 104_729) % 1200 };
    return { from: at, to: at };
  });
  report('shortest path through holes', stops.length, () =>
    Math.round(travelLength(stops, shortRoute(stops, origin), origin)),
  );

  const reading = readDesign(readFileSync(file, 'utf8'));
  if (reading.kind === 'refused') throw new Error(`${file} is refused`);
  const { design } = reading;
  const material = Object.keys(design.materials)[0] ?? '';
  for (const [what, size, body] of drawings) {
    const text = `<svg xmlns="http://www.w3.org/2000/svg" width="200mm" viewBox="0 0 200 200">${body}</svg>`;
    const extra = [{ file: 'own.svg', material, quantity: 1, unit: undefined }];
    report(`read a drawing of ${what}`, size, () => {
      const { parts, problems } = readExtras({ ...design, extra }, new Map([['own.svg', text]]));
      return parts.length + problems.length;
    });
  }

  const job = await buildJob({ ...design, nest: { ...design.nest, effort: 0 } });
  const texts = new Map([...job.files].flatMap(([name, text]) => (typeof text === 'string' ? [[name, text]] : [])));
  report('route the demo', job.sheets.length, () => routeSheets(job, job.sheets).routes.length);
  report('prove the demo', job.sheets.length, () => verify(texts).sheets.length);
}
