/** Whether every part hangs on the sheet to the end, by as many tabs of the right size as the plan has. */
import { mm } from '../faults.js';
import { nameOf, type Nominal } from '../nominal.js';
import type { ProofPoint } from '../types.js';
import type { HeightField } from './field.js';
import type { Findings } from './findings.js';
import { placesAlong, standingAt, SweptBelow, tabStep } from './tabs.js';
import type { Motion, SimulationLimits } from './types.js';

/** What stands less than this above the spoil board does not hold, mm. */
const minStanding = 0.05;
/** By how much a tab may be narrower than planned, mm: the rounding of a file. */
const tabSlack = 0.02;
/** By how much a tab may be wider, mm: it may cross the cut aslant, and the tool leaves it by a slope. */
const tabExcess = 4;
/** Tabs narrower than this, mm, may leave no cell of the grid standing. */
const seenOnGrid = 2;
/** How far within the edge a part is looked for, mm: clear of the grid's rounding. */
const inward = 2;
/** Distance of the places at which it is looked for, mm: as few as tell it from a piece that touches it. */
const inwardStep = 2;

/** Reports parts that come loose, and tabs that are missing or too small. */
export function checkHeld(
  nominals: readonly Nominal[],
  motions: readonly Motion[],
  field: HeightField,
  limits: SimulationLimits,
  file: string,
  findings: Findings,
): void {
  const floor = minStanding - limits.thickness;
  const { pieceAt, frame } = field.pieces(floor);
  const radius = Math.max(0, ...limits.tools.filter(({ kind }) => kind === 'mill').map((tool) => tool.diameter)) / 2;
  const tabTop = limits.tabHeight - minStanding - limits.thickness;
  const through = new SweptBelow(motions, floor);
  const lowered = new SweptBelow(motions, tabTop);
  const standsAbove = (level: number): ((place: ProofPoint) => boolean) => {
    if (limits.tabWidth < seenOnGrid) return () => true;
    return (place) => {
      const height = field.at(place);
      return height >= level && height < Infinity;
    };
  };
  for (const nominal of nominals) {
    const part = nameOf(nominal);
    const edges = nominal.outlines.flatMap((line) => line.edges);
    // the piece that most of its edge belongs to is the part; a place may fall in a hole or beyond a thin corner
    const counts = new Map<number, number>();
    for (const at of placesAlong(edges, inwardStep, -inward)) {
      const piece = pieceAt(at);
      counts.set(piece, (counts.get(piece) ?? 0) + 1);
    }
    counts.delete(0);
    const own = [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? 0;
    const hangs = frame.has(own);
    const place = { x: (nominal.box.minX + nominal.box.maxX) / 2, y: (nominal.box.minY + nominal.box.maxY) / 2 };
    if (!hangs) findings.add('part-loose', file, { part }, { place });
    const held = limits.holding.find((one) => one.part === nominal.part && one.copy === nominal.copy);
    if (held === undefined) {
      findings.add('holding-unknown', file, { part }, { place });
      continue;
    }
    if (held.onionSkin) continue;
    const places = placesAlong(edges, tabStep, radius);
    const tabs = standingAt(places, lowered, standsAbove(tabTop)).filter(
      ({ width }) => width >= limits.tabWidth - tabSlack,
    );
    if (tabs.length < held.tabs)
      findings.add(
        'tab-count',
        file,
        { part, count: tabs.length, width: mm(limits.tabWidth), height: mm(limits.tabHeight), wanted: held.tabs },
        { place },
      );
    const max = limits.tabWidth + limits.tabHeight + limits.overcut + 2 * radius + tabExcess;
    for (const { width, place: at } of standingAt(places, through, standsAbove(floor))) {
      if (width > max) findings.add('tab-wide', file, { part, width: mm(width) }, { place: at });
    }
  }
}
