import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

/** Which modules a module may use; types may also come from any module to its left in the flow. */
const table = {
  diagnostic: { uses: [], types: [] },
  units: { uses: [], types: [] },
  hardware: { uses: ['units'], types: ['units'] },
  geometry: { uses: [], types: [] },
  part: { uses: ['geometry'], types: ['geometry'] },
  dish: { uses: ['geometry'], types: ['geometry'] },
  design: { uses: ['units', 'diagnostic', 'hardware', 'dish'], types: ['units', 'diagnostic', 'hardware', 'dish'] },
  optics: { uses: ['diagnostic', 'geometry', 'dish'], types: ['diagnostic', 'geometry', 'dish', 'design'] },
  parts: {
    uses: ['diagnostic', 'geometry', 'hardware', 'part', 'dish', 'units'],
    types: ['diagnostic', 'geometry', 'hardware', 'part', 'dish', 'design', 'units'],
  },
  assembly: {
    uses: ['diagnostic', 'geometry', 'hardware', 'part', 'dish', 'parts', 'units'],
    types: ['diagnostic', 'geometry', 'hardware', 'part', 'dish', 'design', 'parts', 'units'],
  },
  stand: {
    uses: ['diagnostic', 'geometry', 'hardware', 'part', 'parts', 'assembly', 'units'],
    types: ['diagnostic', 'geometry', 'hardware', 'part', 'dish', 'design', 'parts', 'assembly', 'units'],
  },
  'key-file': { uses: [], types: [] },
  coupon: {
    uses: ['diagnostic', 'geometry', 'key-file', 'part', 'units'],
    types: ['diagnostic', 'geometry', 'key-file', 'part', 'units'],
  },
  nest: { uses: ['geometry'], types: ['geometry', 'part'] },
  machining: { uses: ['geometry', 'part'], types: ['geometry', 'part'] },
  output: {
    uses: ['diagnostic', 'geometry', 'part', 'units'],
    types: [
      'diagnostic',
      'geometry',
      'part',
      'units',
      'design',
      'dish',
      'parts',
      'assembly',
      'stand',
      'optics',
      'nest',
      'machining',
    ],
  },
  maker: {
    uses: ['geometry', 'parts', 'output'],
    types: ['geometry', 'parts', 'output', 'machining'],
  },
  // an independent opinion: it shares no code with what it checks
  check: { uses: [], types: ['geometry'] },
} as const;
type Module = keyof typeof table;

const lib = fileURLToPath(new URL('../lib', import.meta.url));

function sources(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return sources(path);
    return entry.name.endsWith('.ts') ? [path] : [];
  });
}

interface Import {
  readonly file: string;
  readonly from: string;
  readonly typeOnly: boolean;
}

function importsOf(file: string): Import[] {
  const text = readFileSync(file, 'utf8');
  return [...text.matchAll(/^(?:import|export)\s+(type\s+)?(?:[^'"]*?\sfrom\s+)?['"]([^'"]+)['"]/gm)].map((found) => ({
    file: relative(lib, file),
    from: found[2] ?? '',
    typeOnly: found[1] !== undefined,
  }));
}

/** Data that the proof shares with what it checks: the letters' points on their grid. It sets the letters by itself. */
const sharedData = 'geometry/stroke-glyphs.js';

const modules = Object.keys(table) as Module[];

describe.each(modules)('module %s', (module) => {
  const imports = sources(join(lib, module)).flatMap(importsOf);

  it('uses only the modules to its left', () => {
    const wrong = imports.filter(({ file, from, typeOnly }) => {
      if (!from.startsWith('.')) return false;
      const target = relative(lib, resolve(lib, dirname(file), from)).split('/')[0] ?? '';
      if (target === module) return false;
      if (module === 'check' && relative(lib, resolve(lib, dirname(file), from)) === sharedData) return false;
      const allowed: readonly string[] = typeOnly ? table[module].types : table[module].uses;
      return !allowed.includes(target);
    });
    expect(wrong).toEqual([]);
  });

  it('touches no file system, console, clock or network', () => {
    const wrong = imports.filter(({ from }) => from.startsWith('node:'));
    expect(wrong).toEqual([]);
    const impure = sources(join(lib, module)).filter((file) =>
      /\b(?:console\.|Date\.now|new Date\(\)|Math\.random|process\.(?:env|argv|exit|stdout|stderr|cwd|hrtime|memoryUsage|platform)|performance\.|fetch\()/.test(
        readFileSync(file, 'utf8').replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, ''),
      ),
    );
    expect(impure.map((file) => relative(lib, file))).toEqual([]);
  });
});

describe('the command line', () => {
  const cli = fileURLToPath(new URL('../cli', import.meta.url));
  const { exports: entries } = JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8')) as {
    exports: Readonly<Record<string, string | { readonly types: string }>>;
  };
  const entryFiles = Object.values(entries).flatMap((entry) =>
    typeof entry === 'string' ? [] : entry.types.replace('./dist/lib/', '').replace(/\.d\.ts$/, '.js'),
  );
  // the page scripts are a part of the book and draw its model; bench and fuzz measure and attack what lies within
  const ofTheCommand = sources(cli).filter((file) => !/^(?:browser|bench|fuzz|pictures)\//.test(relative(cli, file)));

  it('uses of the library what the package exports, and nothing else', () => {
    expect(entryFiles).toContain('index.js');
    const wrong = ofTheCommand.flatMap((file) =>
      importsOf(file).filter(({ from }) => {
        const target = relative(lib, resolve(dirname(file), from));
        return from.startsWith('.') && !target.startsWith('..') && !entryFiles.includes(target);
      }),
    );
    expect(wrong).toEqual([]);
  });
});

describe('the tests', () => {
  it('takes every random number of a test from one place', () => {
    const tests = fileURLToPath(new URL('.', import.meta.url));
    const own = ['helpers/seeds.ts', 'modules.test.ts'];
    const wrong = sources(tests)
      .map((file) => relative(tests, file))
      .filter(
        (file) =>
          !own.includes(file) &&
          /\b(?:fc\.(?:assert|check)|Math\.random)\(/.test(readFileSync(join(tests, file), 'utf8')),
      );
    expect(wrong).toEqual([]);
  });
});
