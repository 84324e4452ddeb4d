import process from 'node:process';
import { createInterface } from 'node:readline';
import type { CommandModule } from 'yargs';
import { print, say } from '../console.js';
import { exitCode, stop } from '../exit.js';
import { type Answers, usualAnswers } from '../new/answers.js';
import { designText } from '../new/design-text.js';
import { askQuestions } from '../new/questions.js';
import { writeDesign } from '../new/write.js';

interface NewArguments {
  readonly file: string | undefined;
  readonly force: boolean;
}

async function ask(): Promise<Answers> {
  const lines = createInterface({ input: process.stdin, output: process.stderr });
  // the iterator keeps lines that are pasted ahead of their question
  const typed = lines[Symbol.asyncIterator]();
  try {
    return await askQuestions(async (question) => {
      lines.setPrompt(question);
      lines.prompt();
      const line = await typed.next();
      if (line.done === true)
        throw stop(
          exitCode.wrongInput,
          'usage',
          'no answer; nothing was written',
          'answer each question, or press Enter for the usual',
        );
      return line.value;
    }, say);
  } finally {
    lines.close();
  }
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
    const answers = process.stdin.isTTY && process.stderr.isTTY && target !== null ? await ask() : usualAnswers();
    const text = designText(answers);
    if (target === null) {
      print(text.trimEnd());
      return;
    }
    for (const line of writeDesign(target, text, force)) say(line);
    say(`wrote ${target}; next: dishwright check ${target}`);
  },
};
