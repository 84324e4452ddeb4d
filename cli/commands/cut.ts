import { join } from 'node:path';
import type { CommandModule } from 'yargs';
import { buildJob, cautionsShort, jobTotals, operationKey } from '../../lib/index.js';
import { billLines, billsOfAll } from '../bill-lines.js';
import { withClaim } from '../claim.js';
import { columns, print, printJson, say, sayParagraph, shade } from '../console.js';
import { loadDesign } from '../design-file.js';
import { loadExtras } from '../extras.js';
import { applyFlags, designArgument, type DesignArguments, outFlags } from '../flags.js';
import { writeFolder } from '../folder.js';
import { nesterFor } from '../nester.js';
import { openFile } from '../open.js';
import { proveWritten } from '../prove-written.js';
import { stopOnErrors } from '../report.js';
import { sheetTable, untimedLines } from '../sheet-table.js';
import { totalsLines } from '../totals-lines.js';

type CutArguments = DesignArguments & {
  readonly out: string;
  readonly force: boolean;
  readonly verify: boolean;
  readonly open: boolean;
};

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
          describe: 'read the files back and prove them (--no-verify skips this)',
        },
      })
      .options({ open: { type: 'boolean', default: false, describe: 'open the book afterwards' } })
      .example('$0 cut press-house.yaml -o out/press-house --open', 'everything, then open the book')
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
    const totals = jobTotals(job);
    if (flags.json)
      printJson({
        folder: flags.out,
        files: [...job.files.keys()],
        sheets: job.sheets.map(({ nested }) => nested),
        cost: job.cost,
        totals,
        bills,
        problems: [...loaded.problems, ...job.problems.map(loaded.locate)],
      });
    else
      for (const line of [
        ...sheetTable(job, columns()),
        ...untimedLines(job),
        ...billLines(bills),
        ...totalsLines(totals, design.units, totals.minutes),
      ])
        print(line);
    say(
      shade(
        `${job.files.size} files in ${flags.out}${flags.verify ? ', read back and proven' : ', not proven'}`,
        'green',
      ),
    );
    say(['Colours in DXF and SVG:', ...operationKey(design.colours)].join('\n  '));
    sayParagraph(cautionsShort);
    const book = join(flags.out, 'book.html');
    say(`Open first: ${book}, the build book with parts, sheets, shopping list and steps.`);
    const unopened = flags.open ? await openFile(book) : null;
    if (unopened !== null) say(`The book could not be opened from here (${unopened}): open it yourself.`);
  },
};
