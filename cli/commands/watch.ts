import process from 'node:process';
import type { CommandModule } from 'yargs';
import { print, say } from '../console.js';
import { designArgument } from '../flags.js';
import { exitCode, stop } from '../exit.js';
import { nestInThread } from '../watch/background.js';
import { serve } from '../watch/server.js';
import { watchDesign } from '../watch/watch-design.js';
import { Board } from '../watch/state.js';

interface WatchArguments {
  readonly design: string;
  readonly port: number;
}

/** Until the person ends the command. */
function interrupted(): Promise<void> {
  return new Promise((resolve) => {
    process.once('SIGINT', resolve);
    process.once('SIGTERM', resolve);
  });
}

export const watchCommand: CommandModule<object, WatchArguments> = {
  command: 'watch <design>',
  describe: 'show the book on a page of this machine while the design file changes',
  builder: (yargs) =>
    yargs
      .positional('design', designArgument)
      .option('port', {
        type: 'number',
        default: 0,
        requiresArg: true,
        describe: 'port of the page; 0 for any free one',
      })
      .example('$0 watch press-house.yaml', 'open the address it prints; Ctrl-C ends it'),
  handler: async ({ design, port }) => {
    if (!Number.isInteger(port) || port < 0 || port > 65_535)
      throw stop(exitCode.wrongInput, 'usage', `--port is ${port}`, 'it must be an integer from 0 to 65535');
    const board = new Board(design);
    const running = await serve(board, port);
    print(running.url);
    say('open this address in a browser of this machine; Ctrl-C ends it');
    const leave = watchDesign(design, board, nestInThread, say);
    await interrupted();
    leave();
    await running.close();
  },
};
