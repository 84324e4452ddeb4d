/** One run of the command within this process: what `main.ts` starts. */
import process from 'node:process';
import yargs, { type Argv } from 'yargs';
import { printJson, say, shade } from './console.js';
import { exitCode, Stop, stop } from './exit.js';
import { reportProblems } from './report.js';

/** Ends the run for whatever went wrong, with one message and no stack trace. */
function end(error: unknown, words: readonly string[]): void {
  if (error instanceof Stop) {
    if (words.includes('--json')) printJson({ problems: error.problems });
    reportProblems(error.problems);
    if (error.closing !== undefined) say(shade(error.closing, 'red'));
    process.exitCode = error.exit;
    return;
  }
  const message = error instanceof Error ? error.message : String(error);
  reportProblems([
    {
      code: 'internal',
      severity: 'error',
      message: `a fault in dishwright itself: ${message}; nothing was written`,
      remedy: 'please report it with the design file',
    },
  ]);
  if (process.env['DISHWRIGHT_TRACE'] === '1' && error instanceof Error) say(error.stack ?? '');
  process.exitCode = exitCode.cannotBuild;
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

const cliOf = (words: readonly string[]): Argv =>
  yargs([...words])
    .scriptName('dishwright')
    .usage(
      '$0 <command>\n\nFrom one design file to everything that builds a ribbed paraboloid dish out of sheet material.',
    )
    .demandCommand(1, 'name a command')
    .recommendCommands()
    .strict()
    .help()
    .version()
    .wrap(Math.min(100, process.stdout.isTTY ? process.stdout.columns : 100))
    .exitProcess(false)
    .fail((message: string | null, error: Error | undefined, usage) => {
      if (error !== undefined && !(error.name === 'YError')) throw error;
      usage.showHelp((text) => say(text));
      throw stop(
        exitCode.wrongInput,
        'usage',
        message ?? error?.message ?? 'the command is wrong',
        'see the help above',
      );
    });

/** Runs the command with the words after its name. How it ended is in `process.exitCode`; nothing is thrown. */
export async function runCommand(words: readonly string[]): Promise<void> {
  try {
    const cli = cliOf(words);
    const asked = words[0] !== undefined && Object.hasOwn(commands, words[0]) ? commands[words[0]] : undefined;
    // help and misspelt commands need them all
    for (const add of asked ? [asked] : Object.values(commands)) await add(cli);
    await cli.parseAsync();
  } catch (error) {
    end(error, words);
  }
}
