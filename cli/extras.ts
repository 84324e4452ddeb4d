/** Reads the files with outlines of one's own that a design names. */
import { readFileSync, statSync } from 'node:fs';
import { dirname, isAbsolute, resolve, sep } from 'node:path';
import type { Design } from '../lib/index.js';
import { exitCode, reasonOf, Stop } from './exit.js';

/** A larger file is no drawing of a few outlines (bytes). */
const largest = 16_000_000;

/** The text of a drawing. @throws Stop for what is no file (a pipe would keep us waiting) or too large */
function textOf(path: string, key: string, file: string): string {
  const stat = statSync(path);
  if (!stat.isFile()) throw new Stop(exitCode.wrongInput, `${key}: ${file} is not a file; name a DXF or SVG file`);
  if (stat.size > largest)
    throw new Stop(exitCode.wrongInput, `${key}: ${file} is larger than ${largest / 1e6} MB; simplify the drawing`);
  return readFileSync(path, 'utf8');
}

/** Whether a name in a design means a file beside the design file or below it. */
export function isBeside(designFile: string, file: string): boolean {
  const home = dirname(resolve(designFile));
  return !isAbsolute(file) && resolve(home, file).startsWith(home.endsWith(sep) ? home : home + sep);
}

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
    if (!isBeside(designFile, file))
      throw new Stop(
        exitCode.wrongInput,
        `${key} is "${file}"; name a file beside the design file or in a folder below it`,
      );
    try {
      texts.set(file, textOf(path, key, file));
    } catch (error) {
      if (error instanceof Stop) throw error;
      throw new Stop(
        exitCode.wrongInput,
        `${key}: cannot read ${file}: ${reasonOf(error)}; put it beside the design file, or in a folder below it`,
      );
    }
  });
  return texts;
}
