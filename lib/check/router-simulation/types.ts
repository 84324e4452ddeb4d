/** What the simulation takes and gives. Lengths in mm, z 0 at the upper face of the sheet, positive upwards. */
import type { AxesRead, MachineRead, PartRead, PlacementRead } from '../job-reader.js';
import type { MessageId } from '../messages/index.js';
import type { ProofPoint } from '../types.js';

export interface SimulatedTool {
  readonly number: number;
  readonly kind: 'mill' | 'drill' | 'v';
  /** What it cuts. */
  readonly diameter: number;
  /** Diameter by which it is known, where it cuts another. */
  readonly sold?: number | undefined;
  readonly cuttingDepth: number;
  /** Deepest bite of one pass or peck. */
  readonly passDepth: number;
  /** rev/min */
  readonly spindle: number;
  /** Along the path, and down more steeply than a ramp, mm/min. */
  readonly feed: number;
  readonly plunge: number;
  /** Cutting edges. */
  readonly flutes: number;
  /** What is usual of it in the material: chips in mm, feed in mm/min, speed in rev/min. */
  readonly range: {
    readonly minChip?: number | undefined;
    readonly maxChip?: number | undefined;
    readonly maxPlunge?: number | undefined;
    readonly maxSpindle?: number | undefined;
    /** Whether the design asks for something else. */
    readonly outside?: true | undefined;
  };
}

/** What the files are written for, as the record has it. */
export type DescribedMachine = MachineRead;

/** What the file has to keep to. */
export interface SimulationLimits {
  /** Axes of the machine that are not true, for which the files make up. */
  readonly axes?: AxesRead | undefined;
  /** How much wider than their diameter bored holes come out, for which their paths make up. */
  readonly bore?: number | undefined;
  readonly tools: readonly SimulatedTool[];
  readonly thickness: number;
  readonly travelHeight: number;
  /** How far a cut may go into the spoil board. */
  readonly overcut: number;
  /** Steepest ramp at the feed along the path. */
  readonly rampAngleDeg: number;
  /** Material that a finishing pass may take over the whole depth. */
  readonly finishing: number;
  readonly markDepth: number;
  /** Lowest travel of a V-bit, over one part alone. */
  readonly hopHeight: number;
  readonly tabWidth: number;
  readonly tabHeight: number;
  readonly onionSkin: number;
  readonly minSpindle: number;
  readonly maxSpindle: number;
  readonly machine: DescribedMachine;
  readonly holding: readonly {
    readonly part: string;
    readonly copy: number;
    readonly tabs: number;
    readonly onionSkin: boolean;
  }[];
  /** The corners of each tab: only there may an edge stand uncut. */
  readonly tabs: readonly (readonly ProofPoint[])[];
  readonly keepOuts: readonly (readonly ProofPoint[])[];
}

export interface SimulatedSheet {
  readonly width: number;
  readonly height: number;
  readonly parts: ReadonlyMap<string, PartRead>;
  readonly placed: readonly PlacementRead[];
}

export interface NgcFile {
  readonly name: string;
  readonly text: string;
}

export type FindingCode =
  | 'syntax'
  | 'modal'
  | 'spindle'
  | 'beam'
  | 'feed'
  | 'tool'
  | 'plane'
  | 'arc'
  | 'rapid'
  | 'depth'
  | 'pass'
  | 'spoil-board'
  | 'sheet'
  | 'clamp'
  | 'loose'
  | 'tab'
  | 'edge'
  | 'hole'
  | 'pocket'
  | 'mark'
  | 'stop'
  | 'twice'
  | 'order'
  | 'head'
  | 'end';

export interface RouterFinding {
  readonly code: FindingCode;
  /** Which message of the catalogue it is. */
  readonly id: MessageId;
  readonly file: string;
  /** 1-based line of the file, where there is one. */
  readonly line?: number;
  readonly place?: ProofPoint;
  /** What is wrong, in words. */
  readonly what: string;
  /** The same with file, line and place. */
  readonly message: string;
}

/** A turn about an upright axis. */
export interface ArcTurn {
  readonly cx: number;
  readonly cy: number;
  readonly radius: number;
  /** Radians, anticlockwise positive. */
  readonly sweep: number;
}

export interface ProofPoint3 extends ProofPoint {
  readonly z: number;
}

/** One move of the tool's tip, as the file has it. */
export interface Motion {
  readonly rapid: boolean;
  readonly tool: SimulatedTool;
  readonly from: ProofPoint3;
  readonly to: ProofPoint3;
  readonly turn: ArcTurn | null;
  readonly feed: number;
  readonly file: string;
  readonly line: number;
}

export interface Simulation {
  readonly findings: readonly RouterFinding[];
  /** Greatest distance of a finished edge from its place, as far as the tool can reach it. */
  readonly worstEdge: number;
  /** Deepest point of the tool below the sheet. */
  readonly deepestInSpoilBoard: number;
  readonly motions: readonly Motion[];
}
