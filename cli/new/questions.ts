/** The questions that `new` asks on a terminal. */
import { formatLength, LengthError, nearestWord, parseLength, processKinds } from '../../lib/index.js';
import { type Answers, parseHeats, parseMaterial, unitOfText, usualFocalLength, usualThickness } from './answers.js';

/** Puts a question and gives what was typed, without the line's end. */
export type Ask = (question: string) => Promise<string>;

/** Asks until the answer can be read; an empty answer takes `usual`. */
async function until<T>(
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

/**
 * Asks for what decides a design.
 * @param report takes what is wrong with an answer
 */
export async function askQuestions(ask: Ask, report: (line: string) => void): Promise<Answers> {
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
  const usual = formatLength(usualThickness(aperture, units), units);
  const material = await until(ask, report, 'Material and thickness of the ribs', `plywood ${usual}`, (text) =>
    parseMaterial(text, units),
  );
  const machine = await until(ask, report, 'Cut by router, laser or hand', 'router', (text) => {
    const kind = processKinds.find((known) => known === text.toLowerCase()) ?? nearestWord(text, processKinds);
    const known = processKinds.find((word) => word === kind);
    if (known === undefined) throw new LengthError(`"${text}" is not a machine here`, 'answer router, laser or hand');
    return known;
  });
  return { units, aperture, ...aim, ...material, machine };
}
