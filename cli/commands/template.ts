import type { CommandModule } from 'yargs';
import {
  cautionsShort,
  checkLineOf,
  formatLength,
  LengthError,
  type LengthUnit,
  parseLength,
  prepare,
  templateFiles,
} from '../../lib/index.js';
import { withClaim } from '../claim.js';
import { printJson, say, sayParagraph, shade } from '../console.js';
import { loadDesign } from '../design-file.js';
import { exitCode, stop } from '../exit.js';
import { applyFlags, designArgument, type DesignArguments, outFlags } from '../flags.js';
import { writeFolder } from '../folder.js';
import { stopOnErrors } from '../report.js';

type TemplateArguments = DesignArguments & {
  readonly out: string;
  readonly force: boolean;
  readonly measured: string | undefined;
};

/** What the check line measures, mm. @throws Stop for what is no length, or far from the line's own */
function measuredLine(text: string, unit: LengthUnit): number {
  const { min, max } = checkLineOf(unit);
  const range = `it must be from ${formatLength(min, unit)} to ${formatLength(max, unit)}`;
  try {
    const measured = parseLength(text, unit);
    if (measured >= min && measured <= max) return measured;
  } catch (error) {
    if (!(error instanceof LengthError)) throw error;
  }
  throw stop(exitCode.wrongInput, 'usage', `--measured is ${text}`, range);
}

export const templateCommand: CommandModule<object, TemplateArguments> = {
  command: 'template <design>',
  describe: 'write only the rib template, at true size',
  builder: (yargs) =>
    yargs
      .positional('design', designArgument)
      .options({
        ...outFlags,
        measured: {
          type: 'string',
          requiresArg: true,
          describe: 'what the check line of the print measures on paper, such as 99.4 mm',
        },
      })
      .example('$0 template press-house.yaml -o out/template', 'SVG, DXF and a PDF in pages'),
  handler: async (flags) => {
    const loaded = loadDesign(flags.design);
    const asked = applyFlags(loaded.design, flags);
    const measured = flags.measured === undefined ? undefined : measuredLine(flags.measured, asked.units);
    const design = measured === undefined ? asked : { ...asked, print: { ...asked.print, measured } };
    // outlines of the user's own have no part in it
    const job = prepare({ ...design, extra: [] });
    stopOnErrors(loaded, job.problems);
    const files = await withClaim(flags.out, flags.force, async (claim) => {
      const made = await templateFiles(job);
      await writeFolder(claim, made);
      return made;
    });
    if (flags.json)
      printJson({
        folder: flags.out,
        files: [...files.keys()],
        problems: [...loaded.problems, ...job.problems.map(loaded.locate)],
      });
    for (const name of files.keys()) say(`${flags.out}/${name}`);
    say(shade('done', 'green'));
    sayParagraph(cautionsShort);
  },
};
