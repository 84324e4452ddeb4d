/** Writing a new design file with the schema that editors read and an empty log beside it: nothing there is overwritten unasked. */
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { designJsonSchema, logTemplate, schemaFileName, schemaText } from '../../lib/index.js';
import { exitCode, reasonOf, stop } from '../exit.js';
import { checkPlace, put } from '../plain-output.js';

/** Whether the schema file at `path` is one of ours, of any version. */
function isOurSchema(path: string): boolean {
  try {
    const found = JSON.parse(readFileSync(path, 'utf8')) as { readonly title?: unknown };
    return found.title === designJsonSchema()['title'];
  } catch {
    return false;
  }
}

/**
 * @param force replaces a design file that is there
 * @returns what else is to be reported
 * @throws Stop when the file is there, or cannot be written
 */
export function writeDesign(file: string, text: string, force: boolean): string[] {
  const there = checkPlace(file, force);
  const schema = join(dirname(file), schemaFileName);
  const log = `${file.replace(/\.ya?ml$/i, '')}-log.csv`;
  const foreign = existsSync(schema) && !isOurSchema(schema);
  try {
    put(file, text);
    if (!foreign) put(schema, schemaText());
    if (!existsSync(log)) put(log, logTemplate);
  } catch (error) {
    if (!there) rmSync(file, { force: true });
    throw stop(exitCode.notWritten, 'cannot-write', `cannot write ${file}: ${reasonOf(error)}`, 'choose another path');
  }
  return foreign ? [`${schema} is not ours and was left alone; editors will not know the keys of ${file}`] : [];
}
