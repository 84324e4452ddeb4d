/** The only place where text is made safe for XML and HTML. */

const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/**
 * Text for use between tags or within a quoted attribute, in XML 1.0 and in HTML. What XML forbids even as a reference
 * (control characters, lone surrogates, U+FFFE and U+FFFF; XML 1.0, fifth edition, production 2) is replaced by U+FFFD.
 */
export function escapeXml(text: string): string {
  return text
    .replace(/[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu, '\ufffd')
    .replace(/[&<>"']/g, (mark) => entities[mark] ?? mark);
}
