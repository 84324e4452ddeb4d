import { basename, dirname, join, relative, resolve } from 'node:path';
import process from 'node:process';
import type { CommandModule } from 'yargs';
import type { Diagnostic } from '../../lib/diagnostic/index.js';
import {
  inInches,
  inWords,
  type LengthUnit,
  type Answer,
  answerOf,
  checkLineOf,
  buildCoupons,
  calibrationProblems,
  cautionsShort,
  machineFileOf,
  prepare,
  lineText,
  printerScale,
  readReadings,
  withPrint,
  withValues,
} from '../../lib/index.js';
import { withClaim } from '../claim.js';
import { columns, print, printJson, say, sayParagraph, shade } from '../console.js';
import { loadDesign, readText } from '../design-file.js';
import { exitCode, Stop, stop } from '../exit.js';
import { isBeside } from '../extras.js';
import { applyFlags, designArgument, type DesignArguments, designFlags } from '../flags.js';
import { writeFolder } from '../folder.js';
import { nesterFor } from '../nester.js';
import { writeFileAt } from '../plain-output.js';
import { proveWritten } from '../prove-written.js';
import { reportProblems, stopOnErrors } from '../report.js';
import { sheetTable } from '../sheet-table.js';
import { table } from '../table.js';

interface CouponArguments extends DesignArguments {
  readonly out: string | undefined;
  readonly force: boolean;
  readonly material: readonly string[] | undefined;
  readonly measured: string | undefined;
}

/** The design as the measuring sheet names it, which lies in the folder of the coupon. */
function designFrom(out: string, design: string): string {
  const path = relative(resolve(out), resolve(design)).replaceAll('\\', '/');
  return /^[\w./-]+$/.test(path) ? path : `"${path}"`;
}

/** Writes the coupons of a design. */
async function writeCoupons(flags: CouponArguments, out: string): Promise<void> {
  const loaded = loadDesign(flags.design);
  const design = applyFlags(loaded.design, flags);
  const known = Object.keys(design.materials);
  for (const material of flags.material ?? [])
    if (!known.includes(material))
      throw stop(
        exitCode.wrongInput,
        'unknown-material',
        `--material ${material} is not in materials`,
        `known: ${known.join(', ')}`,
      );
  const job = await withClaim(out, flags.force, async (claim) => {
    const made = await buildCoupons(
      design,
      flags.material ?? [],
      designFrom(out, flags.design),
      nesterFor(flags.seconds, loaded.design.units),
    );
    stopOnErrors(loaded, made.problems);
    if (made.parts.length === 0)
      throw stop(
        exitCode.cannotBuild,
        'usage',
        'no part of this dish is cut by machine from the materials given',
        'set process.kind, or give another --material',
      );
    await writeFolder(claim, made.files, proveWritten);
    return made;
  });
  if (flags.json) printJson({ folder: out, files: [...job.files.keys()], problems: job.problems.map(loaded.locate) });
  else for (const line of sheetTable(job, columns())) print(line);
  say(shade(`${job.files.size} files in ${out}, read back and proven`, 'green'));
  for (const name of job.files.keys())
    if (name.startsWith('measuring-'))
      say(`print ${join(out, name)}, cut, measure, and fill in the file that it names`);
  sayParagraph(cautionsShort);
}

const signed = (value: number, digits: number): string => `${value < 0 ? '' : '+'}${value.toFixed(digits)}`;

/** As callipers have it: thousandths of a millimetre, or ten-thousandths of an inch. */
const calliper = (mm: number, units: LengthUnit): string =>
  inInches(units) ? `${(mm / 25.4).toFixed(4)} in` : `${mm.toFixed(3)} mm`;

/** What the readings come to, a row each. */
function answerRows({ solved, fit }: Answer, units: LengthUnit): string[][] {
  const { width, bore, drilled, depth, scaleX, scaleY, lean } = solved;
  const length = (name: string, estimate: typeof bore, note: string): string[][] =>
    estimate === null
      ? []
      : [[name, calliper(estimate.value, units), `± ${calliper(2 * estimate.uncertainty, units)}`, note]];
  const share = (name: string, value: number, uncertainty: number, note: string): string[] => [
    name,
    `${signed(value * 100, 3)} %`,
    `± ${(200 * uncertainty).toFixed(3)} %`,
    note,
  ];
  return [
    ...length('width of the cut', width, 'corrected'),
    share('length along X', scaleX.value - 1, scaleX.uncertainty, 'corrected'),
    share('length along Y', scaleY.value - 1, scaleY.uncertainty, 'corrected'),
    share('Y leans towards +X', lean.value, lean.uncertainty, 'corrected'),
    ...length('bored holes wider by', bore, 'corrected'),
    ...length('drilled holes wider by', drilled, 'not corrected: use another bit'),
    ...length('blind holes deeper by', depth, 'not corrected: set zero more carefully'),
    ...length('play by hand', fit, 'the default of rib.fit'),
  ];
}

const tabWords = {
  held: null,
  moved:
    'A part came loose: make the tabs wider or higher by half (router.tabs.width, router.tabs.height), and try again.',
  'too-strong': 'The tabs would not break by hand: make them a third lower (router.tabs.height), and try again.',
} as const;

/** The file that holds the machine's keys, and whether it is one of its own. */
function target(designFile: string): { readonly path: string; readonly own: boolean; readonly text: string } {
  const text = readText(designFile);
  const machine = machineFileOf(text);
  if (machine === null) return { path: designFile, own: false, text };
  if (!isBeside(designFile, machine))
    throw stop(exitCode.wrongInput, 'outside-folder', `"${machine}" is outside the folder of the design file`);
  const path = join(dirname(designFile), machine);
  return { path, own: true, text: readText(path, 'the design names it as its machine') };
}

/** The text of a file with values in it. @throws Stop where there is no place for them */
function textOf(written: ReturnType<typeof withValues>, path: string): string {
  if (written.kind === 'text') return written.text;
  throw stop(exitCode.wrongInput, 'calibration-form', `${path}: ${written.message}`, written.remedy);
}

/** Takes filled-in readings into the machine file, and the printer's into the design. */
function takeReadings(flags: CouponArguments, file: string): void {
  const before = loadDesign(flags.design);
  const read = readReadings(readText(file, 'give the file that you filled in at the bench'), basename(file));
  const worded = (problem: Diagnostic): Diagnostic => inWords(problem, before.design.units);
  if (read.kind === 'refused') throw new Stop(exitCode.wrongInput, read.problems.map(worded), 'nothing was written');
  const answered = answerOf(read.readings);
  if (answered.kind === 'refused') {
    const placed = answered.problems.map((problem) => ({
      ...worded(problem),
      place: read.locate(String(problem.place?.path.at(-1) ?? 'readings')) ?? problem.place ?? { path: [] },
    }));
    throw new Stop(exitCode.wrongInput, placed, 'nothing was written');
  }
  const { answer } = answered;
  const into = target(flags.design);
  const texts = new Map([[into.path, textOf(withValues(into.text, into.own, answer), into.path)]]);
  const { print: line } = answer;
  const { units } = before.design;
  const measured = line === null ? null : printerScale(line, before.design.print.measured, units);
  if (measured !== null) {
    const design = texts.get(flags.design) ?? readText(flags.design);
    texts.set(flags.design, textOf(withPrint(design, measured, units), flags.design));
  }
  // all are there before any is written
  for (const [path, text] of texts) writeFileAt(path, text, true);
  const loaded = loadDesign(flags.design);
  const problems = calibrationProblems(prepare({ ...loaded.design, extra: [] })).map(loaded.locate);
  if (flags.json)
    printJson({
      file: into.path,
      axes: answer.axes,
      material: answer.material,
      values: answer.values,
      print: measured,
      problems,
    });
  else {
    const heads = [
      { head: answer.material },
      { head: 'value', right: true },
      { head: '95 %', right: true },
      { head: '' },
    ];
    for (const line of table(heads, answerRows(answer, loaded.design.units), columns())) print(line);
  }
  reportProblems(problems);
  const words = answer.tabs === null ? null : tabWords[answer.tabs];
  if (words !== null) say(words);
  say(shade(`written to ${into.path}, under ${into.own ? '' : 'machine.'}calibration`, 'green'));
  if (measured !== null)
    say(
      shade(
        `the printer prints ${checkLineOf(units).name} as ${lineText(measured, units)}: written to ${flags.design}, as print.measured`,
        'green',
      ),
    );
}

export const couponCommand: CommandModule<object, CouponArguments> = {
  command: 'coupon <design>',
  describe: 'write a test sheet for the machine, or read in what was measured on it',
  builder: (yargs) =>
    yargs
      .positional('design', designArgument)
      .options({
        ...designFlags,
        out: { alias: 'o', type: 'string', requiresArg: true, describe: 'folder to write' },
        force: {
          type: 'boolean',
          default: false,
          describe: 'replace earlier output even if it has been changed since',
        },
        material: { type: 'string', array: true, requiresArg: true, describe: 'only for this material' },
        measured: {
          type: 'string',
          requiresArg: true,
          describe: 'file with the readings; the result is written to the machine file',
        },
      })
      .example('$0 coupon press-house.yaml -o out/coupon', 'a test sheet for each material')
      .example('$0 coupon press-house.yaml --measured out/coupon/measured-birch12.yaml', 'what the test sheet showed'),
  handler: async (flags) => {
    if (flags.measured !== undefined) {
      if (flags.out !== undefined)
        throw stop(
          exitCode.wrongInput,
          'usage',
          '-o is for a new coupon, --measured for a finished one',
          'use one of them',
        );
      takeReadings(flags, flags.measured);
    } else if (flags.out === undefined)
      throw stop(exitCode.wrongInput, 'usage', 'no folder is given', 'add -o FOLDER, or --measured FILE');
    else await writeCoupons(flags, flags.out);
    process.exitCode = exitCode.done;
  },
};
