import { Ajv } from 'ajv';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { designJsonSchema, readDesign, schemaText } from '../../lib/design/index.js';
import { fixtureNames, fixtureText } from '../helpers/fixtures.js';

// an independent validator: ajv, against JSON Schema draft 7
const validate = new Ajv({ allErrors: true, allowUnionTypes: true }).compile(designJsonSchema());
const tableTop = () => parse(fixtureText('table-top')) as Record<string, Record<string, unknown>>;

describe('the JSON Schema of the design file', () => {
  it.each(fixtureNames)('takes %s', (name) => {
    validate(parse(fixtureText(name)));
    expect(validate.errors).toBeNull();
  });

  it.each([
    ['an unknown key', 'dish', 'apperture', 600],
    ['a word that is none of the choices', 'board', 'shape', 'oval'],
    ['a number out of range', 'dish', 'ribs', 2],
    ['half a rib', 'dish', 'ribs', 12.5],
    ['a negative length', 'dish', 'aperture', -4],
    ['a list for a length', 'dish', 'aperture', [4]],
  ])('refuses %s, as the reader does', (_, section, key, value) => {
    const file = tableTop();
    file[section] = { ...file[section], [key]: value };
    expect(validate(file)).toBe(false);
    expect(readDesign(JSON.stringify(file)).kind).toBe('refused');
  });

  it('refuses a file without its required sections', () => {
    const { rib, ...rest } = tableTop();
    expect(rib).toBeDefined();
    expect(validate(rest)).toBe(false);
  });

  it('describes every key, and holds nothing but JSON Schema', () => {
    const bare: string[] = [];
    const walk = (node: unknown, path: string): void => {
      if (typeof node !== 'object' || node === null) return;
      const { properties, items, additionalProperties } = node as Record<string, unknown>;
      for (const [key, child] of Object.entries(properties ?? {})) {
        if (typeof (child as { description?: unknown }).description !== 'string') bare.push(`${path}.${key}`);
        walk(child, `${path}.${key}`);
      }
      walk(items, `${path}[]`);
      walk(additionalProperties, `${path}.*`);
    };
    walk(designJsonSchema(), '');
    expect(bare).toEqual([]);
    expect(schemaText()).not.toMatch(/"(?:about|quantity|shown)": "/);
  });
});
