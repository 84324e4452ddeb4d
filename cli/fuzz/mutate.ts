/** Mutations of a text. All random choices come from the given source, so that an input can be made again. */

type Random = () => number;
type Mutation = (text: string, random: Random) => string;

/** Longest input, characters: the limit of a design file, and then some. */
const longest = 1_500_000;

const pick = <T>(items: readonly [T, ...T[]], random: Random): T =>
  items[Math.floor(random() * items.length)] ?? items[0];
const below = (limit: number, random: Random): number => Math.floor(random() * limit);

/** A stretch of the text, mostly short. */
function stretch(text: string, random: Random): readonly [number, number] {
  const from = below(text.length + 1, random);
  const length = Math.floor(text.length * random() ** 6);
  return [from, Math.min(text.length, from + length)];
}

/** Numbers at and beyond the edge of what can be meant. */
const numbers = [
  '0',
  '-0',
  '-1',
  '1e309',
  '-1e309',
  '1e-320',
  '1e15',
  '9007199254740993',
  '99999999999999999999999',
  'NaN',
  'Infinity',
  '0x10',
  '1_000',
  '٣',
  '1/0',
  '3/4 in',
  '1e5 km',
  '.',
  '-',
  '1e',
  '1.7976931348623157e308',
  '0.1e-6',
  '--5',
  '1,5',
  '',
] as const;

/** Bits of the languages in question, and what has broken readers of them before. */
const pieces = [
  '\0',
  '\n',
  '\r\n',
  '\t',
  '\ufeff',
  '\u2028',
  '\ud800',
  '\u202e',
  '"',
  "'",
  '\\',
  '%',
  '&amp;',
  '&lt;',
  '&#0;',
  '&#x110000;',
  '&a;',
  '<!DOCTYPE svg [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;">]>',
  '<![CDATA[',
  ']]>',
  '<!--',
  '-->',
  '<?x',
  '</g>',
  '<g class="outline">',
  '<use href="#a"/>',
  '<image href="file:///etc/hostname"/>',
  '<script>',
  'transform="scale(2)"',
  'A0 0 0 0 0 0 0',
  'M',
  'Z',
  'z',
  'C1 1 2 2 3 3',
  '  0\r\nSECTION\r\n',
  '  0\r\nINSERT\r\n',
  '  0\r\nEOF\r\n',
  ' 42\r\n1e300\r\n',
  ' 70\r\n-1\r\n',
  '999\r\nx\r\n',
  ' 10\r\n',
  '1000000000000\r\n',
  '[',
  ']',
  '{',
  '}',
  ',',
  ':',
  'null',
  'true',
  '{}',
  '[]',
  '"__proto__":{"x":1},',
  '"constructor":1,',
  '- ',
  '? ',
  '&a ',
  '*a',
  '!!js/function',
  '!!binary ',
  '<<: *a',
  '|\n',
  '>\n',
  '%YAML 9.9\n',
  '---\n',
  '...\n',
  '#',
  '~',
  '../../x',
  '/etc/passwd',
  '=1+1',
  '@SUM(A1)',
] as const;

const mutations: readonly [Mutation, ...Mutation[]] = [
  // one character for another
  (text, random) => {
    const at = below(text.length, random);
    return text.slice(0, at) + String.fromCharCode(below(random() < 0.9 ? 128 : 0x10000, random)) + text.slice(at + 1);
  },
  // a stretch left out, said again, put elsewhere
  (text, random) => {
    const [from, to] = stretch(text, random);
    return text.slice(0, from) + text.slice(to);
  },
  (text, random) => {
    const [from, to] = stretch(text, random);
    return text.slice(0, to) + text.slice(from, to).repeat(1 + below(4, random)) + text.slice(to);
  },
  (text, random) => {
    const [from, to] = stretch(text, random);
    const at = below(text.length + 1, random);
    return text.slice(0, at) + text.slice(from, to) + text.slice(at);
  },
  // another number
  (text, random) => {
    const found = [...text.matchAll(/-?\d+(?:\.\d+)?/g)];
    const number = found[below(found.length, random)];
    if (!number) return text;
    const scaled = String(Number(number[0]) * pick([-1, 10, 0.1, 25.4, 1e6, 1e-6, 1e12], random));
    const other = random() < 0.5 ? scaled : pick(numbers, random);
    return text.slice(0, number.index) + other + text.slice(number.index + number[0].length);
  },
  // something put in
  (text, random) => {
    const at = below(text.length + 1, random);
    return text.slice(0, at) + pick(pieces, random) + text.slice(at);
  },
  // two lines changed about
  (text, random) => {
    const lines = text.split('\n');
    const [i, j] = [below(lines.length, random), below(lines.length, random)];
    const kept = lines[i] ?? '';
    lines[i] = lines[j] ?? '';
    lines[j] = kept;
    return lines.join('\n');
  },
  // cut off
  (text, random) => text.slice(0, below(text.length + 1, random)),
  // a word or sign very many times over
  (text, random) => {
    if (random() < 0.9) return text;
    const at = below(text.length + 1, random);
    const count = 10 ** (1 + 4 * random());
    return (
      text.slice(0, at) +
      pick([...pieces, ...numbers, '[', '{a: ', '- ', '<g>', 'L1 1'] as const, random).repeat(count) +
      text.slice(at)
    );
  },
  // aliases that double at each step
  (text, random) => {
    if (random() < 0.9) return text;
    const lines = Array.from({ length: 30 }, (_, i) => `a${i}: &a${i} [${i === 0 ? 'x' : `*a${i - 1}, *a${i - 1}`}]`);
    return `${lines.join('\n')}\n${text}`;
  },
];

/** A mutated copy of the text: one to six changes, a few of them coarse. */
export function mutate(text: string, random: Random): string {
  const count = 1 + Math.floor(6 * random() ** 2);
  let mutated = text;
  for (let i = 0; i < count; i += 1) mutated = pick(mutations, random)(mutated, random).slice(0, longest);
  return mutated;
}
