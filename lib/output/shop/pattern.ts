/** Things that stand evenly round the origin, found among a part's holes, openings and lines. */
import { cyclic, distance, element, rotate, type Vertex } from '../../geometry/index.js';
import { directionOf } from './direction.js';

/** One thing: alike in `key`, its vertices in the drawing's axes. A hole has one vertex. */
export interface Item {
  readonly index: number;
  readonly key: string;
  readonly vertices: readonly Vertex[];
  readonly closed: boolean;
}

export interface Placed {
  /** Of the first, turned back by `first`: as it would stand beside the x axis. */
  readonly vertices: readonly Vertex[];
  readonly items: readonly Item[];
  readonly places: 'single' | 'round' | 'partly-round';
  /** Direction of the first and step to the next, radians; 0 for a single one. */
  readonly first: number;
  readonly pitch: number;
}

/** What is further from its place in the pattern than this stands by itself, mm. */
const SAME = 1e-4;
const FULL = 2 * Math.PI;

const centreOf = (vertices: readonly Vertex[]): { x: number; y: number } => ({
  x: vertices.reduce((sum, { x }) => sum + x, 0) / vertices.length,
  y: vertices.reduce((sum, { y }) => sum + y, 0) / vertices.length,
});

const turnOf = ({ vertices }: Item): number => directionOf(centreOf(vertices));

const turned = (vertices: readonly Vertex[], angle: number): Vertex[] =>
  vertices.map((vertex) => ({ ...rotate(vertex, angle), bulge: vertex.bulge }));

/** Whether the second is the first turned by an angle; a closed ring may begin elsewhere. */
function isTurned(a: Item, b: Item, angle: number): boolean {
  const n = a.vertices.length;
  if (b.vertices.length !== n) return false;
  const image = turned(a.vertices, angle);
  const shifts = a.closed ? n : 1;
  for (let shift = 0; shift < shifts; shift++)
    if (image.every((v, i) => distance(v, element(b.vertices, (i + shift) % n)) < SAME)) return true;
  return false;
}

/** The pattern of items in order of their direction; null where they are none. */
function patternOf(items: readonly Item[], base: number): Placed | null {
  const n = items.length;
  const angles = items.map(turnOf);
  const pitch = element(angles, 1) - element(angles, 0);
  if (!(pitch > 1e-6)) return null;
  const start = element(items, 0);
  const even = items.every((item, i) => isTurned(start, item, i * pitch));
  if (!even) return null;
  const round = Math.abs(n * pitch - FULL) < 1e-6;
  if (!round && n < 3) return null;
  // counted from a line through the origin that goes with it, so that it is set out square to that line
  const steps = Math.round((element(angles, 0) - base) / pitch);
  const first = base + steps * pitch;
  const vertices = turned(start.vertices, -first);
  if (!round) return { vertices, items, places: 'partly-round', first, pitch };
  const order = Array.from({ length: n }, (_, i) => cyclic(items, i - steps));
  return { vertices, items: order, places: 'round', first: base, pitch };
}

const single = (item: Item): Placed => ({
  vertices: item.vertices,
  items: [item],
  places: 'single',
  first: 0,
  pitch: 0,
});

/** Patterns among items that are alike and equally far out: several may lie between each other. */
function patternsOf(items: readonly Item[], base: number): Placed[] {
  const sorted = [...items].sort((a, b) => turnOf(a) - turnOf(b));
  for (let woven = 1; woven <= 3; woven++) {
    if (sorted.length % woven !== 0 || sorted.length / woven < 2) continue;
    const found = Array.from({ length: woven }, (_, w) =>
      patternOf(
        sorted.filter((__, i) => i % woven === w),
        base,
      ),
    ).filter((one) => one !== null);
    if (found.length === woven) return found;
  }
  return sorted.map(single);
}

/**
 * All items as patterns and single ones, in the order of the first of each.
 * @param polar whether patterns round the origin are looked for
 * @param base direction of a line from which patterns are set out, radians
 */
export function placedItems(items: readonly Item[], polar: boolean, base: number): Placed[] {
  if (!polar) return items.map(single);
  const groups = new Map<string, Item[]>();
  for (const item of items) {
    const { x, y } = centreOf(item.vertices);
    const key = `${item.key} ${Math.hypot(x, y).toFixed(3)}`;
    groups.set(key, [...(groups.get(key) ?? []), item]);
  }
  return [...groups.values()]
    .flatMap((group) => (group.length < 2 ? group.map(single) : patternsOf(group, base)))
    .sort((a, b) => element(a.items, 0).index - element(b.items, 0).index);
}
