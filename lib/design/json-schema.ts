/** The design file's JSON Schema, by which editors complete, explain and check keys as they are typed. */
import * as z from 'zod';
import type { KeyMeta } from './keys.js';
import { designSchema } from './schema.js';

/** Name under which `new` lays the schema beside a design file. */
export const schemaFileName = 'dishwright.schema.json';

/** The line by which YAML editors find the schema. */
export const schemaLine = `# yaml-language-server: $schema=./${schemaFileName}`;

const sentence = (text: string): string => (/[.!?]$/.test(text) ? text : `${text}.`);

function description(meta: KeyMeta): string {
  const { about, why, unit, shown, auto } = meta;
  const fallback = auto ?? shown;
  const parts = [
    about,
    ...(unit === undefined ? [] : [`In ${unit}.`]),
    ...(fallback === undefined || fallback === '[]' ? [] : [sentence(`Default: ${fallback}`)]),
    ...(why === undefined ? [] : [sentence(`Reason: ${why}`)]),
  ];
  return parts.join(' ');
}

const metaKeys = [
  'quantity',
  'about',
  'why',
  'unit',
  'auto',
  'shown',
  'min',
  'above',
  'max',
  'finest',
  'usual',
] as const;

/** Turns what a key states of itself into the words of JSON Schema (draft 7, which editors understand best). */
function translate(node: Record<string, unknown>): void {
  const meta = node as Partial<KeyMeta>;
  if (meta.about !== undefined) node['description'] = description(meta as KeyMeta);
  if (meta.quantity === 'number' || meta.quantity === 'integer') {
    if (meta.quantity === 'integer') node['type'] = 'integer';
    if (meta.min !== undefined) node['minimum'] = meta.min;
    if (meta.above !== undefined) node['exclusiveMinimum'] = meta.above;
    if (meta.max !== undefined) node['maximum'] = meta.max;
  } else if (meta.quantity === 'length' && (meta.min ?? 0) >= 0) {
    // bare numbers are in the file's own unit, so only the sign can be judged here
    node[meta.above === undefined ? 'minimum' : 'exclusiveMinimum'] = 0;
  }
  // a length's default is held in mm; editors get it with its unit
  if ((meta.quantity === 'length' || meta.quantity === 'angle') && meta.shown !== undefined)
    node['default'] = meta.shown;
  for (const key of metaKeys) Reflect.deleteProperty(node, key);
}

/** The schema as a plain value, ready for JSON. */
export function designJsonSchema(): Record<string, unknown> {
  const schema = z.toJSONSchema(designSchema('mm'), {
    io: 'input',
    target: 'draft-7',
    unrepresentable: 'any',
    override: ({ jsonSchema }) => translate(jsonSchema as Record<string, unknown>),
  });
  const { machine, ...properties } = schema.properties ?? {};
  // a machine may also be the name of its file
  const about = typeof machine === 'object' ? { description: machine.description } : {};
  const described = { ...about, anyOf: [{ type: 'string' }, machine] };
  return { title: 'Design file of dishwright', ...schema, properties: { ...properties, machine: described } };
}

/** The schema file's text. */
export function schemaText(): string {
  return `${JSON.stringify(designJsonSchema(), null, 2)}\n`;
}
