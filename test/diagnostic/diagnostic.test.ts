import { describe, expect, it } from 'vitest';
import { diagnostic, diagnosticText, hasError, hasHidden, pathText, visible } from '../../lib/diagnostic/index.js';

describe('a diagnostic', () => {
  it('has a remedy and a severity where they are given', () => {
    expect(diagnostic('margin', ['stock', 0], 'too wide', undefined)).toEqual({
      code: 'margin',
      severity: 'error',
      message: 'too wide',
      place: { path: ['stock', 0] },
    });
    expect(diagnostic('margin', [], 'too wide', 'use 10 mm', 'warning')).toEqual({
      code: 'margin',
      severity: 'warning',
      message: 'too wide',
      remedy: 'use 10 mm',
      place: { path: [] },
    });
  });

  it('is a sentence with what would do, or without', () => {
    expect(diagnosticText({ message: 'too wide' })).toBe('too wide');
    expect(diagnosticText({ message: 'too wide', remedy: 'use 10 mm' })).toBe('too wide; use 10 mm');
  });

  it('is an error among warnings, and no warning is one', () => {
    expect(hasError([{ severity: 'warning' }, { severity: 'error' }])).toBe(true);
    expect(hasError([{ severity: 'warning' }])).toBe(false);
    expect(hasError([])).toBe(false);
  });

  it('names its key with lists counted from 1', () => {
    expect(pathText(['stock', 1, 'size'])).toBe('stock[2].size');
    expect(pathText(['name'])).toBe('name');
    expect(pathText([])).toBe('');
  });
});

describe('hidden characters', () => {
  it('are found at the start of a text, and shown by their own number', () => {
    expect(hasHidden('\u202eabc')).toBe(true);
    expect(visible('\u202eabc\u0007')).toBe('\\u202eabc\\u0007');
  });
});
