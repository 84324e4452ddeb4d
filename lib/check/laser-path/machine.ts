/**
 * The laser: runs the blocks of a file with its modal state (NISTIR 6556, from memory) and gives what the beam follows,
 * from where it is switched on to where it is switched off.
 */
import type { Vertex } from '../../geometry/index.js';
import type { ReadBackPath } from '../drawn.js';
import type { MessageValues, RouterMessageId } from '../messages/index.js';
import { lineOf } from '../ring.js';
import { turnByCentre, turnByRadius } from '../router-simulation/arc.js';
import type { Findings } from '../router-simulation/findings.js';
import type { GcodeBlock } from '../router-simulation/reader.js';
import type { ArcTurn } from '../router-simulation/types.js';
import type { ProofPoint } from '../types.js';
import type { LaserLimits } from './types.js';

const inch = 25.4;
/** Rounding of a file's numbers, mm. */
const rounding = 0.002;
const feedRounding = 1;
const powerRounding = 0.001;
const refused = [10, 28, 30, 38.2, 41, 42, 43, 53, 81, 82, 83, 84, 85, 86, 87, 88, 89, 91, 92, 92.1, 92.2, 92.3, 93];
/** Modes that a file must set before it moves, by one of the codes. */
const asked: readonly (readonly [string, readonly number[]])[] = [
  ['units (G21 or G20)', [20, 21]],
  ['the plane (G17)', [17, 18, 19]],
  ['absolute distance (G90)', [90]],
  ['feed a minute (G94)', [94]],
  ['no cutter compensation (G40)', [40]],
  ['the coordinate system (G54)', [54]],
];
/** Layers of the drawings, which the comments name. */
const named = /^(outline|opening|scribe|drill-[\d.]+mm) /i;

interface Followed {
  readonly layer: string;
  readonly vertices: Vertex[];
}

/** An arc as vertices with bulges, but for its end: a bulge holds less than a full turn. */
function arcVertices(from: ProofPoint, { cx, cy, radius, sweep }: ArcTurn): Vertex[] {
  const count = Math.max(1, Math.ceil(Math.abs(sweep) / Math.PI - 1e-9));
  const start = Math.atan2(from.y - cy, from.x - cx);
  return Array.from({ length: count }, (_, i) => {
    const angle = start + (sweep * i) / count;
    const on = i === 0 ? from : { x: cx + radius * Math.cos(angle), y: cy + radius * Math.sin(angle) };
    return { x: on.x, y: on.y, bulge: Math.tan(sweep / count / 4) };
  });
}

export class Laser {
  readonly paths: ReadBackPath[] = [];
  readonly #name: string;
  readonly #limits: LaserLimits;
  readonly #findings: Findings;
  readonly #set = new Set<number>();
  #line = 0;
  #unit = 1;
  #plane = 17;
  #motion: number | null = null;
  #mode = 'none';
  #air: 'off' | 'mist' | 'flood' = 'off';
  #beam: 'off' | 'M3' | 'M4' = 'off';
  #power = 0;
  #feed = 0;
  #at: ProofPoint | null = null;
  #layer: string | null = null;
  #followed: Followed | null = null;
  #ended = false;

  constructor(name: string, limits: LaserLimits, findings: Findings) {
    this.#name = name;
    this.#limits = limits;
    this.#findings = findings;
  }

  #report<Id extends RouterMessageId>(id: Id, values: MessageValues<Id>, place?: ProofPoint): void {
    this.#findings.add(id, this.#name, values, { line: this.#line, ...(place === undefined ? {} : { place }) });
  }

  get #isOn(): boolean {
    return this.#beam !== 'off' && this.#power > 0;
  }

  run(blocks: readonly GcodeBlock[]): void {
    for (const block of blocks) {
      this.#line = block.line;
      for (const comment of block.comments) this.#takeComment(comment);
      if (block.g.length + block.m.length + block.words.size === 0) continue;
      if (this.#ended) {
        this.#report('after-end', {});
        return;
      }
      this.#execute(block);
    }
    this.#lift();
    if (!this.#ended) this.#report('no-end', {});
    if (this.#isOn && !this.#ended) this.#report('beam-end', {});
  }

  #takeComment(text: string): void {
    const max = this.#limits.commentLength;
    if (text.length > max) this.#report('comment-long', { length: text.length, max });
    const found = named.exec(text.trim());
    if (found !== null) {
      this.#lift();
      this.#layer = found[1]!.toLowerCase();
    }
  }

  /** What the beam has followed is whole. */
  #lift(): void {
    const followed = this.#followed;
    this.#followed = null;
    if (followed === null) return;
    const { layer, vertices } = followed;
    const [first, last] = [vertices[0]!, vertices.at(-1)!];
    const closed = vertices.length > 2 && Math.hypot(first.x - last.x, first.y - last.y) <= rounding;
    this.paths.push({ kind: 'path', layer, line: lineOf(closed ? vertices.slice(0, -1) : vertices, closed) });
  }

  #execute(block: GcodeBlock): void {
    const { g, m, words } = block;
    this.#refuse(block);
    for (const code of g) this.#set.add(code);
    this.#takeSwitches(m, words);
    if (g.includes(4) && this.#isOn) this.#report('beam-still', { word: 'G4' }, this.#at ?? undefined);
    if (g.includes(4)) return;
    this.#takeModes(g, words);
    if (words.has('X') || words.has('Y')) this.#move(words);
    else if ([0, 1, 2, 3].some((code) => g.includes(code))) this.#report('motion-without-place', {});
    if (m.includes(2) || m.includes(30)) this.#end(m.includes(2) ? 'M2' : 'M30');
  }

  /** Words that have no place in a file for a laser. */
  #refuse({ g, m, words }: GcodeBlock): void {
    for (const code of g) if (refused.includes(code)) this.#report('not-provable', { word: `G${code}` });
    for (const letter of ['Z', 'A', 'B', 'C']) if (words.has(letter)) this.#report('beam-axis', { letter });
    if (words.has('T')) this.#report('beam-tool', { word: 'T' });
    if (m.includes(6)) this.#report('beam-tool', { word: 'M6' });
    if (m.includes(0) && this.#isOn) this.#report('beam-still', { word: 'M0' }, this.#at ?? undefined);
  }

  #takeSwitches(m: GcodeBlock['m'], words: GcodeBlock['words']): void {
    const feed = words.get('F');
    if (feed !== undefined) this.#feed = feed * this.#unit;
    this.#power = words.get('S') ?? this.#power;
    for (const code of [3, 4] as const) {
      if (!m.includes(code)) continue;
      this.#beam = `M${code}`;
      const wanted = this.#limits.beam;
      if (this.#beam !== wanted) this.#report('beam-word', { word: this.#beam, wanted });
      const max = this.#limits.fullPower;
      if (this.#power < 0 || this.#power > max) this.#report('beam-range', { power: this.#power, max });
      if (this.#layer === null) this.#report('beam-unnamed', {});
    }
    if (m.includes(5)) {
      this.#lift();
      this.#beam = 'off';
    }
    if (m.includes(7)) this.#air = 'mist';
    if (m.includes(8)) this.#air = 'flood';
    if (m.includes(9)) this.#air = 'off';
  }

  #takeModes(g: GcodeBlock['g'], words: GcodeBlock['words']): void {
    for (const code of [17, 18, 19]) if (g.includes(code)) this.#plane = code;
    if (g.includes(20)) this.#unit = inch;
    if (g.includes(21)) this.#unit = 1;
    if (g.includes(61)) this.#mode = 'G61';
    if (g.includes(61.1)) this.#mode = 'G61.1';
    if (g.includes(64)) {
      const p = (words.get('P') ?? Infinity) * this.#unit;
      this.#mode = p <= this.#limits.pathTolerance + rounding ? 'G64 P' : 'G64';
    }
    for (const code of [0, 1, 2, 3]) if (g.includes(code)) this.#motion = code;
    if (g.includes(80)) this.#motion = null;
  }

  #move(words: GcodeBlock['words']): void {
    for (const [mode, codes] of asked)
      if (!codes.some((code) => this.#set.has(code))) {
        this.#report('mode-unset', { mode });
        codes.forEach((code) => this.#set.add(code));
      }
    const from = this.#at;
    const value = (axis: 'x' | 'y'): number | undefined => {
      const word = words.get(axis.toUpperCase());
      return word === undefined ? from?.[axis] : word * this.#unit;
    };
    const [x, y] = [value('x'), value('y')];
    if (this.#motion === null) this.#report('place-without-motion', {});
    if (x === undefined || y === undefined) {
      this.#report('beam-unplaced', {});
      return;
    }
    const to = { x, y };
    this.#at = to;
    if (this.#motion === 0) this.#rapid(to);
    else if (from === null) this.#report('beam-unplaced', {});
    else this.#follow(from, to, words);
  }

  #rapid(to: ProofPoint): void {
    this.#lift();
    if (this.#isOn) this.#report('beam-rapid', {}, to);
  }

  #follow(from: ProofPoint, to: ProofPoint, words: GcodeBlock['words']): void {
    if (!(this.#feed > 0)) this.#report('no-feed', {});
    const turn = this.#motion === 1 ? null : this.#turn(from, to, words);
    if (turn === 'wrong') return;
    if (!this.#isOn) {
      this.#report('beam-off', {}, to);
      return;
    }
    if (this.#followed === null) {
      this.#followed = { layer: this.#layer ?? 'unnamed', vertices: [{ ...from, bulge: 0 }] };
      this.#checkSettings(to);
    }
    this.#checkSpeed(to);
    const { vertices } = this.#followed;
    vertices.pop();
    vertices.push(...(turn === null ? [{ ...from, bulge: 0 }] : arcVertices(from, turn)), { ...to, bulge: 0 });
  }

  get #marks(): boolean {
    return this.#layer === 'scribe';
  }

  /** Once for each path: power, path mode and air. */
  #checkSettings(place: ProofPoint): void {
    const { cutPower, markPower, pathMode, coolant } = this.#limits;
    const wanted = this.#marks ? markPower : cutPower;
    if (Math.abs(this.#power - wanted) > powerRounding)
      this.#report('beam-power', { what: this.#layer ?? 'a cut', power: this.#power, wanted }, place);
    if (this.#mode !== pathMode) this.#report('path-mode', { mode: this.#mode, wanted: pathMode });
    if (this.#air !== coolant) this.#report('coolant', { state: this.#air, wanted: coolant });
  }

  #checkSpeed(place: ProofPoint): void {
    const { cutSpeed, markSpeed } = this.#limits;
    const wanted = this.#marks ? markSpeed : cutSpeed;
    if (Math.abs(this.#feed - wanted) > feedRounding)
      this.#report('beam-feed', { what: this.#layer ?? 'a cut', feed: Math.round(this.#feed), wanted }, place);
  }

  #turn(from: ProofPoint, to: ProofPoint, words: GcodeBlock['words']): ArcTurn | 'wrong' {
    if (this.#plane !== 17) {
      this.#report('arc-plane', { plane: this.#plane });
      return 'wrong';
    }
    if (this.#limits.arcs === 'lines') this.#report('arc-unwanted', {});
    const [r, i, j] = [words.get('R'), words.get('I'), words.get('J')];
    if (r === undefined && i === undefined && j === undefined) {
      this.#report('arc-bare', {});
      return 'wrong';
    }
    const clockwise = this.#motion === 2;
    const [a, b] = [
      { ...from, z: 0 },
      { ...to, z: 0 },
    ];
    const read =
      r === undefined
        ? turnByCentre(a, b, (i ?? 0) * this.#unit, (j ?? 0) * this.#unit, clockwise)
        : turnByRadius(a, b, r * this.#unit, clockwise);
    if (read.kind === 'turn') return read.turn;
    this.#report(read.id, read.values);
    return 'wrong';
  }

  #end(word: string): void {
    this.#ended = true;
    const { end, parking, inches } = this.#limits;
    if (this.#isOn) this.#report('beam-end', {});
    if (word !== end) this.#report('end-other', { word, wanted: end });
    if ((this.#unit === inch) !== inches) this.#report('units-other', { wanted: inches ? 'inches' : 'millimetres' });
    const at = ({ x, y }: ProofPoint): string => `${x}, ${y} mm`;
    if (parking === undefined) return;
    const place = this.#at ?? { x: Infinity, y: Infinity };
    if (Math.hypot(place.x - parking.x, place.y - parking.y) > 2 * rounding)
      this.#report('parking', { place: at(place), wanted: at(parking) });
  }
}
