/** The whole job on the live page by keyboard, as somebody would do it who sees no pointer. */
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { fixtureText } from '../helpers/fixtures.js';
import { LiveWorkshop, openPage, waitForText } from '../helpers/live-browser.js';
import { patience } from '../helpers/patience.js';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

const live = new LiveWorkshop();

const now = (): string => readFileSync(live.file, 'utf8');
const keyField = (path: string): string => `[id="key-${path}"]`;
/** The book with a first nest is there; a better one is looked for as long as the machine takes. */
const shown = (page: Page): Promise<void> => waitForText(page, '#status', /^up to date/);

/** Goes to what has the selector, by the keyboard alone. */
async function tabTo(page: Page, selector: string): Promise<void> {
  for (let i = 0; i < 400; i += 1) {
    if (await page.evaluate<boolean>(`document.activeElement?.matches(${JSON.stringify(selector)}) ?? false`)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`the Tab key does not lead to ${selector}`);
}

/** Goes to a field and types over what it holds, leaving it with Enter. */
async function type(page: Page, path: string, text: string): Promise<void> {
  await tabTo(page, keyField(path));
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
}

async function press(page: Page, selector: string): Promise<void> {
  await tabTo(page, selector);
  await page.keyboard.press('Enter');
}

const untilFile = async (text: string): Promise<void> => {
  await expect.poll(now, patience).toContain(text);
};

/** Names and contents of a folder, as one word. */
function print(path: string): string {
  const hash = createHash('sha256');
  for (const entry of readdirSync(path, { recursive: true, withFileTypes: true }).sort((a, b) =>
    join(a.parentPath, a.name) < join(b.parentPath, b.name) ? -1 : 1,
  )) {
    hash.update(entry.name);
    if (entry.isFile()) hash.update(readFileSync(join(entry.parentPath, entry.name)));
  }
  return hash.digest('hex');
}

describe('the whole job on the live page', () => {
  it('is done by keyboard: new, edit, fault, mend, undo, compare, cut, cancel, verify', async () => {
    const { page, said } = await openPage(live.browser, await live.start());
    // a file that is not there yet: the questions of `new`, in its order
    for (const [question, answer, refusal] of [
      ['What to heat', 'a pot', 'does not say how much in what size of pot'],
      ['What to heat', ''],
      ['Where', ''],
      ['Size of the dish', '500 mm'],
      ['Board for the ribs', 'plywood 6 mm'],
      ['Size and price of a sheet', '2440 x 1220 for 54'],
      ['How it is cut', 'hand'],
      ['Focal length', ''],
      ['Number of ribs', ''],
      ['Price of a sheet', '12.50'],
      ['Price per metre', ''],
    ] as const) {
      await waitForText(page, '#start-question', question);
      await tabTo(page, '#start-answer');
      await page.keyboard.press('ControlOrMeta+a');
      await page.keyboard.press('Delete');
      await page.keyboard.type(answer);
      await page.keyboard.press('Enter');
      if (refusal !== undefined) await waitForText(page, '#start-said', refusal);
    }
    await waitForText(page, '#start-proposal', '54.00');
    expect(existsSync(live.file)).toBe(false);
    await press(page, '#start-write');
    await shown(page);
    const first = now();

    // a fault is said at its field, and mended there
    await press(page, '#group-1 summary');
    await type(page, 'dish.aperture', '10 mm');
    await waitForText(page, '[id="key-dish.aperture-fault"]', 'it must be at least 50 mm');
    expect(await page.locator(keyField('dish.aperture')).getAttribute('aria-invalid')).toBe('true');
    await type(page, 'dish.aperture', '520');
    await page.locator('[id="key-dish.aperture-fault"]:empty').waitFor({ state: 'attached' });
    await untilFile('aperture: 520');

    // taken back and done again, byte for byte
    await tabTo(page, '#undo');
    await page.keyboard.press('ControlOrMeta+z');
    await page.keyboard.press('ControlOrMeta+z');
    await expect.poll(now, patience).toBe(first);
    await page.keyboard.press('ControlOrMeta+Shift+z');
    await page.keyboard.press('ControlOrMeta+Shift+z');
    await untilFile('aperture: 520');
    await expect.poll(() => page.locator('#slide-aperture').inputValue(), patience).toBe('520');

    // a variant is kept, a slider moved, both compared, the first one taken again
    const kept = now();
    await press(page, '#keep');
    await waitForText(page, '#values thead', 'Variant 1');
    await tabTo(page, '#slide-ribs');
    const ribs = Number(await page.locator('#slide-ribs').inputValue());
    for (let i = 0; i < 2; i += 1) await page.keyboard.press('ArrowRight');
    await untilFile(`ribs: ${ribs + 2}`);
    // power, spot and depth of the two stand side by side
    const differing = page.locator('#values tbody tr td:last-child.changed');
    await expect.poll(() => differing.count(), patience).toBeGreaterThan(2);
    await press(page, '[aria-label="Use Variant 1"]');
    await expect.poll(now, patience).toBe(kept);

    // cut and proven, by the first nest that there is
    await press(page, '#group-3 summary');
    await type(page, 'nest.effort', '0');
    await untilFile('effort: 0');
    await press(page, '#work-cut');
    await waitForText(page, '#work-status', 'cut is running');
    expect(await page.locator('#work-progress').isVisible()).toBe(true);
    await waitForText(page, '#work-lines', /nest|cut|proof|proven/i);
    await waitForText(page, '#work-status', 'cut: done');
    const cut = join(live.folder, 'dish-cut');
    expect(readdirSync(cut)).toContain('book.html');
    await press(page, '#work-verify');
    await waitForText(page, '#work-status', 'verify: done');

    // a cut that is cancelled leaves what was there, and nothing beside it
    const before = [print(cut), readdirSync(live.folder).sort()];
    await tabTo(page, keyField('dish.ribs'));
    await type(page, 'dish.ribs', String(ribs + 4));
    await untilFile(`ribs: ${ribs + 4}`);
    await press(page, '#work-cut');
    await waitForText(page, '#work-status', 'cut is running');
    await waitForText(page, '#work-lines', /./);
    await press(page, '#work-cancel');
    await waitForText(page, '#work-status', 'cancelled');
    expect([print(cut), readdirSync(live.folder).sort()]).toEqual(before);
    expect(said).toEqual([]);
    await page.context().close();
  });

  it('merges what an editor saved while a value was typed, and asks where it is the same key', async () => {
    const good = fixtureText('press-house');
    writeFileSync(live.file, good);
    const { page } = await openPage(live.browser, await live.start());
    await waitForText(page, '#file', 'dish.yaml');
    await press(page, '#group-1 summary');
    const save = async (from: string, to: string, path: string, shown: string): Promise<void> => {
      writeFileSync(live.file, now().replace(from, to));
      await expect.poll(() => page.locator(keyField(path)).inputValue(), patience).toBe(shown);
    };
    const typing = async (path: string, text: string): Promise<void> => {
      await tabTo(page, keyField(path));
      await page.keyboard.press('ControlOrMeta+a');
      await page.keyboard.type(text);
    };
    await typing('dish.ribs', '26');
    await save('aperture: 1500', 'aperture: 1400', 'dish.aperture', '1400');
    await page.keyboard.press('Enter');
    await waitForText(page, '#notice', 'both changes are kept');
    expect(now()).toBe(good.replace('aperture: 1500', 'aperture: 1400').replace('ribs: 24', 'ribs: 26'));

    // the same key: neither is lost unasked
    await typing('dish.ribs', '28');
    await save('ribs: 26', 'ribs: 30\n  baseHeight: 61', 'dish.baseHeight', '61');
    await page.keyboard.press('Enter');
    await waitForText(page, '[id="key-dish.ribs-answer"]', 'Meanwhile this was changed to 30 in the file');
    expect(now()).toContain('ribs: 30');
    // the question stands while the page goes on
    await save('baseHeight: 61', 'baseHeight: 62', 'dish.baseHeight', '62');
    await press(page, '[id="key-dish.ribs-answer"] button:first-of-type');
    expect(await page.locator(keyField('dish.ribs')).inputValue()).toBe('30');
    await typing('dish.ribs', '28');
    await save('ribs: 30', 'ribs: 32\n  arcTolerance: 0.011', 'dish.arcTolerance', '0.011');
    await page.keyboard.press('Enter');
    await press(page, '[id="key-dish.ribs-answer"] button:last-of-type');
    await untilFile('ribs: 28');
    expect(now()).toContain('arcTolerance: 0.011');
    await page.context().close();
  });

  it('has a row of fields for each tool, added and taken out byte for byte', async () => {
    const good = fixtureText('press-house');
    writeFileSync(live.file, good);
    const { page } = await openPage(live.browser, await live.start());
    await press(page, '#group-3 summary');
    for (const place of [0, 1]) {
      await page.getByRole('button', { name: 'Add to tools' }).press('Enter');
      await page.locator(keyField(`router.tools.${place}.number`)).waitFor();
    }
    await type(page, 'router.tools.1.diameter', '4 mm');
    await untilFile('{ number: 2, kind: mill, diameter: 4 mm }');
    for (const place of [1, 0]) {
      await page.getByRole('button', { name: `Remove tools ${place + 1}` }).press('Enter');
      await page.locator(keyField(`router.tools.${place}.number`)).waitFor({ state: 'detached' });
    }
    expect(now()).toBe(good);
    await page.context().close();
  });

  it.each(['light', 'dark'] as const)('has no finding of axe-core with all of it shown, %s', async (colorScheme) => {
    writeFileSync(live.file, fixtureText('press-house'));
    const url = await live.start();
    const context = await live.browser.newContext({
      bypassCSP: true,
      colorScheme,
      viewport: { width: 1280, height: 900 },
    });
    const page = await context.newPage();
    await page.goto(url);
    await shown(page);
    const findings = async () => {
      await page.evaluate(axe);
      return page.evaluate<unknown[]>(
        `axe.run().then(({ violations }) => violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)]))`,
      );
    };
    await page.locator('#every-value').check();
    await page.locator('#keep').click();
    await waitForText(page, '#values thead', 'Variant 1');
    for (const group of await page.locator('#form summary').all()) await group.click();
    expect(await findings()).toEqual([]);
    await page.locator(keyField('dish.aperture')).fill('10 mm');
    await page.keyboard.press('Enter');
    await waitForText(page, '[id="key-dish.aperture-fault"]', 'it must be at least 50 mm');
    expect(await findings()).toEqual([]);
    await context.close();
  });
});
