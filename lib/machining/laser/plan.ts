/** From a cut sheet to the way of the beam: what it follows, in which order, and for how long. */
import { bounds, distance, edgesOf, edgesOfPath, element, type Path } from '../../geometry/index.js';
import { drivingOf, secondsOf } from '../motion-time.js';
import { inLines, lengthOf, type Move, type Point3 } from '../moves.js';
import type { CutOperation, CutSheet } from '../types.js';
import type { LaserCut, LaserData, LaserPlan } from './types.js';

/** A piece that is longer than this, mm, may lie across two slats of the bed and tip up: common practice, no source. */
export const smallSlug = 20;

/** Whether a piece comes out of the sheet that may tip up. */
function isSlug({ operation, vertices, bore }: CutOperation): boolean {
  const ring = operation === 'opening' ? vertices : operation === 'drill' ? bore : undefined;
  if (ring === undefined || ring.length < 2) return false;
  const { minX, minY, maxX, maxY } = bounds(ring);
  return Math.max(maxX - minX, maxY - minY) > smallSlug;
}

/** The feed of what has none stated: it is neither written nor timed. */
const noSpeed = 1;

function followed(path: Path, closed: boolean, feed: number): Move[] {
  const { x, y } = element(path, 0);
  const edges = closed ? edgesOf(path) : edgesOfPath(path);
  return [
    { kind: 'rapid', to: { x, y, z: 0 } },
    ...edges.map((edge): Move => {
      const to = { x: edge.to.x, y: edge.to.y, z: 0 };
      if (edge.kind === 'straight') return { kind: 'line', to, feed };
      return { kind: 'arc', to, centre: edge.centre, clockwise: edge.sweep < 0, feed };
    }),
  ];
}

function cutOf(one: CutOperation, data: LaserData): LaserCut[] {
  const { operation, part, copy, diameter, bore } = one;
  const path = operation === 'drill' ? bore : one.vertices;
  // a hole no wider than the beam has no path: the drawing shows it as a circle
  if (path === undefined || path.length < 2) return [];
  const marks = operation === 'scribe';
  const feed = (marks ? data.markSpeed : data.cutSpeed) ?? noSpeed;
  return [{ operation, part, copy, diameter, marks, moves: followed(path, one.closed || bore !== undefined, feed) }];
}

/**
 * Plans how a laser follows a sheet: lettering, then the operations in their order. The machine stands while the beam is
 * switched.
 * @param sheet compensated for the kerf, in cutting order
 */
export function planLaser(sheet: Pick<CutSheet, 'operations' | 'marks'>, data: LaserData): LaserPlan {
  const feed = data.markSpeed ?? noSpeed;
  const lettering = (sheet.marks ?? [])
    .filter(({ vertices }) => vertices.length > 1)
    .map(({ part, copy, vertices }): LaserCut => {
      const moves = followed(vertices, false, feed);
      return { operation: 'scribe', part, copy, marks: true, moves };
    });
  const whole = [...lettering, ...sheet.operations.flatMap((one) => cutOf(one, data))];
  const cuts =
    data.arcs === 'arcs'
      ? whole
      : whole.map((cut) => ({ ...cut, moves: inLines({ title: '', moves: cut.moves }, data.lineTolerance).moves }));
  const { travelSpeed = noSpeed, acceleration = Infinity } = data;
  const driving = drivingOf({ ...data, travelSpeed, acceleration });
  const lengths = { cut: 0, mark: 0, travel: 0 };
  let seconds = 0;
  let at: Point3 = { x: 0, y: 0, z: 0 };
  for (const { moves, marks } of cuts) {
    const start = element(moves, 0).to;
    lengths.travel += distance(at, start);
    seconds += secondsOf(at, moves.slice(0, 1), driving) + secondsOf(start, moves.slice(1), driving);
    at = start;
    for (const move of moves.slice(1)) {
      lengths[marks ? 'mark' : 'cut'] += lengthOf(at, move);
      at = move.to;
    }
  }
  const needed = [
    ...(lengths.cut > 0 ? (['cutSpeed'] as const) : []),
    ...(lengths.mark > 0 ? (['markSpeed'] as const) : []),
    'travelSpeed' as const,
  ];
  const unknown = needed.filter((key) => data[key] === undefined);
  return {
    cuts,
    seconds: unknown.length > 0 ? null : seconds,
    atLeast: data.acceleration === undefined,
    unknown,
    cutLength: lengths.cut,
    markLength: lengths.mark,
    travelLength: lengths.travel,
    slugs: sheet.operations.filter(isSlug).length,
  };
}
