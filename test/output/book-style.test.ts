import { describe, expect, it } from 'vitest';
import { bookStyle } from '../../lib/public/book.js';

/** Relative luminance and contrast ratio as in WCAG 2.2 (definitions of both terms). */
function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const c = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
function contrast(a: string, b: string): number {
  const [low = 0, high = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (high + 0.05) / (low + 0.05);
}

const themes = [...bookStyle.matchAll(/:root\{color-scheme:(light|dark);([^}]*)\}/g)].map(
  ([, name = '', body = '']) => {
    const colours = new Map(
      [...body.matchAll(/--([a-z]+):(#[0-9a-f]{6})/g)].map(([, key = '', hex = '']) => [key, hex]),
    );
    return { name, colours };
  },
);

/** What text is set in, and what it stands on: pages, sheets, and the wood of parts and boards. */
const pairs: readonly (readonly [string, string])[] = [
  ...['ink', 'soft', 'accent', 'warn'].flatMap((text) => [[text, 'leaf'] as const, [text, 'paper'] as const]),
  ...['stuff', 'stock', 'litfill', 'skin', 'block', 'disc', 'glass'].map((ground) => ['ink', ground] as const),
];

describe('the colours of the book', () => {
  it('come by day and by night', () => {
    expect(themes.map(({ name }) => name)).toEqual(['light', 'dark']);
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 9);
  });

  it.each(themes)('keep text apart from its ground by 4.5:1, $name', ({ colours }) => {
    for (const [text, ground] of pairs) {
      const ratio = contrast(colours.get(text) ?? '', colours.get(ground) ?? '');
      expect(ratio, `${text} on ${ground}`).toBeGreaterThanOrEqual(4.5);
    }
  });
});
