/**
 * The machine: runs the blocks of a file in the order of execution of NISTIR 6556 (its table 8, from memory) with its
 * modal state, and gives the motions. What the file leaves to the state that the machine happens to be in is a finding.
 */
import { turnByCentre, turnByRadius } from './arc.js';
import type { MessageValues, RouterMessageId } from '../messages/index.js';
import { Described, type NamedTool, toolNamed, wordsOf } from './described.js';
import type { Findings } from './findings.js';
import type { GcodeBlock } from './reader.js';
import type { Motion, ProofPoint3, SimulatedTool, SimulationLimits, ArcTurn } from './types.js';

const inch = 25.4;
/** Rounding of a file's numbers, mm. */
const rounding = 0.001;
/** Rounding of a feed, mm/min, and of the slope of a short ramp, degrees. */
const feedRounding = 1;
const angleSlack = 0.2;
/** A descent up to this slope is no plunge, whatever the ramp is set to: rise over run of 0.2. */
const gentleDeg = 11.4;
/** Codes that are part of the language but not of what can be proven here. */
const refused = [10, 28, 30, 38.2, 41, 42, 53, 81, 82, 83, 84, 85, 86, 87, 88, 89, 91, 92, 92.1, 92.2, 92.3, 93];
/** Modes that a file must set before it moves, by one of the codes. */
const asked: readonly (readonly [string, readonly number[]])[] = [
  ['units (G21 or G20)', [20, 21]],
  ['the plane (G17)', [17, 18, 19]],
  ['absolute distance (G90)', [90]],
  ['feed a minute (G94)', [94]],
  ['no cutter compensation (G40)', [40]],
  ['the coordinate system (G54)', [54]],
];
const askedLength: (typeof asked)[number] = ['the tool length (G43 or G49)', [43, 49]];

export class Machine {
  readonly motions: Motion[] = [];
  readonly #name: string;
  readonly #limits: SimulationLimits;
  readonly #findings: Findings;
  readonly #set = new Set<number>();
  #unit = 1;
  #plane = 17;
  #motion: number | null = null;
  #spindle: 'stopped' | 'clockwise' | 'anticlockwise' = 'stopped';
  #speed = 0;
  #feed = 0;
  #selected = 0;
  #tool: SimulatedTool | null = null;
  #at: { x: number | null; y: number | null; z: number | null } = { x: null, y: null, z: null };
  readonly #described: Described;
  #named: NamedTool | null = null;
  #ended = false;
  #line = 0;

  constructor(name: string, limits: SimulationLimits, findings: Findings) {
    this.#name = name;
    this.#limits = limits;
    this.#findings = findings;
    this.#described = new Described(limits.machine, (id, values) => {
      this.#report(id, values);
    });
  }

  #report<Id extends RouterMessageId>(id: Id, values: MessageValues<Id>): void {
    this.#findings.add(id, this.#name, values, { line: this.#line });
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
    if (!this.#ended) this.#report('no-end', {});
  }

  #execute(block: GcodeBlock): void {
    const { g, m, words } = block;
    for (const code of g) {
      if (refused.includes(code)) this.#report('not-provable', { word: `G${code}` });
      this.#set.add(code);
    }
    this.#described.take(block, g.includes(20) ? inch : g.includes(21) ? 1 : this.#unit);
    this.#checkStop(m, words);
    this.#takeNumbers(words);
    this.#takeSpindle(m);
    if (g.includes(4)) {
      if (!((words.get('P') ?? -1) >= 0)) this.#report('dwell', {});
      return;
    }
    this.#takeModes(g, words);
    if (['X', 'Y', 'Z'].some((axis) => words.has(axis))) this.#move(words);
    else if ([0, 1, 2, 3].some((code) => g.includes(code))) this.#report('motion-without-place', {});
    if (m.includes(2) || m.includes(30)) this.#end(m.includes(2) ? 'M2' : 'M30');
  }

  /** Nothing but a motion may stand in mid-cut: the tool rubs where it stops, and burns. */
  #checkStop(m: readonly number[], words: GcodeBlock['words']): void {
    const { z } = this.#at;
    if (z === null || z >= this.#limits.travelHeight - rounding) return;
    // the end of the program has a message of its own
    const stops = m.filter((code) => code !== 2 && code !== 30).map((code) => `M${code}`);
    if (words.has('T')) stops.push(`T${words.get('T') ?? 0}`);
    for (const word of stops) this.#report('word-tool-down', { word });
  }

  #takeNumbers(words: GcodeBlock['words']): void {
    const feed = words.get('F');
    if (feed !== undefined) this.#feed = feed * this.#unit;
    this.#speed = words.get('S') ?? this.#speed;
    this.#selected = words.get('T') ?? this.#selected;
  }

  #takeSpindle(m: GcodeBlock['m']): void {
    if (m.includes(6)) this.#changeTool();
    if (m.includes(0)) this.#pause();
    if (m.includes(3)) {
      if (this.#spindle !== 'clockwise') this.#described.spindleStarts();
      this.#spindle = 'clockwise';
    }
    if (m.includes(4)) this.#spindle = 'anticlockwise';
    if (m.includes(5)) this.#spindle = 'stopped';
  }

  /** Plane, unit, tool length and motion: what holds until it is changed. */
  #takeModes(g: GcodeBlock['g'], words: GcodeBlock['words']): void {
    for (const code of [17, 18, 19]) if (g.includes(code)) this.#plane = code;
    if (g.includes(20)) this.#unit = inch;
    if (g.includes(21)) this.#unit = 1;
    if (g.includes(43) && words.get('H') !== this.#tool?.number)
      this.#report('tool-length', { taken: words.get('H') ?? 0, tool: this.#tool?.number ?? 0 });
    for (const code of [0, 1, 2, 3]) if (g.includes(code)) this.#motion = code;
    if (g.includes(80)) this.#motion = null;
  }

  #changeTool(): void {
    if (this.#spindle !== 'stopped') this.#report('change-turning', {});
    this.#mount(this.#selected);
    // where the machine stands after a change is its own affair
    this.#at = { x: null, y: null, z: null };
  }

  /** Puts a tool of the record into the spindle, which the comment before it has to name as it is. */
  #mount(number: number): void {
    this.#tool = this.#limits.tools.find((tool) => tool.number === number) ?? null;
    if (this.#tool === null) {
      this.#report('tool-unknown', { tool: number });
      return;
    }
    const wanted = wordsOf(this.#tool);
    if (this.#named?.number !== number || this.#named.words !== wanted)
      this.#report('tool-comment', { tool: number, wanted, said: this.#named?.words ?? 'nothing' });
  }

  #takeComment(text: string): void {
    this.#described.comment(text);
    const named = toolNamed(text);
    if (named === null) return;
    const another = this.#named !== null && this.#named.number !== named.number;
    this.#named = named;
    const { toolChange } = this.#limits.machine;
    if (toolChange === 'automatic') return;
    if (this.#tool === null) this.#mount(named.number);
    else if (another && toolChange === 'none') this.#report('tools-in-file', {});
  }

  /** A pause by hand: the tool that the comment before it names comes into the spindle. */
  #pause(): void {
    if (this.#limits.machine.toolChange !== 'by-hand') return;
    if (this.#spindle !== 'stopped') this.#report('change-turning', {});
    this.#described.pauses(this.#at);
    if (this.#named !== null) this.#mount(this.#named.number);
    // the machine is moved about by hand to set the tool to zero
    this.#at = { x: null, y: null, z: null };
  }

  #end(word: string): void {
    this.#ended = true;
    const { z } = this.#at;
    this.#described.ends(word, this.#at);
    if (z !== null && z < this.#limits.travelHeight - rounding) this.#report('end-tool-down', {});
  }

  #move(words: GcodeBlock['words']): void {
    const goal = (axis: 'x' | 'y' | 'z'): number | null => {
      const value = words.get(axis.toUpperCase());
      return value === undefined ? this.#at[axis] : value * this.#unit;
    };
    const next = { x: goal('x'), y: goal('y'), z: goal('z') };
    const automatic = this.#limits.machine.toolChange === 'automatic';
    for (const [what, codes] of automatic ? [...asked, askedLength] : asked)
      if (!codes.some((code) => this.#set.has(code))) {
        this.#report('mode-unset', { mode: what });
        codes.forEach((code) => this.#set.add(code));
      }
    const before = this.#at;
    this.#at = next;
    if (this.#motion === null) {
      this.#report('place-without-motion', {});
      return;
    }
    const rapid = this.#motion === 0;
    if (
      before.x === null ||
      before.y === null ||
      before.z === null ||
      next.x === null ||
      next.y === null ||
      next.z === null
    ) {
      // from an unknown place only a rise, and then a move at travel height, is safe
      if (!rapid || next.z === null || next.z < this.#limits.travelHeight - rounding) this.#report('first-moves', {});
      return;
    }
    const from: ProofPoint3 = { x: before.x, y: before.y, z: before.z };
    const to: ProofPoint3 = { x: next.x, y: next.y, z: next.z };
    if (this.#tool === null) {
      this.#report('no-tool', {});
      return;
    }
    if (!rapid) this.#checkCutting(this.#tool);
    const turn = this.#motion >= 2 ? this.#turn(from, to, words) : null;
    if (turn === 'wrong') return;
    const motion: Motion = {
      rapid,
      tool: this.#tool,
      from,
      to,
      turn,
      feed: this.#feed,
      file: this.#name,
      line: this.#line,
    };
    if (!rapid) {
      this.#described.cuts(motion);
      this.#checkAsPlanned(motion);
    }
    this.motions.push(motion);
  }

  #checkCutting({ number }: SimulatedTool): void {
    const named = this.#named?.number ?? number;
    if (named !== number) this.#report('change-unpaused', { tool: named });
    const { minSpindle, maxSpindle } = this.#limits;
    if (this.#spindle !== 'clockwise') this.#report('spindle-still', {});
    else if (this.#speed < minSpindle || this.#speed > maxSpindle)
      this.#report('spindle-speed', { speed: this.#speed, min: minSpindle, max: maxSpindle });
    if (!(this.#feed > 0)) this.#report('no-feed', {});
  }

  /** Speed and feed as the record has them for the tool; what goes down more steeply than a ramp is a plunge. */
  #checkAsPlanned({ from, to, turn, tool }: Motion): void {
    const { number, spindle, feed, plunge } = tool;
    if (Math.abs(this.#speed - spindle) > 1)
      this.#report('spindle-other', { tool: number, speed: this.#speed, wanted: spindle });
    if (this.#feed > Math.max(feed, plunge) + feedRounding)
      this.#report('feed-other', { tool: number, feed: Math.round(this.#feed), max: Math.max(feed, plunge) });
    const fall = from.z - to.z;
    if (fall <= rounding || to.z >= 0) return;
    const level = turn === null ? Math.hypot(to.x - from.x, to.y - from.y) : Math.abs(turn.sweep) * turn.radius;
    const steepest = Math.max(this.#limits.rampAngleDeg, gentleDeg);
    const angle = (Math.atan2(fall - rounding, level) * 180) / Math.PI;
    if (angle > steepest + angleSlack && this.#feed > plunge + feedRounding)
      this.#report('plunge-fast', {
        tool: number,
        angle: `${angle.toFixed(1)}°`,
        feed: Math.round(this.#feed),
        max: plunge,
      });
  }

  #turn(from: ProofPoint3, to: ProofPoint3, words: GcodeBlock['words']): ArcTurn | 'wrong' {
    if (this.#plane !== 17) {
      this.#report('arc-plane', { plane: this.#plane });
      return 'wrong';
    }
    const clockwise = this.#motion === 2;
    const r = words.get('R');
    const [i, j] = [words.get('I'), words.get('J')];
    if (r === undefined && i === undefined && j === undefined) {
      this.#report('arc-bare', {});
      return 'wrong';
    }
    const read =
      r === undefined
        ? turnByCentre(from, to, (i ?? 0) * this.#unit, (j ?? 0) * this.#unit, clockwise)
        : turnByRadius(from, to, r * this.#unit, clockwise);
    if (read.kind === 'turn') return read.turn;
    this.#report(read.id, read.values);
    return 'wrong';
  }
}
