/** The live page in Debian's Chromium, from the command as it is built. */
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import process from 'node:process';
import type { Browser, FrameLocator, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach } from 'vitest';
import { launch } from './browser.js';
import { commandPath } from './command.js';

interface Watching {
  readonly child: ChildProcess;
  readonly url: string;
}

/** Starts the command and gives the address that it prints. */
function watchFile(file: string, ...flags: string[]): Promise<Watching> {
  const child = spawn(process.execPath, [commandPath, 'watch', file, ...flags]);
  return new Promise((resolve, reject) => {
    child.stdout.setEncoding('utf8').once('data', (text: string) => resolve({ child, url: text.trim() }));
    child.once('exit', (code) => reject(new Error(`ended with ${code}`)));
  });
}

/** A browser for a file of tests, and for each of them a folder of its own with a design to watch. */
export class LiveWorkshop {
  #browser: Browser | undefined;
  #folder = '';
  #running: ChildProcess | undefined;

  constructor() {
    beforeAll(async () => {
      this.#browser = await launch();
    });
    afterAll(() => this.browser.close());
    beforeEach(() => {
      this.#folder = mkdtempSync(join(tmpdir(), 'dishwright-live-'));
    });
    afterEach(() => {
      this.#running?.kill();
      rmSync(this.#folder, { recursive: true, force: true });
    });
  }

  get browser(): Browser {
    if (!this.#browser) throw new Error('no browser was started');
    return this.#browser;
  }

  get folder(): string {
    return this.#folder;
  }

  get file(): string {
    return join(this.#folder, 'dish.yaml');
  }

  /** The command that runs. */
  get running(): ChildProcess | undefined {
    return this.#running;
  }

  /** Starts the command and gives the address that it prints. */
  async start(...flags: string[]): Promise<string> {
    const { child, url } = await watchFile(this.file, ...flags);
    this.#running = child;
    return url;
  }
}

/** Opens the page; `said` takes whatever it complains of, and what it asks for elsewhere. */
export async function openPage(browser: Browser, url: string): Promise<{ page: Page; said: string[] }> {
  const page = await (await browser.newContext({ viewport: { width: 1280, height: 900 } })).newPage();
  const said: string[] = [];
  page.on('console', (message) => said.push(message.text()));
  page.on('pageerror', (error) => said.push(error.message));
  page.on('request', (request) => {
    if (!request.url().startsWith(url)) said.push(`asked for ${request.url()}`);
  });
  await page.goto(url);
  return { page, said };
}

export const bookIn = (page: Page): FrameLocator => page.frameLocator('iframe:not(.coming)');

/** Waits until a text stands on the page; how long a command takes depends on what else the machine is doing. */
export const waitForText = (page: Page, selector: string, text: string | RegExp): Promise<void> =>
  page.locator(selector).filter({ hasText: text }).first().waitFor({ state: 'attached', timeout: 240_000 });
