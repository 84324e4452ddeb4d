import type { CommandModule } from 'yargs';
import { buildJob, cautionsShort, operationKey } from '../../lib/index.js';
import { billLines, billsOfAll } from '../bill-lines.js';
import { withClaim } from '../claim.js';
import { columns, print, printJson, say, sayParagraph, shade } from '../console.js';
import { loadDesign } from '../design-file.js';
import { loadExtras } from '../extras.js';
import { applyFlags, designArgument, type DesignArguments, outFlags } from '../flags.js';
import { writeFolder } from '../folder.js';
import { nesterFor } from '../nester.js';
import { proveWritten } from '../prove-written.js';
import { stopOnErrors } from '../report.js';
import { sheetTable, untimedLines } from '../sheet-table.js';

type CutArguments = DesignArguments & { readonly out: string; readonly force: boolean; readonly verify: boolean };

export const cutCommand: CommandModule<object, CutArguments> = {
  command: 'cut <design>',
  describe: 'write every cut file, the book and the lists',
  builder: (yargs) =>
    yargs
      .positional('design', designArgument)
      .options({
        ...outFlags,
        verify: {
          type: 'boolean',
          default: true,
          describe: 'read the files back and prove them (--no-verify to skip)',
        },
      })
      .example('$0 cut press-house.yaml -o out/press-house', 'everything')
      .example('$0 cut press-house.yaml -o out/small --sheet 1525x1525', 'on another sheet size'),
  handler: async (flags) => {
    const loaded = loadDesign(flags.design);
    const design = applyFlags(loaded.design, flags);
    const job = await withClaim(flags.out, flags.force, async (claim) => {
      const made = await buildJob(
        design,
        loadExtras(flags.design, design, loaded.locate),
        nesterFor(flags.seconds, design.units),
      );
      stopOnErrors(loaded, made.problems);
      await writeFolder(claim, made.files, flags.verify ? proveWritten : undefined);
      return made;
    });
    const bills = billsOfAll(
      job.requests,
      job.sheets.map(({ nested }) => nested),
    );
    if (flags.json)
      printJson({
        folder: flags.out,
        files: [...job.files.keys()],
        sheets: job.sheets.map(({ nested }) => nested),
        cost: job.cost,
        bills,
        problems: [...loaded.problems, ...job.problems.map(loaded.locate)],
      });
    else for (const line of [...sheetTable(job, columns()), ...untimedLines(job), ...billLines(bills)]) print(line);
    say(
      shade(
        `${job.files.size} files in ${flags.out}${flags.verify ? ', read back and proven' : ', not proven'}`,
        'green',
      ),
    );
    say(['Colours in DXF and SVG:', ...operationKey(design.colours)].join('\n  '));
    sayParagraph(cautionsShort);
  },
};
