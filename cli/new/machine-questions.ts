/** The questions that `machine new` asks: each for one key of the machine's file, and a flag of the command. */
import {
  type Diagnostic,
  keyEntries,
  laserOnly,
  LengthError,
  machineProblems,
  type machineKinds,
  prepare,
  readDesign,
  routerOnly,
} from '../../lib/index.js';
import { usualAnswers } from './answers.js';
import { bodyLines, designText, prose } from './design-text.js';
import { type Ask, type Report, until } from './questions.js';

type Kind = (typeof machineKinds)[number];

interface Question {
  /** Path of the key, below the machine. */
  readonly key: string;
  readonly flag: string;
  readonly asked: string;
  readonly kinds: readonly Kind[];
  /** What Enter takes where the key has no default; empty leaves the key out. */
  readonly usual?: string;
}

const both: readonly Kind[] = ['router', 'laser'];
const router: readonly Kind[] = ['router'];
const laser: readonly Kind[] = ['laser'];

/** In the order in which they are asked; `kind` first, as it decides which others are. */
export const questions: readonly Question[] = [
  { key: 'kind', flag: 'kind', asked: 'Router or laser', kinds: both, usual: 'router' },
  { key: 'units', flag: 'units', asked: 'Unit of bare lengths: mm, cm, m, in or ft', kinds: both, usual: 'mm' },
  { key: 'area', flag: 'area', asked: 'Working area, such as 1300 x 900', kinds: both },
  { key: 'programUnits', flag: 'program-units', asked: 'Tool paths in mm or inches: mm or in', kinds: both },
  { key: 'arcs', flag: 'arcs', asked: 'How arcs are written: arcs or lines', kinds: both },
  { key: 'pathMode', flag: 'path-mode', asked: 'Corners: exact, exact-stop or continuous', kinds: both },
  { key: 'toolChange', flag: 'tool-change', asked: 'Tool change: automatic, by-hand or none', kinds: router },
  { key: 'maxFeed.x', flag: 'max-feed-x', asked: 'Maximum feed along X, mm/min', kinds: router },
  { key: 'maxFeed.y', flag: 'max-feed-y', asked: 'Maximum feed along Y, mm/min', kinds: router },
  { key: 'maxFeed.z', flag: 'max-feed-z', asked: 'Maximum feed along Z, mm/min', kinds: router },
  { key: 'spindle.min', flag: 'spindle-min', asked: 'Minimum spindle speed, rev/min', kinds: router },
  { key: 'spindle.max', flag: 'spindle-max', asked: 'Maximum spindle speed, rev/min', kinds: router },
  { key: 'spinUp', flag: 'spin-up', asked: 'Time for the spindle to come up to speed, s', kinds: router },
  { key: 'travelSpeed', flag: 'travel-speed', asked: 'Speed of travel, mm/min', kinds: both },
  { key: 'acceleration', flag: 'acceleration', asked: 'Acceleration, mm/s²', kinds: both },
  { key: 'toolPaths', flag: 'tool-paths', asked: 'Whether to write G-code for the laser: true or false', kinds: laser },
  { key: 'beam', flag: 'beam', asked: 'Beam switched on by M3 or M4', kinds: laser },
  { key: 'fullPower', flag: 'full-power', asked: 'S word for full power', kinds: laser },
  { key: 'end', flag: 'end', asked: 'Program ends with M2 or M30', kinds: both },
];

export type MachineAnswers = ReadonlyMap<string, string>;

const name = 'machine';
/** A number or a truth value as it is; all else as quoted text, so that no answer is more than a value. */
const scalar = (text: string): string => (/^(?:-?\d+(?:\.\d+)?|true|false)$/.test(text) ? text : JSON.stringify(text));

/** The keys as YAML, sections in braces. */
function plainText(answers: MachineAnswers): string {
  const sections = new Map<string, string[]>();
  const lines = [...answers].flatMap(([key, value]) => {
    const [section = '', inner] = key.split('.');
    if (inner === undefined) return [`${key}: ${scalar(value)}`];
    sections.set(section, [...(sections.get(section) ?? []), `${inner}: ${scalar(value)}`]);
    return [];
  });
  return [...lines, ...[...sections].map(([section, keys]) => `${section}: { ${keys.join(', ')} }`)].join('\n');
}

/** What is wrong with the answers: by themselves, or as the machine of a design. */
function obstacle(answers: MachineAnswers): Diagnostic | null {
  const text = plainText(answers);
  const [wrong] = machineProblems(name, text);
  if (wrong !== undefined) return wrong;
  const kind: Kind = answers.get('kind') === 'laser' ? 'laser' : 'router';
  const design = `${designText({ ...usualAnswers(), machine: kind })}\nmachine: ${name}\n`;
  const reading = readDesign(design, 'design', { kind: 'text', text });
  const problems =
    reading.kind === 'design' ? [...reading.problems, ...prepare(reading.design).problems] : reading.problems;
  // sheets of other designs may be smaller
  const own = problems.find(
    ({ code, severity, place }) =>
      severity === 'error' && (place?.file === name || place?.path[0] === 'machine') && code !== 'machine-area',
  );
  return own ?? null;
}

/** The answers with one more. @throws LengthError for one that no machine has */
function answered(answers: MachineAnswers, key: string, text: string): MachineAnswers {
  if (text === '') return answers;
  const more = new Map([...answers, [key, text]]);
  const wrong = obstacle(more);
  if (wrong !== null) throw new LengthError(wrong.message, wrong.remedy ?? 'give another answer');
  return more;
}

const isFor = ({ kinds }: Question, answers: MachineAnswers): boolean =>
  kinds.some((kind) => kind === (answers.get('kind') ?? 'router'));

/**
 * Takes what the flags say, and asks for the rest.
 * @param ask null where there is nobody to ask
 * @param report takes what is wrong with an answer
 * @param refuse ends the command for a flag with a wrong value
 */
export async function machineAnswers(
  flags: Readonly<Record<string, string | undefined>>,
  ask: Ask | null,
  report: Report,
  refuse: (flag: string, message: string, remedy: string) => Error,
): Promise<MachineAnswers> {
  const shown = new Map(keyEntries().map((entry) => [entry.path, entry.shown]));
  let answers: MachineAnswers = new Map();
  for (const question of questions) {
    const { key, flag, asked } = question;
    const given = flags[flag];
    const usual = question.usual ?? shown.get(`machine.${key}`) ?? '';
    if (given !== undefined) {
      try {
        answers = answered(answers, key, given.trim());
      } catch (error) {
        if (error instanceof LengthError) throw refuse(flag, error.message, error.remedy);
        throw error;
      }
    } else if (ask !== null && isFor(question, answers))
      answers = await until(ask, report, asked, usual === '' ? 'leave it unstated' : usual, (text) =>
        answered(answers, key, text === 'leave it unstated' ? '' : text),
      );
    else if (question.usual !== undefined) answers = answered(answers, key, question.usual);
  }
  return answers;
}

/** The commented file of a machine: every key of its kind, those that were answered in use. */
export function machineText(answers: MachineAnswers): string {
  const barred = answers.get('kind') === 'laser' ? routerOnly : laserOnly;
  const entries = keyEntries().filter(({ path }) => {
    const [, key = ''] = path.split('.');
    // what a coupon has shown is written by the command that measures it
    return path.startsWith('machine.') && !barred.includes(key) && key !== 'calibration';
  });
  const units = answers.get('units') ?? 'mm';
  const stated = new Map([...answers].map(([key, value]) => [`machine.${key}`, scalar(value)]));
  return [
    ...prose(
      `A machine, for designs that name this file (machine: <this file>, beside the design or in a folder below it). Bare lengths are in ${units}. A line such as "#end: M2" shows a default: remove its # to change it. "dishwright explain machine.<key>" says more about a key.`,
      '',
    ),
    `units: ${units}`,
    ...bodyLines('machine', entries, stated, ''),
    '',
  ].join('\n');
}
