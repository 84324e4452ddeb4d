import { beforeAll, describe, expect, it } from 'vitest';
import { cautions, type Job, prepare, readDesign } from '../../lib/index.js';
import { json, markup } from '../../lib/output/markup.js';
import { bookOf } from '../../lib/public/book.js';
import { beamPictures } from '../../lib/pipeline/laser-files.js';
import { routedPictures } from '../../lib/pipeline/router-files.js';
import { firstRibs } from '../../lib/output/book/step.js';
import { designOf, fixture, fixtureNames, fixtureText, jobOf } from '../helpers/fixtures.js';
import { randomDesign } from '../helpers/random-design.js';
import { byDay, jobSeeds } from '../helpers/seeds.js';

const jobs = new Map<string, Job>();
beforeAll(async () => {
  for (const name of fixtureNames) jobs.set(name, await jobOf(name));
});
const job = (name: string): Job => {
  const found = jobs.get(name);
  if (!found) throw new Error(`no job ${name}`);
  return found;
};
/** What a reader sees, without markup, scripts and styles. */
const wordsOf = (html: string): string =>
  html
    .replace(/<(script|style)\b[\s\S]*?<\/\1>/g, ' ')
    .replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ');

/** The book as it is written with the cut files. */
const bookFile = (name: string): string => String(job(name).files.get('book.html'));

describe.each(fixtureNames)('the book of %s', (name) => {
  it('is one file under 2.5 MB that asks nothing of a network', () => {
    const html = bookFile(name);
    expect(html.length).toBeLessThan(2.5e6);
    expect(html.match(/<(?:link|iframe|img|object|embed|base)\b/g)).toBeNull();
    expect(html.match(/<script[^>]*\bsrc=/g)).toBeNull();
    expect(html.match(/\b(?:href|xlink:href)="(?!#)/g)).toBeNull();
    expect(html.match(/<style>[\s\S]*?<\/style>/)?.[0]).not.toMatch(/url\(|@import/);
  });

  it('is the same for the same job', () => {
    const { routes, sheets, files, design } = job(name);
    const cutPictures = [...routedPictures(routes, design.units), ...beamPictures(sheets, files)];
    expect(bookOf({ ...job(name), cutPictures }) === bookFile(name)).toBe(true);
  });

  it('carries every caution', () => {
    const words = wordsOf(bookFile(name)).replaceAll('&#39;', "'");
    for (const { sentences } of cautions) for (const sentence of sentences) expect(words).toContain(sentence);
  });

  it('names every part with its number, and pictures every sheet', () => {
    const html = bookFile(name);
    for (const part of job(name).parts) {
      expect(html).toContain(`data-light="${part.id}"`);
      expect(html).toContain(`<td data-quantity="${part.id}">${part.quantity}</td>`);
    }
    for (const { cut } of job(name).sheets) expect(html).toContain(`id="sheet-${cut.id}"`);
    // a machine's sheet has a picture of what is left of it
    for (const [kind, words] of [
      ['router', 'The sheet as the router leaves it'],
      ['laser', 'The sheet as the laser leaves it'],
    ] as const)
      expect(html.split(words).length - 1).toBe(job(name).sheets.filter(({ cut }) => cut.process.kind === kind).length);
  });

  it('stands before anything is nested', () => {
    const words = wordsOf(bookOf({ ...prepare(fixture(name)), sheets: null }));
    expect(words).toContain('The parts are being nested');
  });
});

describe('the book of random designs', () => {
  it('holds no slip of a number', () => {
    const seeds = jobSeeds('output/book', 1, byDay(4, 200));
    let books = 0;
    for (const seed of seeds) {
      const reading = readDesign(randomDesign(seed).text);
      if (reading.kind === 'refused') continue;
      const prepared = prepare(reading.design);
      if (prepared.problems.some(({ severity }) => severity === 'error')) continue;
      const html = bookOf({ ...prepared, sheets: null }).replace(/<script>[\s\S]*?<\/script>/g, '');
      expect(html.match(/NaN|undefined|Infinity|\[object/), `seed ${seed}`).toBeNull();
      books += 1;
    }
    expect(books).toBeGreaterThan(seeds.length / 2);
  });
});

describe('the shopping list', () => {
  it('adds up prices and screws', () => {
    const { sheets, design } = job('press-house');
    const html = bookFile('press-house');
    const cost = sheets.reduce((sum, { nested }) => {
      const stock = design.stock.find(({ id }) => id === nested.stock);
      const share = stock?.rollWidth === undefined ? 1 : nested.usedLength / 1000;
      return sum + (stock?.price ?? 0) * share;
    }, 0);
    expect(html).toContain(`data-total="${cost.toFixed(2)}"`);
    // 24 cleats with two screws down and two into the rib: 36 mm of board and cleat, 48 mm of cleat and rib; 2 mm stay
    // over each point
    expect(wordsOf(html)).toContain('Countersunk wood screw 4 x 30 mm 48 cleats to the board');
    expect(wordsOf(html)).toContain('Countersunk wood screw 4 x 45 mm 48 cleats to the ribs');
    // four layers of 12 mm and a board of 18 mm, two washers and a nut: 66 + 10 mm, and a thread past it
    expect(wordsOf(html)).toContain('Bolt M8 x 80 mm, two washers and nut 1 hub to the board');
    expect(wordsOf(html)).toContain('Dowel 8 mm x 66 mm, cut from rod 2 hub and board in register');
    // where the cleats are glued to the ribs, no screws for that are bought
    const glued = fixtureText('press-house').replace('rib: {', 'cleat: { ribScrews: 0 }\nrib: {');
    const words = wordsOf(bookOf({ ...prepare(designOf(glued)), sheets: null }));
    expect(words).toContain('Glue each cleat to its rib');
    expect(words).not.toContain('cleats to the ribs');
  });

  it('weighs what is cut: a larger square board by its added area', () => {
    const weight = (size: number) => {
      const text = fixtureText('hand-cut-inch')
        .replace('size: 40', `size: ${size}`)
        .replace('rib: { material: ply', 'rib: { material: ply, toeRadius: 19');
      const html = bookOf({ ...prepare(designOf(text)), sheets: null });
      return Number(/data-weight-kg="([\d.]+)"/.exec(html)?.[1]);
    };
    // plywood of 680 kg/m³, 15/32 in thick
    const inch = 0.0254;
    const added = (42 ** 2 - 40 ** 2) * inch ** 2 * (15 / 32) * inch * 680;
    expect(weight(42) - weight(40)).toBeCloseTo(added, 2);
  });

  it('lists every fastener of the assembly once, by the size that is sold', () => {
    const { design, assembly } = prepare(designOf(fixtureText('hand-cut-inch')));
    const html = bookOf({ ...prepare(design), sheets: null });
    const table = /<table class="hardware">.*?<\/table>/s.exec(html)?.[0] ?? '';
    const rows = [...table.matchAll(/<th scope="row">([^<]*)<\/th><td>(\d+)<\/td>/g)];
    expect(rows.reduce((sum, [, , count]) => sum + Number(count), 0)).toBe(assembly.fasteners.length);
    for (const [, item] of rows) expect(item).toMatch(/no \d+ x |in x |^Bolt 5\/16 in|gauge x /);
    expect(table).not.toMatch(/\d mm/);
  });
});

describe('the order of assembly', () => {
  it.each([24, 20, 18, 17, 5, 3])('begins with ribs that stand evenly round a board of %i', (count) => {
    const first = firstRibs(count);
    expect(new Set(first).size).toBe(first.length);
    expect(first.every((rib) => rib >= 1 && rib <= count)).toBe(true);
    const gaps = first.map((rib, i) => ((first[(i + 1) % first.length] ?? 0) - rib + count) % count);
    // no half of the board stays without one
    expect(Math.max(...gaps)).toBeLessThan(count / 2 + 1e-9);
  });

  it('tells heights and places as the dish has them', () => {
    const { dish } = job('press-house');
    const words = wordsOf(bookFile('press-house'));
    expect(words).toContain('Dry-fit ribs 1, 7, 13 and 19 first');
    expect(words).toContain(
      `${dish.innerEndHeight.toFixed(1)} mm at the inner end, ${dish.rimEndHeight.toFixed(1)} mm at the rim`,
    );
    // the focus 550 mm above the vertex, the vertex 60 mm above the board
    expect(words).toContain('hangs on the axis 610 mm above the board');
  });
});

describe('what a person wrote', () => {
  const hostile = `"</script><img src=x onerror=alert(1)>&<b>"`;
  const text = fixtureText('table-top').replace('Table-top dish', hostile).replace('Grey card 1 mm', hostile);

  it('stays text in the book', () => {
    const html = bookOf({ ...prepare(designOf(text)), sheets: null });
    expect(html).not.toContain('<img');
    expect(html).not.toContain('<b>');
    expect(html).toContain('&lt;img src=x onerror=alert(1)&gt;');
    expect(html.match(/<script/g)).toHaveLength(2);
  });

  it('is escaped by the template and by the data alike', () => {
    expect(markup`<p title="${'"<&'}">${['<', null, 3]}</p>`.text).toBe('<p title="&quot;&lt;&amp;">&lt;3</p>');
    expect(JSON.parse(json({ a: '</script><!--' }).text)).toEqual({ a: '</script><!--' });
    expect(json('</script>').text).not.toContain('<');
  });
});
