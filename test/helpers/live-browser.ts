/** The live page in Debian's Chromium, from the command as it is built. */
import { type ChildProcess, spawn } from 'node:child_process';
import process from 'node:process';
import type { Browser, FrameLocator, Page } from 'playwright-core';
import { commandPath } from './command.js';

export interface Watching {
  readonly child: ChildProcess;
  readonly url: string;
}

/** Starts the command and gives the address that it prints. */
export function watchFile(file: string, ...flags: string[]): Promise<Watching> {
  const child = spawn(process.execPath, [commandPath, 'watch', file, ...flags]);
  return new Promise((resolve, reject) => {
    child.stdout.setEncoding('utf8').once('data', (text: string) => resolve({ child, url: text.trim() }));
    child.once('exit', (code) => reject(new Error(`ended with ${code}`)));
  });
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
