import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { isBuiltin } from 'node:module';
import ts from 'typescript';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const root = new URL('..', import.meta.url);
const text = (path: string) => readFileSync(new URL(path, root), 'utf8');
const { files } = JSON.parse(text('package.json')) as { files: string[] };

describe('the notices of bundled packages', () => {
  const notices = text('dist/THIRD-PARTY-NOTICES');
  const { packages } = JSON.parse(text('dist/.bundle.json')) as { packages: string[] };

  it('are shipped', () => {
    expect(files).toContain('dist/THIRD-PARTY-NOTICES');
    expect(packages.length).toBeGreaterThan(20);
  });

  it.each(packages)('hold %s with its version and licence text', (folder) => {
    const { name, version } = JSON.parse(text(`${folder}/package.json`)) as { name: string; version: string };
    const start = notices.indexOf(`${name} ${version}\n`);
    expect(start).toBeGreaterThan(-1);
    const notice = notices.slice(start).split('-'.repeat(80))[0] ?? '';
    // every licence of the MIT, ISC, BSD, Boost and Apache families disclaims warranty and grants permission
    expect(notice).toMatch(/warrant(y|ies)/i);
    expect(notice).toMatch(/permission|redistribution|grants/i);
  });
});

describe('the bundled command', () => {
  // the sources measure with string-width, which knows all scripts; the bundle counts letters
  it.each(['--help', 'cut --help', 'watch --help'])('lays out %s as the sources do', (words) => {
    const help = (main: string) =>
      spawnSync(process.execPath, [fileURLToPath(new URL(main, root)), ...words.split(' ')], { encoding: 'utf8' })
        .stdout;
    const expected = help('dist/cli/main.js');
    expect(expected).toContain('Options:');
    expect(help('dist/bin/main.js')).toBe(expected);
  });
});

describe('what is installed along', () => {
  const { dependencies, exports: entries } = JSON.parse(text('package.json')) as {
    dependencies: Readonly<Record<string, string>>;
    exports: Readonly<Record<string, string | { readonly types: string }>>;
  };

  /** Packages that the shipped code loads. */
  function loaded(): string[] {
    return readdirSync(new URL('dist/bin/', root))
      .flatMap((file) => ts.preProcessFile(text(`dist/bin/${file}`), true, true).importedFiles)
      .flatMap(({ fileName }) => (/^[.#]/.test(fileName) || isBuiltin(fileName) ? [] : [fileName]));
  }

  /** `zod` of `zod/v4/core`, `@types/node` of `@types/node/fs`. */
  const packageOf = (name: string): string => /^(?:@[^/]+\/)?[^/]+/.exec(name)?.[0] ?? name;

  /** Packages that the declarations of the package's entries name. */
  function declared(): string[] {
    const files = Object.values(entries).flatMap((entry) =>
      typeof entry === 'string' ? [] : fileURLToPath(new URL(entry.types, root)),
    );
    const options = { module: ts.ModuleKind.NodeNext, moduleResolution: ts.ModuleResolutionKind.NodeNext, types: [] };
    const own = ts
      .createProgram(files, options)
      .getSourceFiles()
      .filter(({ fileName }) => fileName.includes('/dist/lib/'));
    expect(own.length).toBeGreaterThan(50);
    return own.flatMap((file) =>
      ts
        .preProcessFile(file.text)
        .importedFiles.flatMap(({ fileName }) => (fileName.startsWith('.') ? [] : [packageOf(fileName)])),
    );
  }

  it('is what code and declarations need besides the bundle, and nothing else', () => {
    expect([...new Set([...loaded(), ...declared()])].sort()).toEqual(Object.keys(dependencies).sort());
  });
});

describe('the README', () => {
  const links = [...text('README.md').matchAll(/\]\(([^)#]+)\)/g)].map(([, target = '']) => target);

  it.each(links)('leads to %s, which the package ships', (target) => {
    expect(existsSync(new URL(target, root))).toBe(true);
    expect(files.some((shipped) => target === shipped || target.startsWith(`${shipped}/`))).toBe(true);
  });
});
