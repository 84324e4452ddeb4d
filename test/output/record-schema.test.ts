/** The published form of `job.json`: ajv, an independent validator of JSON Schema, takes what is written and no other. */
import { readFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import { beforeAll, describe, expect, it } from 'vitest';
import { recordJsonSchema, recordPage } from '../../lib/output/record-page.js';
import { recordSchema } from '../../lib/output/record-schema.js';
import { cutOf, fixtureNames, jobOf } from '../helpers/fixtures.js';

const validate = new Ajv({ allErrors: true, allowUnionTypes: true }).compile(recordJsonSchema());

interface Faulty {
  parts: { quantity: unknown; contours: { closed?: unknown; vertices: unknown[][] }[] }[];
  sheets: { placed: { copy: unknown; angle?: number }[] }[];
  process: unknown;
  units: unknown;
  recordHash: unknown;
}

describe.each(fixtureNames)('the record of %s', (name) => {
  let text = '';
  beforeAll(async () => {
    // one with all that a record may hold
    const { files } = await (name === 'press-house' ? jobOf(name) : cutOf(name));
    text = String(files.get('job.json'));
  });

  it('is taken by the schema of the writer and by the published one', () => {
    const issues = recordSchema().safeParse(JSON.parse(text)).error?.issues;
    expect(issues).toBeUndefined();
    validate(JSON.parse(text));
    expect(validate.errors).toBeNull();
  });

  it.each<[string, (record: Faulty) => void]>([
    ['half a copy', ({ sheets }) => (sheets[0]!.placed[0]!.copy = 1.5)],
    ['a key that is none', ({ sheets }) => (sheets[0]!.placed[0]!.angle = 0)],
    ['a vertex without bulge', ({ parts }) => parts[0]!.contours[0]!.vertices[0]!.pop()],
    ['a vertex of four numbers', ({ parts }) => parts[0]!.contours[0]!.vertices[0]!.push(0)],
    ['a ring that says it is closed', ({ parts }) => (parts[0]!.contours[0]!.closed = true)],
    ['a number as text', ({ parts }) => (parts[0]!.quantity = '3')],
    ['a process of another kind', (record) => (record.process = { kind: 'water', compensated: true })],
    ['inches', (record) => (record.units = 'in')],
    ['a hash cut short', (record) => (record.recordHash = 'abc')],
  ])('is refused by both with %s', (_, mutate) => {
    const record = JSON.parse(text) as Faulty;
    mutate(record);
    expect(recordSchema().safeParse(record).success).toBe(false);
    expect(validate(record)).toBe(false);
  });
});

describe('the published schema', () => {
  it('describes every key', () => {
    const bare: string[] = [];
    let count = 0;
    const walk = (node: unknown, path: string): void => {
      if (Array.isArray(node)) node.forEach((one) => walk(one, path));
      if (typeof node !== 'object' || node === null || Array.isArray(node)) return;
      const { properties, items, anyOf, oneOf } = node as Record<string, unknown>;
      for (const [key, child] of Object.entries(properties ?? {})) {
        count += 1;
        if (!(child as { description?: string }).description) bare.push(`${path}.${key}`);
        walk(child, `${path}.${key}`);
      }
      for (const below of [items, anyOf, oneOf]) walk(below, path);
    };
    walk(recordJsonSchema(), '');
    expect(count).toBeGreaterThan(60);
    expect(bare).toEqual([]);
  });

  it('is what the page of keys says', () => {
    expect(readFileSync(new URL('../../lib/output/job-file.md', import.meta.url), 'utf8')).toBe(recordPage());
  });
});
