import type { CommandModule } from 'yargs';
import {
  type Design,
  type Diagnostic,
  formatLength,
  nestAll,
  type Nester,
  prepare,
  type StockResult,
  stockResult,
  withSheetSize,
} from '../../lib/index.js';
import type { GroupBill } from '../../lib/nest/index.js';
import { billLines, billsOfAll } from '../bill-lines.js';
import { columns, print, printJson, say } from '../console.js';
import { loadDesign } from '../design-file.js';
import { exitCode, stop } from '../exit.js';
import { loadExtras } from '../extras.js';
import { applyFlags, designArgument, type DesignArguments, designFlags, sizeFlag } from '../flags.js';
import { nesterFor } from '../nester.js';
import { stopOnErrors } from '../report.js';
import { table } from '../table.js';

type StockArguments = DesignArguments & { readonly try: readonly string[] };

interface Trial {
  readonly name: string;
  readonly result: StockResult;
  readonly bills: readonly GroupBill[];
}

async function resultOf(
  design: Design,
  extras: ReadonlyMap<string, string>,
  nester: Nester,
  trialsLeft: number,
): Promise<Omit<Trial, 'name'> & { readonly problems: readonly Diagnostic[] }> {
  const job = prepare(design, extras);
  const layouts = await nestAll(job.requests, nester, trialsLeft);
  const parts = job.requests.flatMap((request) => request.parts);
  const left = layouts.some(({ unplaced }) => unplaced.length > 0);
  const sheets = layouts.flatMap((layout) => layout.sheets);
  return {
    result: stockResult(layouts, parts),
    bills: left ? [] : billsOfAll(job.requests, sheets),
    problems: job.problems,
  };
}

/** The cheapest that takes every part; without prices the least area bought. */
function recommend(trials: readonly Trial[]): Trial | null {
  const whole = trials.filter(({ result }) => result.unplaced.length === 0);
  const priced = whole.some(({ result }) => result.cost > 0);
  const weight = ({ result }: Trial) => (priced ? result.cost : result.boughtM2);
  return whole.reduce<Trial | null>((best, trial) => (best && weight(best) <= weight(trial) ? best : trial), null);
}

export const stockCommand: CommandModule<object, StockArguments> = {
  command: 'stock <design>',
  describe: 'compare sheet sizes: sheets, cost, waste and what is left',
  builder: (yargs) =>
    yargs
      .positional('design', designArgument)
      .options({
        ...designFlags,
        try: {
          type: 'string',
          array: true,
          nargs: 1,
          default: [],
          describe: 'a sheet size to compare, such as 1525x1525; may be given again',
        },
      })
      .example(
        '$0 stock press-house.yaml --try 2440x1220 --try 1525x1525',
        'two sizes compared with that of the design',
      ),
  handler: async (flags) => {
    const loaded = loadDesign(flags.design);
    const design = applyFlags(loaded.design, flags);
    const extras = loadExtras(flags.design, design, loaded.locate);
    const sizes = flags.try.map((text) => ({ name: text, size: sizeFlag('try', text, design.units) }));
    const designs = [
      { name: 'as designed', design },
      ...sizes.map(({ name, size }) => ({ name, design: withSheetSize(design, size) })),
    ];
    const trials: Trial[] = [];
    const nester = nesterFor(flags.seconds);
    for (const [i, one] of designs.entries()) {
      const { result, bills, problems } = await resultOf(one.design, extras, nester, designs.length - 1 - i);
      stopOnErrors(loaded, problems);
      trials.push({ name: one.name, result, bills });
    }
    const best = recommend(trials);
    if (flags.json) printJson({ trials, recommended: best?.name ?? null });
    else {
      const unit = design.units;
      const rows = trials.map(({ name, result }) => [
        name,
        result.unplaced.length > 0
          ? `${result.sheets}, does not fit: ${result.unplaced.join(' ')}`
          : String(result.sheets),
        result.cost.toFixed(2),
        `${result.boughtM2.toFixed(2)} m²`,
        `${(100 * result.waste).toFixed(1)} %`,
        result.offcut
          ? `${formatLength(result.offcut.width, unit)} x ${formatLength(result.offcut.height, unit)}`
          : 'none',
      ]);
      const heads = [
        { head: 'sheets of' },
        { head: 'sheets', right: true },
        { head: 'cost', right: true },
        { head: 'bought', right: true },
        { head: 'waste', right: true },
        { head: 'largest piece left' },
      ];
      for (const line of table(heads, rows, columns())) print(line);
      if (best) for (const line of [`Recommended: ${best.name}.`, ...billLines(best.bills)]) print(line);
      say('Prices of other sizes are scaled by area from the design’s own; put in real ones before you buy.');
    }
    if (!best) throw stop(exitCode.cannotBuild, 'no-size-fits', 'no size takes every part', 'try a larger one');
  },
};
