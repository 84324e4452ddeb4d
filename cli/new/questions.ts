/** The questions that `new` asks on a terminal. */
import {
  type Diagnostic,
  formatLength,
  LengthError,
  nearestWord,
  parseLength,
  parseUsualSize,
  type ProcessKind,
  processKinds,
} from '../../lib/index.js';
import {
  type Answers,
  parseHeats,
  parseMaterial,
  ribRange,
  unitOfText,
  usualFocalLength,
  usualRibs,
  usualSheet,
  usualThickness,
} from './answers.js';
import { Trials } from './trial.js';

/** Puts a question and gives what was typed, without the line's end. */
export type Ask = (question: string) => Promise<string>;

/** Asks until the answer can be read; an empty answer takes `usual`. */
export async function until<T>(
  ask: Ask,
  report: (line: string) => void,
  question: string,
  usual: string,
  read: (text: string) => T,
) {
  for (;;) {
    const text = (await ask(`${question} [${usual}]: `)).trim();
    try {
      return read(text === '' ? usual : text);
    } catch (error) {
      if (!(error instanceof LengthError)) throw error;
      report(`  ${error.message}; ${error.remedy}`);
    }
  }
}

function within(mm: number, min: number, max: number, what: string): number {
  if (mm >= min && mm <= max) return mm;
  throw new LengthError(
    `${what} of ${formatLength(mm, 'mm')} is beyond reason`,
    `it must be from ${formatLength(min, 'mm')} to ${formatLength(max, 'mm')}`,
  );
}

/** An answer for which `check` would refuse the design, with what would do. */
function refuse(problem: Diagnostic, remedy = problem.remedy): never {
  throw new LengthError(problem.message, remedy ?? 'answer otherwise');
}

/**
 * Takes a number of ribs with which there is a design, as far as the other answers go.
 * @param answers with a number of ribs that would do
 */
function readRibs(text: string, answers: Answers, trials: Trials): number {
  const ribs = Number(text);
  const { min, max } = ribRange;
  if (!Number.isInteger(ribs) || ribs < min || ribs > max)
    throw new LengthError(`"${text}" is not a number of ribs`, `answer ${min} to ${max}`);
  const problem = trials.obstacle({ ...answers, ribs });
  if (problem === null) return ribs;
  const would = trials.ribsNear(answers, ribs) ?? answers.ribs;
  return refuse(problem, `${would} ribs would do, or another thickness`);
}

/** Takes sheets that all parts fit on. */
function readSheet(text: string, answers: Answers, trials: Trials): Answers['sheet'] {
  const sheet = parseUsualSize(text, answers.units);
  const problem = trials.obstacle({ ...answers, sheet });
  return problem === null ? sheet : refuse(problem);
}

function readMachine(text: string): ProcessKind {
  const kind = processKinds.find((known) => known === text.toLowerCase()) ?? nearestWord(text, processKinds);
  const known = processKinds.find((word) => word === kind);
  if (known === undefined) throw new LengthError(`"${text}" is not a machine here`, 'answer router, laser or hand');
  return known;
}

/**
 * Asks for what decides a design. What cannot be built is refused at the question whose answer makes it so.
 * @param report takes what is wrong with an answer
 */
export async function askQuestions(ask: Ask, report: (line: string) => void): Promise<Answers> {
  const trials = new Trials();
  const { aperture, units } = await until(ask, report, 'Aperture: diameter across the rib ends', '1200 mm', (text) => ({
    aperture: within(parseLength(text, 'mm'), 50, 20_000, 'the aperture'),
    units: unitOfText(text),
  }));
  const usualF = usualFocalLength(aperture, units);
  const aim = await until(
    ask,
    report,
    'Focal length, or what to heat, such as 5 l in 220 mm',
    formatLength(usualF, units),
    (text) => {
      const heats = parseHeats(text, units);
      if (heats) {
        within(heats.diameter, 10, aperture, 'the vessel');
        return { heats, focalLength: usualF };
      }
      return { heats, focalLength: within(parseLength(text, units), aperture / 4, 50_000, 'the focal length') };
    },
  );
  const machine = await until(ask, report, 'Cut by router, laser or hand', 'router', readMachine);
  const sheet = usualSheet(units);
  const first = { units, aperture, ...aim, machine, ribs: usualRibs(aperture, aim.heats), sheet };
  const usual = formatLength(usualThickness(aperture, units), units);
  const answers = await until(
    ask,
    report,
    'Material and thickness of the ribs',
    `plywood ${usual}`,
    (text): Answers => {
      const read = parseMaterial(text, units);
      const answers = { ...first, ...read };
      const ribs = trials.ribsNear(answers, first.ribs);
      if (ribs !== null) return { ...answers, ribs };
      const problem = trials.obstacle(answers);
      return problem === null ? answers : refuse(problem, 'another thickness or aperture may do');
    },
  );
  const ribs = await until(ask, report, 'Number of ribs', String(answers.ribs), (text) =>
    readRibs(text, answers, trials),
  );
  const shown = [sheet.width, sheet.height].map((mm) => formatLength(mm, units)).join(' x ');
  return {
    ...answers,
    ribs,
    sheet: await until(ask, report, 'Size of the sheets', shown, (text) =>
      readSheet(text, { ...answers, ribs }, trials),
    ),
  };
}
