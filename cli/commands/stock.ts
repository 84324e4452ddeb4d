import type { CommandModule } from 'yargs';
import {
  type Design,
  type Diagnostic,
  diagnosticText,
  formatArea,
  formatLength,
  hasError,
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
import { exitCode } from '../exit.js';
import { loadExtras } from '../extras.js';
import { applyFlags, designArgument, type DesignArguments, designFlags, sizeFlag } from '../flags.js';
import { nesterFor } from '../nester.js';
import { reportProblems, stopOnErrors } from '../report.js';
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

const noSize: Diagnostic = {
  code: 'no-size-fits',
  severity: 'error',
  message: 'no size fits every part',
  remedy: 'try a larger one',
};

/** What each column means, for the size that the table starts with. */
const legend = [
  'sheets: number bought; a roll counts once per length. bought: their area.',
  'waste: share of that area that is neither in parts nor in the largest piece left on each sheet.',
  'largest piece left: the biggest uncut rectangle.',
];

/** Materials of the stock that state no price. */
const unpriced = ({ stock }: Design): string[] => [
  ...new Set(stock.filter(({ price }) => price === 0).map(({ material }) => material)),
];

function printTrials(trials: readonly Trial[], best: Trial | null, design: Design): void {
  const unit = design.units;
  const without = unpriced(design);
  const noPrice = without.length === new Set(design.stock.map(({ material }) => material)).size;
  const rows = trials.map(({ name, result }) => [
    name,
    result.unplaced.length > 0 ? `${result.sheets}, does not fit: ${result.unplaced.join(' ')}` : String(result.sheets),
    noPrice ? 'no prices' : result.cost.toFixed(2),
    formatArea(result.boughtM2 * 1e6, unit),
    `${(100 * result.waste).toFixed(1)} %`,
    result.offcut ? `${formatLength(result.offcut.width, unit)} x ${formatLength(result.offcut.height, unit)}` : 'none',
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
  for (const line of legend) say(line);
  if (noPrice) say('The stock has no prices, so the size with the smallest area bought is recommended.');
  else if (without.length > 0) say(`The cost leaves out what has no price in stock: ${without.join(', ')}.`);
  if (!noPrice && trials.length > 1)
    say('Prices of other sizes are scaled by area from those in the design; enter real ones before you buy.');
}

export const stockCommand: CommandModule<object, StockArguments> = {
  command: 'stock <design>',
  describe: 'compare sheet sizes: sheets, cost, waste and offcuts',
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
          describe: 'a sheet size to compare, such as 1525x1525; can be repeated',
        },
      })
      .example(
        '$0 stock press-house.yaml --try 2440x1220 --try 1525x1525',
        'compares two sizes with that of the design',
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
    const found: Diagnostic[] = [];
    const nester = nesterFor(flags.seconds, design.units);
    for (const [i, one] of designs.entries()) {
      const { result, bills, problems } = await resultOf(one.design, extras, nester, designs.length - 1 - i);
      // each once, however many sizes it holds for
      found.push(
        ...problems.filter((problem) => !found.some((known) => diagnosticText(known) === diagnosticText(problem))),
      );
      if (hasError(problems)) stopOnErrors(loaded, found);
      trials.push({ name: one.name, result, bills });
    }
    stopOnErrors(loaded, found);
    const best = recommend(trials);
    const located = [...loaded.problems, ...found.map(loaded.locate)];
    if (flags.json)
      printJson({ trials, recommended: best?.name ?? null, problems: best ? located : [...located, noSize] });
    else printTrials(trials, best, design);
    if (best) return;
    if (!flags.json) reportProblems([noSize]);
    process.exitCode = exitCode.cannotBuild;
  },
};
