/** `job.json` for other programs: its JSON Schema, and a page that lists every key. */
import * as z from 'zod';
import { recordSchema } from './record-schema.js';

type Node = Readonly<Record<string, unknown>>;

/** The schema as a plain value, ready for JSON (draft 7). */
export function recordJsonSchema(): Record<string, unknown> {
  const schema = z.toJSONSchema(recordSchema(), {
    target: 'draft-7',
    // of our types only: a file is read or not
    override: ({ jsonSchema }) => Reflect.deleteProperty(jsonSchema, 'readOnly'),
  });
  return { title: 'Record of a job of dishwright (job.json)', ...schema };
}

const asNode = (value: unknown): Node => (typeof value === 'object' && value !== null ? (value as Node) : {});
const asNodes = (value: unknown): readonly Node[] => (Array.isArray(value) ? value.map(asNode) : []);

/** What a value may be, in a word or two. */
function kindOf(node: Node): string {
  if (node['const'] !== undefined) return `\`${JSON.stringify(node['const'])}\``;
  if (Array.isArray(node['enum'])) return node['enum'].map((value) => `\`${JSON.stringify(value)}\``).join(', ');
  const kinds = asNodes(node['anyOf'] ?? node['oneOf']);
  if (kinds.length > 0) return [...new Set(kinds.map(kindOf))].join(' or ');
  if (node['type'] === 'array') return 'list';
  const { type } = node;
  return typeof type === 'string' ? type : Array.isArray(type) ? type.join(' or ') : 'anything';
}

/** A row for each key below a node; a list's items are `[]`, fields of a tuple `[0]`. */
function rowsBelow(node: Node, path: string): string[] {
  const required = Array.isArray(node['required']) ? node['required'] : [];
  const rows = Object.entries(asNode(node['properties'])).flatMap(([key, value]) => {
    const child = asNode(value);
    const own = path === '' ? key : `${path}.${key}`;
    const about = typeof child['description'] === 'string' ? child['description'] : '';
    const may = required.includes(key) ? '' : ' (optional)';
    return [`| \`${own}\` | ${kindOf(child)}${may} | ${about} |`, ...rowsBelow(child, own)];
  });
  const { items } = node;
  const inTuple = asNodes(items).map((item, i) => {
    const about = typeof item['description'] === 'string' ? item['description'] : '';
    return `| \`${path}[${i}]\` | ${kindOf(item)} | ${about} |`;
  });
  const inList = Array.isArray(items) || items === undefined ? [] : rowsBelow(asNode(items), `${path}[]`);
  const choices = asNodes(node['anyOf'] ?? node['oneOf']).flatMap((choice) => rowsBelow(choice, path));
  return [...new Set([...rows, ...inTuple, ...inList, ...choices])];
}

/** The page of all keys of `job.json`, Markdown. */
export function recordPage(): string {
  return [
    '# The record of a job',
    '',
    '`cut` writes `job.json` last: what was designed, what was made from it, and every other file with its hash. `verify` checks a folder against it. Lengths are mm, rounded to 1e-6. `dishwright explain --record --schema` prints its JSON Schema, `dishwright explain --record --page` this page.',
    '',
    '| key | value | meaning |',
    '| --- | --- | --- |',
    ...rowsBelow(recordJsonSchema(), ''),
    '',
  ].join('\n');
}
