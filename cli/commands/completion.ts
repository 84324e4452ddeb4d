import { resolve } from 'node:path';
import process from 'node:process';
import type { CommandModule } from 'yargs';
import { completionScript, type Shell, shells } from '../completion.js';
import { print } from '../console.js';

interface CompletionArguments {
  readonly shell: Shell;
}

export const completionCommand: CommandModule<object, CompletionArguments> = {
  command: 'completion <shell>',
  describe: 'print a completion script for bash, zsh or fish',
  builder: (yargs) =>
    yargs
      .positional('shell', { choices: shells, demandOption: true, describe: 'the shell to write it for' })
      .example('source <($0 completion bash)', 'for this shell')
      .example('$0 completion fish > ~/.config/fish/completions/dishwright.fish', 'permanently'),
  handler: ({ shell }) => {
    const [node = 'node', main = 'dishwright'] = process.argv;
    print(completionScript(shell, [node, resolve(main)]).trimEnd());
  },
};
