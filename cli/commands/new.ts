import process from 'node:process';
import type { CommandModule } from 'yargs';
import { print, say } from '../console.js';
import { usualAnswers } from '../new/answers.js';
import { designText } from '../new/design-text.js';
import { askQuestions } from '../new/questions.js';
import { atTerminal, hasTerminal } from '../new/terminal.js';
import { writeDesign } from '../new/write.js';

interface NewArguments {
  readonly file: string | undefined;
  readonly force: boolean;
}

export const newCommand: CommandModule<object, NewArguments> = {
  command: 'new [file]',
  describe: 'write a commented design file to start from',
  builder: (yargs) =>
    yargs
      .positional('file', { type: 'string', describe: 'the design file to write; in a pipe, left out, it is printed' })
      .option('force', { type: 'boolean', default: false, describe: 'replace the file if it is there' })
      .example('$0 new my-dish.yaml', 'a few questions on a terminal, then the file')
      .example('$0 new > my-dish.yaml', 'a ready file, without questions'),
  handler: async ({ file, force }) => {
    const target = file ?? (process.stdout.isTTY ? 'my-dish.yaml' : null);
    const answers =
      hasTerminal() && target !== null ? await atTerminal((ask) => askQuestions(ask, say)) : usualAnswers();
    const text = designText(answers);
    if (target === null) {
      print(text.trimEnd());
      return;
    }
    for (const line of writeDesign(target, text, force)) say(line);
    say(`wrote ${target}; next: dishwright check ${target}`);
  },
};
