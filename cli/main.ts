#!/usr/bin/env node
import process from 'node:process';
import yargs from 'yargs';
import { hideBin } from 'yargs/helpers';
import { checkCommand } from './commands/check.js';
import { cutCommand } from './commands/cut.js';
import { opticsCommand } from './commands/optics.js';
import { templateCommand } from './commands/template.js';
import { verifyCommand } from './commands/verify.js';
import { newCommand } from './commands/new.js';
import { explainCommand } from './commands/explain.js';
import { completionCommand } from './commands/completion.js';
import { watchCommand } from './commands/watch.js';
import { say, shade } from './console.js';
import { exitCode, Stop } from './exit.js';

/** Ends the run for whatever went wrong, with one message and no stack trace. */
function end(error: unknown): void {
  if (error instanceof Stop) {
    for (const line of error.details) say(shade(line, 'red'));
    say(shade(error.message, 'red'));
    process.exitCode = error.exit;
    return;
  }
  const message = error instanceof Error ? error.message : String(error);
  say(
    shade(
      `a fault in dishwright itself: ${message}; nothing was written; please report it with the design file`,
      'red',
    ),
  );
  if (process.env['DISHWRIGHT_TRACE'] === '1' && error instanceof Error) say(error.stack ?? '');
  process.exitCode = exitCode.cannotBuild;
}

// a reader that stops early, such as `head`, is no fault
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(exitCode.done);
  throw error;
});

const commands = yargs(hideBin(process.argv))
  .scriptName('dishwright')
  .usage(
    '$0 <command>\n\nFrom one design file to everything that builds a ribbed paraboloid dish out of sheet material.',
  )
  .command(checkCommand)
  .command(cutCommand)
  .command(templateCommand)
  .command(opticsCommand)
  .command(verifyCommand)
  .command(newCommand)
  .command(explainCommand)
  .command(completionCommand)
  .command(watchCommand)
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
    throw new Stop(exitCode.wrongInput, message ?? error?.message ?? 'the command is wrong');
  });

try {
  await commands.parseAsync();
} catch (error) {
  end(error);
}
