/**
 * The machine: runs the blocks of a file in the order of execution of NISTIR 6556 (its table 8, from memory) and gives
 * the motions.
 */
import { checkAsPlanned } from './as-planned.js';
import { Described, type NamedTool, type Report, toolNamed, wordsOf } from './described.js';
import { changeCautions, squashed } from '../head/words.js';
import type { Findings } from './findings.js';
import { askedModes, Program } from './program.js';
import type { GcodeBlock } from './reader.js';
import type { Motion, ProofPoint3, SimulatedTool, SimulationLimits } from './types.js';

/** Rounding of a file's numbers, mm. */
const rounding = 0.001;
const askedLength: (typeof askedModes)[number] = ['the tool length (G43 or G49)', [43, 49]];
const askedWithLength = [...askedModes, askedLength];

export class Machine extends Program {
  readonly motions: Motion[] = [];
  readonly #limits: SimulationLimits;
  #spindle: 'stopped' | 'clockwise' | 'anticlockwise' = 'stopped';
  #speed = 0;
  #selected = 0;
  #tool: SimulatedTool | null = null;
  #at: { x: number | null; y: number | null; z: number | null } = { x: null, y: null, z: null };
  readonly #described: Described;
  /** Comments since the last words. */
  #comments: string[] = [];
  readonly #reports: Report = (id, values) => {
    this.report(id, values);
  };
  #named: NamedTool | null = null;

  constructor(name: string, limits: SimulationLimits, findings: Findings) {
    super(name, findings);
    this.#limits = limits;
    this.#described = new Described(limits.machine, this.#reports);
  }

  protected execute(block: GcodeBlock): void {
    this.#run(block);
    this.#comments = [];
  }

  #run(block: GcodeBlock): void {
    const { g, m, words } = block;
    this.takeCodes(g);
    this.#described.take(block);
    this.#checkStop(m, words);
    this.#takeNumbers(words);
    this.#takeSpindle(m);
    if (g.includes(4)) {
      if (!((words.get('P') ?? -1) >= 0)) this.report('dwell', {});
      return;
    }
    if (g.includes(43) && words.get('H') !== this.#tool?.number)
      this.report('tool-length', { taken: words.get('H') ?? 0, tool: this.#tool?.number ?? 0 });
    this.takeModes(g);
    this.takeMotion(block, ['X', 'Y', 'Z']);
  }

  /** Nothing but a motion may stand in mid-cut: the tool rubs where it stops, and burns. */
  #checkStop(m: readonly number[], words: GcodeBlock['words']): void {
    const { z } = this.#at;
    if (z === null || z >= this.#limits.travelHeight - rounding) return;
    // the end of the program has a message of its own
    const stops = m.filter((code) => code !== 2 && code !== 30).map((code) => `M${code}`);
    if (words.has('T')) stops.push(`T${words.get('T') ?? 0}`);
    for (const word of stops) this.report('word-tool-down', { word });
  }

  #takeNumbers(words: GcodeBlock['words']): void {
    this.takeFeed(words);
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

  #changeTool(): void {
    if (this.#spindle !== 'stopped') this.report('change-turning', {});
    this.#mount(this.#selected);
    // where the machine stands after a change is its own affair
    this.#at = { x: null, y: null, z: null };
  }

  /** Puts a tool of the record into the spindle, which the comment before it has to name as it is. */
  #mount(number: number): void {
    this.#tool = this.#limits.tools.find((tool) => tool.number === number) ?? null;
    if (this.#tool === null) {
      this.report('tool-unknown', { tool: number });
      return;
    }
    const wanted = wordsOf(this.#tool, this.#limits.machine.commentLength);
    const said = this.#named?.words ?? 'nothing';
    if (said !== wanted) this.report('tool-comment', { wanted, said });
  }

  protected takeComment(text: string): void {
    this.#described.comment(text);
    this.#comments.push(text);
    const named = toolNamed(text);
    if (named === null) return;
    const another = this.#named !== null && this.#named.number !== named.number;
    this.#named = named;
    const { toolChange } = this.#limits.machine;
    if (toolChange === 'automatic') return;
    if (this.#tool === null) this.#mount(named.number);
    else if (another && toolChange === 'none') this.report('tools-in-file', {});
  }

  /** A pause by hand: the tool that the comment before it names comes into the spindle. */
  #pause(): void {
    if (this.#limits.machine.toolChange !== 'by-hand') return;
    if (this.#spindle !== 'stopped') this.report('change-turning', {});
    this.#described.pauses(this.#at);
    const said = squashed(this.#comments.join(' '));
    if (changeCautions.some((caution) => !said.includes(squashed(caution)))) this.report('change-caution', {});
    if (this.#named !== null) this.#mount(this.#named.number);
    // the machine is moved about by hand to set the tool to zero
    this.#at = { x: null, y: null, z: null };
  }

  protected end(word: string): void {
    const { z } = this.#at;
    this.#described.ends(word, this.#at);
    if (z !== null && z < this.#limits.travelHeight - rounding) this.report('end-tool-down', {});
  }

  protected move(words: GcodeBlock['words']): void {
    const goal = (axis: 'x' | 'y' | 'z'): number | null => {
      const value = words.get(axis.toUpperCase());
      return value === undefined ? this.#at[axis] : value * this.unit;
    };
    const next = { x: goal('x'), y: goal('y'), z: goal('z') };
    const automatic = this.#limits.machine.toolChange === 'automatic';
    this.askModes(automatic ? askedWithLength : askedModes);
    const before = this.#at;
    this.#at = next;
    if (this.motion === null) {
      this.report('place-without-motion', {});
      return;
    }
    const rapid = this.motion === 0;
    if (
      before.x === null ||
      before.y === null ||
      before.z === null ||
      next.x === null ||
      next.y === null ||
      next.z === null
    ) {
      // from an unknown place only a rise, and then a move at travel height, is safe
      if (!rapid || next.z === null || next.z < this.#limits.travelHeight - rounding) this.report('first-moves', {});
      return;
    }
    const from: ProofPoint3 = { x: before.x, y: before.y, z: before.z };
    const to: ProofPoint3 = { x: next.x, y: next.y, z: next.z };
    if (this.#tool === null) {
      this.report('no-tool', {});
      return;
    }
    if (!rapid) this.#checkCutting(this.#tool);
    const turn = this.motion >= 2 ? this.turn(from, to, words) : null;
    if (turn === 'wrong') return;
    const motion: Motion = {
      rapid,
      tool: this.#tool,
      from,
      to,
      turn,
      feed: this.feed,
      file: this.name,
      line: this.line,
    };
    if (!rapid) {
      this.#described.cuts(motion);
      checkAsPlanned(motion, this.#speed, this.#limits, this.#reports);
    }
    this.motions.push(motion);
  }

  #checkCutting({ number }: SimulatedTool): void {
    const named = this.#named?.number ?? number;
    if (named !== number) this.report('change-unpaused', { tool: named });
    const { minSpindle, maxSpindle } = this.#limits;
    if (this.#spindle !== 'clockwise') this.report('spindle-still', {});
    else if (this.#speed < minSpindle || this.#speed > maxSpindle)
      this.report('spindle-speed', { speed: this.#speed, min: minSpindle, max: maxSpindle });
    if (!(this.feed > 0)) this.report('no-feed', {});
  }
}
