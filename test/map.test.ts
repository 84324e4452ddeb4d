import { existsSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

const root = new URL('..', import.meta.url);
const guide = readFileSync(new URL('DEVELOPERS.md', root), 'utf8');
const paths = [...guide.matchAll(/`((?:lib|cli|test|fixtures|\.config|\.ci)\/[\w./-]+)`/g)].map(
  ([, path = '']) => path,
);

it.each([...new Set(paths)])('finds %s, which the contributor guide names', (path) => {
  expect(existsSync(new URL(path, root))).toBe(true);
});

it('answers where things are with a path in every line', () => {
  const map = /## Where things are\n([\s\S]*?)\n## /.exec(guide)?.[1] ?? '';
  const lines = map.split('\n').filter((line) => line.startsWith('| ') && line.includes('?'));
  expect(lines.length).toBeGreaterThan(9);
  for (const line of lines) expect(line).toMatch(/`[\w.]*[/.][\w./-]+`/);
});
