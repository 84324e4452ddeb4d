/** What the description of the machine asks of a file, beside what the language does. */
import type { MessageValues, RouterMessageId } from '../messages/index.js';
import { inch } from './program.js';
import type { GcodeBlock } from './reader.js';
import type { DescribedMachine, Motion, SimulatedTool } from './types.js';

/** Rounding of a file's numbers, mm. */
const rounding = 0.001;
/** Rounding of a feed, mm/min. */
const feedRounding = 1;

export type Report = <Id extends RouterMessageId>(id: Id, values: MessageValues<Id>) => void;

export const modeWords = { exact: 'G61', 'exact-stop': 'G61.1', continuous: 'G64 P' } as const;
export const unitNames = { mm: 'millimetres', in: 'inches' } as const;
const kindNames = { mill: 'END MILL', drill: 'DRILL BIT', v: 'V-BIT OF 90 DEGREES' } as const;
const mm = (value: number): string => String(Number(value.toFixed(3)));
const at = ({ x, y }: { readonly x: number | null; readonly y: number | null }): string =>
  `${x ?? '?'}, ${y ?? '?'} mm`;

/** A tool as a comment names it. */
export interface NamedTool {
  readonly number: number;
  /** The comment as it is, in capitals. */
  readonly words: string;
}

/** The tool that a comment names, with what it says of it; null for any other comment. */
export function toolNamed(comment: string): NamedTool | null {
  const words = comment.trim().toUpperCase();
  const number = /^TOOL (\d+):/.exec(words)?.[1];
  return number === undefined ? null : { number: Number(number), words };
}

/** The same of a tool of the record, as far as a comment has space for it. */
export function wordsOf({ number, diameter, sold = diameter, kind, flutes }: SimulatedTool, space: number): string {
  // 3/16 in is 4.7625 mm to a nanometre, and no further: rounded at once it might go down where the file goes up
  const size = Number(Number(sold.toFixed(6)).toFixed(3));
  const words = `TOOL ${number}: ${size} MM ${kindNames[kind]}, ${flutes} FLUTES`;
  return words.slice(0, space).trimEnd();
}

/** Path mode, coolant and unit as the words of a file have set them. */
export class Settings {
  readonly #pathTolerance: number;
  mode = 'none';
  coolant: 'off' | 'mist' | 'flood' = 'off';
  inches = false;

  constructor({ pathTolerance }: Pick<DescribedMachine, 'pathTolerance'>) {
    this.#pathTolerance = pathTolerance;
  }

  take({ g, m, words }: GcodeBlock): void {
    if (g.includes(20)) this.inches = true;
    if (g.includes(21)) this.inches = false;
    const unit = this.inches ? inch : 1;
    if (g.includes(61)) this.mode = 'G61';
    if (g.includes(61.1)) this.mode = 'G61.1';
    if (g.includes(64)) {
      const p = words.get('P');
      if (p === undefined) this.mode = 'G64 without P';
      else this.mode = p * unit <= this.#pathTolerance + rounding ? 'G64 P' : `G64 of ${mm(p * unit)} mm`;
    }
    if (m.includes(7)) this.coolant = 'mist';
    if (m.includes(8)) this.coolant = 'flood';
    if (m.includes(9)) this.coolant = 'off';
  }
}

/** A comment that the machine's controller does not take. */
export function checkComment(text: string, max: number, report: Report): void {
  if (text.length > max) report('comment-long', { length: text.length, max });
}

/** The word at the end, and where the machine stands then. */
export function checkEnd(
  word: string,
  place: { readonly x: number | null; readonly y: number | null },
  { end, parking }: Pick<DescribedMachine, 'end' | 'parking'>,
  report: Report,
): void {
  if (word !== end) report('end-other', { word, wanted: end });
  if (parking === undefined) return;
  if (Math.hypot((place.x ?? Infinity) - parking.x, (place.y ?? Infinity) - parking.y) > 2 * rounding)
    report('parking', { place: at(place), wanted: at(parking) });
}

export class Described {
  readonly #machine: DescribedMachine;
  readonly #report: Report;
  readonly #once = new Set<RouterMessageId>();
  readonly #settings: Settings;
  #waited = 0;

  constructor(machine: DescribedMachine, report: Report) {
    this.#machine = machine;
    this.#settings = new Settings(machine);
    this.#report = report;
  }

  /** Reports a state that would else be reported at every move. */
  #first<Id extends RouterMessageId>(id: Id, values: MessageValues<Id>): void {
    if (this.#once.has(id)) return;
    this.#once.add(id);
    this.#report(id, values);
  }

  comment(text: string): void {
    checkComment(text, this.#machine.commentLength, this.#report);
  }

  take(block: GcodeBlock): void {
    const { g, m, words } = block;
    this.#settings.take(block);
    if (g.includes(4)) this.#waited += words.get('P') ?? 0;
    if (this.#machine.toolChange === 'automatic') return;
    for (const [word, there] of [
      ['M6', m.includes(6)],
      ['T', words.has('T')],
      ['G43', g.includes(43)],
    ] as const)
      if (there) this.#report('change-word', { word });
  }

  spindleStarts(): void {
    this.#waited = 0;
  }

  cuts(motion: Motion): void {
    const { programUnits, pathMode, spinUp, coolant, arcs } = this.#machine;
    const { inches, mode, coolant: state } = this.#settings;
    if (inches !== (programUnits === 'in')) this.#first('units-other', { wanted: unitNames[programUnits] });
    if (mode !== modeWords[pathMode]) this.#first('path-mode', { mode, wanted: modeWords[pathMode] });
    if (this.#waited < spinUp) this.#first('spin-up', { waited: this.#waited, wanted: spinUp });
    if (state !== coolant) this.#first('coolant', { state, wanted: coolant });
    if (arcs === 'lines' && motion.turn !== null) this.#first('arc-unwanted', {});
    this.#checkAxes(motion);
  }

  /** Along an arc that may turn into any direction the slower axis decides. */
  #checkAxes({ from, to, turn, feed }: Motion): void {
    const { maxFeed } = this.#machine;
    const level = turn === null ? Math.hypot(to.x - from.x, to.y - from.y) : Math.abs(turn.sweep) * turn.radius;
    const length = Math.hypot(level, to.z - from.z);
    if (length === 0) return;
    const speeds =
      turn === null
        ? { x: Math.abs(to.x - from.x), y: Math.abs(to.y - from.y), z: Math.abs(to.z - from.z) }
        : { [maxFeed.x < maxFeed.y ? 'x' : 'y']: level, z: Math.abs(to.z - from.z) };
    for (const [axis, along] of Object.entries(speeds)) {
      const speed = (feed * along) / length;
      const max = maxFeed[axis as 'x' | 'y' | 'z'];
      if (speed > max + feedRounding)
        this.#report('feed-axis', { feed: Math.round(speed), axis: axis.toUpperCase(), max });
    }
  }

  /** A pause in which a tool is changed by hand: where the machine stands. */
  pauses(place: { readonly x: number | null; readonly y: number | null; readonly z: number | null }): void {
    const { changeAt, changeHeight } = this.#machine;
    const near = (value: number | null, wanted: number): boolean =>
      value !== null && Math.abs(value - wanted) <= rounding;
    if (near(place.x, changeAt.x) && near(place.y, changeAt.y) && near(place.z, changeHeight)) return;
    this.#report('change-place', {
      place: `${at(place)} at ${place.z ?? '?'} mm`,
      wanted: `${at(changeAt)} at ${changeHeight} mm`,
    });
  }

  ends(word: string, place: { readonly x: number | null; readonly y: number | null }): void {
    checkEnd(word, place, this.#machine, this.#report);
  }
}
