/**
 * What bits bear in each material: chip loads, speeds, depths. The table of the bit in the spindle comes before all of
 * it, and the program says so.
 */
import { element, tableAt } from '../../geometry/index.js';

const mmInInch = 25.4;

/**
 * Chip loads of end mills (inches) by the bit's diameter (inches): Onsrud, CNC Production Routing Guide, chip load per
 * tooth, the columns of softwood and plywood, of MDF and particle board, of hard plastic and of aluminium; from memory.
 */
const diameters = [1 / 8, 1 / 4, 3 / 8, 1 / 2];
interface ChipRows {
  readonly min: readonly number[];
  readonly max: readonly number[];
}

/** A family of materials that cut alike. */
interface CuttingData {
  readonly chips: ChipRows;
  /** Deepest pass in diameters: to start with, and at most. Common practice, no source. */
  readonly passDepth: { readonly usual: number; readonly max: number };
  /** Feed straight down with an end mill, mm/min: to start with, and at most; from memory. */
  readonly plunge: { readonly usual: number; readonly max: number };
  /** Steepest ramp, degrees; from memory. */
  readonly maxRampDeg: number;
  /** Fastest edge of an end mill, m/min; from memory. Wood has no limit that a router reaches. */
  readonly maxSurfaceSpeed: number;
  /** Edge of a drill bit of high-speed steel, m/min: to start with, and at most; from memory. */
  readonly drillSpeed: { readonly usual: number; readonly max: number };
  /** Chip of each edge of a drill bit, as a share of its diameter, and depth of a peck in diameters; from memory. */
  readonly drillChip: number;
  readonly peck: number;
}

const wood = {
  passDepth: { usual: 0.75, max: 1 },
  plunge: { usual: 600, max: 2000 },
  maxRampDeg: 15,
  maxSurfaceSpeed: Infinity,
  drillSpeed: { usual: 75, max: 150 },
  drillChip: 0.02,
  peck: 1.5,
};

const families = {
  wood: { ...wood, chips: { min: [0.004, 0.011, 0.017, 0.021], max: [0.006, 0.013, 0.02, 0.023] } },
  board: { ...wood, chips: { min: [0.004, 0.013, 0.02, 0.025], max: [0.007, 0.016, 0.023, 0.027] } },
  plastic: {
    chips: { min: [0.003, 0.008, 0.01, 0.012], max: [0.005, 0.01, 0.012, 0.016] },
    passDepth: { usual: 0.5, max: 1 },
    plunge: { usual: 300, max: 800 },
    maxRampDeg: 5,
    maxSurfaceSpeed: 500,
    drillSpeed: { usual: 30, max: 60 },
    drillChip: 0.01,
    peck: 1,
  },
  aluminium: {
    chips: { min: [0.002, 0.005, 0.006, 0.008], max: [0.004, 0.007, 0.008, 0.01] },
    passDepth: { usual: 0.25, max: 0.5 },
    plunge: { usual: 150, max: 400 },
    maxRampDeg: 3,
    maxSurfaceSpeed: 350,
    drillSpeed: { usual: 60, max: 100 },
    drillChip: 0.01,
    peck: 1,
  },
} as const satisfies Readonly<Record<string, CuttingData>>;

const familyOf: Readonly<Record<string, keyof typeof families>> = {
  mdf: 'board',
  hardboard: 'board',
  osb: 'board',
  acrylic: 'plastic',
  film: 'plastic',
  aluminium: 'aluminium',
  foil: 'aluminium',
};

/** The data of a material by its kind; what is not known cuts as plywood. */
export function cuttingData(kind: string): CuttingData {
  return families[familyOf[kind] ?? 'wood'];
}

/** The guide is for production machines; a light one starts at this share of its least: common practice, no source. */
const lightShare = 0.45;
/** Below this share of the guide's least a bit rubs rather than cuts: common practice, no source. */
const rubShare = 0.2;
/** A bit thinner than this (mm) bends: it takes half the depth. Common practice, no source. */
const thinBit = 3;

/** A row of the guide at a diameter (mm): straight between its columns, in proportion beyond them. */
function guideAt(row: readonly number[], diameter: number): number {
  const table = diameters.map((column, i) => [column, element(row, i)] as const);
  const [first, last] = [element(diameters, 0), element(diameters, diameters.length - 1)];
  const inches = Math.max(first, Math.min(last, diameter / mmInInch));
  return (diameter / inches) * tableAt(table, inches);
}

/** Chip loads of a bit, mm. */
export interface ChipLoads {
  /** Default, cautious. */
  readonly usual: number;
  readonly min: number;
  readonly max: number;
}

/** Chip loads of an end mill by its diameter (mm). */
export function millChips({ chips }: CuttingData, diameter: number): ChipLoads {
  const low = guideAt(chips.min, diameter);
  return { usual: lightShare * low, min: rubShare * low, max: guideAt(chips.max, diameter) };
}

/**
 * Chip loads of a 90° V-bit by the diameter that engages, which is twice its depth (mm). So little of it is in the
 * material that a light machine takes what the guide has.
 */
export function engravingChips({ chips }: CuttingData, depth: number): ChipLoads {
  const low = guideAt(chips.min, 2 * depth);
  return { usual: low, min: rubShare * low, max: guideAt(chips.max, 2 * depth) };
}

/** Pass depths of an end mill in diameters: to start with, and at most. */
export function passDepths(
  { passDepth }: CuttingData,
  diameter: number,
): { readonly usual: number; readonly max: number } {
  const share = diameter < thinBit ? 0.5 : 1;
  return { usual: share * passDepth.usual, max: share * passDepth.max };
}

/** Speed (rev/min) at which an edge of a diameter (mm) runs so fast (m/min): n = 1000 v / (pi d), as in any handbook. */
export function speedAt(surfaceSpeed: number, diameter: number): number {
  return (1000 * surfaceSpeed) / (Math.PI * diameter);
}
