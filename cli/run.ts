/** One run of the command within this process: what `main.ts` starts. */
import process from 'node:process';
import yargs, { type Argv } from 'yargs';
import { printJson, say, shade } from './console.js';
import { exitCode, Stop, stop } from './exit.js';
import { reportProblems } from './report.js';
import { commandFault, type KnownOption, refusedLine, type UsageFault, wordFault } from './usage.js';

/** Whatever went wrong, as the end of a command. */
function asStop(error: unknown): Stop {
  if (error instanceof Stop) return error;
  const message = error instanceof Error ? error.message : String(error);
  return stop(
    exitCode.cannotBuild,
    'internal',
    `a bug in dishwright itself: ${message}; nothing was written`,
    'please report this with the design file',
  );
}

/** Ends the run for whatever went wrong, with one message and no stack trace; with `--json` as JSON too. */
function end(error: unknown, words: readonly string[]): void {
  const { problems, closing, exit } = asStop(error);
  if (words.some((word) => /^--json(?:=true)?$/.test(word))) printJson({ problems });
  reportProblems(problems);
  if (closing !== undefined) say(shade(closing, 'red'));
  if (process.env['DISHWRIGHT_TRACE'] === '1' && !(error instanceof Stop) && error instanceof Error)
    say(error.stack ?? '');
  process.exitCode = exit;
}

/** Each command in a file of its own, read only when it is asked for: a person waits for every start. */
const commands: Readonly<Record<string, (cli: Argv) => Promise<Argv>>> = {
  new: async (cli) => cli.command((await import('./commands/new.js')).newCommand),
  machine: async (cli) => cli.command((await import('./commands/machine.js')).machineCommand),
  check: async (cli) => cli.command((await import('./commands/check.js')).checkCommand),
  cut: async (cli) => cli.command((await import('./commands/cut.js')).cutCommand),
  template: async (cli) => cli.command((await import('./commands/template.js')).templateCommand),
  coupon: async (cli) => cli.command((await import('./commands/coupon.js')).couponCommand),
  stock: async (cli) => cli.command((await import('./commands/stock.js')).stockCommand),
  optics: async (cli) => cli.command((await import('./commands/optics.js')).opticsCommand),
  compare: async (cli) => cli.command((await import('./commands/compare.js')).compareCommand),
  watch: async (cli) => cli.command((await import('./commands/watch.js')).watchCommand),
  verify: async (cli) => cli.command((await import('./commands/verify.js')).verifyCommand),
  explain: async (cli) => cli.command((await import('./commands/explain.js')).explainCommand),
  completion: async (cli) => cli.command((await import('./commands/completion.js')).completionCommand),
};

/** Refuses a command line. */
const refuse = ({ message, remedy }: UsageFault): Stop => stop(exitCode.wrongInput, 'usage', message, remedy);

/** What yargs knows of the options of a command, beyond its declared type. */
interface ParserState {
  getOptions(): {
    readonly key: Readonly<Record<string, unknown>>;
    readonly string: readonly string[];
    readonly number: readonly string[];
    readonly choices: Readonly<Record<string, unknown>>;
  };
}

interface ParserUsage {
  getDescriptions(): Readonly<Record<string, string>>;
  getUsage(): readonly (readonly [string, ...unknown[]])[];
}

/** The options of the command that was asked for. */
function optionsOf(cli: Argv, describe: (name: string) => string): KnownOption[] {
  const { key, string, number, choices } = (cli as unknown as ParserState).getOptions();
  return Object.keys(key).map((name) => ({
    name,
    describe: describe(name),
    valued: string.includes(name) || number.includes(name) || Object.hasOwn(choices, name),
  }));
}

const cliOf = (words: readonly string[]): Argv => {
  const cli = yargs([...words]);
  return (
    cli
      .scriptName('dishwright')
      // one language throughout, that of the messages
      .detectLocale(false)
      .usage(
        '$0 <command>\n\nFrom one design file to everything you need to build a ribbed paraboloid dish from sheet material.',
      )
      .demandCommand(1, 'name a command')
      .strict()
      .help()
      .version()
      .wrap(Math.min(100, process.stdout.isTTY ? process.stdout.columns : 100))
      .exitProcess(false)
      .fail((message: string | null, error: Error | undefined, usage) => {
        if (error !== undefined && !(error.name === 'YError')) throw error;
        const shown = usage as unknown as ParserUsage;
        const described = shown.getDescriptions();
        const options = optionsOf(cli, (name) => described[name]?.replace('__yargsString__:', '') ?? '');
        const line = shown.getUsage()[0]?.[0].replace('$0 ', '').replace('dishwright ', '') ?? '';
        throw refuse(wordFault(words, options) ?? refusedLine(message ?? error?.message ?? '', words, line, options));
      })
  );
};

/** Runs the command with the words after its name. How it ended is in `process.exitCode`; nothing is thrown. */
export async function runCommand(words: readonly string[]): Promise<void> {
  try {
    const cli = cliOf(words);
    const [first] = words;
    const asked = first !== undefined && Object.hasOwn(commands, first) ? commands[first] : undefined;
    const plain = first === undefined || !first.startsWith('-');
    if (!asked && plain) {
      end(refuse(commandFault(first, Object.keys(commands))), words);
      if (first !== undefined) return;
      for (const add of Object.values(commands)) await add(cli);
      say(`\n${await cli.getHelp()}`);
      return;
    }
    // help needs them all
    for (const add of asked ? [asked] : Object.values(commands)) await add(cli);
    await cli.parseAsync();
  } catch (error) {
    end(error, words);
  }
}
