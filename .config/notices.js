// The notices of all packages whose code stands in a bundle, read from what the bundler says that it took in.
import { readdirSync, readFileSync } from 'node:fs';

const root = new URL('..', import.meta.url).pathname;

/** Licences that allow shipping in a bundle as long as the notice goes along. */
const allowed = ['MIT', 'ISC', '0BSD', 'BSD-2-Clause', 'BSD-3-Clause', 'BSL-1.0', 'Apache-2.0', 'Zlib'];

/** The ISC licence as the Open Source Initiative and SPDX print it. */
const isc = `Permission to use, copy, modify, and/or distribute this software for any purpose with or without fee is hereby
granted, provided that the above copyright notice and this permission notice appear in all copies.

THE SOFTWARE IS PROVIDED "AS IS" AND THE AUTHOR DISCLAIMS ALL WARRANTIES WITH REGARD TO THIS SOFTWARE INCLUDING ALL
IMPLIED WARRANTIES OF MERCHANTABILITY AND FITNESS. IN NO EVENT SHALL THE AUTHOR BE LIABLE FOR ANY SPECIAL, DIRECT,
INDIRECT, OR CONSEQUENTIAL DAMAGES OR ANY DAMAGES WHATSOEVER RESULTING FROM LOSS OF USE, DATA OR PROFITS, WHETHER IN AN
ACTION OF CONTRACT, NEGLIGENCE OR OTHER TORTIOUS ACTION, ARISING OUT OF OR IN CONNECTION WITH THE USE OR PERFORMANCE OF
THIS SOFTWARE.`;

/** Releases that name their licence and holder in the manifest but come without its text; any other fails the build. */
const withoutText = {
  'saxes 6.0.0': `${isc}\n\nIt is a fork of sax 1.2.4, Copyright (c) Isaac Z. Schlueter and Contributors, under the same licence.`,
};

/** Folder of the package that a bundled file belongs to, or null for our own files. */
function packageOf(input) {
  const found = /^(.*node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(input);
  return found ? found[1] : null;
}

/** Folders of the packages that left code in a bundle, sorted. */
export function bundledPackages(...metafiles) {
  const inputs = metafiles.flatMap(({ outputs }) =>
    Object.values(outputs).flatMap((output) =>
      Object.entries(output.inputs).flatMap(([input, { bytesInOutput }]) => (bytesInOutput > 0 ? [input] : [])),
    ),
  );
  return [...new Set(inputs.map(packageOf))].filter((folder) => folder !== null).sort();
}

/**
 * Name, version, licence and its text for a package.
 * @throws Error when a text is missing or the licence is not one that we may ship
 */
function noticeOf(folder) {
  const { name, version, license, author } = JSON.parse(readFileSync(`${root}${folder}/package.json`, 'utf8'));
  // "(MIT AND Zlib)" names two, both of which have to be ours to ship
  const named = String(license).replace(/[()]/g, '').split(/ AND /);
  const refused = named.filter((one) => !allowed.includes(one));
  if (refused.length > 0)
    throw new Error(`${name} ${version}: the licence ${license} is not among those to be shipped`);
  const texts = readdirSync(`${root}${folder}`)
    .filter((file) => /^(licen[cs]e|copying|notice)/i.test(file) && !/\.(js|json)$/.test(file))
    .sort()
    .map((file) => readFileSync(`${root}${folder}/${file}`, 'utf8').trim());
  const known = withoutText[`${name} ${version}`];
  if (texts.length === 0 && known) texts.push(`Copyright (c) ${author} and contributors\n\n${known}`);
  if (texts.length === 0) throw new Error(`${name} ${version} has no licence text to ship`);
  return { name, version, licence: named.join(' and '), text: texts.join('\n\n').replace(/\r\n/g, '\n') };
}

/** One text with the notices of all packages. */
export function noticesOf(folders) {
  return folders
    .map(noticeOf)
    .map(({ name, version, licence, text }) => `${name} ${version}\nLicence: ${licence}\n\n${text}\n`)
    .join(`\n${'-'.repeat(80)}\n\n`);
}
