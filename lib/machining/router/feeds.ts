/**
 * Speeds and feeds. feed = spindle speed x flutes x chip load (the defining relation of milling, as in any handbook
 * of machining). Chip loads are from memory of tables that makers of router bits print for wood boards; the table of
 * the bit in the spindle comes before them, and the program says so.
 */
import type { RouterData, RouterProblem, RouterTool, SheetMaterial } from './types.js';

interface ChipLoads {
  /** Chip load as a share of the diameter: cautious default, and the usual range. */
  readonly usual: number;
  readonly least: number;
  readonly most: number;
}

// from memory: a 6 mm bit takes some 0.1 to 0.3 mm in plywood and 0.1 to 0.4 mm in MDF, other sizes in proportion;
// the defaults stand in the lower half, for light machines
const plywood: ChipLoads = { usual: 0.02, least: 0.01, most: 0.05 };
const board: ChipLoads = { usual: 0.025, least: 0.012, most: 0.065 };

function chipLoadsOf(kind: string): ChipLoads {
  return kind === 'mdf' || kind === 'hardboard' ? board : plywood;
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

const round = (value: number): number => Math.round(value);

/**
 * Spindle speed, feeds and pass depth of a tool in a material. Where the feed would pass what the machine holds, the
 * spindle turns slower, so that the chip keeps its thickness.
 * @throws nothing; ask `feedProblems` for what is out of range
 */
export function cuttingOf(tool: RouterTool, material: SheetMaterial, data: RouterData): Cutting {
  const { spindle } = data;
  if (tool.kind === 'drill') {
    const speed = spindle.drillSpeed ?? spindle.least;
    const feed = Math.min(data.mostFeed, speed * tool.flutes * drillChip * tool.diameter);
    return { tool, spindle: speed, feed: round(feed), plunge: round(feed), passDepth: peckDiameters * tool.diameter };
  }
  const chip = data.chipLoad ?? chipLoadsOf(material.kind).usual * tool.diameter;
  const held = data.mostFeed / (tool.flutes * chip);
  const speed = Math.max(Math.min(spindle.speed, held), Math.min(spindle.least, spindle.speed));
  const turning = round(speed);
  const feed = Math.min(data.mostFeed, turning * tool.flutes * chip);
  return {
    tool,
    spindle: turning,
    feed: round(feed),
    plunge: round(Math.min(data.plungeFeed, feed)),
    passDepth: data.passDepth * tool.diameter,
  };
}

const figure = (value: number): string => String(Number(value.toPrecision(3)));

/** What is wrong or unusual about the speeds and feeds of the tools in use. */
export function feedProblems(cuttings: readonly Cutting[], material: SheetMaterial, data: RouterData): RouterProblem[] {
  const problems: RouterProblem[] = [];
  const { least, most } = data.spindle;
  if (least > most)
    problems.push({
      code: 'router-spindle',
      severity: 'error',
      key: ['spindle', 'least'],
      message: `router.spindle.least of ${least} rev/min is above router.spindle.most of ${most}`,
    });
  for (const { tool, spindle, feed } of cuttings) {
    if (spindle < least || spindle > most)
      problems.push({
        code: 'router-spindle',
        severity: 'error',
        key: ['spindle', tool.kind === 'drill' ? 'drillSpeed' : 'speed'],
        message: `tool ${tool.number} would turn at ${spindle} rev/min, outside the spindle's range of ${least} to ${most}`,
      });
    if (tool.kind !== 'mill') continue;
    const loads = chipLoadsOf(material.kind);
    const chip = feed / (spindle * tool.flutes);
    const low = loads.least * tool.diameter;
    const high = loads.most * tool.diameter;
    if (chip < low * 0.999 || chip > high * 1.001)
      problems.push({
        code: 'router-chip-load',
        severity: 'warning',
        key: ['chipLoad'],
        message: `tool ${tool.number} takes chips of ${figure(chip)} mm in ${material.kind}; ${figure(low)} to ${figure(high)} mm is usual for a ${figure(tool.diameter)} mm bit (from memory; the bit maker's table comes first). ${chip < low ? 'Thin chips rub and burn: lower the spindle speed or take fewer flutes' : 'Thick chips break bits: lower router.chipLoad'}`,
      });
  }
  if (data.passDepth > 1)
    problems.push({
      code: 'router-chip-load',
      severity: 'warning',
      key: ['passDepth'],
      message: `router.passDepth of ${data.passDepth} diameters is more than the 1 that is usual in wood boards (from memory); ask the bit's maker`,
    });
  return problems;
}
