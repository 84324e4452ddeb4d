/**
 * Holding tabs: where they can stand, and which of those places are taken so that every part hangs on the frame of the
 * sheet until the end. A tab is a bridge over the cut, from the edge of a part to whatever stands beyond.
 */
import {
  add,
  type Bounds,
  bounds,
  type Contour,
  dot,
  element,
  nearestOnContour,
  type Point,
  scale,
  sideOfContour,
  subtract,
} from '../../geometry/index.js';
import { directionAt, edgeAt, pointAt, type RingPath, ringOf } from './ring.js';
import { turnBetween } from './walk.js';
import type { Waste } from './waste.js';

/** A ring of a placed part's nominal edge, with the edges that tabs keep off. */
export interface HeldEdge {
  readonly vertices: Contour;
  readonly barred: ReadonlySet<number>;
}

/** A placed part that is held by tabs. */
export interface HeldPart {
  readonly part: string;
  readonly copy: number;
  /** The outline first. */
  readonly edges: readonly HeldEdge[];
}

/** A bridge: a quadrilateral over the cut that no tool enters below the tabs' height. */
export interface Tab {
  readonly corners: readonly [Point, Point, Point, Point];
  /** Index of the part whose edge it starts from, and of the part it reaches, or -1. */
  readonly owner: number;
  readonly other: number;
  /** Whether it stands on the outline of the one and of the other, rather than in an opening. */
  readonly ownerOutline: boolean;
  readonly otherOutline: boolean;
  /** Pieces of the sheet that it joins. */
  readonly from: number;
  readonly to: number;
}

export interface TabRules {
  readonly width: number;
  readonly toolRadius: number;
  readonly spacing: number;
  readonly min: number;
  /** Length beside a tab over which the tool comes down again. */
  readonly drop: number;
}

/** Step between places that are tried, mm. */
const tryStep = 6;
/** Greatest bend of the edge over a tab and the tool on either side, radians: gently curved. */
const maxBend = 0.4;
/** How far inside a part a place must be to be known as the part's, mm. */
const within = 1.6;
/** Longest bridge in tool diameters. */
const longestBridge = 3;
/** Offcuts smaller than this (mm²) are left loose: the dust hood takes them. */
const minOffcut = 300;

/**
 * Whether a tab may stand at a length along an edge: straight or gently curved and nothing that mates or reflects, and
 * no inside corner so near that the tool, which turns a radius before it, would not be down again.
 */
function free(edge: HeldEdge, ring: RingPath, s: number, half: number, toolRadius: number): boolean {
  const reach = half + toolRadius;
  if (turnBetween(ring, s, s + reach) < -maxBend || turnBetween(ring, s - reach, s) < -maxBend) return false;
  for (const off of [-half, -half / 2, 0, half / 2, half]) {
    if (edge.barred.has(edgeAt(ring, s + off).index)) return false;
    if (Math.abs(turnBetween(ring, s, s + off)) > maxBend) return false;
  }
  return true;
}

interface Ringed {
  readonly edge: HeldEdge;
  readonly ring: RingPath;
  readonly box: Bounds;
}

function ringed(edge: HeldEdge): Ringed {
  return { edge, ring: ringOf(edge.vertices), box: bounds(edge.vertices) };
}

interface Beyond {
  readonly part: number;
  readonly outline: boolean;
}

/** The part (or -1) that stands at a place beyond a cut; null when its edge there cannot take a bridge. */
function beyond(
  parts: readonly HeldPart[],
  rings: readonly (readonly Ringed[])[],
  place: Point,
  half: number,
  toolRadius: number,
): Beyond | null {
  for (const [i, part] of parts.entries()) {
    const { minX, minY, maxX, maxY } = element(element(rings, i), 0).box;
    if (place.x < minX || place.x > maxX || place.y < minY || place.y > maxY) continue;
    const inside =
      sideOfContour(element(part.edges, 0).vertices, place, 0) === 'inside' &&
      part.edges.slice(1).every(({ vertices }) => sideOfContour(vertices, place, 0) === 'outside');
    if (!inside) continue;
    for (const [index, { edge, ring }] of element(rings, i).entries()) {
      const near = nearestOnContour(edge.vertices, place);
      if (near.distance > within + 1) continue;
      const next = ring.starts[near.edge + 1] ?? ring.length;
      return free(
        edge,
        ring,
        element(ring.starts, near.edge) + near.fraction * (next - element(ring.starts, near.edge)),
        half,
        toolRadius,
      )
        ? { part: i, outline: index === 0 }
        : null;
    }
    return null;
  }
  return { part: -1, outline: false };
}

/** Whether a place is in a part, or in the cut around it. */
function inCutOf({ edges }: HeldPart, place: Point, toolRadius: number): boolean {
  const outline = element(edges, 0).vertices;
  const reach = 2 * toolRadius;
  const { minX, minY, maxX, maxY } = bounds(outline);
  if (place.x < minX - reach || place.x > maxX + reach || place.y < minY - reach || place.y > maxY + reach)
    return false;
  return sideOfContour(outline, place, 0) === 'inside' || nearestOnContour(outline, place).distance < reach;
}

/** Every place where a tab could stand. */
function candidates(parts: readonly HeldPart[], skinned: readonly HeldPart[], waste: Waste, rules: TabRules): Tab[] {
  const { width, toolRadius } = rules;
  const half = width / 2 + toolRadius + rules.drop;
  const rings = parts.map((part) => part.edges.map(ringed));
  const found: Tab[] = [];
  for (const owner of parts.keys()) {
    for (const [index, { edge, ring }] of element(rings, owner).entries()) {
      const count = Math.floor(ring.length / tryStep);
      for (let i = 0; i < count; i += 1) {
        const s = (i + 0.5) * (ring.length / count);
        if (!free(edge, ring, s, half, toolRadius)) continue;
        const at = pointAt(ring, s);
        const along = directionAt(ring, s);
        // the material lies to the left of every edge
        const out = { x: along.y, y: -along.x };
        const place = (side: number, away: number): Point =>
          add(add(at, scale(along, side * (width / 2))), scale(out, away));
        const from = waste.at(place(0, -within));
        if (from === 0) continue;
        // an edge that bends back under the tab takes the middle of the cut along: the tab reaches as far back
        const bend = [-1, 1].map((side) => dot(subtract(pointAt(ring, s + (side * width) / 2), at), out));
        const back = Math.min(0, ...bend.map((height) => height + toolRadius));
        for (let away = 2 * toolRadius + within; away <= 2 * toolRadius * longestBridge; away += 0.5) {
          const to = waste.at(place(0, away));
          if (to === 0 || waste.at(place(-1, away)) !== to || waste.at(place(1, away)) !== to) continue;
          const other = beyond(parts, rings, place(0, away), half, toolRadius);
          if (other === null || to === from) break;
          const corners = [place(-1, back), place(1, back), place(1, away), place(-1, away)] as const;
          const far = [corners[2], corners[3], place(0, away)];
          // an onion skin holds that part; a tab would stand on its edge, which may have to be free of any
          if (skinned.some((part) => far.some((end) => inCutOf(part, end, toolRadius)))) break;
          found.push({
            corners,
            owner,
            other: other.part,
            ownerOutline: index === 0,
            otherOutline: other.outline,
            from,
            to,
          });
          break;
        }
      }
    }
  }
  return found;
}

/** Which pieces hang together, as tabs are added. */
class Hanging {
  readonly #root: number[];

  constructor(pieces: number) {
    this.#root = Array.from({ length: pieces }, (_, i) => i);
  }

  of(piece: number): number {
    let at = piece;
    while (this.#root[at] !== at) at = element(this.#root, at);
    return at;
  }

  join(a: number, b: number): void {
    this.#root[this.of(a)] = this.of(b);
  }
}

export interface Tabbing {
  readonly tabs: readonly Tab[];
  /** Tabs on the outline of each part. */
  readonly counts: readonly number[];
  /** Parts that no choice of tabs holds as the rules ask. */
  readonly unheld: readonly { readonly part: HeldPart; readonly tabs: number }[];
  /** Offcuts that nothing holds: a place in each, and its area. */
  readonly loose: readonly (Point & { readonly area: number })[];
}

/**
 * Chooses tabs: for each part as many as its outline asks, spread out, first those that reach the frame; then as many
 * more as it takes for every part, and every offcut that a tab can reach, to hang on the frame.
 * @param skinned parts that an onion skin holds: no tab may reach them
 */
export function chooseTabs(
  parts: readonly HeldPart[],
  skinned: readonly HeldPart[],
  waste: Waste,
  rules: TabRules,
): Tabbing {
  const all = candidates(parts, skinned, waste, rules);
  const chosen: Tab[] = [];
  const hanging = new Hanging(waste.sizes.length);
  const frame = [...waste.frame][0] ?? 0;
  for (const piece of waste.frame) hanging.join(piece, frame);
  const counts = parts.map(() => 0);
  // between two of them the tool has to come down by a slope
  const apart = rules.width + 2 * rules.toolRadius + Math.max(8, rules.drop);
  // halfway over the cut: the same whichever side a tab starts from
  const middle = ({ corners: [a, , c] }: Tab): Point => ({ x: (a.x + c.x) / 2, y: (a.y + c.y) / 2 });
  const clear = (tab: Tab): boolean =>
    chosen.every((other) => Math.hypot(middle(other).x - middle(tab).x, middle(other).y - middle(tab).y) > apart);
  const take = (tab: Tab): void => {
    chosen.push(tab);
    hanging.join(tab.from, tab.to);
    if (tab.ownerOutline) counts[tab.owner]! += 1;
    if (tab.otherOutline) counts[tab.other]! += 1;
  };

  const wanted = parts.map((part) =>
    Math.max(rules.min, Math.ceil(ringOf(element(part.edges, 0).vertices).length / rules.spacing)),
  );
  for (const index of parts.keys()) {
    const own = all.filter(
      (tab) => (tab.owner === index && tab.ownerOutline) || (tab.other === index && tab.otherOutline),
    );
    while (element(counts, index) < element(wanted, index)) {
      let best: Tab | null = null;
      let max = 0;
      const mine = chosen.filter((tab) => tab.owner === index || tab.other === index);
      for (const tab of own) {
        if (!clear(tab)) continue;
        const away = Math.min(
          1e4,
          ...mine.map((other) => Math.hypot(middle(other).x - middle(tab).x, middle(other).y - middle(tab).y)),
        );
        const score = away * (waste.frame.has(tab.to) ? 1 : tab.other >= 0 ? 0.5 : 0.7);
        if (score > max) {
          max = score;
          best = tab;
        }
      }
      if (best === null) break;
      take(best);
    }
  }
  const hangs = (piece: number): boolean => hanging.of(piece) === hanging.of(frame);
  for (let joined = true; joined;) {
    joined = false;
    for (const tab of all) {
      // a small offcut needs no tab of its own, but a part may hang on it
      if (element(waste.sizes, tab.to) < minOffcut && !parts.some((_, i) => i === tab.other)) continue;
      if (hangs(tab.from) === hangs(tab.to) || !clear(tab)) continue;
      take(tab);
      joined = true;
    }
  }
  const pieceOf = new Map(all.map((tab) => [tab.owner, tab.from]));
  const unheld = parts.flatMap((part, i) => {
    const piece = pieceOf.get(i);
    const held = piece !== undefined && hangs(piece) && element(counts, i) >= rules.min;
    return held ? [] : [{ part, tabs: element(counts, i) }];
  });
  const inParts = new Set(pieceOf.values());
  const loose = waste.sizes.flatMap((area, piece) =>
    piece === 0 || area < minOffcut || inParts.has(piece) || hangs(piece) ? [] : [{ ...waste.placeOf(piece), area }],
  );
  return { tabs: chosen, counts, unheld, loose };
}
