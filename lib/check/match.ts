/** Which path of a sheet cuts which edge of which part: found by where the paths lie, as the files do not name them. */
import type { ReadBack, ReadBackCircle, ReadBackPath } from './drawn.js';
import { drillDiameter, layerKind, pocketDepth } from './drawn.js';
import { type FaultList, mm } from './faults.js';
import { type NominalHole, nameOf, type Nominal } from './nominal.js';
import { type Box, type Line, lineOf } from './ring.js';

/** An edge of a part, with the paths that cut it. */
export interface RingCut {
  readonly nominal: Nominal;
  readonly operation: 'outline' | 'opening' | 'pocket' | 'hole' | 'scribe';
  readonly ring: Line;
  readonly paths: ReadBackPath[];
}

/** A hole or countersink, with the circle that marks it. */
export interface HoleCut {
  readonly nominal: Nominal;
  readonly operation: 'drill' | 'countersink';
  readonly hole: NominalHole;
  readonly diameter: number;
  readonly circle: ReadBackCircle;
}

export interface Matches {
  readonly rings: readonly RingCut[];
  readonly holes: readonly HoleCut[];
}

/** How far off a path's box may be, beyond the width of a cut, for the path still to be the one meant, mm. */
const reach = 4;

/** Greatest difference of the sides of two boxes. */
function boxDifference(a: Box, b: Box): number {
  return Math.max(
    Math.abs(a.minX - b.minX),
    Math.abs(a.minY - b.minY),
    Math.abs(a.maxX - b.maxX),
    Math.abs(a.maxY - b.maxY),
  );
}

function grown({ minX, minY, maxX, maxY }: Box, by: number): Box {
  return { minX: minX - by, minY: minY - by, maxX: maxX + by, maxY: maxY + by };
}

function contains(outer: Box, inner: Box, slack: number): boolean {
  return (
    inner.minX >= outer.minX - slack &&
    inner.minY >= outer.minY - slack &&
    inner.maxX <= outer.maxX + slack &&
    inner.maxY <= outer.maxY + slack
  );
}

/** Things of one kind in a grid of squares by their middle, so that those near a place are found at once. */
class Near<T> {
  readonly #cells = new Map<string, T[]>();
  readonly #size: number;

  constructor(size: number) {
    this.#size = size;
  }

  static middle({ minX, minY, maxX, maxY }: Box): { x: number; y: number } {
    return { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
  }

  add(x: number, y: number, item: T): void {
    const key = `${Math.floor(x / this.#size)},${Math.floor(y / this.#size)}`;
    const cell = this.#cells.get(key);
    if (cell) cell.push(item);
    else this.#cells.set(key, [item]);
  }

  /** All within the size of a square, and some beyond. */
  around(x: number, y: number): T[] {
    const column = Math.floor(x / this.#size);
    const row = Math.floor(y / this.#size);
    return [-1, 0, 1].flatMap((i) => [-1, 0, 1].flatMap((j) => this.#cells.get(`${column + i},${row + j}`) ?? []));
  }
}

interface Pair<A, B> {
  readonly wanted: A;
  readonly found: B;
  readonly cost: number;
}

/** Pairs things one to one, the closest first. */
function pairUp<A, B>(pairs: readonly Pair<A, B>[]): Map<A, B> {
  const taken = new Set<B>();
  const chosen = new Map<A, B>();
  for (const { wanted, found } of [...pairs].sort((a, b) => a.cost - b.cost)) {
    if (chosen.has(wanted) || taken.has(found)) continue;
    chosen.set(wanted, found);
    taken.add(found);
  }
  return chosen;
}

/**
 * The ring of a round hole, with the material to its left: clockwise.
 * @param bore how much wider holes come out than their paths say
 */
function holeRing({ x, y, diameter }: NominalHole, bore: number): Line {
  const radius = (diameter - bore) / 2;
  return lineOf(
    [
      { x: x + radius, y, bulge: -1 },
      { x: x - radius, y, bulge: -1 },
    ],
    true,
  );
}

/** Of all paths of a layer, the ones for the given rings; those left over are returned. */
function matchRings(rings: readonly RingCut[], paths: readonly ReadBackPath[], width: number): ReadBackPath[] {
  const limit = reach + 1.5 * width;
  const near = new Near<ReadBackPath>(limit);
  for (const path of paths) {
    const { x, y } = Near.middle(path.line.box);
    near.add(x, y, path);
  }
  const side = { outline: 1, opening: -1, pocket: -1, hole: -1, scribe: 0 } as const;
  const pairs = rings.flatMap((wanted) => {
    const expected = grown(wanted.ring.box, (side[wanted.operation] * width) / 2);
    const { x, y } = Near.middle(expected);
    return near.around(x, y).flatMap((found) => {
      const cost = boxDifference(expected, found.line.box);
      return cost <= limit ? [{ wanted, found, cost }] : [];
    });
  });
  const chosen = pairUp(pairs);
  for (const [ring, path] of chosen) ring.paths.push(path);
  const used = new Set(chosen.values());
  return paths.filter((path) => !used.has(path));
}

/** Paths that a narrow neck has parted: each goes to the smallest ring around it. */
function shareOut(rings: readonly RingCut[], paths: readonly ReadBackPath[]): ReadBackPath[] {
  const bySize = [...rings].sort((a, b) => size(a.ring.box) - size(b.ring.box));
  return paths.filter((path) => {
    const around = bySize.find(({ ring }) => contains(ring.box, path.line.box, 0));
    around?.paths.push(path);
    return around === undefined;
  });
}

function size({ minX, minY, maxX, maxY }: Box): number {
  return (maxX - minX) * (maxY - minY);
}

function matchHoles(nominals: readonly Nominal[], circles: readonly ReadBackCircle[], operation: HoleCut['operation']) {
  const near = new Near<ReadBackCircle>(reach);
  for (const circle of circles) near.add(circle.x, circle.y, circle);
  const wanted = nominals.flatMap((nominal) =>
    nominal.holes.flatMap((hole) => {
      const diameter = operation === 'drill' ? hole.diameter : hole.countersink;
      return diameter === undefined ? [] : [{ nominal, hole, diameter }];
    }),
  );
  const pairs = wanted.flatMap((one) =>
    near.around(one.hole.x, one.hole.y).flatMap((found) => {
      const away = Math.hypot(found.x - one.hole.x, found.y - one.hole.y);
      return away <= reach ? [{ wanted: one, found, cost: away + Math.abs(found.diameter - one.diameter) }] : [];
    }),
  );
  const chosen = pairUp(pairs);
  const used = new Set(chosen.values());
  return {
    cuts: [...chosen].map(([one, circle]): HoleCut => ({ ...one, operation, circle })),
    missing: wanted.filter((one) => !chosen.has(one)),
    left: circles.filter((circle) => !used.has(circle)),
  };
}

const words = {
  outline: 'outline',
  opening: 'opening',
  pocket: 'pocket',
  hole: 'hole',
  scribe: 'scribed line',
} as const;

/** Reports pockets on a layer that names another depth: the drawing has no other word for it. */
function checkPocketLayers(pockets: readonly RingCut[], file: string, faults: FaultList): void {
  for (const { nominal, ring, paths } of pockets) {
    const depth = nominal.pockets.find((one) => one.ring === ring)?.depth ?? 0;
    for (const { layer } of paths)
      if (Math.abs(pocketDepth(layer) - depth) > 0.001)
        faults.add('pocket-layer', file, { depth: mm(depth), layer }, Near.middle(ring.box));
  }
}

/**
 * Pairs what is drawn with what should be cut. Reports what is missing and what belongs to nothing. Scribed lines that
 * are no part's contours may be lettering, which is looked at elsewhere.
 * @param cut its width, and how much wider bored holes come out
 */
export function match(
  nominals: readonly Nominal[],
  entities: readonly ReadBack[],
  cut: { readonly width: number; readonly bore: number },
  file: string,
  faults: FaultList,
): Matches {
  const { width, bore } = cut;
  const paths = (kind: string) =>
    entities.filter((one): one is ReadBackPath => one.kind === 'path' && layerKind(one.layer) === kind);
  const circles = (kind: string) =>
    entities.filter((one): one is ReadBackCircle => one.kind === 'circle' && layerKind(one.layer) === kind);
  const ringsOf = (operation: RingCut['operation'], lines: (nominal: Nominal) => readonly Line[]) =>
    nominals.flatMap((nominal) => lines(nominal).map((ring): RingCut => ({ nominal, operation, ring, paths: [] })));

  const outlines = ringsOf('outline', ({ outlines: lines }) => lines);
  const openings = ringsOf('opening', ({ openings: lines }) => lines);
  const pockets = ringsOf('pocket', ({ pockets: all }) => all.map(({ ring }) => ring));
  const scribes = ringsOf('scribe', ({ scribes: lines }) => lines);
  const strayOutlines = matchRings(outlines, paths('outline'), width);
  // an inlet of an outline, its mouth too narrow for the tool, is cut like an opening
  const strayOpenings = shareOut(outlines, shareOut(openings, matchRings(openings, paths('opening'), width)));
  const strayPockets = matchRings(pockets, paths('pocket'), width);
  matchRings(scribes, paths('scribe'), width);

  const drilled = matchHoles(nominals, circles('drill'), 'drill');
  const sunk = matchHoles(nominals, circles('countersink'), 'countersink');
  const bored = drilled.missing.map(({ nominal, hole }): RingCut => ({
    nominal,
    operation: 'hole',
    ring: holeRing(hole, bore),
    paths: [],
  }));
  const strayBores = matchRings(bored, paths('drill'), width);

  checkPocketLayers(pockets, file, faults);
  const rings = [...outlines, ...openings, ...pockets, ...scribes, ...bored];
  for (const { nominal, operation, ring, paths: cuts } of rings)
    if (cuts.length === 0)
      faults.add(
        'path-missing',
        file,
        { what: `${operation === 'outline' ? 'the' : 'a'} ${words[operation]}`, part: nameOf(nominal) },
        Near.middle(ring.box),
      );
  for (const { nominal, hole, diameter } of sunk.missing)
    faults.add('countersink-missing', file, { diameter: mm(diameter), part: nameOf(nominal) }, hole);
  for (const path of [...strayOutlines, ...strayOpenings, ...strayPockets, ...strayBores])
    faults.add('path-stray', file, { layer: path.layer }, Near.middle(path.line.box));
  for (const circle of [...drilled.left, ...sunk.left])
    faults.add('circle-stray', file, { layer: circle.layer }, circle);
  for (const path of bored.flatMap(({ ring, paths: cuts }) => cuts.map((cut) => ({ cut, ring })))) {
    const diameter = path.ring.box.maxX - path.ring.box.minX + bore;
    if (Math.abs(drillDiameter(path.cut.layer) - diameter) > 0.001)
      faults.add('bore-layer', file, { diameter: mm(diameter), layer: path.cut.layer }, Near.middle(path.ring.box));
  }
  return { rings, holes: [...drilled.cuts, ...sunk.cuts] };
}
