/** Runs that join end to end, as rings. */
import type { DiagnosticCode } from '../../diagnostic/index.js';
import {
  arcThrough,
  distance,
  edgeArc,
  element,
  indexBoxes,
  type Point,
  pointOnEdge,
  reversed,
  type Vertex,
} from '../../geometry/index.js';
import type { SourceDrawing, DrawingMessage, SourceRun } from './drawing.js';

/** Ends this close (mm) are joined. */
const joinWithin = 0.01;

/** A closed outline as drawn. */
export interface DrawnRing {
  readonly what: string;
  readonly vertices: readonly Vertex[];
  readonly deviation: number;
}

/** The edge from `vertex` with its end moved to `end`: an arc still passes its own middle. */
function moveEnd(vertex: Vertex, oldStart: Point, oldEnd: Point, end: Point): Vertex {
  if (vertex.bulge === 0) return vertex;
  const middle = pointOnEdge(edgeArc({ ...oldStart, bulge: vertex.bulge }, oldEnd), 0.5);
  const distinct = distance(vertex, middle) > 1e-9 && distance(middle, end) > 1e-9 && distance(vertex, end) > 1e-9;
  return { ...vertex, bulge: distinct ? arcThrough(vertex, middle, end) : vertex.bulge };
}

/** Open runs in order, each beginning where the last one ended, as one ring; gaps go to the ends of edges. */
function closed(runs: readonly (readonly Vertex[])[]): { vertices: Vertex[]; moved: number } {
  const vertices: Vertex[] = [];
  let moved = 0;
  runs.forEach((run, i) => {
    const next = element(element(runs, (i + 1) % runs.length), 0);
    const last = run.length - 1;
    for (const [k, vertex] of run.slice(0, -1).entries()) {
      const end = element(run, k + 1);
      const gap = k + 1 === last ? distance(end, next) : 0;
      moved = Math.max(moved, gap);
      vertices.push(gap > 0 ? moveEnd(vertex, vertex, end, next) : vertex);
    }
  });
  return { vertices, moved };
}

/** Whether a run closes on itself. */
function closesItself(run: SourceRun): boolean {
  if (run.closed) return true;
  const [first, last] = [run.vertices[0], run.vertices.at(-1)];
  return run.vertices.length > 2 && first !== undefined && last !== undefined && distance(first, last) <= joinWithin;
}

interface End {
  readonly run: number;
  readonly atStart: boolean;
  readonly place: Point;
}

const millimetres = (length: number): string => `${Number(length.toPrecision(4))} mm`;

/** A run from one of its ends on. */
function directed(loose: readonly SourceRun[], end: number): readonly Vertex[] {
  const { vertices } = element(loose, end >> 1);
  return (end & 1) === 0 ? vertices : reversed(vertices);
}

/**
 * The rings of a drawing: closed runs, and open ones whose ends meet within `joinWithin`. Lines that stay open, and
 * places where more than two ends meet, are reported. n log n.
 */
export function joinRuns({ runs, shown }: SourceDrawing): {
  readonly rings: DrawnRing[];
  readonly findings: DrawingMessage[];
} {
  const rings: DrawnRing[] = [];
  const findings: DrawingMessage[] = [];
  const error = (code: DiagnosticCode, message: string, remedy: string): number =>
    findings.push({ code, severity: 'error', message, remedy });
  const loose: SourceRun[] = [];
  for (const run of runs) {
    if (run.vertices.length < 2) error('extra-no-size', `${run.what} has no length`, 'delete it');
    else if (run.closed) rings.push(run);
    else if (closesItself(run)) {
      const { vertices, moved } = closed([run.vertices]);
      rings.push({ what: run.what, vertices, deviation: run.deviation + moved });
    } else loose.push(run);
  }
  const ends = loose.flatMap(({ vertices }, run): End[] => [
    { run, atStart: true, place: element(vertices, 0) },
    { run, atStart: false, place: vertices.at(-1)! },
  ]);
  const boxes = ends.map(({ place: { x, y } }) => ({ minX: x, maxX: x, minY: y, maxY: y }));
  const index = indexBoxes(boxes);
  const partner = new Map<number, number>();
  const branched = new Set<number>();
  ends.forEach((end, i) => {
    if (branched.has(i)) return;
    const near = index
      .touching(element(boxes, i), joinWithin)
      .filter((j) => distance(element(ends, j).place, end.place) <= joinWithin);
    if (near.length > 2) {
      const which = near.slice(0, 3).map((j) => element(loose, element(ends, j).run).what);
      error(
        'extra-branch',
        `${near.length} lines end at ${shown(end.place)} (${which.join('; ')}) instead of two`,
        'delete those drawn twice, or separate the outlines',
      );
      for (const j of near) branched.add(j);
    } else if (near.length === 2) partner.set(i, near[0] === i ? element(near, 1) : element(near, 0));
  });
  const used = new Set<number>();
  /** Runs in order from one on, and whether they come round to it. */
  const chain = (first: number): { ends: number[]; round: boolean } => {
    const list: number[] = [];
    // an end's number is twice its run's, plus 1 for the far end: the other end of a run differs in the last bit
    for (let at: number | undefined = first; at !== undefined;) {
      list.push(at);
      used.add(at >> 1);
      at = partner.get(at ^ 1);
      if (at === first) return { ends: list, round: true };
      if (at !== undefined && used.has(at >> 1)) at = undefined;
    }
    return { ends: list, round: false };
  };
  // open chains first, from a loose end on; what is left goes round
  const starts = [...ends.keys()].filter((i) => !partner.has(i));
  for (const i of [...starts, ...ends.keys()]) {
    if (used.has(i >> 1)) continue;
    const { ends: list, round } = chain(i);
    const what =
      list.length === 1 ? element(loose, i >> 1).what : `${element(loose, i >> 1).what} with ${list.length - 1} more`;
    if (round) {
      const { vertices, moved } = closed(list.map((end) => directed(loose, end)));
      const worst = list.reduce((max, end) => Math.max(max, element(loose, end >> 1).deviation), 0);
      rings.push({ what, vertices, deviation: worst + moved });
      continue;
    }
    const last = list.at(-1)! ^ 1;
    if (branched.has(i) || branched.has(last)) continue;
    const [from, to] = [element(ends, i).place, element(ends, last).place];
    error(
      'extra-open',
      `${what} is open: it begins at ${shown(from)} and ends at ${shown(to)}, ${millimetres(distance(from, to))} apart`,
      `close the outline (ends within ${joinWithin} mm are joined), or delete the line`,
    );
  }
  return { rings, findings };
}
