// Makes what the compiler does not: the page scripts, bundled into modules that hold them as text, and the command,
// bundled so that it starts at once.
import { chmodSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = fileURLToPath(new URL('..', import.meta.url));

async function bundle(entry) {
  const { outputFiles } = await build({
    absWorkingDir: root,
    entryPoints: [entry],
    bundle: true,
    minify: true,
    format: 'iife',
    target: 'es2022',
    charset: 'utf8',
    legalComments: 'none',
    write: false,
  });
  // a script element ends at its first closing tag, wherever that stands
  return outputFiles[0].text
    .replace(/<\/(script)/gi, '<\\/$1')
    .replace(/<!--/g, '<\\!--')
    .trim();
}

const licences = ['three'].map((name) => {
  const folder = `${root}node_modules/${name}`;
  const { version } = JSON.parse(readFileSync(`${folder}/package.json`, 'utf8'));
  return `${name} ${version}\n\n${readFileSync(`${folder}/LICENSE`, 'utf8').trim()}`;
});

const assets = {
  'book-assets.js': { bookScript: await bundle('cli/browser/book.ts'), inlinedLicences: licences.join('\n\n') },
  'watch-assets.js': { watchScript: await bundle('cli/browser/watch.ts') },
};
mkdirSync(`${root}dist/assets`, { recursive: true });
for (const [file, texts] of Object.entries(assets)) {
  const lines = Object.entries(texts).map(([name, text]) => `export const ${name} = ${JSON.stringify(text)};\n`);
  writeFileSync(`${root}dist/assets/${file}`, lines.join(''));
}

// The command in a few large files: a person waits for every start, and hundreds of small files take half a second.
// Threads are found beside the file that starts them, so all entries stand in one folder.
// Made beside and then renamed: a run that is under way finds the old files or the new ones.
const made = `dist/bin-${process.pid}`;
await build({
  absWorkingDir: root,
  entryPoints: {
    main: 'dist/cli/main.js',
    thread: 'dist/cli/nest/thread.js',
    'nest-thread': 'dist/cli/watch/nest-thread.js',
  },
  outdir: made,
  bundle: true,
  splitting: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  chunkNames: 'part-[hash]',
  // packages written for CommonJS ask for Node's own modules by `require`
  banner: { js: "import { createRequire as requireFrom } from 'node:module';const require = requireFrom(import.meta.url);" },
  logLevel: 'warning',
});
chmodSync(`${root}${made}/main.js`, 0o755);
rmSync(`${root}dist/bin`, { recursive: true, force: true });
renameSync(`${root}${made}`, `${root}dist/bin`);
