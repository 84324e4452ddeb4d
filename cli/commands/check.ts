import type { CommandModule } from 'yargs';
import {
  cautionsShort,
  countedStock,
  hasError,
  keyValues,
  nestPrepared,
  prepare,
  quickTotals,
  standValues,
  stockProblems,
  valueIn,
} from '../../lib/index.js';
import { columns, print, printJson, sayParagraph } from '../console.js';
import { loadDesign } from '../design-file.js';
import { exitCode } from '../exit.js';
import { loadExtras } from '../extras.js';
import { applyFlags, designArgument, type DesignArguments, designFlags } from '../flags.js';
import { nesterFor } from '../nester.js';
import { reportProblems } from '../report.js';
import { table } from '../table.js';
import { totalsLines } from '../totals-lines.js';

type CheckArguments = DesignArguments & { readonly time: boolean };

export const checkCommand: CommandModule<object, CheckArguments> = {
  command: 'check <design>',
  describe: 'print the key values, sheets, cost and every problem of a design; writes nothing',
  builder: (yargs) =>
    yargs
      .positional('design', designArgument)
      .options({
        ...designFlags,
        time: {
          type: 'boolean',
          default: false,
          describe: 'also plan how long the machine takes (a second or two longer)',
        },
      })
      .example('$0 check press-house.yaml', 'key values, sheets, cost and problems')
      .example('$0 check press-house.yaml --json', 'the same, for use by a program'),
  handler: async (flags) => {
    const loaded = loadDesign(flags.design);
    const design = applyFlags(loaded.design, flags);
    const job = prepare(design, loadExtras(flags.design, design, loaded.locate));
    const found = [...job.problems, ...stockProblems(job)];
    const counted = countedStock(job);
    // where stock is counted, only the nest that `cut` would make shows whether it is enough
    if (!hasError(found) && counted.requests.length > 0)
      found.push(...(await nestPrepared(counted, nesterFor(flags.seconds, design.units))).problems);
    const totals = hasError(found) ? null : await quickTotals(job, flags.time);
    const problems = [...loaded.problems, ...found.map(loaded.locate)];
    const values = [
      ...keyValues(job.design, job.dish, job.parts, job.cleatStart, job.assembly),
      ...standValues(job).map((value) => valueIn(value, design.units)),
    ];
    if (flags.json) printJson({ values, totals, problems });
    else {
      const rows = values.map(({ label, value, note }) => [label, value, note ?? '']);
      for (const line of table([{ head: design.name }, { head: 'value', right: true }, { head: '' }], rows, columns()))
        print(line);
      if (totals) {
        print('From a quick nest without a search; `cut` searches for a better one:');
        for (const line of totalsLines(totals, design.units, totals.minutes)) print(line);
      }
    }
    reportProblems(problems);
    sayParagraph(cautionsShort);
    process.exitCode = hasError(problems) ? exitCode.cannotBuild : exitCode.done;
  },
};
