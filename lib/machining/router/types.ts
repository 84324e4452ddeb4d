/**
 * What the router's strategy takes and gives. Lengths in mm, feeds in mm/min, y up; z is 0 at the upper face of the
 * sheet and positive upwards. The strategy takes parts and machining data by the few fields it needs.
 */
import type { Axes, Point } from '../../geometry/index.js';
import type { PlacedPart } from '../../part/index.js';
import type { CutSheet } from '../types.js';
import type { Cut } from '../moves.js';
import type { RouterMachine } from './machine.js';

export type { RouterMachine } from './machine.js';
export type { Cut, Move, Point3 } from '../moves.js';

export interface RouterTool {
  /** Its number in the machine's tool table. */
  readonly number: number;
  /** An end mill, a drill bit, or a 90° V-bit. */
  readonly kind: 'mill' | 'drill' | 'v';
  /** What it cuts. */
  readonly diameter: number;
  /** Diameter by which it is sold and known, where a coupon has shown that it cuts another. */
  readonly sold?: number;
  readonly flutes: number;
  /** Longest depth that it may cut. */
  readonly cuttingDepth: number;
}

/** A tool as listed; its cutting depth may be left open. */
export type ListedTool = Omit<RouterTool, 'cuttingDepth'> & { readonly cuttingDepth?: number | undefined };

/** Machining data, as the design's `router` section names them. */
export interface RouterData {
  readonly machine: RouterMachine;
  readonly safeHeight: number;
  /** Of the V-bit between the marks of a part. */
  readonly hopHeight: number;
  readonly overcut: number;
  readonly direction: 'conventional' | 'climb';
  readonly finishing: number;
  readonly rampAngleDeg: number;
  readonly plungeFeed?: number | undefined;
  readonly chipLoad?: number | undefined;
  readonly passDepth?: number | undefined;
  readonly markDepth: number;
  readonly spindle: {
    readonly speed: number;
    readonly drillSpeed?: number | undefined;
  };
  /** Empty: made up from the bits of the process. */
  readonly tools: readonly ListedTool[];
  readonly tabs: {
    readonly width: number;
    readonly height?: number | undefined;
    readonly spacing: number;
    readonly min: number;
    readonly without: 'onion-skin' | 'stop';
    readonly onionSkinBelow: number;
    readonly onionSkin: number;
  };
}

export interface SheetMaterial {
  /** `plywood`, `mdf`, …: as in the design file. */
  readonly kind: string;
  readonly thickness: number;
}

/** A sheet to be routed. */
export interface RoutedSheet {
  readonly cut: CutSheet;
  readonly placed: readonly PlacedPart[];
  /** Places that no cut may enter: clamps and damage, as the design names them. */
  readonly keepOuts?: readonly (readonly Point[])[];
}

/** Everything that one tool does on a sheet. */
export interface ToolRun {
  readonly tool: RouterTool;
  /** rev/min, clockwise. */
  readonly spindle: number;
  readonly cuts: readonly Cut[];
  /** With the wait for the spindle, s. */
  readonly seconds: number;
}

/** How a part is held until the sheet is done. */
export interface Holding {
  readonly part: string;
  readonly copy: number;
  /** Number of tabs on its edges; 0 for an onion skin. */
  readonly tabs: number;
  readonly onionSkin: boolean;
}

/** A plain document: all that a writer of any machine language needs. */
export interface ToolPath {
  readonly sheet: string;
  readonly width: number;
  readonly height: number;
  readonly thickness: number;
  readonly safeHeight: number;
  readonly machine: RouterMachine;
  /** Axes that are not true: its places are where the tool has to come to. */
  readonly axes?: Axes | undefined;
  readonly runs: readonly ToolRun[];
}

export interface RouterProblem {
  readonly code:
    | 'router-tool-missing'
    | 'router-tool-short'
    | 'router-countersink'
    | 'router-finishing'
    | 'machine-feed'
    | 'machine-place'
    | 'machine-decimals'
    | 'router-spindle'
    | 'router-no-tabs'
    | 'router-onion-skin'
    | 'router-clamp'
    | 'router-sheet-edge'
    | 'router-chip-load'
    | 'router-loose'
    | 'router-marks';
  readonly severity: 'error' | 'warning';
  /** Key of the design file that would change it. */
  readonly key: readonly string[];
  readonly message: string;
  /** How to fix it. */
  readonly remedy: string;
}

export interface ToolWear {
  readonly tool: number;
  /** Length that the tool has cut, mm. */
  readonly length: number;
}

/** What a tool is used for in a material without a warning. */
export interface CuttingRange {
  /** Chip of each edge in a turn, mm; not stated of drill bits. */
  readonly minChip?: number;
  readonly maxChip?: number;
  /** Down more steeply than a ramp, mm/min. */
  readonly maxPlunge?: number;
  /** rev/min; left out where the material has no limit that a spindle reaches. */
  readonly maxSpindle?: number;
}

/** Limits that a proof holds the file against. */
export interface RouterLimits {
  readonly tools: readonly (RouterTool & {
    readonly spindle: number;
    /** Deepest bite of one pass, or of one peck of a drill bit. */
    readonly passDepth: number;
    /** Along the path, and down more steeply than a ramp, mm/min. */
    readonly feed: number;
    readonly plunge: number;
    /** `outside` where the design asks for more or less than that, which is warned of. */
    readonly range: CuttingRange & { readonly outside?: true };
  })[];
  readonly thickness: number;
  readonly overcut: number;
  /** Steepest ramp at the feed along the path. */
  readonly rampAngleDeg: number;
  readonly finishing: number;
  readonly markDepth: number;
  /** Lowest travel of the V-bit, over one part alone. */
  readonly hopHeight: number;
  readonly tabWidth: number;
  readonly tabHeight: number;
  readonly onionSkin: number;
  readonly minSpindle: number;
  readonly maxSpindle: number;
  /** What its files are written for. */
  readonly machine: RouterMachine;
  readonly holding: readonly Holding[];
  /** The corners of each tab, which bridges the cut. */
  readonly tabs: readonly (readonly Point[])[];
  readonly keepOuts: readonly (readonly Point[])[];
}

export interface RouterPlan {
  readonly toolpath: ToolPath;
  readonly limits: RouterLimits;
  /** With an error among them the tool path is empty. */
  readonly problems: readonly RouterProblem[];
  readonly cuttingSeconds: number;
  /** Length of the travel between cuts, level, mm. */
  readonly travelLength: number;
  readonly toolWear: readonly ToolWear[];
}
