// Makes what the compiler does not: the page scripts, bundled into modules that hold them as text, and the command's
// executable bit.
import { chmodSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
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

const bin = `${root}dist/cli/main.js`;
if (existsSync(bin)) chmodSync(bin, 0o755);
