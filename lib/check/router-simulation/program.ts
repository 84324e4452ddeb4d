/**
 * A program in the language of NISTIR 6556 (from memory): its modal state and what the language asks of it, whatever the
 * machine does by it. What a file leaves to the state that the machine happens to be in is a finding.
 */
import { turnByCentre, turnByRadius } from './arc.js';
import type { MessageValues, RouterMessageId } from '../messages/index.js';
import type { ProofPoint } from '../types.js';
import type { Findings } from './findings.js';
import type { GcodeBlock } from './reader.js';
import type { ArcTurn } from './types.js';

export const inch = 25.4;
/** Codes that are part of the language but not of what can be proven here. */
const refused = [10, 28, 30, 38.2, 41, 42, 53, 81, 82, 83, 84, 85, 86, 87, 88, 89, 91, 92, 92.1, 92.2, 92.3, 93];
/** Modes that a file must set before it moves, by one of the codes. */
export const askedModes: readonly (readonly [string, readonly number[]])[] = [
  ['units (G21 or G20)', [20, 21]],
  ['the plane (G17)', [17, 18, 19]],
  ['absolute distance (G90)', [90]],
  ['feed a minute (G94)', [94]],
  ['no cutter compensation (G40)', [40]],
  ['the coordinate system (G54)', [54]],
];

export abstract class Program {
  protected readonly name: string;
  /** mm of one unit of the file. */
  protected unit = 1;
  protected motion: number | null = null;
  /** mm/min */
  protected feed = 0;
  protected ended = false;
  protected line = 0;
  readonly #findings: Findings;
  readonly #set = new Set<number>();
  #plane = 17;

  constructor(name: string, findings: Findings) {
    this.name = name;
    this.#findings = findings;
  }

  protected abstract takeComment(text: string): void;
  protected abstract execute(block: GcodeBlock): void;
  protected abstract move(words: GcodeBlock['words']): void;
  protected abstract end(word: string): void;

  /** After the last line. */
  protected done(): void {
    // most machines have nothing left to say
  }

  protected report<Id extends RouterMessageId>(id: Id, values: MessageValues<Id>, place?: ProofPoint): void {
    this.#findings.add(id, this.name, values, { line: this.line, ...(place === undefined ? {} : { place }) });
  }

  run(blocks: readonly GcodeBlock[]): void {
    for (const block of blocks) {
      this.line = block.line;
      for (const comment of block.comments) this.takeComment(comment);
      if (block.g.length + block.m.length + block.words.size === 0) continue;
      if (this.ended) {
        this.report('after-end', {});
        return;
      }
      this.execute(block);
    }
    if (!this.ended) this.report('no-end', {});
    this.done();
  }

  /** @param more codes that this machine has no use for */
  protected takeCodes(g: GcodeBlock['g'], more: readonly number[] = []): void {
    for (const code of g) {
      if (refused.includes(code) || more.includes(code)) this.report('not-provable', { word: `G${code}` });
      this.#set.add(code);
    }
  }

  protected takeFeed(words: GcodeBlock['words']): void {
    const feed = words.get('F');
    if (feed !== undefined) this.feed = feed * this.unit;
  }

  /** Plane, unit and motion: what holds until it is changed. */
  protected takeModes(g: GcodeBlock['g']): void {
    for (const code of [17, 18, 19]) if (g.includes(code)) this.#plane = code;
    if (g.includes(20)) this.unit = inch;
    if (g.includes(21)) this.unit = 1;
    for (const code of [0, 1, 2, 3]) if (g.includes(code)) this.motion = code;
    if (g.includes(80)) this.motion = null;
  }

  /** The move of a block, and the end of the program. */
  protected takeMotion({ g, m, words }: GcodeBlock, axes: readonly string[]): void {
    if (axes.some((axis) => words.has(axis))) this.move(words);
    else if ([0, 1, 2, 3].some((code) => g.includes(code))) this.report('motion-without-place', {});
    if (!m.includes(2) && !m.includes(30)) return;
    this.ended = true;
    this.end(m.includes(2) ? 'M2' : 'M30');
  }

  /** Reports each mode that the file has left open, once. */
  protected askModes(modes: typeof askedModes): void {
    for (const [mode, codes] of modes)
      if (!codes.some((code) => this.#set.has(code))) {
        this.report('mode-unset', { mode });
        codes.forEach((code) => this.#set.add(code));
      }
  }

  /** The turn of an arc (G2, G3). */
  protected turn(from: ProofPoint, to: ProofPoint, words: GcodeBlock['words']): ArcTurn | 'wrong' {
    if (this.#plane !== 17) {
      this.report('arc-plane', { plane: this.#plane });
      return 'wrong';
    }
    const clockwise = this.motion === 2;
    const r = words.get('R');
    const [i, j] = [words.get('I'), words.get('J')];
    if (r === undefined && i === undefined && j === undefined) {
      this.report('arc-bare', {});
      return 'wrong';
    }
    const read =
      r === undefined
        ? turnByCentre(from, to, (i ?? 0) * this.unit, (j ?? 0) * this.unit, clockwise)
        : turnByRadius(from, to, r * this.unit, clockwise);
    if (read.kind === 'turn') return read.turn;
    this.report(read.id, read.values);
    return 'wrong';
  }
}
