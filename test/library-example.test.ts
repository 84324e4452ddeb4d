import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { transformSync } from 'esbuild';
import ts from 'typescript';
import { expect, it } from 'vitest';
import { smallDish } from './faults/small-dish.js';

const root = new URL('..', import.meta.url);
const readme = readFileSync(new URL('README.md', root), 'utf8');
const { exports: entries } = JSON.parse(readFileSync(new URL('package.json', root), 'utf8')) as {
  exports: Readonly<Record<string, unknown>>;
};
const examples = [...readme.matchAll(/```ts\n([\s\S]*?)```/g)].map(([, code = '']) => code);
const entriesIn = (code: string) => [...code.matchAll(/from '(dishwright[/\w]*)'/g)].map(([, name = '']) => name);
const givenTo = (code: string) => {
  const extra = code.includes('makerExtra') ? 'extra: [{ file: plate, material: ply, quantity: 2 }]\n' : '';
  return `const text = ${JSON.stringify(smallDish('Small', extra))};\nlet svg;\n`;
};

it('has an example for each entry of the package', () => {
  const shown = new Set(examples.flatMap(entriesIn));
  for (const name of Object.keys(entries))
    if (name !== './package.json') expect(shown).toContain(name.replace(/^\./, 'dishwright'));
});

it('holds examples that are rightly typed, by what the package declares', () => {
  const folder = mkdtempSync(fileURLToPath(new URL('dist/example-', root)));
  try {
    const files = examples.map((code, i) => {
      const file = join(folder, `example-${i}.ts`);
      writeFileSync(file, `${givenTo(code).replace('let svg', 'let svg: string | undefined')}${code};export {};`);
      return file;
    });
    const program = ts.createProgram(files, {
      strict: true,
      noEmit: true,
      module: ts.ModuleKind.NodeNext,
      moduleResolution: ts.ModuleResolutionKind.NodeNext,
      target: ts.ScriptTarget.ES2023,
      skipLibCheck: true,
      types: ['node'],
    });
    const wrong = ts.getPreEmitDiagnostics(program);
    expect(wrong.map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, ' '))).toEqual([]);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});

it.each(examples.map((code) => ({ code, entry: entriesIn(code).at(-1) })))(
  'runs the example of $entry as it stands, and prints what it says',
  ({ code }) => {
    // within the package, so that its own name leads to what it exports
    const folder = mkdtempSync(fileURLToPath(new URL('dist/example-', root)));
    try {
      const file = join(folder, 'example.mjs');
      writeFileSync(file, `${givenTo(code)}${transformSync(code, { loader: 'ts' }).code};if (svg) console.log(svg);`);
      const { status, stdout, stderr } = spawnSync(process.execPath, [file], { encoding: 'utf8' });
      expect(stderr).toBe('');
      expect(status).toBe(0);
      const said = [...code.matchAll(/console\.log\(.*\); \/\/ .*?((?:\d+|true|false)(?: (?:\d+|true|false))?)$/gm)];
      for (const [, values = ''] of said) expect(stdout).toContain(values);
      if (code.includes('svg =')) expect(stdout).toMatch(/^<svg/);
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  },
);
