import { basename } from 'node:path';
import type { CommandModule } from 'yargs';
import { compareOf, hasError, litOf, logTemplate, type SpotWidth } from '../../lib/index.js';
import { columns, print, printJson } from '../console.js';
import { loadDesign, readText } from '../design-file.js';
import { exitCode, Stop, stop } from '../exit.js';
import { applyFlags, type DesignArguments, designFlags } from '../flags.js';
import { writeFileAt } from '../plain-output.js';
import { reportProblems } from '../report.js';
import { summaryCells } from '../summary-cells.js';
import { table } from '../table.js';
import { LengthError, parseLength } from '../../lib/index.js';

type CompareArguments = DesignArguments & {
  readonly log: string | undefined;
  readonly template: string | undefined;
  readonly plot: string | undefined;
  readonly spot: readonly string[] | undefined;
  readonly force: boolean;
};

/** `50=120 mm`: the width of the spot at half of its peak. @throws Stop */
function spotWidth(text: string, unit: DesignArguments['units'] & string): SpotWidth {
  const [, percent, rest = ''] = /^(\d+(?:\.\d+)?)\s*%?\s*=\s*(.+)$/.exec(text) ?? [];
  const share = Number(percent) / 100;
  const remedy = 'write it as 50=120: the brightness in per cent of the peak (1 to 99), then the full width there';
  if (!(share >= 0.01 && share <= 0.99))
    throw stop(exitCode.wrongInput, 'usage', `--spot ${text} is not a width`, remedy);
  try {
    const width = parseLength(rest, unit);
    if (width > 0) return { share, width };
  } catch (error) {
    if (!(error instanceof LengthError)) throw error;
    throw stop(exitCode.wrongInput, 'usage', `--spot ${text}: ${error.message}`, error.remedy);
  }
  throw stop(exitCode.wrongInput, 'usage', `--spot ${text} has no width`, remedy);
}

export const compareCommand: CommandModule<object, CompareArguments> = {
  command: 'compare <design> [log]',
  describe: 'compare the forecast with the log of a test, and say what could explain the difference',
  builder: (yargs) =>
    yargs
      .positional('design', {
        type: 'string',
        demandOption: true,
        describe: 'the design file, with the load as tested',
      })
      .positional('log', { type: 'string', describe: 'the log, as CSV' })
      .options({
        ...designFlags,
        template: { type: 'string', requiresArg: true, describe: 'only write an empty log to fill in' },
        plot: { type: 'string', requiresArg: true, describe: 'write a plot of forecast and measurement, as SVG' },
        spot: {
          type: 'string',
          array: true,
          requiresArg: true,
          describe: 'width of the spot on a photo at a percentage of its peak brightness, such as 50=120',
        },
        force: { type: 'boolean', default: false, describe: 'replace an existing plot or log' },
      })
      .example('$0 compare my-dish.yaml --template my-log.csv', 'a log to fill in')
      .example('$0 compare my-dish.yaml my-log.csv --plot my-test.svg', 'results and a plot'),
  handler: (flags) => {
    if (flags.template !== undefined) {
      writeFileAt(flags.template, logTemplate, flags.force);
      return;
    }
    if (flags.log === undefined)
      throw stop(exitCode.wrongInput, 'usage', 'no log is given', 'give one, or write one with --template');
    const loaded = loadDesign(flags.design);
    const design = applyFlags(loaded.design, flags);
    const widths = (flags.spot ?? []).map((text) => spotWidth(text, design.units));
    const text = readText(
      flags.log,
      'give the path of a log; `dishwright compare <design> --template <log>` writes one',
    );
    const file = basename(flags.log);
    const { comparison, rows, plot, problems: found } = compareOf(litOf(design), text, file, widths);
    const problems = [
      ...loaded.problems,
      ...found.map((problem) => (problem.place?.file === undefined ? loaded.locate(problem) : problem)),
    ];
    if (hasError(problems)) throw new Stop(exitCode.wrongInput, problems, 'nothing was compared');
    if (plot && flags.plot !== undefined) writeFileAt(flags.plot, plot.svg, flags.force);
    reportProblems(problems);
    if (flags.json) {
      printJson({ comparison, problems });
      return;
    }
    const heads = [{ head: design.name }, { head: 'value', right: true }, { head: 'error', right: true }, { head: '' }];
    for (const line of table(
      heads,
      rows.map((row) => summaryCells(row, design.units)),
      columns(),
    ))
      print(line);
    print('');
    const points = (comparison?.cooking.points ?? []).map(({ line, differenceK, powerW, standardisedW, against }) => [
      String(line),
      `${differenceK.toFixed(1)} K`,
      `${powerW.toFixed(0)} W`,
      `${standardisedW.toFixed(0)} W`,
      against.join('; '),
    ]);
    const intervals = ['above the air', 'power', 'at 700 W/m²'].map((head) => ({ head, right: true }));
    for (const line of table(
      [{ head: 'line', right: true }, ...intervals, { head: 'does not count' }],
      points,
      columns(),
    ))
      print(line);
  },
};
