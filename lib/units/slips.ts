/** Lengths as they are often written and cannot be read, with the way in which they can. */

/** What is wrong with a written length, and how to fix it. */
export interface LengthSlip {
  readonly message: string;
  readonly remedy: string;
}

const printedFractions: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅓': '1/3',
  '⅔': '2/3',
};

/** A number written with a comma, with a point; null for one without. `1,200` may be meant in two ways. */
export function commaSlip(text: string): LengthSlip | null {
  if (!/\d,\d/.test(text)) return null;
  const pointed = text.replace(/(\d),(?=\d)/g, '$1.');
  const joined = text.replace(/(\d),(?=\d{3}(?!\d))/g, '$1');
  const remedy =
    joined === text
      ? `write ${pointed}, with a decimal point`
      : `write ${joined} without a comma, or ${pointed} with a decimal point`;
  return { message: `"${text}" has a comma`, remedy };
}

/** The text within typographic quotation marks; null where there are none around it. */
export const withinTypographic = (text: string): string | null =>
  /^[“„‟«‘‚](.*)[”“»’‘]$/u.exec(text.trim())?.[1]?.trim() ?? null;

/** What is usually wrong with a text that cannot be read as a length; null for anything else. */
export function lengthSlip(text: string): LengthSlip | null {
  const within = withinTypographic(text);
  if (within !== null) return { message: `"${text}" is in typographic quotation marks`, remedy: `write ${within}` };
  const comma = commaSlip(text);
  if (comma) return comma;
  const found = Object.entries(printedFractions).find(([sign]) => text.includes(sign));
  if (found !== undefined) {
    const [printed, fraction] = found;
    const write = text.replace(new RegExp(`(\\d)?\\s*${printed}`), (_, whole?: string) =>
      whole === undefined ? fraction : `${whole}-${fraction}`,
    );
    return { message: `"${text}" has ${printed} as one character`, remedy: `write ${write}` };
  }
  const once = text.replace(/(\d\s*)(mm|cm|m|in|ft)\s+\2\b/i, '$1$2');
  if (once !== text) return { message: `"${text}" has its unit twice`, remedy: `write ${once}` };
  if (/\d\s*''/.test(text))
    return { message: `"${text}" has two feet marks`, remedy: `write ${text.replace(/\s*''/, ' in')}` };
  const inside = /(?:\d+[ -]\d+\/\d+|\d+\/\d+|\d+(?:\.\d+)?)(?:\s*(?:mm|cm|m|in|ft)\b|["″'′])?/i.exec(text)?.[0];
  if (inside === undefined || inside === text) return null;
  return { message: `"${text}" has more in it than a length`, remedy: `write ${inside} and nothing else` };
}
