import type { CommandModule } from 'yargs';
import {
  adviceOf,
  type Burn,
  adviceRows,
  burnHeads,
  burnNotes,
  burnOf,
  burnRows,
  careRows,
  cautionsShort,
  forecastOf,
  formatLength,
  prepare,
  summaryRows,
} from '../../lib/index.js';
import { columns, print, printJson, say } from '../console.js';
import { loadDesign } from '../design-file.js';
import { exitCode, stop } from '../exit.js';
import { applyFlags, type DesignArguments, designFlags } from '../flags.js';
import { stopOnErrors } from '../report.js';
import { summaryCells } from '../summary-cells.js';
import { table } from '../table.js';

function printBurn(burn: Burn, length: (mm: number) => string): void {
  print('');
  const heads = burnHeads.map((head, i) => ({ head, right: i > 0 }));
  for (const line of table(heads, burnRows(burn, length), columns())) print(line);
  for (const note of burnNotes(burn)) print(note);
}

export const opticsCommand: CommandModule<object, DesignArguments> = {
  command: 'optics <design>',
  describe: 'forecast the spot, power, heat and aim of the dish as it will be built',
  builder: (yargs) =>
    yargs
      .positional('design', { type: 'string', demandOption: true, describe: 'the design file' })
      .options(designFlags)
      .example('$0 optics press-house.yaml', 'results with their errors, losses, and what would do better'),
  handler: (flags) => {
    const loaded = loadDesign(flags.design);
    const design = applyFlags(loaded.design, flags);
    // outlines of one’s own have no part in it
    const job = prepare({ ...design, extra: [] });
    const { forecast, problems } = forecastOf(job);
    stopOnErrors(loaded, [...job.problems, ...problems]);
    if (forecast === null)
      throw stop(
        exitCode.cannotBuild,
        'no-vessel',
        'the design names no vessel',
        'add `vessel: { diameter: … }` for a forecast',
      );
    const advice = adviceOf(job);
    const burn = burnOf(job)?.burn;
    if (flags.json)
      printJson({
        forecast,
        advice,
        burn,
        problems: [...loaded.problems, ...[...job.problems, ...problems].map(loaded.locate)],
      });
    else {
      const length = (mm: number) => formatLength(mm, design.units);
      const heads = [
        { head: design.name },
        { head: 'value', right: true },
        { head: 'error', right: true },
        { head: '' },
      ];
      const rows = summaryRows(forecast, length).map((row) => summaryCells(row, length));
      for (const line of table(heads, rows, columns())) print(line);
      print('');
      const byCare = careRows(forecast).map(({ label, cells: each }) => [
        label,
        ...each.map((one) => summaryCells(one, length)[1] ?? ''),
      ]);
      const careHeads = ['good', 'usual', 'poor'].map((head) => ({ head, right: true }));
      for (const line of table([{ head: 'by care of the work' }, ...careHeads], byCare, columns())) print(line);
      if (advice) {
        print('');
        const better = adviceRows(advice, length).map((row) => summaryCells(row, length));
        for (const line of table([{ head: 'advice' }, ...heads.slice(1)], better, columns())) print(line);
      }
      if (burn) printBurn(burn, length);
      print('');
      for (const { quantity, assumption, source } of forecast.assumptions)
        print(`${quantity}: ${assumption} (${source})`);
    }
    say(cautionsShort);
  },
};
