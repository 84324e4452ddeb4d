/** Whether things are cut in an order that a machine can follow: what is cut free moves and cannot be cut again. */
import type { ReadBack, ReadBackPath } from './drawn.js';
import type { FaultList } from './faults.js';
import type { Matches, RingCut } from './match.js';
import { type Nominal, nameOf } from './nominal.js';
import { inside } from './ring.js';

/** When things are cut, as places in the file. */
interface Turns {
  readonly of: (one: ReadBack) => number;
  readonly first: (paths: readonly ReadBackPath[]) => number;
  readonly last: (paths: readonly ReadBackPath[]) => number;
}

function turnsOf(entities: readonly ReadBack[]): Turns {
  const turn = new Map<ReadBack, number>(entities.map((entity, i) => [entity, i]));
  const of = (one: ReadBack): number => turn.get(one) ?? 0;
  return {
    of,
    first: (paths) => Math.min(...paths.map(of)),
    last: (paths) => Math.max(...paths.map(of)),
  };
}

/** Every hole, opening and mark of a part comes before its outline. */
function checkWithinParts(
  { rings, holes }: Matches,
  outlines: readonly RingCut[],
  { of, first, last }: Turns,
  file: string,
  faults: FaultList,
): void {
  const freed = new Map(
    outlines.map((cut) => [cut.nominal, first(cut.paths.filter(({ layer }) => layer === 'outline'))]),
  );
  for (const cut of rings) {
    if (cut.operation === 'outline' || cut.operation === 'scribe' || cut.paths.length === 0) continue;
    const free = freed.get(cut.nominal);
    const what = cut.operation === 'hole' ? 'a hole' : cut.operation === 'pocket' ? 'a pocket' : 'an opening';
    if (free !== undefined && last(cut.paths) > free)
      faults.add('order-within', file, { what, part: nameOf(cut.nominal) });
  }
  for (const { nominal, circle } of holes)
    if (of(circle) > (freed.get(nominal) ?? Infinity))
      faults.add('order-within', file, { what: 'a hole', part: nameOf(nominal) }, circle);
}

/** Everything that is scribed on a part, lettering too, comes before its outline. */
function checkScribed(
  entities: readonly ReadBack[],
  outlines: readonly RingCut[],
  { of, first }: Turns,
  file: string,
  faults: FaultList,
): void {
  const freed = outlines.map((cut) => first(cut.paths.filter(({ layer }) => layer === 'outline')));
  for (const entity of entities) {
    if (entity.kind !== 'path' || entity.layer !== 'scribe') continue;
    const at = entity.line.vertices[0]!;
    const after = outlines.find(
      ({ nominal: { box, openings }, ring }, i) =>
        of(entity) > freed[i]! &&
        at.x >= box.minX &&
        at.x <= box.maxX &&
        at.y >= box.minY &&
        at.y <= box.maxY &&
        inside(ring.edges, at) &&
        !openings.some(({ edges }) => inside(edges, at)),
    );
    if (after !== undefined)
      faults.add('order-within', file, { what: 'a scribed line or a letter', part: nameOf(after.nominal) }, at);
  }
}

/** A part that lies in the opening of another comes before that opening. */
function checkWithinOpenings(
  { rings }: Matches,
  outlines: readonly RingCut[],
  { first, last }: Turns,
  file: string,
  faults: FaultList,
): void {
  for (const opening of rings) {
    if (opening.operation !== 'opening' || opening.paths.length === 0) continue;
    const { minX, minY, maxX, maxY } = opening.ring.box;
    for (const other of outlines) {
      const edge = other.ring.edges[0]!;
      if (other.nominal === opening.nominal || edge.ax < minX || edge.ax > maxX || edge.ay < minY || edge.ay > maxY)
        continue;
      if (inside(opening.ring.edges, { x: edge.ax, y: edge.ay }) && last(other.paths) > first(opening.paths))
        faults.add(
          'order-nested',
          file,
          { part: nameOf(other.nominal), around: nameOf(opening.nominal) },
          { x: edge.ax, y: edge.ay },
        );
    }
  }
}

/** When each kind of operation of a part begins and ends. */
type Spans = Map<string, { first: number; last: number }>;

function spansOf({ rings, holes }: Matches, { of }: Turns): Map<Nominal, Spans> {
  const parts = new Map<Nominal, Spans>();
  const take = (nominal: Nominal, kind: string, turn: number): void => {
    const spans: Spans = parts.get(nominal) ?? new Map<string, { first: number; last: number }>();
    const { first, last } = spans.get(kind) ?? { first: turn, last: turn };
    spans.set(kind, { first: Math.min(first, turn), last: Math.max(last, turn) });
    parts.set(nominal, spans);
  };
  for (const { nominal, operation, paths } of rings)
    for (const path of paths) take(nominal, operation === 'hole' ? 'drill' : operation, of(path));
  for (const { nominal, operation, circle } of holes) take(nominal, operation, of(circle));
  return parts;
}

/** Whether the operations of each part follow one another as the record has it for the machine. */
function checkAsked(matches: Matches, asked: readonly string[], turns: Turns, file: string, faults: FaultList): void {
  for (const [nominal, spans] of spansOf(matches, turns)) {
    const there = asked.flatMap((kind) => {
      const span = spans.get(kind);
      return span === undefined ? [] : [{ kind, ...span }];
    });
    there.slice(1).forEach((later, i) => {
      const before = there[i]!;
      if (before.last > later.first)
        faults.add('order-machine', file, { what: later.kind, part: nameOf(nominal), before: before.kind });
    });
  }
}

/**
 * Whether things are cut in the order of the file without cutting what is free already.
 * @param asked order of the operations of a part, where the record has one
 */
export function checkOrder(
  matches: Matches,
  entities: readonly ReadBack[],
  asked: readonly string[] | undefined,
  file: string,
  faults: FaultList,
): void {
  const turns = turnsOf(entities);
  const outlines = matches.rings.filter(({ operation, paths }) => operation === 'outline' && paths.length > 0);
  checkWithinParts(matches, outlines, turns, file, faults);
  checkScribed(entities, outlines, turns, file, faults);
  checkWithinOpenings(matches, outlines, turns, file, faults);
  if (asked !== undefined) checkAsked(matches, asked, turns, file, faults);
}
