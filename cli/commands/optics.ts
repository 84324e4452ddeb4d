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
  type Design,
  type Diagnostic,
  forecastOf,
  formatLength,
  type LengthUnit,
  litOf,
  prepare,
  proseIn,
  reachIn,
  summaryRows,
} from '../../lib/index.js';
import { columns, print, printJson, sayParagraph } from '../console.js';
import { type LoadedDesign, loadForLight } from '../design-file.js';
import { exitCode, Stop } from '../exit.js';
import { applyFlags, designArgument, type DesignArguments, designFlags } from '../flags.js';
import { reportProblems } from '../report.js';
import { summaryCells } from '../summary-cells.js';
import { table } from '../table.js';

function printBurn(burn: Burn, units: LengthUnit): void {
  print('');
  const heads = burnHeads.map((head, i) => ({ head, right: i > 0 }));
  for (const line of table(heads, burnRows(burn, reachIn(units)), columns())) print(line);
  for (const note of burnNotes(burn)) print(proseIn(note, units));
}

/** What stands in the way of building it; parts are not even tried where the file itself holds faults. */
function workshopProblems(loaded: LoadedDesign, design: Design): readonly Diagnostic[] {
  if (loaded.problems.some(({ severity }) => severity === 'error')) return [];
  // outlines of the user's own have no part in it
  return prepare({ ...design, extra: [] }).problems;
}

/** Why no light can be traced. */
function unlit(loaded: LoadedDesign, problems: readonly Diagnostic[]): Stop {
  return new Stop(
    exitCode.cannotBuild,
    [...loaded.problems, ...problems.map(loaded.locate)],
    'the light of this design cannot be traced',
  );
}

export const opticsCommand: CommandModule<object, DesignArguments> = {
  command: 'optics <design>',
  describe: 'forecast the spot, power, heat and aim of the dish as it will be built',
  builder: (yargs) =>
    yargs
      .positional('design', designArgument)
      .options(designFlags)
      .example('$0 optics press-house.yaml', 'results with their uncertainty, losses, and possible improvements'),
  handler: (flags) => {
    const loaded = loadForLight(flags.design);
    const design = applyFlags(loaded.design, flags);
    const lit = litOf(design);
    const { forecast, problems } = forecastOf(lit);
    if (forecast === null) throw unlit(loaded, problems);
    const advice = adviceOf(lit);
    const burn = burnOf(lit).burn;
    const all = [...loaded.problems, ...[...workshopProblems(loaded, design), ...problems].map(loaded.locate)];
    if (flags.json)
      printJson({
        forecast,
        advice,
        burn,
        problems: all,
      });
    else {
      const length = (mm: number) => formatLength(mm, design.units);
      const heads = [
        { head: design.name },
        { head: 'value', right: true },
        { head: 'error', right: true },
        { head: '' },
      ];
      const rows = summaryRows(forecast, length).map((row) => summaryCells(row, design.units));
      for (const line of table(heads, rows, columns())) print(line);
      print('');
      const byCare = careRows(forecast).map(({ label, cells: each }) => [
        proseIn(label, design.units),
        ...each.map((one) => summaryCells(one, design.units)[1] ?? ''),
      ]);
      const careHeads = ['good', 'usual', 'poor'].map((head) => ({ head, right: true }));
      for (const line of table([{ head: 'by workmanship' }, ...careHeads], byCare, columns())) print(line);
      if (advice) {
        print('');
        const better = adviceRows(advice, length).map((row) => summaryCells(row, design.units));
        for (const line of table([{ head: 'advice' }, ...heads.slice(1)], better, columns())) print(line);
      }
      printBurn(burn, design.units);
      print('');
      for (const { quantity, assumption, source } of forecast.assumptions)
        print(`${quantity}: ${proseIn(assumption, design.units)} (${source})`);
    }
    // what the workshop cannot build is told after what the sun would do with it, and does not stop it
    reportProblems(all);
    sayParagraph(cautionsShort);
  },
};
