/** Reads the files with outlines of one's own that a design names. */
import { readFileSync } from 'node:fs';
import { dirname, isAbsolute, resolve, sep } from 'node:path';
import type { Design } from '../lib/index.js';
import { exitCode, reasonOf, Stop } from './exit.js';

/**
 * The texts of the `extra` files, by the name in the design. They are looked for beside the design file and below it.
 * @throws Stop when a file cannot be read
 */
export function readExtras(designFile: string, design: Design): ReadonlyMap<string, string> {
  const home = dirname(resolve(designFile));
  const texts = new Map<string, string>();
  design.extra.forEach(({ file }, index) => {
    const path = resolve(home, file);
    const key = `extra[${index + 1}].file`;
    if (isAbsolute(file) || !path.startsWith(home.endsWith(sep) ? home : home + sep))
      throw new Stop(
        exitCode.wrongInput,
        `${key} is "${file}"; name a file beside the design file or in a folder below it`,
      );
    try {
      texts.set(file, readFileSync(path, 'utf8'));
    } catch (error) {
      throw new Stop(exitCode.wrongInput, `${key}: cannot read ${file}: ${reasonOf(error)}`);
    }
  });
  return texts;
}
