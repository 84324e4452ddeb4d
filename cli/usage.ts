/** What is wrong with a command line: one line in plain words, and how to fix it. */
import { existsSync, readdirSync } from 'node:fs';
import { nearestWord, slippedFrom } from '../lib/index.js';

export interface UsageFault {
  readonly message: string;
  readonly remedy: string;
}

/** An option as far as messages need it. */
export interface KnownOption {
  readonly name: string;
  readonly describe: string;
  /** Whether a value follows it. */
  readonly valued: boolean;
}

const isDesign = (word: string): boolean => /\.ya?ml$/i.test(word);

/** The design file of the folder where there is one alone, else a name for an example. */
function exampleDesign(): string {
  try {
    const found = readdirSync('.').filter(isDesign);
    return found.length === 1 && found[0] !== undefined ? found[0] : 'my-dish.yaml';
  } catch {
    return 'my-dish.yaml';
  }
}

/** A first word that is no command. */
export function commandFault(word: string | undefined, commands: readonly string[]): UsageFault {
  if (word === undefined)
    return {
      message: 'name a command',
      remedy: `for example \`dishwright check ${exampleDesign()}\`; the list is below`,
    };
  if (isDesign(word) || existsSync(word))
    return {
      message: `${word} is where a command should be; there is no command before it`,
      remedy: `write \`dishwright check ${word}\`, or another command instead of check`,
    };
  const near = nearestWord(word, commands);
  return {
    message: `unknown command "${word}"`,
    remedy:
      near === null
        ? `the commands are ${commands.join(', ')}`
        : `did you mean ${near}? \`dishwright --help\` lists them all`,
  };
}

/** Slips that show in a word by itself. */
export function wordFault(words: readonly string[], options: readonly KnownOption[]): UsageFault | null {
  const known = options.map(({ name }) => name);
  for (const word of words) {
    const long = /^[–—−]+(.+)$/.exec(word);
    if (long)
      return { message: `${word} begins with a long dash`, remedy: `write --${long[1] ?? ''}, with two hyphens` };
    const single = /^-([A-Za-z][\w-]+)(?:=.*)?$/.exec(word);
    const name = single?.[1];
    if (name !== undefined && known.includes(name))
      return { message: `${word} has one dash`, remedy: `write --${name}, with two` };
  }
  return null;
}

/** The options that a command line names and the command does not have. */
function unknownOption(command: string, words: readonly string[], options: readonly KnownOption[]): UsageFault | null {
  const known = new Set(options.flatMap(({ name }) => [name, `no-${name}`]));
  const found = words
    .map((word) => /^--([^=]+)/.exec(word)?.[1])
    .find((name) => name !== undefined && !known.has(name));
  if (found === undefined) return null;
  const near = slippedFrom(
    found,
    [...known].filter((name) => !name.startsWith('no-')),
  );
  const all = `\`dishwright ${command} --help\` lists its options`;
  return { message: `unknown option --${found}`, remedy: near === null ? all : `did you mean --${near}? ${all}` };
}

/** Words of the line that are neither options nor their values, the command left out. */
function loose(words: readonly string[], options: readonly KnownOption[]): string[] {
  const valued = new Set(
    options.filter((one) => one.valued).flatMap(({ name }) => (name.length === 1 ? [`-${name}`] : [`--${name}`])),
  );
  return words.slice(1).filter((word, i, rest) => !word.startsWith('-') && !valued.has(rest[i - 1] ?? ''));
}

/** Words too many, or an option left out whose value stands there alone. */
function tooMany(command: string, words: readonly string[], options: readonly KnownOption[]): UsageFault | null {
  const at = words.findIndex((word) => word === '--sheet' || word === '--try');
  const [side = '', sign = '', other = ''] = words.slice(at + 1);
  if (at >= 0 && /^[x×]$/i.test(sign))
    return {
      message: `the size of ${words[at] ?? ''} has spaces: "${side} ${sign} ${other}"`,
      remedy: `write it in one word, ${side}x${other}, or in quotes`,
    };
  const extra = loose(words, options).slice(1);
  const [first] = extra;
  if (first === undefined) return null;
  const needsFolder = options.some(({ name }) => name === 'out') && !words.some((word) => /^(?:-o|--out)/.test(word));
  if (needsFolder)
    return {
      message: `${first} has no option in front of it`,
      remedy: `if it is the folder to write, put -o in front: -o ${first}`,
    };
  return {
    message: `"${first}" is one word too many`,
    remedy: `${command} takes one ${command === 'verify' ? 'folder' : 'design'} at a time`,
  };
}

/** What the command lacks. */
function missing(message: string, command: string, usage: string): UsageFault | null {
  const option = /^Missing required arguments?: (.+)$/.exec(message)?.[1];
  if (option === undefined && !message.startsWith('Not enough non-option arguments')) return null;
  if (option?.split(', ').includes('out'))
    return {
      message: '--out is missing: the folder to write into',
      remedy: `add it after the design: -o out/my-dish`,
    };
  const wanted = /<(\w+)>/.exec(usage)?.[1] ?? 'design';
  const example = wanted === 'design' ? `dishwright ${command} ${exampleDesign()}` : `dishwright ${usage}`;
  return { message: `${command} needs the name of a ${wanted}`, remedy: `for example \`${example}\`` };
}

/** An option without the value that belongs to it. */
function noValue(message: string, options: readonly KnownOption[]): UsageFault | null {
  const value = /^Not enough arguments following: (.+)$/.exec(message)?.[1];
  if (value === undefined) return null;
  const { describe = '' } = options.find((one) => one.name === value) ?? {};
  return { message: `${value.length === 1 ? '-' : '--'}${value} needs a value after it`, remedy: describe };
}

/**
 * Why the parser of the command line refuses it, in plain words.
 * @param message as the parser gives it
 * @param usage the command with its arguments, `cut <design>`
 */
export function refusedLine(
  message: string,
  words: readonly string[],
  usage: string,
  options: readonly KnownOption[],
): UsageFault {
  const command = words[0] ?? '';
  // of a value that its option refuses
  const own = /^(--.+?); (it must .+)$/.exec(message);
  if (own) return { message: own[1] ?? '', remedy: own[2] ?? '' };
  const choice = /Argument: ([^,]+), Given: (.+), Choices: (.+)$/.exec(message);
  if (choice) {
    const [, name = '', given = '', listed = ''] = choice;
    const choices = listed.split(', ').map((one) => one.replace(/"/g, ''));
    const isOption = options.some((one) => one.name === name && one.valued);
    return choiceFault(`${isOption ? '--' : 'the '}${name}`, given.replace(/"/g, ''), choices);
  }
  return (
    noValue(message, options) ??
    unknownOption(command, words, options) ??
    tooMany(command, words, options) ??
    missing(message, command, usage) ?? {
      message: message === '' ? 'the command line cannot be read' : message,
      remedy: `\`dishwright ${command} --help\` shows how it is used`,
    }
  );
}

function choiceFault(name: string, given: string, choices: readonly string[]): UsageFault {
  const near = choices.find((one) => given.toLowerCase().startsWith(one)) ?? slippedFrom(given, choices);
  const remedy = `it must be one of ${choices.join(', ')}`;
  return { message: `${name} is "${given}"`, remedy: near === null ? remedy : `did you mean ${near}? ${remedy}` };
}
