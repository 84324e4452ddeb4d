import process from 'node:process';
import type { CommandModule } from 'yargs';
import { print, say } from '../console.js';
import { exitCode, stop } from '../exit.js';
import { type Answers, usualAnswers } from '../new/answers.js';
import { designText } from '../new/design-text.js';
import { proposalLines } from '../new/proposal.js';
import { type AnswerKey, type Ask, answerKeys, askQuestions, type Report } from '../new/questions.js';
import { atTerminal, hasTerminal, sayWhy } from '../new/terminal.js';
import { writeDesign } from '../new/write.js';

type NewArguments = Readonly<Record<AnswerKey, string | undefined>> & {
  readonly file: string | undefined;
  readonly force: boolean;
};

const described: Readonly<Record<AnswerKey, string>> = {
  heat: 'what to heat, such as "5 l in 220 mm", or nothing',
  place: 'latitude and longitude, such as "47.1 15.4", or nowhere',
  aperture: 'diameter across the rib ends, such as "1200 mm"',
  material: 'board for the ribs, thickness as measured, such as "plywood 11.8 mm"',
  sheet: 'size and price of a sheet, such as "2440 x 1220 for 54"',
  process: 'cut by router, laser or hand',
  bit: 'diameter of the router bit, such as "6 mm"',
  drills: 'drill bits that you have, such as "2, 3, 4.5", or none',
  'focal-length': 'focal length, such as "450 mm"',
  ribs: 'number of ribs',
  'panel-price': 'price of a sheet for the panels, such as 12.50, or none',
  'reflector-price': 'price per metre of the reflector’s roll, such as 9, or none',
};

/** Takes what the flags say, and asks for the rest where there is somebody to ask. @throws Stop for a flag that does not do */
async function answersBy(flags: NewArguments, ask: Ask | null): Promise<Answers> {
  let last: AnswerKey = 'heat';
  const given = (key: AnswerKey): string | undefined => flags[key];
  const report: Report = (message, remedy) => {
    if (ask !== null && given(last) === undefined) {
      sayWhy(message, remedy);
      return;
    }
    const flag = given(last) === undefined ? '' : `--${last}: `;
    throw stop(exitCode.wrongInput, 'usage', `${flag}${message}`, remedy);
  };
  return askQuestions((question, usual, key) => {
    last = key;
    return Promise.resolve(given(key) ?? ask?.(question, usual) ?? '');
  }, report);
}

export const newCommand: CommandModule<object, NewArguments> = {
  command: 'new [file]',
  describe: 'write a commented design file to start from',
  builder: (yargs) =>
    yargs
      .positional('file', {
        type: 'string',
        describe: 'the design file to write; if left out in a pipe, the text is printed',
      })
      .options(
        Object.fromEntries(
          answerKeys.map((key) => [key, { type: 'string' as const, requiresArg: true, describe: described[key] }]),
        ) as Record<AnswerKey, { readonly type: 'string'; readonly requiresArg: true; readonly describe: string }>,
      )
      .option('force', { type: 'boolean', default: false, describe: 'replace the file if it exists' })
      .example('$0 new my-dish.yaml', 'a few questions on a terminal, then the file')
      .example(
        '$0 new my-dish.yaml --heat "5 l in 220 mm" --sheet "2440 x 1220 for 54"',
        'asks only for what is missing',
      )
      .example('$0 new > my-dish.yaml', 'a ready file, without questions'),
  handler: async (flags) => {
    const { file, force } = flags;
    const target = file ?? (process.stdout.isTTY ? 'my-dish.yaml' : null);
    const asking = hasTerminal() && target !== null;
    const plain = !asking && answerKeys.every((key) => flags[key] === undefined);
    const answers = plain
      ? usualAnswers()
      : asking
        ? await atTerminal((ask) => answersBy(flags, ask))
        : await answersBy(flags, null);
    const text = designText(answers);
    if (!plain) for (const line of await proposalLines(text)) say(line);
    if (target === null) {
      print(text.trimEnd());
      return;
    }
    for (const line of writeDesign(target, text, force)) say(line);
    say(`wrote ${target}; next: dishwright check ${target}`);
  },
};
