// Makes what the compiler does not: the page scripts, bundled into modules that hold them as text; the command, bundled
// so that it starts at once; and the notices of the packages in both.
import { chmodSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { basename } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { bundledPackages, noticesOf } from './notices.js';

const root = fileURLToPath(new URL('..', import.meta.url));

/** A page's script as text, and what went into it. */
async function pageScript(entry) {
  const { outputFiles, metafile } = await build({
    absWorkingDir: root,
    entryPoints: [entry],
    bundle: true,
    minify: true,
    format: 'iife',
    target: 'es2022',
    charset: 'utf8',
    legalComments: 'none',
    metafile: true,
    write: false,
  });
  // a script element ends at its first closing tag, wherever that stands
  const text = outputFiles[0].text
    .replace(/<\/(script)/gi, '<\\/$1')
    .replace(/<!--/g, '<\\!--')
    .trim();
  return { text, metafile };
}

const book = await pageScript('cli/browser/book.ts');
const watch = await pageScript('cli/browser/watch.ts');
const assets = {
  // the book carries its script with it, and so the notices
  'book-assets.js': { bookScript: book.text, inlinedLicences: noticesOf(bundledPackages(book.metafile)) },
  'watch-assets.js': { watchScript: watch.text },
};
mkdirSync(`${root}dist/assets`, { recursive: true });
for (const [file, texts] of Object.entries(assets)) {
  const lines = Object.entries(texts).map(([name, text]) => `export const ${name} = ${JSON.stringify(text)};\n`);
  writeFileSync(`${root}dist/assets/${file}`, lines.join(''));
}

// The library's doors: each export of the package and the module whose declarations it shows.
const { exports: doors } = JSON.parse(readFileSync(`${root}package.json`, 'utf8'));
const library = Object.fromEntries(
  Object.values(doors).flatMap(({ types, default: file }) =>
    types === undefined ? [] : [[basename(file, '.js'), types.replace(/\.d\.ts$/, '.js')]],
  ),
);

// The command and the library in a few large files that share their code: a person waits for every start, and hundreds of small files take half a second.
// Threads are found beside the file that starts them, so all entries stand in one folder.
// Made in a folder of its own and then renamed: a run that is under way finds the old files or the new ones.
const made = `dist/bin-${process.pid}`;
const command = await build({
  absWorkingDir: root,
  entryPoints: {
    main: 'dist/cli/main.js',
    thread: 'dist/cli/nest/thread.js',
    'look-thread': 'dist/cli/watch/look-thread.js',
    'nest-thread': 'dist/cli/watch/nest-thread.js',
    'proof-thread': 'dist/cli/prove/proof-thread.js',
    ...library,
  },
  outdir: made,
  bundle: true,
  splitting: true,
  minify: true,
  alias: { 'string-width': './.config/plain-width.js' },
  legalComments: 'none',
  format: 'esm',
  platform: 'node',
  target: 'node20',
  chunkNames: 'part-[hash]',
  // the page scripts are in the package once, as files of their own; who uses maker models has that library at hand
  external: ['#book-assets', '#watch-assets', 'makerjs'],
  // packages written for CommonJS ask for Node's own modules by `require`
  banner: {
    js: "import { createRequire as requireFrom } from 'node:module';const require = requireFrom(import.meta.url);",
  },
  metafile: true,
  logLevel: 'warning',
});
chmodSync(`${root}${made}/main.js`, 0o755);
rmSync(`${root}dist/bin`, { recursive: true, force: true });
renameSync(`${root}${made}`, `${root}dist/bin`);

const packages = bundledPackages(book.metafile, watch.metafile, command.metafile);
writeFileSync(
  `${root}dist/THIRD-PARTY-NOTICES`,
  `The command and the book hold code of these packages, under their own licences.\n\n${noticesOf(packages)}`,
);
// for the test that holds the notices against the bundle; not shipped
writeFileSync(`${root}dist/.bundle.json`, `${JSON.stringify({ packages }, null, 1)}\n`);
