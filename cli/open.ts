/** Opens a file with the program that the person has for it. */
import { spawn } from 'node:child_process';
import { resolve } from 'node:path';
import process from 'node:process';
import { reasonOf } from './exit.js';

/** How the desktop is asked, by platform. No shell reads the name of the file. */
const openers: Readonly<Partial<Record<NodeJS.Platform, string>>> = { darwin: 'open', win32: 'explorer.exe' };
const usual = 'xdg-open';
/** An opener that has not failed by then (ms) has handed the file on, or shows it itself. */
const patience = 3000;

/** @returns why the file could not be opened; null when it is open, as far as that shows */
export function openFile(file: string): Promise<string | null> {
  const program = openers[process.platform] ?? usual;
  return new Promise((done) => {
    const child = spawn(program, [resolve(file)], { stdio: 'ignore', detached: true });
    const timer = setTimeout(() => done(null), patience);
    const end = (reason: string | null): void => {
      clearTimeout(timer);
      done(reason);
    };
    child.once('error', (error: NodeJS.ErrnoException) =>
      end(error.code === 'ENOENT' ? `${program} is not installed` : reasonOf(error)),
    );
    // the desktop of Windows ends with 1 whatever it has done
    child.once('exit', (code) => end(code === 0 || program === openers.win32 ? null : `${program} has failed`));
    child.unref();
  });
}
