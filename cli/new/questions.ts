/** The questions that `new` asks, in the order of the trade: what for, where, how big, of what, with what. */
import {
  type Diagnostic,
  formatLength,
  LengthError,
  nearestWord,
  parseLength,
  type ProcessKind,
  processKinds,
} from '../../lib/index.js';
import {
  type Answers,
  drillSet,
  heatsUnit,
  parseBits,
  parseHeats,
  parseMaterial,
  parsePlace,
  parsePrice,
  parseSheet,
  ribRange,
  unitOfText,
  usualAperture,
  usualFocalLength,
  usualRibs,
  usualSheet,
  usualThickness,
} from './answers.js';
import { skinOf } from './design-text.js';
import { Trials } from './trial.js';

/** What is asked for; each is a flag of the command too. */
export const answerKeys = [
  'heat',
  'place',
  'aperture',
  'material',
  'sheet',
  'process',
  'bit',
  'drills',
  'focal-length',
  'ribs',
  'panel-price',
  'reflector-price',
] as const;
export type AnswerKey = (typeof answerKeys)[number];

/** Puts a question and gives what was typed, without the line's end; an empty answer takes `usual`. */
export type Ask = (question: string, usual: string) => Promise<string>;
/** The same, where it is known what is asked for. */
export type AskFor = (question: string, usual: string, key: AnswerKey) => Promise<string>;
/** Takes why an answer does not do, and what would. */
export type Report = (message: string, remedy: string) => void;

/** Asks until the answer can be read; an empty answer takes `usual`. */
export async function until<T>(ask: Ask, report: Report, question: string, usual: string, read: (text: string) => T) {
  for (;;) {
    const text = (await ask(question, usual)).trim();
    try {
      return read(text === '' ? usual : text);
    } catch (error) {
      if (!(error instanceof LengthError)) throw error;
      report(error.message, error.remedy);
    }
  }
}

function within(mm: number, min: number, max: number, what: string): number {
  if (mm >= min && mm <= max) return mm;
  throw new LengthError(
    `${what} of ${formatLength(mm, 'mm')} is implausible`,
    `it must be from ${formatLength(min, 'mm')} to ${formatLength(max, 'mm')}`,
  );
}

/** An answer for which `check` would refuse the design, with how to fix it. */
function refuse(problem: Diagnostic, remedy = problem.remedy): never {
  throw new LengthError(problem.message, remedy ?? 'give another answer');
}

/**
 * Takes a number of ribs with which there is a design, as far as the other answers go.
 * @param answers with a number of ribs that would do
 */
function readRibs(text: string, answers: Answers, trials: Trials): number {
  const ribs = Number(text);
  const { min, max } = ribRange;
  if (!Number.isInteger(ribs) || ribs < min || ribs > max)
    throw new LengthError(`"${text}" is not a number of ribs`, `answer with ${min} to ${max}`);
  const problem = trials.obstacle({ ...answers, ribs });
  if (problem === null) return ribs;
  const would = trials.ribsNear(answers, ribs) ?? answers.ribs;
  return refuse(problem, `${would} ribs would work, or another thickness`);
}

/** Takes a focal length with which there is a design, with a number of ribs that goes with it. */
function readFocalLength(text: string, answers: Answers, trials: Trials): Answers {
  const { units, aperture, ribs } = answers;
  const focalLength = within(parseLength(text, units), aperture / 4, 50_000, 'the focal length');
  const changed = { ...answers, focalLength };
  const would = trials.ribsNear(changed, ribs);
  if (would !== null) return { ...changed, ribs: would };
  const problem = trials.obstacle(changed);
  return problem === null ? changed : refuse(problem, `${formatLength(answers.focalLength, units)} would work`);
}

function readMachine(text: string): ProcessKind {
  const kind = processKinds.find((known) => known === text.toLowerCase()) ?? nearestWord(text, processKinds);
  const known = processKinds.find((word) => word === kind);
  if (known === undefined)
    throw new LengthError(`"${text}" is not one of the machines`, 'answer with router, laser or hand');
  return known;
}

const nothing = 'nothing';

function readHeat(text: string): Pick<Answers, 'heats'> & { readonly units: Answers['units'] | null } {
  if (text.toLowerCase() === nothing) return { heats: null, units: null };
  const units = heatsUnit(text) ?? 'mm';
  const heats = parseHeats(text, units);
  if (heats === null)
    throw new LengthError(
      `"${text}" does not say how much in what size of pot`,
      'write it as 5 l in 220 mm, or nothing',
    );
  return { heats: { ...heats, diameter: within(heats.diameter, 10, 5000, 'the vessel') }, units };
}

/** Puts a question for one of the answers until what is typed can be read. */
type Put = <T>(key: AnswerKey, question: string, usual: string, read: (text: string) => T) => Promise<T>;

type Wanted = Pick<Answers, 'heats' | 'place' | 'aperture' | 'units'>;

/** What the dish is for, where it stands and how big it may be. */
async function askWanted(put: Put): Promise<Wanted> {
  const { heats, units: heatUnits } = await put(
    'heat',
    'What to heat: how much, and the width of the vessel, such as 5 l in 220 mm; or nothing',
    nothing,
    readHeat,
  );
  const place = await put(
    'place',
    'Where: latitude and longitude in degrees, such as 47.1 15.4, south and west negative; or nowhere',
    'nowhere',
    parsePlace,
  );
  const usual = usualAperture(heats, heatUnits ?? 'mm');
  return put(
    'aperture',
    'Size of the dish: diameter across the rib ends',
    formatLength(usual, heatUnits ?? 'mm'),
    (text): Wanted => {
      const aperture = within(parseLength(text, heatUnits ?? 'mm'), 50, 20_000, 'the aperture');
      if (heats && heats.diameter > aperture)
        throw new LengthError(
          'the vessel is wider than the dish',
          `answer with more than ${formatLength(heats.diameter, 'mm')}`,
        );
      return { heats, place, aperture, units: heatUnits ?? unitOfText(text) };
    },
  );
}

/** What is bought, and what cuts it. */
async function askWorkshop(put: Put, wanted: Wanted): Promise<Answers> {
  const { aperture, units, heats } = wanted;
  const usual = formatLength(usualThickness(aperture, units), units);
  const material = await put(
    'material',
    'Board for the ribs: kind, and measured thickness',
    `plywood ${usual}`,
    (text) => parseMaterial(text, units),
  );
  const { width, height } = usualSheet(units);
  const bought = await put(
    'sheet',
    'Size and price of a sheet, such as 2440 x 1220 for 54',
    [width, height].map((mm) => formatLength(mm, units)).join(' x '),
    (text) => parseSheet(text, units),
  );
  const machine = await put('process', 'How it is cut: router, laser or hand', 'router', readMachine);
  const bits = machine === 'router' ? await askBits(put, units) : { bit: null, drillBits: null };
  const focalLength = usualFocalLength(aperture, units);
  const ribs = usualRibs(aperture, heats);
  const prices = { panelPrice: 0, reflectorPrice: 0 };
  return { ...wanted, ...material, ...bought, ...prices, ...bits, machine, focalLength, ribs };
}

async function askBits(put: Put, units: Answers['units']): Promise<Pick<Answers, 'bit' | 'drillBits'>> {
  const usual = units === 'in' ? '1/4 in' : '6 mm';
  const bit = await put('bit', 'Diameter of the router bit', usual, (text) =>
    text === usual ? null : within(parseLength(text, units), 0.5, 50, 'the bit'),
  );
  const set = drillSet[units === 'in' ? 'in' : 'mm'].slice(1, -1);
  const drillBits = await put(
    'drills',
    'Drill bits that you have for holes smaller than the router bit; or none',
    set,
    (text) => (text === set ? null : parseBits(text, units)),
  );
  return { bit, drillBits };
}

/** Problems that another number of ribs does not mend. */
const notByRibs: ReadonlySet<Diagnostic['code']> = new Set<Diagnostic['code']>([
  'larger-than-stock',
  'board-too-large',
  'hole-smaller-than-tool',
]);

/**
 * Asks for what decides a design. What cannot be built is refused at the question whose answer makes it so, or, where
 * several together do, those of the workshop are asked again.
 * @param report takes what is wrong with an answer
 */
export async function askQuestions(ask: AskFor, report: Report): Promise<Answers> {
  const trials = new Trials();
  const put: Put = (key, question, usual, read) =>
    until((asked, offered) => ask(asked, offered, key), report, question, usual, read);
  const wanted = await askWanted(put);
  for (;;) {
    const asked = await askWorkshop(put, wanted);
    const problem = trials.obstacle(asked);
    const ribs =
      problem === null ? asked.ribs : notByRibs.has(problem.code) ? null : trials.ribsNear(asked, asked.ribs);
    if (ribs === null) {
      report(
        `with these answers the dish cannot be built: ${problem?.message ?? ''}`,
        problem?.remedy ?? 'give another answer',
      );
      continue;
    }
    return askPrices(put, await askShape(put, { ...asked, ribs }, trials));
  }
}

/** What is proposed and may be changed: focal length and number of ribs. */
async function askShape(put: Put, proposed: Answers, trials: Trials): Promise<Answers> {
  const { units, heats } = proposed;
  const under = heats ? 'the underside of the vessel' : 'a vessel';
  const answers = await put(
    'focal-length',
    `Focal length; 0.37 of the aperture lets ${under} face the whole dish`,
    formatLength(proposed.focalLength, units, 5),
    (text) => readFocalLength(text, proposed, trials),
  );
  const width = formatLength(2 * (answers.aperture / 2) * Math.sin(Math.PI / answers.ribs), units);
  const reason = heats ? 'a panel lights a strip as wide as itself, which has to fall on the vessel' : 'easily bent';
  const ribs = await put(
    'ribs',
    `Number of ribs; with ${answers.ribs} the panels are ${width} wide at the rim: ${reason}`,
    String(answers.ribs),
    (text) => readRibs(text, answers, trials),
  );
  return { ...answers, ribs };
}

/** What the sheets cost that follow from the answers. */
async function askPrices(put: Put, answers: Answers): Promise<Answers> {
  const { units, sheet } = answers;
  const { panel, mirror } = skinOf(answers);
  const size = [sheet.width, sheet.height].map((mm) => formatLength(mm, units)).join(' x ');
  const panels = `${formatLength(panel.thickness, units)} ${panel.kind} for the panels`;
  const panelPrice = await put('panel-price', `Price of a sheet of ${panels}, ${size}; or none`, 'none', parsePrice);
  const roll = `${mirror.kind} for the reflector, ${formatLength(mirror.roll, units)} wide`;
  const reflectorPrice = await put('reflector-price', `Price per metre of ${roll}; or none`, 'none', parsePrice);
  return { ...answers, panelPrice, reflectorPrice };
}
