/** The build book in Debian's Chromium, and before the judges of markup and accessibility from the registry. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { HtmlValidate } from 'html-validate';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildJob, type LengthUnit, mmPer, parseLength } from '../../lib/index.js';
import { launch } from '../helpers/browser.js';
import { fixture, fixtureNames } from '../helpers/fixtures.js';
import { shelfNester } from '../helpers/shelf-nester.js';

interface JobRecord {
  readonly design: { readonly units: LengthUnit };
  readonly parts: readonly {
    readonly id: string;
    readonly quantity: number;
    readonly contours: readonly { readonly vertices: readonly (readonly [number, number, number])[] }[];
    readonly drills: readonly { readonly x: number; readonly y: number; readonly diameter: number }[];
  }[];
  readonly sheets: readonly {
    readonly file: string;
    readonly width: number;
    readonly height: number;
    readonly placed: readonly { readonly part: string }[];
  }[];
}

/** The rib's outline as recorded. */
const ribOutline = (record: JobRecord | undefined) =>
  record?.parts.find(({ id }) => id === 'rib')?.contours[0]?.vertices ?? [];

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const folder = mkdtempSync(join(tmpdir(), 'dishwright-book-'));
const urls = new Map<string, string>();
const records = new Map<string, JobRecord>();
let browser: Browser;

beforeAll(async () => {
  for (const name of fixtureNames) {
    const job = await buildJob(fixture(name), new Map(), shelfNester);
    const file = join(folder, `${name}.html`);
    writeFileSync(file, String(job.files.get('book.html')));
    urls.set(name, pathToFileURL(file).href);
    records.set(name, JSON.parse(String(job.files.get('job.json'))) as JobRecord);
  }
  browser = await launch();
});
afterAll(async () => {
  await browser.close();
  rmSync(folder, { recursive: true });
});

async function open(name: string, options: BrowserContextOptions = {}): Promise<{ page: Page; said: string[] }> {
  const context = await browser.newContext(options);
  const page = await context.newPage();
  const said: string[] = [];
  page.on('console', (message) => said.push(`${message.type()}: ${message.text()}`));
  page.on('pageerror', (error) => said.push(error.message));
  page.on('request', (request) => {
    if (request.url() !== urls.get(name)) said.push(`asked for ${request.url()}`);
  });
  await page.goto(urls.get(name) ?? '');
  return { page, said };
}

interface Found {
  readonly text: string;
  readonly attributes: readonly string[];
}

/** Text and attributes of every element that a selector finds. */
function elements(page: Page, selector: string, attributes: readonly string[]): Promise<Found[]> {
  return page.evaluate<Found[]>(`[...document.querySelectorAll(${JSON.stringify(selector)})].map((each) => ({
    text: each.textContent,
    attributes: ${JSON.stringify(attributes)}.map((name) => each.getAttribute(name)),
  }))`);
}

const wide: BrowserContextOptions = { viewport: { width: 1280, height: 900 } };
const looks: readonly (readonly [string, BrowserContextOptions])[] = [
  ['wide', wide],
  ['at 390 px', { viewport: { width: 390, height: 844 }, hasTouch: true }],
  ['dark', { ...wide, colorScheme: 'dark' }],
];

describe.each(fixtureNames)('the book of %s', (name) => {
  it('opens without a word on the console and without a request', async () => {
    const before = performance.now();
    const { page, said } = await open(name, wide);
    // for the reader of the run: how long it takes depends on what else the machine is doing
    console.log(`${name} opened in ${((performance.now() - before) / 1000).toFixed(2)} s`);
    await page.waitForSelector('#stage canvas');
    await page.waitForTimeout(200);
    expect(said).toEqual([]);
    await page.context().close();
  });

  it.each(looks)('has no finding of axe-core, %s', async (_, options) => {
    const { page } = await open(name, options);
    const overflow = await page.evaluate<number>('document.documentElement.scrollWidth - innerWidth');
    expect(overflow).toBeLessThanOrEqual(0);
    const cutOff = await page.evaluate<string[]>(
      `[...document.querySelectorAll('.scroll')].filter((each) => each.scrollWidth > each.clientWidth + 1).map((each) => each.getAttribute('aria-label'))`,
    );
    expect(cutOff).toEqual([]);
    await page.waitForSelector('#stage canvas');
    await page.evaluate(axe);
    const findings = await page.evaluate<unknown[]>('axe.run().then(({ violations }) => violations)');
    expect(findings).toEqual([]);
    await page.context().close();
  });

  it('is valid HTML', async () => {
    const judge = new HtmlValidate({
      extends: ['html-validate:standard'],
      rules: {
        // of style, not of validity
        'no-inline-style': 'off',
        'long-title': 'off',
        'no-trailing-whitespace': 'off',
        // svg's own elements, and a marker element of another namespace, are written in the XML way
        'void-style': 'off',
        'no-self-closing': 'off',
      },
    });
    const report = await judge.validateFile(new URL(urls.get(name) ?? '').pathname);
    const found = report.results.flatMap(({ messages }) =>
      messages.map(({ ruleId, message, line, column }) => `${line}:${column} ${ruleId}: ${message}`),
    );
    expect(found).toEqual([]);
    // and the judge is awake
    expect((await judge.validateString('<!DOCTYPE html><p><div></p>')).valid).toBe(false);
  });

  it('shows a shop drawing of every part', async () => {
    const record = records.get(name);
    const { page } = await open(name, wide);
    const drawn = await page.evaluate<string[]>(
      `[...document.querySelectorAll('[data-drawing]')].map((each) => each.dataset.drawing)`,
    );
    // templates and gauges are left to drawings.pdf
    const aids = record?.sheets.flatMap(({ file, placed }) =>
      file.startsWith('templates/') ? placed.map(({ part }) => part) : [],
    );
    const own = record?.parts.map(({ id }) => id).filter((id) => !aids?.includes(id)) ?? [];
    expect(new Set(drawn)).toEqual(new Set(['dish', ...own]));
    await page.context().close();
  });

  it('shows ribs, sheets and numbers as job.json has them', async () => {
    const record = records.get(name);
    const { page } = await open(name, wide);
    const unit = mmPer[record?.design.units ?? 'mm'];
    const half = unit === 1 ? 0.05 : 0.0005 * unit;
    const shown = async (selector: string) =>
      (await elements(page, selector, [])).map(({ text }) => Number.parseFloat(text));
    const rib = ribOutline(record);
    const printed = (await elements(page, '[data-drawing="rib"] text', [])).map(({ text }) => text);
    // the size of the blank is the last of the running dimensions
    for (const axis of [0, 1] as const) {
      const ends = rib.map((vertex) => vertex[axis]);
      const size = Math.max(...ends) - Math.min(...ends);
      const inches = /^(?:(\d+)-)?(\d+)\/(\d+)$/;
      const lengths = printed.map((text) => {
        const [, whole = 0, over, under] = inches.exec(text) ?? [];
        return over === undefined ? Number(text) * unit : (Number(whole) + Number(over) / Number(under)) * unit;
      });
      const rounding = unit === 1 ? half : unit / 128;
      expect(
        lengths.some((length) => Math.abs(length - size) <= rounding + 1e-6),
        `${size} on the drawing`,
      ).toBe(true);
    }
    for (const sheet of record?.sheets.filter(({ file }) => file.startsWith('sheets/')) ?? []) {
      const id = sheet.file.replace('sheets/', '');
      for (const dim of ['width', 'height'] as const) {
        const [printed] = await elements(page, `[data-sheet="${id}"][data-dim="${dim}"]`, []);
        const off = Math.abs(parseLength(printed?.text ?? '', 'mm') - sheet[dim]);
        // a tenth of a millimetre, or a sixty-fourth of an inch
        expect(off, `${id} ${dim}`).toBeLessThanOrEqual((unit === 1 ? half : unit / 128) + 1e-6);
      }
    }
    for (const button of await page.$$('[data-light]')) {
      const id = (await button.getAttribute('data-light')) ?? '';
      const [count] = await shown(`[data-quantity="${id}"]`);
      expect(count).toBe(record?.parts.find((part) => part.id === id)?.quantity);
    }
    await page.context().close();
  });
});

describe('the book at work', () => {
  it('turns, comes apart and lights parts up from the keyboard', async () => {
    const { page, said } = await open('press-house', { ...wide, reducedMotion: 'reduce' });
    const picture = async () => {
      await page.waitForTimeout(150);
      return (await page.locator('#stage').screenshot()).toString('base64');
    };
    await page.waitForSelector('#stage canvas');
    const first = await picture();
    await page.focus('#stage');
    await page.keyboard.press('ArrowRight');
    const turned = await picture();
    expect(turned).not.toBe(first);
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('0');
    expect(await picture()).toBe(first);
    await page.focus('#spread');
    await page.keyboard.press('End');
    const apart = await picture();
    expect(apart).not.toBe(first);
    await page.focus('button[data-light="rib"]');
    await page.keyboard.press('Enter');
    expect(await page.getAttribute('button[data-light="rib"]', 'aria-pressed')).toBe('true');
    expect(await page.locator('[data-chapter="sheets"] .lit').count()).toBeGreaterThanOrEqual(24);
    expect(await picture()).not.toBe(apart);
    await page.keyboard.press('Enter');
    expect(await page.locator('.lit').count()).toBe(0);
    expect(said).toEqual([]);
    await page.context().close();
  });

  it('zooms and moves a sheet by keys and buttons, and comes back to the whole', async () => {
    const { page } = await open('press-house', wide);
    const pane = page.locator('[data-chapter="sheets"] .pane').first();
    const box = async () => (await pane.locator('svg').getAttribute('viewBox'))?.split(' ').map(Number) ?? [];
    const whole = await box();
    await pane.focus();
    await page.keyboard.press('+');
    const near = await box();
    expect(near[2]).toBeCloseTo(0.7 * (whole[2] ?? 0), 2);
    await page.keyboard.press('ArrowRight');
    expect((await box())[0]).toBeGreaterThan(near[0] ?? Infinity);
    await page.locator('[data-chapter="sheets"] .tools button', { hasText: 'Whole' }).first().click();
    (await box()).forEach((value, i) => expect(value).toBeCloseTo(whole[i] ?? NaN, 2));
    await page.context().close();
  });

  it('opens every picture large on a phone, by tap and by key, with letters that can be read, and puts it back', async () => {
    const { page, said } = await open('press-house', { viewport: { width: 390, height: 844 }, hasTouch: true });
    const pictures = page.locator('main figure:not(#drawn):has(svg)');
    const names = await page.evaluate<string[]>(
      `[...document.querySelectorAll('main figure:not(#drawn):has(svg)')].map((each) => {
        const svg = each.querySelector('svg');
        return svg.getAttribute('aria-label') ?? svg.querySelector('title').textContent;
      })`,
    );
    expect(names.length).toBeGreaterThan(30);
    for (const [i, name] of names.entries()) {
      const each = pictures.nth(i);
      await each.locator('.tools button', { hasText: 'Large' }).focus();
      await page.keyboard.press('Enter');
      const dialog = page.locator('dialog[open]');
      expect(await dialog.getAttribute('aria-label')).toBe(name);
      const letters = await page.evaluate<
        number[]
      >(`[...document.querySelectorAll('dialog[open] svg text')].map((text) => {
        const { a, b } = text.getScreenCTM();
        return Number.parseFloat(getComputedStyle(text).fontSize) * Math.hypot(a, b);
      })`);
      // 11 px is what phones themselves take for the smallest print (common practice, no source)
      expect(Math.min(Infinity, ...letters), name).toBeGreaterThanOrEqual(11);
      await page.keyboard.press('Escape');
      // the picture is back in its place once the dialog is gone
      await page.locator('dialog').waitFor({ state: 'detached' });
      expect(await each.locator('svg').count(), name).toBeGreaterThan(0);
    }
    // a tap shows the place that was tapped, and the picture can be moved to its end
    await page.locator('[data-drawing="rib"] svg').tap();
    await page.locator('dialog[open]').waitFor();
    const reach = await page.evaluate<{ left: number; wide: number; shown: number }>(`(() => {
      const pane = document.querySelector('dialog[open] .pane');
      return { left: pane.scrollLeft, wide: pane.scrollWidth, shown: pane.clientWidth };
    })()`);
    expect(Math.abs(reach.left + reach.shown / 2 - reach.wide / 2)).toBeLessThan(20);
    expect(reach.wide).toBeGreaterThan(2 * reach.shown);
    await page.evaluate(axe);
    expect(await page.evaluate<unknown[]>('axe.run().then(({ violations }) => violations)')).toEqual([]);
    expect(said).toEqual([]);
    await page.context().close();
  });

  it('keeps its drawn pictures where scripts are off, and where nothing can draw in space', async () => {
    const { page } = await open('press-house', { ...wide, javaScriptEnabled: false });
    expect(await page.locator('#drawn svg').isVisible()).toBe(true);
    expect(await page.locator('#stage').isVisible()).toBe(false);
    expect(await page.locator('.controls').first().isVisible()).toBe(false);
    await page.context().close();
    const context = await browser.newContext(wide);
    await context.addInitScript({ content: 'HTMLCanvasElement.prototype.getContext = () => null' });
    const plain = await context.newPage();
    const errors: string[] = [];
    plain.on('pageerror', (error) => errors.push(error.message));
    await plain.goto(urls.get('press-house') ?? '');
    expect(await plain.locator('#drawn svg').isVisible()).toBe(true);
    expect(errors).toEqual([]);
    await context.close();
  });

  it.each(['A4', 'Letter'])(
    'prints on %s: cautions on a page of their own, nothing of the page’s controls',
    async (format) => {
      const { page } = await open('press-house', wide);
      const file = join(folder, `${format}.pdf`);
      writeFileSync(file, await page.pdf({ format, printBackground: true }));
      // poppler, a reader of its own
      const text = execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' });
      const pages = text.split('\f').map((page) => page.replace(/\s+/g, ' '));
      const caution = pages.filter((each) => each.includes('Never leave it in the sun unattended'));
      expect(caution).toHaveLength(1);
      expect(caution[0]).toMatch(/^\s*Cautions/);
      expect(caution[0]).not.toContain('Birch plywood');
      expect(text).not.toContain('Turn left');
      expect(text).not.toContain('Zoom in');
      const info = execFileSync('pdfinfo', [file], { encoding: 'utf8' });
      expect(info).toMatch(format === 'A4' ? /Page size:\s+59[45]\.?\d* x 84[12]/ : /Page size:\s+612 x 792/);
      await page.context().close();
    },
  );
});
