/** The printed book: its pages as Debian's Chromium makes them and poppler reads them. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildCutFiles, type LengthUnit, prepare, readDesign } from '../../lib/index.js';
import { bookOf } from '../../lib/public/book.js';
import { launch } from '../helpers/browser.js';
import { crowdedIn } from '../helpers/crowded-in-page.js';
import { allFixtureNames, designOf, fixture, jobOf } from '../helpers/fixtures.js';
import { designIn } from '../helpers/random-design.js';
import { randomNester } from '../helpers/random-nester.js';

const folder = mkdtempSync(join(tmpdir(), 'dishwright-pages-'));
let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(async () => {
  await browser.close();
  rmSync(folder, { recursive: true });
});

const MM = 25.4 / 96;
const inInches = (unit: LengthUnit): boolean => unit === 'in' || unit === 'ft';
/** Margins of the printed page, mm. */
const [SIDE, TOP, FOOT] = [11, 8, 11];

/** What a reader's system may have: DejaVu Sans is as wide as fonts for screens come, and this is 7 % more. */
const WIDER = ['', ' Bold']
  .map(
    (face) =>
      `@font-face{font-family:wider;font-weight:${face === '' ? 400 : 700};src:local("DejaVu Sans${face}");size-adjust:107%}`,
  )
  .join('')
  .concat('*{font-family:wider!important}');

/** @param style added to the book's own */
async function opened(name: string, html: string, unit: LengthUnit, style?: string): Promise<Page> {
  const file = join(folder, `${name}.html`);
  writeFileSync(file, html);
  const paper = inInches(unit) ? 215.9 : 210;
  const viewport = { width: Math.round((paper - 2 * SIDE) / MM), height: 1000 };
  // the book's policy refuses styles that are not its own
  const page = await browser.newPage({ viewport, bypassCSP: style !== undefined });
  await page.goto(pathToFileURL(file).href);
  if (style !== undefined) await page.addStyleTag({ content: style });
  return page;
}

async function printed(name: string, page: Page): Promise<string> {
  const file = join(folder, `${name}.pdf`);
  writeFileSync(file, await page.pdf({ preferCSSPageSize: true, printBackground: true }));
  return file;
}

const textOf = (file: string): string[] =>
  execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' }).split('\f').slice(0, -1);

const DPI = 50;
const BAND_MM = 8;

/** The share of each page's bands, 8 mm high, that hold any ink; the foot with the page's number does not count. */
function useOf(file: string): number[] {
  const stem = mkdtempSync(join(folder, 'ink-'));
  execFileSync('pdftoppm', ['-r', String(DPI), '-gray', file, join(stem, 'p')]);
  return readdirSync(stem)
    .sort()
    .map((name) => {
      const bytes = readFileSync(join(stem, name));
      const [head = '', wide = '', high = ''] =
        /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.toString('latin1', 0, 40)) ?? [];
      const [width, height] = [Number(wide), Number(high)];
      const grey = bytes.subarray(head.length);
      const px = (mm: number): number => Math.round((mm * DPI) / 25.4);
      const bands = Math.floor((height * 25.4) / DPI / BAND_MM - (TOP + FOOT) / BAND_MM);
      const inked = Array.from({ length: bands }, (_, i) => {
        const [from, to] = [px(TOP + i * BAND_MM), px(TOP + (i + 1) * BAND_MM)];
        return grey.subarray(from * width, to * width).some((value) => value < 200);
      });
      return inked.filter(Boolean).length / bands;
    });
}

const mean = (values: readonly number[]): number => values.reduce((sum, each) => sum + each, 0) / values.length;

interface Entry {
  readonly id: string;
  readonly title: string;
  readonly at: string;
}

const contents = (page: Page): Promise<Entry[]> =>
  page.evaluate(`[...document.querySelectorAll('nav li:not(.screen)')].map((each) => ({
    id: each.querySelector('a').hash.slice(1), title: each.querySelector('a').textContent, at: each.querySelector('.at').textContent }))`);

/** Text that reaches out of its page, or out of the block that is its own, in print. */
async function spilled(page: Page): Promise<string[]> {
  await page.emulateMedia({ media: 'print' });
  return page.evaluate<string[]>(`(() => {
    const out = [];
    const slack = 1.5;
    for (const leaf of document.querySelectorAll('.leaf')) {
      const box = leaf.getBoundingClientRect();
      const kept = [...leaf.querySelectorAll('.kept')].filter((each) => each.getClientRects().length > 0);
      for (const one of [leaf, ...kept]) {
        const own = one.getBoundingClientRect();
        const walker = document.createTreeWalker(one, NodeFilter.SHOW_TEXT);
        while (walker.nextNode()) {
          const node = walker.currentNode;
          if (node.textContent.trim() === '' || node.parentElement.closest('svg')) continue;
          const range = document.createRange();
          range.selectNodeContents(node);
          for (const rect of range.getClientRects())
            if (rect.bottom > own.bottom + slack || rect.right > box.right + slack)
              out.push('page ' + leaf.dataset.page + ': ' + node.textContent.trim().slice(0, 40));
        }
      }
      for (const svg of leaf.querySelectorAll('svg')) {
        const rect = svg.getBoundingClientRect();
        if (rect.bottom > box.bottom + slack || rect.right > box.right + slack) out.push('page ' + leaf.dataset.page + ': picture ' + svg.getAttribute('aria-label'));
      }
    }
    return [...new Set(out)];
  })()`);
}

describe.each(allFixtureNames)('the printed book of %s', (name) => {
  const unit = fixture(name).units;
  let page: Page;
  let file: string;
  beforeAll(async () => {
    const job = await jobOf(name);
    page = await opened(name, String(job.files.get('book.html')), unit);
    file = await printed(name, page);
  });
  afterAll(() => page.close());

  it('has the pages that it counts, on the paper of its unit', async () => {
    const leaves = await page.evaluate<number>(`document.querySelectorAll('.leaf').length`);
    const info = execFileSync('pdfinfo', [file], { encoding: 'utf8' });
    expect(info).toMatch(new RegExp(`Pages:\\s+${leaves}\\n`));
    // ISO 216 A4, ANSI/ASME Y14.1 A
    expect(info).toMatch(inInches(unit) ? /Page size:\s+612 x 792/ : /Page size:\s+59[45]\.?\d* x 84[12]/);
    const texts = textOf(file);
    texts.forEach((text, i) => expect(text).toMatch(new RegExp(`\\b${i + 1} of ${leaves}\\s*$`)));
  });

  it('finds each chapter on the page that its contents name', async () => {
    const entries = await contents(page);
    expect(entries.length).toBeGreaterThan(6);
    // poppler's list of the places that links lead to: page and name
    const list = execFileSync('pdfinfo', ['-dests', file], { encoding: 'utf8' });
    const places = new Map([...list.matchAll(/^\s*(\d+) \[.*\] "(.*)"$/gm)].map(([, at = '', id = '']) => [id, at]));
    const texts = textOf(file);
    for (const { id, title, at } of entries) {
      expect(places.get(id), title).toBe(at);
      expect(texts[Number(at) - 1]).toMatch(new RegExp(`^\\s*${title}\\s*$`, 'm'));
    }
  });

  // ISO 129-1: dimension lines and values keep apart; a value stands on no line
  it('keeps the texts of its pictures off each other and off lines that measure or point', async () => {
    const { found, counted } = await crowdedIn(page);
    expect(found).toEqual([]);
    expect(counted.pictures).toBeGreaterThan(25);
    expect(counted.texts).toBeGreaterThan(500);
    expect(counted.lines).toBeGreaterThan(2000);
  });

  it('labels its sheets in letters that can be read on paper and on a screen 1280 pixels wide', async () => {
    const lettersPt = (): Promise<number[]> =>
      page.evaluate(`[...document.querySelectorAll('svg.sheet text')].map((text) => {
        const { a, b } = text.getScreenCTM();
        return 0.75 * Number.parseFloat(getComputedStyle(text).fontSize) * Math.hypot(a, b);
      })`);
    await page.emulateMedia({ media: 'print' });
    const printed = await lettersPt();
    expect(printed.length).toBeGreaterThan(15);
    // capitals of 1.8 mm, the smallest of ISO 3098-1, are those of 7.1 point Helvetica
    expect(Math.min(...printed)).toBeGreaterThanOrEqual(7);
    const { width = 0, height = 0 } = page.viewportSize() ?? {};
    await page.emulateMedia({ media: 'screen' });
    await page.setViewportSize({ width: 1280, height: 900 });
    // 9 point are the 12 pixels of small print on a screen: common practice, no source
    expect(Math.min(...(await lettersPt()))).toBeGreaterThanOrEqual(9);
    await page.setViewportSize({ width, height });
    await page.emulateMedia({ media: null });
  });

  it('lets no text run out of its place', async () => {
    expect(await spilled(page)).toEqual([]);
    await page.emulateMedia({ media: null });
  });

  it('keeps its texts and its pages with letters 7 % larger than those of a usual wide font', async () => {
    const wide = await opened(`${name}-wide`, String((await jobOf(name)).files.get('book.html')), unit, WIDER);
    const wider = await wide.evaluate<number>(`document.fonts.ready.then(() => {
      const widthIn = (font) => {
        const pen = document.createElement('canvas').getContext('2d');
        pen.font = '100px ' + font;
        return pen.measureText('Reflector strip 12').width;
      };
      return widthIn('wider') / widthIn('"DejaVu Sans"');
    })`);
    expect(wider).toBeCloseTo(1.07, 2);
    expect((await crowdedIn(wide)).found).toEqual([]);
    expect(await spilled(wide)).toEqual([]);
    const leaves = await wide.evaluate<number>(`document.querySelectorAll('.leaf').length`);
    const info = execFileSync('pdfinfo', [await printed(`${name}-wide`, wide)], { encoding: 'utf8' });
    expect(info).toMatch(new RegExp(`Pages:\\s+${leaves}\\n`));
    await wide.close();
  });

  it('fills its pages', () => {
    const use = useOf(file);
    console.log(
      `${name}: ${use.length} pages, ${mean(use).toFixed(3)} used: ${use.map((one) => one.toFixed(2)).join(' ')}`,
    );
    expect(mean(use)).toBeGreaterThanOrEqual(0.85);
    expect(Math.min(...use)).toBeGreaterThanOrEqual(0.55);
    if (name === 'press-house') expect(use.length).toBeLessThanOrEqual(16);
  });
});

describe('the measures of pages', () => {
  it('see half a page as half a page', async () => {
    const half = `<style>@page{size:A4;margin:8mm 11mm 11mm}body{margin:0}p{height:136mm;margin:0;background:#000;break-after:page;print-color-adjust:exact}</style><p></p>`;
    const page = await opened('half', half, 'mm');
    const [use = 0] = useOf(await printed('half', page));
    expect(use).toBeGreaterThan(0.45);
    expect(use).toBeLessThan(0.56);
    await page.close();
  });

  it('see text on text, upright and turned, and a line through a text', async () => {
    const shown = (marks: string) =>
      `<main><svg class="shop" aria-label="drawn" width="400" height="200" viewBox="0 0 400 200" font-size="20">${marks}</svg></main>`;
    const marks = {
      apart:
        '<text x="20" y="40">one</text><text x="20" y="62">two</text><g><path class="l-thin" d="M0 41.5L100 41.5"/></g>',
      upright: '<text x="20" y="40">one</text><text x="45" y="45">two</text>',
      turned: '<text x="20" y="40">one</text><text transform="translate(40 60)rotate(-90)">two</text>',
      line: '<text x="20" y="40">one</text><g><path class="l-thin" d="M0 34L100 34"/></g>',
      off: '<text x="380" y="40">one</text>',
      arc: '<text x="20" y="40">one</text><g><path class="l-thin" d="M0 60A50 50 0 0 1 80 60"/></g>',
    };
    const found = Object.entries(marks).map(async ([name, each]) => {
      const page = await opened(`marks-${name}`, shown(each), 'mm');
      const seen = (await crowdedIn(page)).found;
      await page.close();
      return [name, seen] as const;
    });
    expect(Object.fromEntries(await Promise.all(found))).toEqual({
      apart: [],
      upright: ['drawn: "one" on "two"'],
      turned: ['drawn: "one" on "two"'],
      line: ['drawn: a line through "one"'],
      off: ['drawn: "one" is cut off'],
      arc: ['drawn: a line through "one"'],
    });
  });

  it('see text that runs out of its page', async () => {
    const long = `<div class="leaf" data-page="1" style="height:20mm"><div class="kept"><p style="height:40mm">one</p><p>two</p></div></div>`;
    const page = await opened('long', long, 'mm');
    expect(await spilled(page)).toEqual(['page 1: two']);
    await page.close();
  });
});

/** Designs that can be read, by their seeds. */
const random = Array.from({ length: 60 }, (_, i) => ({
  seed: i + 1,
  unit: i % 3 === 2 ? ('in' as const) : ('mm' as const),
}))
  .map(({ seed, unit }) => ({ seed, unit, text: designIn(unit, seed) }))
  .filter(({ text }) => readDesign(text).kind !== 'refused')
  .slice(0, 30);

describe('random designs', () => {
  it.each(random)(
    'of seed $seed keep every text in its place in pictures and on paper',
    async ({ seed, unit, text }) => {
      const design = designOf(text);
      const { problems, sheets } = await buildCutFiles(design, new Map(), randomNester(seed));
      const page = await opened(`seed-${seed}`, bookOf({ ...prepare(design), problems, sheets }), unit);
      expect((await crowdedIn(page)).found).toEqual([]);
      expect(await spilled(page)).toEqual([]);
      const leaves = await page.evaluate<number>(`document.querySelectorAll('.leaf').length`);
      const info = execFileSync('pdfinfo', [await printed(`seed-${seed}`, page)], { encoding: 'utf8' });
      expect(info).toMatch(new RegExp(`Pages:\\s+${leaves}\\n`));
      await page.close();
    },
  );
});
