/** Reads the files with outlines of the user's own that a design names. */
import { realpathSync } from 'node:fs';
import { dirname, isAbsolute, resolve, sep } from 'node:path';
import type { Design, Diagnostic, DiagnosticCode } from '../lib/index.js';
import { exitCode, reasonOf, Stop } from './exit.js';
import { NotPlain, readPlainFile } from './plain-file.js';

/** A larger file is no drawing of a few outlines, nor a machine (bytes). */
const largest = 16_000_000;

const isWithin = (folder: string, path: string): boolean =>
  path.startsWith(folder.endsWith(sep) ? folder : folder + sep);

/** Whether a name in a design means a file beside the design file or below it. */
export function isBeside(designFile: string, file: string): boolean {
  const home = dirname(resolve(designFile));
  return !isAbsolute(file) && isWithin(home, resolve(home, file));
}

/** What keeps a file from being read. */
interface Refusal {
  readonly code: DiagnosticCode;
  readonly message: string;
  readonly remedy: string;
}

/**
 * The text of a file that a design names, or why there is none. A link is followed within the folder of the design file
 * only.
 * @param wanted what the file should be
 */
export function readBeside(designFile: string, file: string, wanted: string): string | Refusal {
  const home = dirname(resolve(designFile));
  const remedy = 'name a file in the folder of the design file, or in a folder below it';
  if (!isBeside(designFile, file))
    return { code: 'outside-folder', message: `"${file}" is outside the folder of the design file`, remedy };
  try {
    const path = realpathSync(resolve(home, file));
    if (!isWithin(realpathSync(home), path))
      return {
        code: 'outside-folder',
        message: `${file} is a link to somewhere outside the folder of the design file`,
        remedy: 'copy it into that folder',
      };
    return readPlainFile(path, largest);
  } catch (error) {
    if (error instanceof NotPlain)
      return { code: 'not-a-file', message: `${file} ${error.message}`, remedy: `name ${wanted}` };
    return { code: 'cannot-read', message: `cannot read ${file}: ${reasonOf(error)}`, remedy };
  }
}

/**
 * The texts of the `extra` files, by the name in the design. They are looked for beside the design file and below it.
 * @param locate puts a diagnostic on its line
 * @throws Stop with every file that cannot be read
 */
export function loadExtras(
  designFile: string,
  design: Design,
  locate: (problem: Diagnostic) => Diagnostic,
): ReadonlyMap<string, string> {
  const texts = new Map<string, string>();
  const refused: Diagnostic[] = [];
  design.extra.forEach(({ file }, index) => {
    const read = readBeside(designFile, file, 'a DXF or SVG file');
    if (typeof read === 'string') texts.set(file, read);
    else
      refused.push({
        ...read,
        severity: 'error',
        message: `extra[${index + 1}].file: ${read.message}`,
        place: { path: ['extra', index, 'file'] },
      });
  });
  if (refused.length > 0) throw new Stop(exitCode.wrongInput, refused.map(locate));
  return texts;
}
