/** The content security policy of the book: no network, and no script or style but those that it was made with. */
import { sha256Base64 } from '../sha256.js';

const hashed = (texts: Iterable<string>): string =>
  [...new Set(texts)].map((text) => ` 'sha256-${sha256Base64(text)}'`).join('');

const unescaped = (attribute: string): string =>
  attribute
    .replace(/&quot;/g, '"')
    .replace(/&#39;/g, "'")
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&amp;/g, '&');

/** The policy for a page whose script is `script`; styles are read off the page, those of its drawings too. */
export function policyOf(page: string, script: string): string {
  const styles = [...page.matchAll(/<style[^>]*>([^<]*)<\/style>/g)].map(([, text = '']) => text);
  const attributes = [...page.matchAll(/<[a-z][^<>]*? style="([^"]*)"/gi)].map(([, text = '']) => unescaped(text));
  const unsafe = attributes.length > 0 ? " 'unsafe-hashes'" : '';
  return [
    "default-src 'none'",
    `style-src${unsafe}${hashed([...styles, ...attributes])}`,
    `script-src${hashed([script])}`,
    'img-src data:',
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
}
