/** The readers that take what a person or another program has written. */
import { element, randomFrom } from '../../lib/geometry/index.js';
import { verify } from '../../lib/check/index.js';
import { readDesign } from '../../lib/index.js';
import { Unreadable } from '../../lib/check/drawn.js';
import { readDxfLines } from '../../lib/check/dxf-reader.js';
import { parseRecord, readJob } from '../../lib/check/job-reader.js';
import { readSvg } from '../../lib/check/svg-reader.js';
import { instanceOf } from '../bench/nest-instance.js';
import { readExtras } from '../../lib/parts/index.js';
import { fuzzDesign, instance, smallFolder, withDrawings } from './corpus.js';
import { mutate } from './mutate.js';

export interface Target {
  readonly name: string;
  /** Share of all inputs. */
  readonly share: number;
  readonly text: string;
  /** What it reports of an input: nothing when it takes it, else why not. Anything thrown is a crash. */
  readonly read: (text: string) => readonly string[];
}

/** A reader that refuses by throwing an error of its own. */
const refusing =
  (read: (text: string) => unknown, own: (error: unknown) => boolean) =>
  (text: string): string[] => {
    try {
      read(text);
      return [];
    } catch (error) {
      if (error instanceof Error && own(error)) return [error.message];
      throw error;
    }
  };

const unreadable = (error: unknown): boolean => error instanceof Unreadable;
const noInstance = (error: unknown): boolean =>
  error instanceof Error && error.message.startsWith('instance.json is not a nesting instance: ');

const readings = (text: string): string[] => {
  const reading = readDesign(text);
  return reading.kind === 'refused' ? reading.problems.map(({ message }) => message) : [];
};

export function targets(): readonly Target[] {
  const files = smallFolder();
  const file = (name: string): string => files.get(name) ?? '';
  const [record, dxf, svg, ngc] = ['job.json', 'sheets/ply-1.dxf', 'sheets/ply-1.svg', 'sheets/ply-1.ngc'] as const;
  const { design: drawn, drawings } = withDrawings();
  /** The whole folder, one of its files mutated. */
  const folder =
    (name: string) =>
    (text: string): string[] =>
      verify(new Map([...files, [name, text]])).faults.map(({ message }) => message);
  /** A drawing of the user's own, mutated. */
  const extras =
    (name: string) =>
    (text: string): string[] =>
      readExtras(drawn, new Map([...drawings, [name, text]]))
        .problems.filter(({ severity }) => severity === 'error')
        .map(({ message }) => message);
  const [bracket, trivet] = ['bracket.dxf', 'trivet.svg'] as const;
  return [
    { name: 'design', share: 0.23, text: fuzzDesign, read: readings },
    { name: 'dxf', share: 0.15, text: file(dxf), read: refusing(readDxfLines, unreadable) },
    { name: 'svg', share: 0.15, text: file(svg), read: refusing(readSvg, unreadable) },
    {
      name: 'record',
      share: 0.12,
      text: file(record),
      read: refusing((text) => readJob(parseRecord(text)), unreadable),
    },
    {
      name: 'instance',
      share: 0.1,
      text: instance,
      read: refusing((text) => instanceOf(text, 'instance.json'), noInstance),
    },
    { name: 'folder-record', share: 0.04, text: file(record), read: folder(record) },
    { name: 'folder-dxf', share: 0.03, text: file(dxf), read: folder(dxf) },
    { name: 'folder-svg', share: 0.03, text: file(svg), read: folder(svg) },
    { name: 'folder-ngc', share: 0.03, text: file(ngc), read: folder(ngc) },
    { name: 'own-dxf', share: 0.06, text: drawings.get(bracket) ?? '', read: extras(bracket) },
    { name: 'own-svg', share: 0.06, text: drawings.get(trivet) ?? '', read: extras(trivet) },
  ];
}

export interface Input {
  readonly target: Target;
  readonly text: string;
}

/** The input of a number: always the same for the same seed. */
export function fuzzInput(all: readonly Target[], seed: number, index: number): Input {
  const random = randomFrom(seed * 1_000_003 + index).real;
  let share = random();
  const target = all.find((one) => (share -= one.share) < 0) ?? element(all, 0);
  return { target, text: mutate(target.text, random) };
}
