/** Whether every part hangs on the sheet to the end, by as many tabs of the right size as the plan says. */
import { type Edge, pointAt } from '../edge.js';
import type { Nominal } from '../nominal.js';
import type { Place } from '../types.js';
import { cell, type HeightField } from './field.js';
import type { Findings } from './findings.js';
import type { SimulationLimits } from './types.js';

/** What stands less than this above the spoil board does not hold, mm. */
const leastStanding = 0.05;
/** Step along an outline, mm. */
const step = 0.5;
/** By how much a tab may look narrower on the grid than it is, mm. */
const gridSlack = 2 * cell;
/** How far within the edge a part is looked for, mm: clear of the grid's rounding. */
const inward = 2;

/** Places beside a ring's edges, `off` mm to the right (outside, the material being left), in order. */
function* beside(edges: readonly Edge[], off: number): Generator<Place> {
  for (const edge of edges) {
    const count = Math.max(1, Math.ceil(edge.length / step));
    for (let i = 0; i < count; i += 1) {
      const at = pointAt(edge, (i + 0.5) / count);
      let dx = edge.bx - edge.ax;
      let dy = edge.by - edge.ay;
      if (edge.sweep !== 0) {
        const turn = Math.sign(edge.sweep);
        dx = -(at.y - edge.cy) * turn;
        dy = (at.x - edge.cx) * turn;
      }
      const size = Math.hypot(dx, dy);
      if (size > 0) yield { x: at.x + (dy / size) * off, y: at.y - (dx / size) * off };
    }
  }
}

interface Tabs {
  readonly count: number;
  readonly low: Place | null;
  readonly longest: number;
}

/** Tabs over the cut around a ring: runs where something stands in the middle of the cut. */
function tabsAround(edges: readonly Edge[], field: HeightField, limits: SimulationLimits, radius: number): Tabs {
  const floor = leastStanding - limits.thickness;
  const top = limits.tabHeight - limits.thickness;
  const places = [...beside(edges, radius)];
  const stands = places.map((place) => {
    const height = field.at(place);
    return height > floor && height < Infinity;
  });
  const cut = stands.indexOf(false);
  if (cut < 0) return { count: 0, low: null, longest: places.length * step };
  let count = 0;
  let longest = 0;
  let low: Place | null = null;
  for (let i = 0; i < stands.length; i += 1) {
    let run = 0;
    let high = -Infinity;
    while (run < stands.length && stands[(cut + i + run) % stands.length]!) {
      high = Math.max(high, field.at(places[(cut + i + run) % stands.length]!));
      run += 1;
    }
    if (run === 0) continue;
    longest = Math.max(longest, run * step);
    if (run * step >= limits.tabWidth - gridSlack) {
      count += 1;
      if (high < top - leastStanding) low = places[(cut + i) % stands.length]!;
    }
    i += run;
  }
  return { count, low, longest };
}

/** Tells parts that come loose, and tabs that are missing or too small. */
export function checkHeld(
  nominals: readonly Nominal[],
  field: HeightField,
  limits: SimulationLimits,
  file: string,
  findings: Findings,
): void {
  const { number, frame } = field.pieces(leastStanding - limits.thickness);
  const pieceAt = ({ x, y }: Place): number => {
    const column = Math.floor(x / cell);
    const row = Math.floor(y / cell);
    const off = column < 0 || row < 0 || column >= field.columns || row >= field.rows;
    return off ? 0 : number[row * field.columns + column]!;
  };
  const radius = Math.max(0, ...limits.tools.filter(({ kind }) => kind === 'mill').map((tool) => tool.diameter)) / 2;
  for (const nominal of nominals) {
    const name = `${nominal.part} ${nominal.copy}`;
    const edges = nominal.outlines.flatMap((line) => line.edges);
    // the piece that most of its edge belongs to is the part; a place may fall in a hole or beyond a thin corner
    const counts = new Map<number, number>();
    for (const at of beside(edges, -inward)) counts.set(pieceAt(at), (counts.get(pieceAt(at)) ?? 0) + 1);
    counts.delete(0);
    const own = [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? 0;
    const hangs = frame.has(own);
    const place = { x: (nominal.box.minX + nominal.box.maxX) / 2, y: (nominal.box.minY + nominal.box.maxY) / 2 };
    if (!hangs) findings.add('loose', file, `${name} comes loose before the sheet is done`, { place });
    const held = limits.holding.find(({ part, copy }) => part === nominal.part && copy === nominal.copy);
    if (held === undefined) {
      findings.add('tab', file, `nothing says how ${name} is held`, { place });
      continue;
    }
    if (held.skin) continue;
    const tabs = tabsAround(edges, field, limits, radius);
    if (tabs.count < held.tabs)
      findings.add('tab', file, `${name} has ${tabs.count} tabs of ${limits.tabWidth} mm, not ${held.tabs}`, { place });
    const most = limits.tabWidth + limits.tabHeight + limits.throughCut + 2 * radius + 2 * gridSlack;
    if (tabs.longest > most)
      findings.add('tab', file, `the edge of ${name} stands uncut over ${tabs.longest} mm`, { place });
    if (tabs.low !== null) findings.add('tab', file, `a tab of ${name} is cut too low`, { place: tabs.low });
  }
}
