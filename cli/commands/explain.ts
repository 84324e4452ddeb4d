import type { CommandModule } from 'yargs';
import {
  explainKey,
  keyEntries,
  type KeyEntry,
  recordJsonSchema,
  recordPage,
  referencePage,
  schemaText,
} from '../../lib/index.js';
import { columns, print, printJson } from '../console.js';
import { exitCode, stop } from '../exit.js';
import { keyLines } from '../explain.js';
import { jsonFlag } from '../flags.js';
import { table } from '../table.js';

interface ExplainArguments {
  readonly key: string | undefined;
  readonly schema: boolean;
  readonly page: boolean;
  readonly record: boolean;
  readonly json: boolean;
}

function printList(entries: readonly KeyEntry[]): void {
  const rows = entries.map((entry) => [entry.path, entry.about]);
  for (const line of table([{ head: 'key' }, { head: 'meaning' }], rows, columns())) print(line);
}

function printKeys(asked: string, json: boolean): void {
  const answer = explainKey(asked);
  if (answer.kind === 'unknown') {
    const advice =
      answer.near === null ? '`dishwright explain` without a key lists them all' : `did you mean ${answer.near}?`;
    throw stop(exitCode.wrongInput, 'unknown-key', `there is no key ${asked} in a design file`, advice);
  }
  if (json) {
    printJson(answer.entries);
    return;
  }
  answer.entries.forEach((entry, i) => {
    if (i > 0) print('');
    for (const line of keyLines(entry, Math.min(100, columns()))) print(line);
  });
}

export const explainCommand: CommandModule<object, ExplainArguments> = {
  command: 'explain [key]',
  describe: 'explain what a key of the design file means',
  builder: (yargs) =>
    yargs
      .positional('key', {
        type: 'string',
        describe: 'the key, such as dish.aperture or kerf; without one, a list of all keys',
      })
      .option('schema', { type: 'boolean', default: false, describe: 'print the JSON Schema of the design file' })
      .option('page', { type: 'boolean', default: false, describe: 'print the reference page of all keys' })
      .option('record', {
        type: 'boolean',
        default: false,
        describe: 'with --schema or --page: of job.json instead of the design file',
      })
      .options(jsonFlag)
      .example('$0 explain dish.figure', 'meaning, default and its reason')
      .example('$0 explain cleat', 'a section with all its keys')
      .example('$0 explain --schema > dishwright.schema.json', 'the schema that editors read'),
  handler: ({ key, schema, page, record, json }) => {
    if (record && !schema) print(recordPage().trimEnd());
    else if (record) printJson(recordJsonSchema());
    else if (schema) print(schemaText().trimEnd());
    else if (page) print(referencePage().trimEnd());
    else if (key !== undefined) printKeys(key, json);
    else if (json) printJson(keyEntries());
    else printList(keyEntries());
  },
};
