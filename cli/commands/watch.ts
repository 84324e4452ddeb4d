import { existsSync } from 'node:fs';
import process from 'node:process';
import { resolve } from 'node:path';
import type { CommandModule } from 'yargs';
import { print, say } from '../console.js';
import { designArgument } from '../flags.js';
import { exitCode, stop } from '../exit.js';
import { nestInThread } from '../watch/background.js';
import { Desk } from '../watch/desk.js';
import { Guide } from '../watch/guide.js';
import { looksInThread } from '../watch/looks.js';
import { serve } from '../watch/server.js';
import { Session } from '../watch/session.js';
import { watchDesign } from '../watch/watch-design.js';
import { Works } from '../watch/works.js';
import { Board } from '../watch/state.js';

interface WatchArguments {
  readonly design: string;
  readonly port: number;
  readonly 'read-only': boolean;
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
  describe: 'design on a web page served on this computer: edit, compare, cut; also shows changes saved in an editor',
  builder: (yargs) =>
    yargs
      .positional('design', designArgument)
      .option('port', {
        type: 'number',
        default: 0,
        requiresArg: true,
        describe: 'port of the page; 0 for any free one',
      })
      .option('read-only', {
        type: 'boolean',
        default: false,
        describe: 'the page only shows, and cannot change anything',
      })
      .example('$0 watch press-house.yaml', 'open the address that it prints; Ctrl-C ends it'),
  handler: async ({ design, port, 'read-only': readOnly }) => {
    if (!Number.isInteger(port) || port < 0 || port > 65_535)
      throw stop(exitCode.wrongInput, 'usage', `--port is ${port}`, 'it must be an integer from 0 to 65535');
    const board = new Board(design, readOnly);
    const file = resolve(design);
    const { looks, end } = looksInThread();
    let refresh = (): void => undefined;
    const works = new Works(file, process.argv[1] ?? '', (work) => board.show({ work }));
    const guide = readOnly ? null : new Guide(file, board, () => refresh());
    const desk = new Desk(new Session(file, readOnly), board, looks, works, guide, () => refresh());
    try {
      const running = await serve(board, desk, port);
      print(running.url);
      say('open this address in a browser on this computer; Ctrl-C ends it');
      const watching = watchDesign(design, board, { looks, background: nestInThread }, say);
      ({ refresh } = watching);
      if (!existsSync(file)) guide?.begin();
      await interrupted();
      watching.end();
      works.cancel();
      await running.close();
    } finally {
      end();
    }
  },
};
