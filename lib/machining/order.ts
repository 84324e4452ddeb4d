/** The order in which the operations of a sheet are cut. */
import { type Bounds, bounds, element, type Point, reversed, sideOfContour, signedArea } from '../geometry/index.js';
import type { Operation } from '../part/index.js';
import { shortRoute, type RouteStop } from './travel.js';
import type { CutOperation } from './types.js';

/** Each class of size is this many times as large in area as the one before; within a class, travel decides. */
const SIZE_STEP = 4;

const keyOf = (operation: CutOperation): string => `${operation.copy}:${operation.part}`;

function area(operation: CutOperation): number {
  return operation.closed ? Math.abs(signedArea(operation.vertices)) : 0;
}

function sizeClass(operation: CutOperation): number {
  return Math.floor(Math.log(Math.max(1, area(operation))) / Math.log(SIZE_STEP));
}

function contains(box: Bounds, p: Point): boolean {
  return p.x >= box.minX && p.x <= box.maxX && p.y >= box.minY && p.y <= box.maxY;
}

/** How many openings of other parts each placed part lies in: those deeper down are cut free first. */
function nestingDepths(operations: readonly CutOperation[]): Map<string, number> {
  const openings = operations
    .filter((one) => one.operation === 'opening')
    .map((one) => ({ key: keyOf(one), ring: one.vertices, box: bounds(one.vertices) }));
  const depths = new Map<string, number>();
  for (const one of operations) {
    if (one.operation !== 'outline') continue;
    const key = keyOf(one);
    const at = element(one.vertices, 0);
    const around = openings.filter(
      (opening) => opening.key !== key && contains(opening.box, at) && sideOfContour(opening.ring, at, 0) === 'inside',
    );
    depths.set(key, Math.max(depths.get(key) ?? 0, new Set(around.map((opening) => opening.key)).size));
  }
  return depths;
}

/** The order of the operations of a part where the machine has no other. */
const usualOrder: readonly Operation[] = ['drill', 'countersink', 'scribe', 'pocket', 'opening', 'outline'];

/**
 * One number a phase; phases run one after the other. From the openings on they run anew for each level of parts within
 * parts, as an opening sets free what lies in it.
 */
function phase(
  operation: CutOperation,
  order: readonly Operation[],
  deepest: number,
  depths: ReadonlyMap<string, number>,
): number {
  const place = order.indexOf(operation.operation);
  const opening = order.indexOf('opening');
  if (place < opening) return place;
  return opening + order.length * (deepest - (depths.get(keyOf(operation)) ?? 0)) + (place - opening);
}

/** Operations of a phase that are cut together: a bit at a time for holes, a class of size for rings. */
function group(operation: CutOperation): number {
  return operation.operation === 'drill' || operation.operation === 'countersink'
    ? (operation.diameter ?? 0)
    : sizeClass(operation);
}

function stopOf(operation: CutOperation): RouteStop {
  const from = element(operation.vertices, 0);
  return { from, to: operation.closed ? from : operation.vertices.at(-1)! };
}

/**
 * The operations of one sheet in cutting order: drills and countersinks bit by bit, scribes, openings, outlines; small
 * before large; a part that lies in another's opening before that opening; each part's outline after all its other
 * cuts; within that a short route from the sheet's corner at 0, 0.
 * @param order of the operations of a part, `outline` last, where it is another one
 */
export function inCuttingOrder(
  operations: readonly CutOperation[],
  order: readonly Operation[] = usualOrder,
): CutOperation[] {
  const depths = nestingDepths(operations);
  const deepest = Math.max(0, ...depths.values());
  const groups = new Map<string, { rank: [number, number]; members: CutOperation[] }>();
  for (const operation of operations) {
    const rank: [number, number] = [phase(operation, order, deepest, depths), group(operation)];
    const found = groups.get(rank.join());
    if (found === undefined) groups.set(rank.join(), { rank, members: [operation] });
    else found.members.push(operation);
  }
  const ordered: CutOperation[] = [];
  let at: Point = { x: 0, y: 0 };
  for (const { members } of [...groups.values()].sort((a, b) => a.rank[0] - b.rank[0] || a.rank[1] - b.rank[1])) {
    const stops = members.map(stopOf);
    for (const leg of shortRoute(stops, at)) {
      const operation = element(members, leg.stop);
      const open = leg.reversed && !operation.closed && operation.vertices.length > 1;
      ordered.push(open ? { ...operation, vertices: reversed(operation.vertices) } : operation);
      at = leg.reversed ? element(stops, leg.stop).from : element(stops, leg.stop).to;
    }
  }
  return ordered;
}
