import type { CommandModule } from 'yargs';
import { cautionsShort, prepare, templateFiles } from '../../lib/index.js';
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
  readonly measured: number | undefined;
};

export const templateCommand: CommandModule<object, TemplateArguments> = {
  command: 'template <design>',
  describe: 'write only the rib template, at true size',
  builder: (yargs) =>
    yargs
      .positional('design', designArgument)
      .options({
        ...outFlags,
        measured: {
          type: 'number',
          requiresArg: true,
          describe: 'what the 100 mm check length measures on paper, in mm',
        },
      })
      .example('$0 template press-house.yaml -o out/template', 'SVG, DXF and a PDF in pages'),
  handler: async (flags) => {
    const loaded = loadDesign(flags.design);
    if (flags.measured !== undefined && !(flags.measured >= 90 && flags.measured <= 110))
      throw stop(exitCode.wrongInput, 'usage', `--measured is ${flags.measured}`, 'it must be from 90 to 110 mm');
    const asked = applyFlags(loaded.design, flags);
    const design =
      flags.measured === undefined ? asked : { ...asked, print: { ...asked.print, measured: flags.measured } };
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
