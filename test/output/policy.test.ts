import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { policyOf } from '../../lib/output/book/policy.js';
import { sha256Base64 } from '../../lib/output/sha256.js';
import { prepare } from '../../lib/index.js';
import { bookOf } from '../../lib/pipeline/book-file.js';
import { fixture } from '../helpers/fixtures.js';

const hashOf = (text: string) => createHash('sha256').update(text).digest('base64');

describe('SHA-256', () => {
  it.each([
    // FIPS 180-2, appendix B.1 and B.2
    ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    [
      'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    ],
  ])('of %s is as published', (text, hex) => {
    expect(Buffer.from(sha256Base64(text), 'base64').toString('hex')).toBe(hex);
  });

  it('is that of another implementation at every length about a block', () => {
    for (let length = 0; length < 200; length += 1) {
      const text = 'é'.repeat(length % 7) + 'x'.repeat(length);
      expect(sha256Base64(text)).toBe(hashOf(text));
    }
  });
});

describe('the policy of the book', () => {
  const book = bookOf({ ...prepare(fixture('table-top')), sheets: null });
  const policy = /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(book)?.[1] ?? '';

  it('allows nothing inline but what is there', () => {
    expect(policy).not.toContain('unsafe-inline');
    const scripts = [...book.matchAll(/<script>([\s\S]*?)<\/script>/g)].map(([, text = '']) => text);
    expect(scripts).toHaveLength(1);
    const styles = [...book.matchAll(/<style>([\s\S]*?)<\/style>/g)].map(([, text = '']) => text);
    for (const text of [...scripts, ...styles]) expect(policy).toContain(`'sha256-${hashOf(text)}'`);
    expect(policy.match(/script-src[^;]*/)?.[0].split(' ')).toHaveLength(2);
  });

  it('takes in styles of drawings, and attributes by their unescaped text', () => {
    const made = policyOf('<style>a{}</style><svg style="font: &quot;x&quot;"><style>b{}</style></svg>', 'run()');
    for (const text of ['a{}', 'b{}', 'font: "x"', 'run()']) expect(made).toContain(hashOf(text));
    expect(made).toContain("style-src 'unsafe-hashes'");
  });
});
