/**
 * Speeds and feeds. feed = spindle speed x flutes x chip load (the defining relation of milling, as in any handbook
 * of machining).
 */
import { element } from '../../geometry/index.js';
import { levelFeed } from './machine.js';
import type { RouterData, RouterProblem, RouterTool, SheetMaterial } from './types.js';

/** Chip loads of one diameter of bit, mm. */
interface ChipLoads {
  /** Default, cautious. */
  readonly usual: number;
  readonly min: number;
  readonly max: number;
}

/**
 * Chip loads (inches) by the bit's diameter (inches): Onsrud, CNC Production Routing Guide, chip load per tooth, the
 * columns of softwood and plywood and of MDF and particle board; from memory. The table of the bit in the spindle comes
 * before them, and the program says so.
 */
const guide = {
  diameters: [1 / 8, 1 / 4, 3 / 8, 1 / 2],
  plywood: { min: [0.004, 0.011, 0.017, 0.021], max: [0.006, 0.013, 0.02, 0.023] },
  board: { min: [0.004, 0.013, 0.02, 0.025], max: [0.007, 0.016, 0.023, 0.027] },
} as const;
const mmInInch = 25.4;

/** The guide is for production machines; a light one starts at this share of its least: common practice, no source. */
const lightShare = 0.45;
/** Below this share of the guide's least a bit rubs rather than cuts: common practice, no source. */
const rubShare = 0.2;

/** A row of the guide at a diameter (mm): straight between its columns, in proportion beyond them. */
function guideAt(row: readonly number[], diameter: number): number {
  const { diameters } = guide;
  const inches = diameter / mmInInch;
  const last = diameters.length - 1;
  const above = diameters.findIndex((column) => column >= inches);
  if (above <= 0) {
    const end = above < 0 ? last : 0;
    return (element(row, end) * diameter) / element(diameters, end);
  }
  const share = (inches - element(diameters, above - 1)) / (element(diameters, above) - element(diameters, above - 1));
  return mmInInch * (element(row, above - 1) + share * (element(row, above) - element(row, above - 1)));
}

function chipLoadsOf(kind: string, diameter: number): ChipLoads {
  const { min, max } = kind === 'mdf' || kind === 'hardboard' || kind === 'osb' ? guide.board : guide.plywood;
  const low = guideAt(min, diameter);
  return { usual: lightShare * low, min: rubShare * low, max: guideAt(max, diameter) };
}

/** Chip of a drill bit's edge in wood, as a share of the diameter; from memory. */
const drillChip = 0.02;
/** A drill bit goes this many diameters deep before it is drawn to clear its chips; common practice, no source. */
const peckDiameters = 1.5;

export interface Cutting {
  readonly tool: RouterTool;
  /** rev/min */
  readonly spindle: number;
  /** Along the path, mm/min. */
  readonly feed: number;
  /** Straight down, mm/min. */
  readonly plunge: number;
  /** Deepest bite of one pass or peck, mm. */
  readonly passDepth: number;
}

/** As written in the file; never 0, with which nothing would move. */
const round = (value: number): number => Math.max(1, Math.round(value));

/**
 * Spindle speed, feeds and pass depth of a tool in a material. Where the feed would pass what the machine holds, the
 * spindle turns slower, so that the chip keeps its thickness.
 * @throws nothing; ask `feedProblems` for what is out of range
 */
export function cuttingOf(tool: RouterTool, material: SheetMaterial, data: RouterData): Cutting {
  const { spindle, machine } = data;
  const maxFeed = levelFeed(machine);
  if (tool.kind === 'drill') {
    const speed = spindle.drillSpeed ?? machine.spindle.min;
    const feed = Math.min(data.machine.maxFeed.z, speed * tool.flutes * drillChip * tool.diameter);
    return { tool, spindle: speed, feed: round(feed), plunge: round(feed), passDepth: peckDiameters * tool.diameter };
  }
  const chip = data.chipLoad ?? chipLoadsOf(material.kind, tool.diameter).usual;
  const held = maxFeed / (tool.flutes * chip);
  const speed = Math.max(Math.min(spindle.speed, held), Math.min(machine.spindle.min, spindle.speed));
  const turning = round(speed);
  const feed = Math.min(maxFeed, turning * tool.flutes * chip);
  return {
    tool,
    spindle: turning,
    feed: round(feed),
    plunge: round(Math.min(data.plungeFeed, machine.maxFeed.z, feed)),
    passDepth: data.passDepth * tool.diameter,
  };
}

const rounded = (value: number): string => String(Number(value.toPrecision(3)));

/** What is wrong or unusual about the speeds and feeds of the tools in use. */
export function feedProblems(cuttings: readonly Cutting[], material: SheetMaterial, data: RouterData): RouterProblem[] {
  const problems: RouterProblem[] = [];
  const { min, max } = data.machine.spindle;
  for (const { tool, spindle, feed } of cuttings) {
    if (spindle < min || spindle > max)
      problems.push({
        code: 'router-spindle',
        severity: 'error',
        key: ['router', 'spindle', tool.kind === 'drill' ? 'drillSpeed' : 'speed'],
        message: `tool ${tool.number} would turn at ${spindle} rev/min, outside the spindle's range of ${min} to ${max}`,
        remedy: 'use a speed within that range',
      });
    if (tool.kind !== 'mill') continue;
    const { min: low, max: high } = chipLoadsOf(material.kind, tool.diameter);
    const chip = feed / (spindle * tool.flutes);
    if (chip < low * 0.999 || chip > high * 1.001)
      problems.push({
        code: 'router-chip-load',
        severity: 'warning',
        key: ['router', 'chipLoad'],
        message: `tool ${tool.number} takes chips of ${rounded(chip)} mm in ${material.kind}, where ${rounded(low)} to ${rounded(high)} mm is usual for a ${rounded(tool.diameter)} mm bit (from memory; the bit maker's table comes first)`,
        remedy:
          chip < low
            ? 'lower the spindle speed or take fewer flutes: thin chips rub and burn'
            : 'lower router.chipLoad: thick chips break bits',
      });
  }
  if (data.passDepth > 1)
    problems.push({
      code: 'router-chip-load',
      severity: 'warning',
      key: ['router', 'passDepth'],
      message: `router.passDepth of ${data.passDepth} diameters is more than the 1 that is usual in wood boards (from memory)`,
      remedy: 'use 1 or less, or ask the maker of the bit',
    });
  return problems;
}
