/**
 * Speeds and feeds. feed = spindle speed x flutes x chip load (the defining relation of milling, as in any handbook
 * of machining).
 */
import { cuttingData, engravingChips, millChips, passDepths, speedAt } from './cutting-data.js';
import { levelFeed } from './machine.js';
import type { CuttingRange, RouterData, RouterLimits, RouterProblem, RouterTool, SheetMaterial } from './types.js';

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
  readonly range: CuttingRange;
}

/** As written in the file; never 0, with which nothing would move. */
const round = (value: number): number => Math.max(1, Math.round(value));
const within = (value: number, { min, max }: { readonly min: number; readonly max: number }): number =>
  Math.max(min, Math.min(max, value));

function drilling(tool: RouterTool, material: SheetMaterial, { spindle, machine }: RouterData): Cutting {
  const { drillSpeed, drillChip, peck } = cuttingData(material.kind);
  const wanted = Math.round(speedAt(drillSpeed.usual, tool.diameter));
  const speed = spindle.drillSpeed ?? within(wanted, machine.spindle);
  const feed = round(Math.min(machine.maxFeed.z, speed * tool.flutes * drillChip * tool.diameter));
  const range = { maxSpindle: Math.round(speedAt(drillSpeed.max, tool.diameter)) };
  return { tool, spindle: speed, feed, plunge: feed, passDepth: peck * tool.diameter, range };
}

/** What an end mill or V-bit is used for in a material without a warning. */
function millingRange(tool: RouterTool, material: SheetMaterial, data: RouterData): CuttingRange {
  const known = cuttingData(material.kind);
  const { min, max } = tool.kind === 'v' ? engravingChips(known, data.markDepth) : millChips(known, tool.diameter);
  const fastest = speedAt(known.maxSurfaceSpeed, tool.diameter);
  return {
    minChip: min,
    maxChip: max,
    maxPlunge: known.plunge.max,
    // of a V-bit only the tip is in the material
    ...(tool.kind === 'v' || fastest === Infinity ? {} : { maxSpindle: Math.round(fastest) }),
  };
}

/**
 * Spindle speed, feeds and pass depth of a tool in a material. Where the feed would pass what the machine holds, or the
 * edge what the material bears, the spindle turns slower, so that the chip keeps its thickness.
 * @throws nothing; ask `feedProblems` for what is out of range
 */
export function cuttingOf(tool: RouterTool, material: SheetMaterial, data: RouterData): Cutting {
  if (tool.kind === 'drill') return drilling(tool, material, data);
  const { spindle, machine } = data;
  const known = cuttingData(material.kind);
  const maxFeed = levelFeed(machine);
  const chips = tool.kind === 'v' ? engravingChips(known, data.markDepth) : millChips(known, tool.diameter);
  const chip = tool.kind === 'mill' ? (data.chipLoad ?? chips.usual) : chips.usual;
  const held = Math.min(maxFeed / (tool.flutes * chip), speedAt(known.maxSurfaceSpeed, tool.diameter));
  const speed = Math.max(Math.min(spindle.speed, held), Math.min(machine.spindle.min, spindle.speed));
  const turning = round(speed);
  const feed = Math.min(maxFeed, turning * tool.flutes * chip);
  return {
    tool,
    spindle: turning,
    feed: round(feed),
    plunge: round(Math.min(data.plungeFeed ?? known.plunge.usual, machine.maxFeed.z, feed)),
    passDepth: (data.passDepth ?? passDepths(known, tool.diameter).usual) * tool.diameter,
    range: millingRange(tool, material, data),
  };
}

const rounded = (value: number): string => String(Number(value.toPrecision(3)));
const fromMemory = 'from memory; the bit maker’s table comes first';

function warning(key: readonly string[], message: string, remedy: string): RouterProblem {
  return { code: 'router-chip-load', severity: 'warning', key: ['router', ...key], message, remedy };
}

/** What an end mill or V-bit should not do in a material. */
function millingDoubts(cutting: Cutting, { kind }: SheetMaterial, data: RouterData): RouterProblem[] {
  const { tool, spindle, feed, plunge, passDepth, range } = cutting;
  const known = cuttingData(kind);
  const name = `tool ${tool.number}`;
  const doubts: RouterProblem[] = [];
  const { minChip = 0, maxChip = Infinity, maxPlunge = Infinity, maxSpindle = Infinity } = range;
  const chip = feed / (spindle * tool.flutes);
  const engaged = tool.kind === 'v' ? `V-bit ${rounded(data.markDepth)} mm deep` : `${rounded(tool.diameter)} mm bit`;
  if (chip < minChip * 0.999 || chip > maxChip * 1.001)
    doubts.push(
      warning(
        ['chipLoad'],
        `${name} cuts chips of ${rounded(chip)} mm in ${kind}, where ${rounded(minChip)} to ${rounded(maxChip)} mm is usual for a ${engaged} (${fromMemory})`,
        chip < minChip
          ? 'lower the spindle speed or use fewer flutes: thin chips rub and burn'
          : 'lower router.chipLoad: thick chips break bits',
      ),
    );
  if (plunge > maxPlunge)
    doubts.push(
      warning(
        ['plungeFeed'],
        `${name} plunges at ${plunge} mm/min in ${kind}, where up to ${maxPlunge} is usual (${fromMemory})`,
        'lower router.plungeFeed',
      ),
    );
  if (tool.kind === 'v') return doubts;
  const deepest = passDepths(known, tool.diameter).max;
  if (passDepth > deepest * tool.diameter * 1.001)
    doubts.push(
      warning(
        ['passDepth'],
        `router.passDepth of ${rounded(passDepth / tool.diameter)} diameters is more than the ${rounded(deepest)} that is usual for a ${engaged} in ${kind} (${fromMemory})`,
        `use ${rounded(deepest)} or less, or ask the maker of the bit`,
      ),
    );
  if (data.rampAngleDeg > known.maxRampDeg)
    doubts.push(
      warning(
        ['rampAngleDeg'],
        `a ramp of ${rounded(data.rampAngleDeg)}° is steeper than the ${known.maxRampDeg}° that is usual in ${kind} (${fromMemory})`,
        `use ${known.maxRampDeg}° or less`,
      ),
    );
  if (spindle > maxSpindle * 1.001)
    doubts.push(
      warning(
        ['spindle', 'speed'],
        `${name} turns at ${spindle} rev/min in ${kind}, where up to ${maxSpindle} is usual for a ${engaged} (${fromMemory})`,
        'use a slower spindle, or a thinner bit',
      ),
    );
  return doubts;
}

function drillingDoubts({ tool, spindle, range }: Cutting, { kind }: SheetMaterial): RouterProblem[] {
  const { maxSpindle = Infinity } = range;
  if (spindle <= maxSpindle * 1.001) return [];
  return [
    warning(
      ['spindle', 'drillSpeed'],
      `tool ${tool.number} drills ${rounded(tool.diameter)} mm at ${spindle} rev/min in ${kind}, where up to ${maxSpindle} is usual (${fromMemory})`,
      'use a bit made for fast spindles, drill by hand at the marks, or remove the bit so that the end mill bores the holes that it fits',
    ),
  ];
}

/** What is unusual about the speeds and feeds of a tool; none of it is an error. */
function feedDoubts(cutting: Cutting, material: SheetMaterial, data: RouterData): RouterProblem[] {
  return cutting.tool.kind === 'drill' ? drillingDoubts(cutting, material) : millingDoubts(cutting, material, data);
}

/** What is wrong or unusual about the speeds and feeds of the tools in use. */
export function feedProblems(cuttings: readonly Cutting[], material: SheetMaterial, data: RouterData): RouterProblem[] {
  const { min, max } = data.machine.spindle;
  return cuttings.flatMap((cutting): RouterProblem[] => {
    const { tool, spindle } = cutting;
    const doubts = feedDoubts(cutting, material, data);
    if (spindle >= min && spindle <= max) return doubts;
    return [
      ...doubts,
      {
        code: 'router-spindle',
        severity: 'error',
        key: ['router', 'spindle', tool.kind === 'drill' ? 'drillSpeed' : 'speed'],
        message: `tool ${tool.number} would turn at ${spindle} rev/min, outside the spindle's range of ${min} to ${max}`,
        remedy: 'use a speed within that range',
      },
    ];
  });
}

/** What the record states of a tool in use. */
export function recordedTool(
  cutting: Cutting,
  material: SheetMaterial,
  data: RouterData,
): RouterLimits['tools'][number] {
  const { tool, spindle, passDepth, feed, plunge, range } = cutting;
  const outside = feedDoubts(cutting, material, data).length > 0;
  return { ...tool, spindle, passDepth, feed, plunge, range: { ...range, ...(outside ? { outside: true } : {}) } };
}
