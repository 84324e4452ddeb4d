/** The command as a process of its own: its words, and what it does when nobody reads on. */
import process from 'node:process';
import { hideBin } from 'yargs/helpers';
import { say, shade } from './console.js';
import { exitCode, reasonOf } from './exit.js';
import { runCommand } from './run.js';

// a reader that stops early, such as `head`, is no fault
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(exitCode.done);
  say(shade(`cannot write the result: ${reasonOf(error)}`, 'red'));
  process.exit(exitCode.notWritten);
});

await runCommand(hideBin(process.argv));
