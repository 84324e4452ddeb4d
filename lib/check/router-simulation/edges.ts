/**
 * Finished edges by exact distances: for each edge of a part, how far the cuts eat into it, and how far they stay off
 * it. A cylindrical tool clears everything above its tip, so the deepest passes alone make the edge; over tabs those
 * that are as deep as the tabs' upper face.
 */
import { farthestFrom } from '../deviation.js';
import { EdgeSet } from '../edge-set.js';
import { type ProofEdge, pointAlong } from '../edge.js';
import { mm } from '../faults.js';
import { type NominalHole, type NominalPocket, nameOf, type Nominal } from '../nominal.js';
import { toolPlaces } from '../reach.js';
import { insideCorners, isSpur } from '../relief.js';
import { type Box, gap, inside, type Line, lineOf } from '../ring.js';
import type { ProofPoint } from '../types.js';
import type { Findings } from './findings.js';
import type { Motion, SimulationLimits } from './types.js';
import { edgesOfMotion, isUpright } from './level.js';
import { leadShare } from './motions.js';
import { placeName } from './place-name.js';
import { rightOf } from './tabs.js';

/** Greatest error of a finished edge, mm. */
export const edgeTolerance = 0.05;
/** Depths that a file rounds to the same, mm. */
const sameDepth = 0.002;
/** Places looked at along a piece that is not reached, to distinguish an inside corner from a fault. */
const samples = 40;

/** A stretch of a tool's path seen from above, once however often it is gone over. */
export interface Pass {
  readonly edge: ProofEdge;
  readonly radius: number;
  /** Deepest z at which the whole stretch was gone over, and at which any of it was. */
  deep: number;
  readonly motion: Motion;
}

/** The paths of the end mills in the material, each once. */
export function passesOf(motions: readonly Motion[]): Pass[] {
  const passes = new Map<string, Pass>();
  for (const motion of motions) {
    const { rapid, tool, from, to } = motion;
    if (rapid || tool.kind !== 'mill' || Math.min(from.z, to.z) >= 0 || isUpright(motion)) continue;
    edgesOfMotion(motion).forEach((edge, i) => {
      const { turn } = motion;
      const bend = turn === null ? '' : `${placeName(turn.cx, turn.cy, 1e3)},${Math.sign(turn.sweep)}`;
      const ends = `${placeName(edge.ax, edge.ay, 1e4)},${placeName(edge.bx, edge.by, 1e4)}`;
      const key = `${ends},${bend},${tool.number},${i}`;
      const deep = Math.max(from.z, to.z);
      const known = passes.get(key);
      if (known === undefined) passes.set(key, { edge, radius: tool.diameter / 2, deep, motion });
      else known.deep = Math.min(known.deep, deep);
    });
  }
  return [...passes.values()];
}

function inMaterial({ outlines, openings }: Nominal, place: ProofPoint): boolean {
  return outlines.some(({ edges }) => inside(edges, place)) && !openings.some(({ edges }) => inside(edges, place));
}

/** How far a pass at a place goes beyond a hole's edge; below 0 within. */
const beyondHole = (hole: NominalHole, place: ProofPoint, radius: number): number =>
  Math.hypot(place.x - hole.x, place.y - hole.y) + radius - hole.diameter / 2;

/** How far a pass goes beyond the edge of a pocket, at some places along it; below 0 within. */
function beyondPocket({ ring }: NominalPocket, edge: EdgeSet, places: readonly ProofPoint[], radius: number): number {
  return Math.max(
    ...places.map((place) => {
      const { distance } = edge.nearestTo(place.x, place.y);
      return radius + (inside(ring.edges, place) ? -distance : distance);
    }),
  );
}

/** Reports passes that eat into a part; returns the greatest depth. */
function gouges(nominal: Nominal, passes: readonly Pass[], findings: Findings): number {
  const corners = [...nominal.outlines, ...nominal.openings].flatMap((line) => insideCorners(line));
  const pockets = nominal.pockets.map((pocket) => ({ pocket, edge: new EdgeSet(pocket.ring.edges) }));
  let worst = 0;
  for (const { edge, radius, motion } of passes) {
    if (gap(nominal.box, edge) > radius) continue;
    const middle = pointAlong(edge, 0.5);
    let depth = 0;
    if (inMaterial(nominal, middle)) {
      const places = [0, 0.25, 0.5, 0.75, 1].map((t) => pointAlong(edge, t));
      const off = [
        ...nominal.holes.map((hole) => Math.max(...places.map((place) => beyondHole(hole, place, radius)))),
        ...pockets
          .filter(({ pocket }) => gap(pocket.ring.box, edge) <= radius)
          .map((one) => beyondPocket(one.pocket, one.edge, places, radius)),
      ];
      depth = Math.max(0, Math.min(...off, radius + nominal.edges.nearestTo(middle.x, middle.y).distance));
    } else {
      if (corners.some((corner) => isSpur(edge, corner, radius))) continue;
      const near = nominal.edges.nearestWithin(edge, radius);
      if (near !== null) depth = radius - near.distance;
    }
    worst = Math.max(worst, depth);
    if (depth > edgeTolerance)
      findings.add(
        'edge-eaten',
        motion.file,
        { depth: mm(depth), part: nameOf(nominal) },
        { line: motion.line, place: middle },
      );
  }
  return worst;
}

/** What a ring needs to be cut: its passes at full depth, and those over tabs with the places where they suffice. */
interface Depths {
  readonly full: EdgeSet | null;
  readonly shallow: EdgeSet | null;
  readonly atTab: (place: ProofPoint) => boolean;
}

/** Material that stays at a ring. */
interface Left {
  readonly mm: number;
  readonly place: ProofPoint;
  /** Whether the tool has been there, though not to the full depth. */
  readonly shallow: boolean;
}

/**
 * How much farther from a tab than its radius and a slope of 45 degrees take it the tool may stand above the full
 * depth, mm: roughing rises up to two steps of half a millimetre earlier, a finishing pass another step and as far as
 * the front of its bit, being nearer to the edge, reaches beyond that of the roughed cut.
 */
const tabSlack = 1.5;

/** How far ahead of the roughed cut a bit reaches that stands nearer to the edge, where it is not its flank, mm. */
function frontBeyond(finishing: number, radius: number): number {
  const inner = Math.max(0, radius - finishing - leadShare * radius);
  const roughed = Math.min(radius, inner + finishing);
  return Math.sqrt(radius * radius - inner * inner) - Math.sqrt(radius * radius - roughed * roughed);
}

/** A recorded tab. */
interface Bridge {
  readonly set: EdgeSet;
  readonly box: Box;
}

function bridgesOf({ tabs }: SimulationLimits): Bridge[] {
  return tabs.map((corners) => {
    const { edges, box } = lineOf(
      corners.map(({ x, y }) => ({ x, y, bulge: 0 })),
      true,
    );
    return { set: new EdgeSet(edges), box };
  });
}

/** Whether the middle of the tool is over a recorded tab of a part, or where it rises to one and comes down again. */
function atTabs(
  bridges: readonly Bridge[],
  part: Box,
  { tabHeight, overcut, finishing }: SimulationLimits,
  radius: number,
): (place: ProofPoint) => boolean {
  const reach = radius + tabHeight + overcut + tabSlack + frontBeyond(finishing, radius);
  const near = bridges.filter(({ box }) => gap(part, box) <= radius + reach);
  return (place) => {
    const at = { minX: place.x, minY: place.y, maxX: place.x, maxY: place.y };
    return near.some(({ set, box }) => gap(at, box) <= reach && set.nearestTo(place.x, place.y).distance <= reach);
  };
}

export function within(passes: readonly Pass[], z: number): EdgeSet | null {
  const edges = passes.filter(({ deep }) => deep <= z + sameDepth).map(({ edge }) => edge);
  return edges.length === 0 ? null : new EdgeSet(edges);
}

/** Distances from a set of edges of places that follow each other. */
class Along {
  readonly #make: () => EdgeSet | null;
  #set: EdgeSet | null | undefined;
  /** What was nearest to one place is a good guess for the next. */
  #guess: ProofEdge | undefined;

  /** @param make gives the edges when they are first asked for */
  constructor(make: () => EdgeSet | null) {
    this.#make = make;
  }

  /** @param none the distance from no edges */
  distanceTo({ x, y }: ProofPoint, none = Infinity): number {
    if (this.#set === undefined) this.#set = this.#make();
    const found = this.#set?.nearestTo(x, y, this.#guess);
    this.#guess = found?.edge;
    return found?.distance ?? none;
  }
}

/** Material that stays at a ring although the tool could take it. Full depth may be missing over tabs only. */
function left(nominal: Nominal, ring: Line, depths: Depths, radius: number): Left {
  const first = { x: ring.edges[0]!.ax, y: ring.edges[0]!.ay };
  if (depths.full === null) return { mm: Infinity, place: first, shallow: true };
  const reach = radius + edgeTolerance / 2;
  const { max, beyond } = farthestFrom(ring.edges, depths.full, reach);
  let worst: Left = { mm: beyond.length === 0 ? Math.max(0, max - radius) : 0, place: first, shallow: false };
  if (beyond.length === 0) return worst;
  const deepest = new Along(() => depths.full);
  const shallower = new Along(() => depths.shallow);
  const reachable = new Along(() => toolPlaces(nominal, radius));
  for (const piece of beyond) {
    for (let i = 0; i <= samples; i += 1) {
      const share = piece.from + ((piece.to - piece.from) * i) / samples;
      const place = pointAlong(piece.edge, share);
      const deep = deepest.distanceTo(place);
      if (deep - radius <= worst.mm) continue;
      const atAnyDepth = shallower.distanceTo(place);
      const tab = atAnyDepth < deep && depths.atTab(rightOf(piece.edge, share, radius) ?? place);
      const away = tab ? atAnyDepth : deep;
      // an inside corner may keep what no tool reaches, so only what would be a fault is held against that
      const could = away <= reach ? radius : Math.max(radius, reachable.distanceTo(place, radius));
      if (away - could > worst.mm) worst = { mm: away - could, place, shallow: atAnyDepth - could <= edgeTolerance };
    }
  }
  return worst;
}

function circleAround({ x, y, diameter }: NominalHole): Line {
  const r = diameter / 2;
  // clockwise: the material lies left of the edge of a hole
  return lineOf(
    [
      { x: x + r, y, bulge: -1 },
      { x: x - r, y, bulge: -1 },
    ],
    true,
  );
}

/** How a bored hole comes out: null where no end mill ran within it. */
export function boredError(hole: NominalHole, passes: readonly Pass[], floor: number): number | null {
  const own = passes.filter(({ edge, radius }) => beyondHole(hole, { x: edge.ax, y: edge.ay }, radius) < 1);
  const radius = own[0]?.radius;
  const set = within(own, floor);
  if (radius === undefined || set === null) return null;
  const { max } = farthestFrom(circleAround(hole).edges, set, Infinity);
  const over = Math.max(...own.map(({ edge }) => beyondHole(hole, { x: edge.bx, y: edge.by }, radius)));
  return Math.max(max - radius, over, 0);
}

/** Reports passes along a part's outline that cut through the onion skin by which it is held. */
function checkOnionSkin(
  nominal: Nominal,
  passes: readonly Pass[],
  limits: SimulationLimits,
  radius: number,
  findings: Findings,
): void {
  const outline = new EdgeSet(nominal.outlines.flatMap(({ edges }) => edges));
  for (const { edge, deep, motion } of passes) {
    if (deep >= limits.onionSkin - limits.thickness - sameDepth) continue;
    const middle = pointAlong(edge, 0.5);
    if (Math.abs(outline.nearestTo(middle.x, middle.y).distance - radius) > edgeTolerance) continue;
    if (inMaterial(nominal, middle)) continue;
    findings.add('onion-skin-cut', motion.file, { part: nameOf(nominal) }, { line: motion.line, place: middle });
  }
}

/** Proves all edges of the parts of a sheet; returns the greatest error. */
export function checkEdges(
  nominals: readonly Nominal[],
  passes: readonly Pass[],
  limits: SimulationLimits,
  file: string,
  findings: Findings,
): number {
  const reach = Math.max(...limits.tools.map(({ diameter }) => diameter)) + 5;
  const bridges = bridgesOf(limits);
  let worst = 0;
  for (const nominal of nominals) {
    const near = passes.filter(({ edge }) => gap(nominal.box, edge) <= reach);
    worst = Math.max(worst, checkPart(nominal, near, bridges, limits, file, findings));
  }
  return worst;
}

function checkPart(
  nominal: Nominal,
  near: readonly Pass[],
  bridges: readonly Bridge[],
  limits: SimulationLimits,
  file: string,
  findings: Findings,
): number {
  const bore = limits.bore ?? 0;
  const holes = nominal.holes.map((hole) => ({ ...hole, diameter: hole.diameter - bore }));
  let worst = gouges({ ...nominal, holes }, near, findings);
  const held = limits.holding.find(({ part, copy }) => part === nominal.part && copy === nominal.copy);
  const mill = limits.tools.find(({ kind }) => kind === 'mill');
  if (mill === undefined) {
    findings.add('no-end-mill', file, { part: nameOf(nominal) });
    return worst;
  }
  if (held?.onionSkin === true) checkOnionSkin(nominal, near, limits, mill.diameter / 2, findings);
  const shallow = within(near, limits.tabHeight - limits.thickness);
  const through = {
    full: within(near, -limits.thickness),
    shallow,
    atTab: atTabs(bridges, nominal.box, limits, mill.diameter / 2),
  };
  const onionSkin = { full: within(near, limits.onionSkin - limits.thickness), shallow: null, atTab: () => false };
  const rings: (readonly [string, Line, Depths])[] = [
    ...nominal.outlines.map((ring) => ['outline', ring, held?.onionSkin === true ? onionSkin : through] as const),
    ...nominal.openings.map((ring) => ['opening', ring, through] as const),
  ];
  for (const [what, ring, depths] of rings) {
    const error = left(nominal, ring, depths, mill.diameter / 2);
    if (!error.shallow) worst = Math.max(worst, error.mm);
    if (!(error.mm > edgeTolerance)) continue;
    const named = { what, part: nameOf(nominal) };
    const where = { place: error.place };
    if (error.shallow) findings.add('edge-uncut', file, named, where);
    else findings.add('edge-left', file, { ...named, depth: mm(error.mm) }, where);
  }
  return worst;
}
