import type { CommandModule } from 'yargs';
import { print, say } from '../console.js';
import { exitCode, stop } from '../exit.js';
import { machineAnswers, machineText, questions } from '../new/machine-questions.js';
import { atTerminal, hasTerminal, sayWhy } from '../new/terminal.js';
import { writeFileAt } from '../plain-output.js';

/** Flags come from the table of questions, so each is looked up by its name. */
type MachineArguments = Readonly<Record<string, unknown>>;

const flags = Object.fromEntries(
  questions.map(({ flag, asked, kinds }) => [
    flag,
    { type: 'string', requiresArg: true, describe: `${asked}${kinds.length === 1 ? ` (${kinds.join()} only)` : ''}` },
  ]),
) as Readonly<Record<string, { readonly type: 'string'; readonly requiresArg: true; readonly describe: string }>>;

export const machineCommand: CommandModule<object, MachineArguments> = {
  command: 'machine <action> [file]',
  describe: 'write a commented file that describes a machine',
  builder: (yargs) =>
    yargs
      .positional('action', { type: 'string', demandOption: true, choices: ['new'], describe: 'what to do' })
      .positional('file', { type: 'string', describe: 'the file to write; if left out in a pipe, the text is printed' })
      .options(flags)
      .example('$0 machine new my-router.yaml', 'a few questions on a terminal, then the file')
      .example('$0 machine new --kind laser --area 900x600 my-laser.yaml', 'asks only for what is missing'),
  handler: async (given) => {
    const textOf = (name: string): string | undefined => {
      const value = given[name];
      return typeof value === 'string' ? value : undefined;
    };
    const target = textOf('file') ?? (process.stdout.isTTY ? 'my-machine.yaml' : null);
    const stated = Object.fromEntries(questions.map(({ flag }) => [flag, textOf(flag)]));
    const refuse = (flag: string, message: string, remedy: string) =>
      stop(exitCode.wrongInput, 'usage', `--${flag}: ${message}`, remedy);
    const answers =
      hasTerminal() && target !== null
        ? await atTerminal((ask) => machineAnswers(stated, ask, sayWhy, refuse))
        : await machineAnswers(stated, null, sayWhy, refuse);
    const text = machineText(answers);
    if (target === null) {
      print(text.trimEnd());
      return;
    }
    writeFileAt(target, text, false, 'give another name, or change that file in an editor');
    say(`wrote ${target}; next: name it in a design beside it (machine: ${target}), then dishwright check`);
  },
};
