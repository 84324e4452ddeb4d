/**
 * The laser: runs the blocks of a file and gives what the beam follows, from where it is switched on to where it is
 * switched off.
 */
import type { Vertex } from '../../geometry/index.js';
import type { ReadBackPath } from '../drawn.js';
import { lineOf } from '../ring.js';
import { checkComment, checkEnd, modeWords, type Report, Settings, unitNames } from '../router-simulation/described.js';
import type { Findings } from '../router-simulation/findings.js';
import { askedModes, Program } from '../router-simulation/program.js';
import type { GcodeBlock } from '../router-simulation/reader.js';
import type { ArcTurn } from '../router-simulation/types.js';
import type { ProofPoint } from '../types.js';
import type { LaserLimits } from './types.js';

/** Rounding of a file's numbers, mm. */
const rounding = 0.002;
const feedRounding = 1;
const powerRounding = 0.001;
/** A tool's length: a beam has none. */
const toolLength = 43;
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

export class Laser extends Program {
  readonly paths: ReadBackPath[] = [];
  readonly #limits: LaserLimits;
  readonly #settings: Settings;
  readonly #reports: Report = (id, values) => {
    this.report(id, values);
  };
  #beam: 'off' | 'M3' | 'M4' = 'off';
  #power = 0;
  #at: ProofPoint | null = null;
  #layer: string | null = null;
  #followed: Followed | null = null;

  constructor(name: string, limits: LaserLimits, findings: Findings) {
    super(name, findings);
    this.#limits = limits;
    this.#settings = new Settings(limits);
  }

  get #isOn(): boolean {
    return this.#beam !== 'off' && this.#power > 0;
  }

  protected override done(): void {
    this.#lift();
    if (this.#isOn && !this.ended) this.report('beam-end', {});
  }

  protected takeComment(text: string): void {
    checkComment(text, this.#limits.commentLength, this.#reports);
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

  protected execute(block: GcodeBlock): void {
    const { g, m, words } = block;
    this.#refuse(block);
    this.#settings.take(block);
    this.takeFeed(words);
    this.#takeBeam(m, words);
    if (g.includes(4) && this.#isOn) this.report('beam-still', { word: 'G4' }, this.#at ?? undefined);
    if (g.includes(4)) return;
    this.takeModes(g);
    this.takeMotion(block, ['X', 'Y']);
  }

  /** Words that have no place in a file for a laser. */
  #refuse({ g, m, words }: GcodeBlock): void {
    this.takeCodes(g, [toolLength]);
    for (const letter of ['Z', 'A', 'B', 'C']) if (words.has(letter)) this.report('beam-axis', { letter });
    if (words.has('T')) this.report('beam-tool', { word: 'T' });
    if (m.includes(6)) this.report('beam-tool', { word: 'M6' });
    if (m.includes(0) && this.#isOn) this.report('beam-still', { word: 'M0' }, this.#at ?? undefined);
  }

  #takeBeam(m: GcodeBlock['m'], words: GcodeBlock['words']): void {
    this.#power = words.get('S') ?? this.#power;
    for (const code of [3, 4] as const) {
      if (!m.includes(code)) continue;
      this.#beam = `M${code}`;
      const wanted = this.#limits.beam;
      if (this.#beam !== wanted) this.report('beam-word', { word: this.#beam, wanted });
      const max = this.#limits.fullPower;
      if (this.#power < 0 || this.#power > max) this.report('beam-range', { power: this.#power, max });
      if (this.#layer === null) this.report('beam-unnamed', {});
    }
    if (m.includes(5)) {
      this.#lift();
      this.#beam = 'off';
    }
  }

  protected move(words: GcodeBlock['words']): void {
    this.askModes(askedModes);
    const from = this.#at;
    const value = (axis: 'x' | 'y'): number | undefined => {
      const word = words.get(axis.toUpperCase());
      return word === undefined ? from?.[axis] : word * this.unit;
    };
    const [x, y] = [value('x'), value('y')];
    if (this.motion === null) this.report('place-without-motion', {});
    if (x === undefined || y === undefined) {
      this.report('beam-unplaced', {});
      return;
    }
    const to = { x, y };
    this.#at = to;
    if (this.motion === 0) this.#rapid(to);
    else if (from === null) this.report('beam-unplaced', {});
    else this.#follow(from, to, words);
  }

  #rapid(to: ProofPoint): void {
    this.#lift();
    if (this.#isOn) this.report('beam-rapid', {}, to);
  }

  #follow(from: ProofPoint, to: ProofPoint, words: GcodeBlock['words']): void {
    if (!(this.feed > 0)) this.report('no-feed', {});
    const straight = this.motion === 1;
    if (!straight && this.#limits.arcs === 'lines') this.report('arc-unwanted', {});
    const turn = straight ? null : this.turn(from, to, words);
    if (turn === 'wrong') return;
    if (!this.#isOn) {
      this.report('beam-off', {}, to);
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
    const { mode, coolant: state } = this.#settings;
    const wanted = this.#marks ? markPower : cutPower;
    if (Math.abs(this.#power - wanted) > powerRounding)
      this.report('beam-power', { what: this.#layer ?? 'a cut', power: this.#power, wanted }, place);
    if (mode !== modeWords[pathMode]) this.report('path-mode', { mode, wanted: modeWords[pathMode] });
    if (state !== coolant) this.report('coolant', { state, wanted: coolant });
  }

  #checkSpeed(place: ProofPoint): void {
    const { cutSpeed, markSpeed } = this.#limits;
    const wanted = this.#marks ? markSpeed : cutSpeed;
    if (Math.abs(this.feed - wanted) > feedRounding)
      this.report('beam-feed', { what: this.#layer ?? 'a cut', feed: Math.round(this.feed), wanted }, place);
  }

  protected end(word: string): void {
    const { programUnits } = this.#limits;
    if (this.#isOn) this.report('beam-end', {});
    if (this.#settings.inches !== (programUnits === 'in'))
      this.report('units-other', { wanted: unitNames[programUnits] });
    checkEnd(word, this.#at ?? { x: null, y: null }, this.#limits, this.#reports);
  }
}
