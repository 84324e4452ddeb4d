/**
 * Where the middle of the tool can be at all: outside of the parts by half the cut. An inside corner or a narrow neck
 * keeps material that no path of this tool could take. Found by the polygon library, as a check of the check.
 */
import { EndType, inflatePaths, JoinType, type Paths64 } from 'clipper2-ts';
import { type ProofEdge, edgeBetween, pointAlong } from './edge.js';
import { EdgeSet } from './edge-set.js';
import type { Nominal } from './nominal.js';
import { remembered } from './remembered.js';
import type { Line } from './ring.js';

/** Units of the polygon library in a millimetre: 10 nm. */
const perMm = 1e5;
/** Greatest distance of the straight edges that stand for an arc from it, mm. */
const flatness = 0.0005;
/** Straight edges for one arc, at most: enough for half a circle of 40 m radius. */
const maxSteps = 10_000;

function flattened({ edges }: Line): { x: number; y: number }[] {
  return edges.flatMap((edge: ProofEdge) => {
    const steps =
      edge.sweep === 0
        ? 1
        : Math.min(
            maxSteps,
            Math.max(1, Math.ceil(Math.abs(edge.sweep) / (2 * Math.acos(1 - Math.min(1, flatness / edge.radius))))),
          );
    return Array.from({ length: steps }, (_, i) => {
      const { x, y } = pointAlong(edge, i / steps);
      return { x: Math.round(x * perMm), y: Math.round(y * perMm) };
    });
  });
}

/** By part and radius: each ring of a part asks. */
const placesOf = remembered<Nominal, Map<number, EdgeSet | null>>(() => new Map());

/** All places of the tool's middle in which it just touches the part; null when the tool enters nowhere. */
export function toolPlaces(nominal: Nominal, radius: number): EdgeSet | null {
  const known = placesOf(nominal);
  let places = known.get(radius);
  if (places === undefined) known.set(radius, (places = touching(nominal, radius)));
  return places;
}

function touching(nominal: Nominal, radius: number): EdgeSet | null {
  const rings: Paths64 = [...nominal.outlines, ...nominal.openings].map(flattened);
  const grown = inflatePaths(rings, radius * perMm, JoinType.Round, EndType.Polygon, 2, flatness * perMm);
  const edges = grown.flatMap((ring) =>
    ring.map((from, i) => {
      const to = ring[(i + 1) % ring.length]!;
      return edgeBetween({ x: from.x / perMm, y: from.y / perMm, bulge: 0 }, { x: to.x / perMm, y: to.y / perMm });
    }),
  );
  return edges.length === 0 ? null : new EdgeSet(edges);
}
