/** Outlines, openings, pockets and scribes of one part as operations, in the part's own axes. */
import {
  type Contour,
  distance,
  element,
  offsetContour,
  type Point,
  pointWithin,
  reversed,
  signedArea,
  unswept,
} from '../geometry/index.js';
import { linesUp, type PartShape, type Pocket, pocketsUp, ringsOf } from '../part/index.js';
import type { PartOperation } from './holes.js';
import { cutWidth } from './process.js';
import { insideCorner, relieveEdge, spurInto } from './relief.js';
import type { CutProblem, Process, Unreached } from './types.js';

/** Depth of a scribed line (mm): common practice, no source. */
const SCRIBE_DEPTH = 0.3;
/** Material left in a corner is reported from this area on (mm²): less is within the sanding of an edge. */
const MIN_AREA = 0.05;
const SAME_POINT = 1e-6;

/** What one ring of a part comes to. */
interface Worked {
  readonly operations: readonly PartOperation[];
  readonly unreached: readonly Omit<Unreached, 'part' | 'copy'>[];
}

/** Indices of the ring's vertices that are relieved: seats in inside corners that the router would leave round. */
function relievedCorners(part: PartShape, index: number, ring: Contour, process: Process): number[] {
  if (process.kind !== 'router' || process.relief === 'none') return [];
  return part.seatCorners
    .filter((seat) => seat.ring === index && insideCorner(ring, seat.vertex) !== null)
    .map((seat) => seat.vertex)
    .sort((a, b) => b - a);
}

/** What the tool leaves of a ring's waste, but for the corners that its spurs clear. */
function leftBy(ring: Contour, radius: number, cleared: readonly Point[]): Worked['unreached'] {
  if (radius === 0) return [];
  return unswept(ring, radius)
    .filter((region) => signedArea(region) >= MIN_AREA)
    .filter((region) => !cleared.some((corner) => region.some((v) => distance(v, corner) < SAME_POINT)))
    .map((region) => ({ ...pointWithin(region), area: signedArea(region) }));
}

function ringOperations(part: PartShape, index: number, ring: Contour, process: Process, compensated: boolean): Worked {
  const radius = cutWidth(process) / 2;
  const relieved = relievedCorners(part, index, ring, process);
  const unreached = leftBy(
    ring,
    radius,
    relieved.map((i) => element(ring, i)),
  );
  const operation = (vertices: Contour): PartOperation => ({
    // a ring that runs clockwise has its waste inside: a bay that the tool enters from above counts as an opening
    operation: signedArea(vertices) > 0 ? 'outline' : 'opening',
    closed: true,
    vertices,
    depth: 'through',
  });
  if (!compensated || radius === 0) {
    const finished = relieved.reduce<Contour>((edge, i) => relieveEdge(edge, i, radius), ring);
    return { operations: [operation(finished)], unreached };
  }
  const corners = relieved.flatMap((i) => insideCorner(ring, i) ?? []);
  const paths = offsetContour(ring, radius).map((path) =>
    corners.reduce((spurred, corner) => spurInto(spurred, corner, radius), path),
  );
  return { operations: paths.map(operation), unreached };
}

/** A pocket: the path along its edge, within which all is cleared. A laser, which cuts through or not at all, makes none. */
function pocketOperations({ ring, depth }: Pocket, process: Process, compensated: boolean): Worked {
  if (process.kind === 'laser') return { operations: [], unreached: [] };
  const radius = cutWidth(process) / 2;
  const paths = compensated && radius > 0 ? offsetContour(ring, radius) : [ring];
  return {
    operations: paths.map((vertices) => ({ operation: 'pocket', closed: true, vertices, depth })),
    unreached: leftBy(ring, radius, []),
  };
}

/**
 * The operations of a part's contours. When compensated, the path of the tool's or beam's centre: half the cut's
 * width outside an outline and inside an opening or pocket. Scribes run on their line. Seats are relieved either way.
 */
export function contourOperations(part: PartShape, process: Process, compensated: boolean): Worked {
  const worked = [
    ...pocketsUp(part).map((pocket) => pocketOperations(pocket, process, compensated)),
    ...ringsOf(part).map((ring, index) => ringOperations(part, index, ring, process, compensated)),
  ];
  const lines = linesUp(part).map(({ closed, vertices }): PartOperation => ({
    operation: 'scribe',
    closed,
    vertices,
    depth: SCRIBE_DEPTH,
  }));
  return {
    operations: [...worked.flatMap((one) => one.operations), ...lines],
    unreached: worked.flatMap((one) => one.unreached),
  };
}

/** Diameter of the largest round tool that goes into an opening or pocket, to 0.001 mm. */
function widestTool(opening: Contour): number {
  let fits = 0;
  let blocked = Math.sqrt(Math.abs(signedArea(opening)) / Math.PI) + 0.001;
  while (blocked - fits > 0.0005) {
    const radius = (fits + blocked) / 2;
    if (offsetContour(opening, radius).length > 0) fits = radius;
    else blocked = radius;
  }
  return 2 * fits;
}

/** Openings and pockets of the part that the tool or beam does not go into at all. */
export function openingProblems(part: PartShape, process: Process): CutProblem[] {
  const tool = cutWidth(process);
  const rings = [
    ...part.openings.map((ring) => ({ ring, what: 'opening' as const })),
    ...pocketsUp(part).map(({ ring }) => ({ ring, what: 'pocket' as const })),
  ];
  return rings.flatMap(({ ring, what }): CutProblem[] => {
    if (tool === 0 || offsetContour(ring, tool / 2).length > 0) return [];
    const place = pointWithin(reversed(ring));
    const size = widestTool(ring);
    const max = Math.floor(size * 100) / 100;
    const where = `${part.id}: the ${what} about ${Number(place.x.toFixed(1))}, ${Number(place.y.toFixed(1))} mm`;
    const cut = process.kind === 'router' ? `the ${tool} mm router bit` : `the ${tool} mm kerf`;
    const message = `${where} is too narrow for ${cut}`;
    const remedy = `a cut of at most ${max} mm would fit`;
    return [{ code: `${what}-smaller-than-tool`, part: part.id, place, size, tool, message, remedy }];
  });
}
