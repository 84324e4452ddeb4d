/** Whether what is marked on a sheet is the lettering and the scribed lines of the parts that lie there, and no more. */
import { farthestFrom } from './deviation.js';
import { EdgeSet } from './edge-set.js';
import type { ProofEdge } from './edge.js';
import { cutTolerance } from './limits.js';
import type { Nominal } from './nominal.js';
import type { ProofPoint } from './types.js';

/** What differs between the marks as they should be and as they are. */
export interface MarkFindings {
  readonly labels: readonly { readonly nominal: Nominal; readonly text: string; readonly place: ProofPoint }[];
  readonly scribes: readonly { readonly nominal: Nominal; readonly place: ProofPoint }[];
  readonly stray: readonly ProofPoint[];
}

/** Where the edges leave the set by more than the tolerance; null where they do not. */
function leaves(edges: readonly ProofEdge[], set: EdgeSet | null): ProofPoint | null {
  if (set === null) return edges[0] === undefined ? null : { x: edges[0].ax, y: edges[0].ay };
  return farthestFrom(edges, set, cutTolerance).beyond[0]?.place ?? null;
}

const setOf = (edges: readonly ProofEdge[]): EdgeSet | null => (edges.length === 0 ? null : new EdgeSet(edges));

/**
 * Holds marks against those of the parts, stroke by stroke, whatever the order and the direction in which they are made.
 * @param whole what is marked to its full depth
 * @param any all that is marked in any form
 */
export function compareMarks(nominals: readonly Nominal[], whole: readonly ProofEdge[], any = whole): MarkFindings {
  const drawn = setOf(whole);
  const labels = nominals.flatMap((nominal) =>
    nominal.labels.flatMap(({ text, strokes }) => {
      const place = leaves(
        strokes.flatMap(({ edges }) => edges),
        drawn,
      );
      return place === null ? [] : [{ nominal, text, place }];
    }),
  );
  const scribes = nominals.flatMap((nominal) =>
    nominal.scribes.flatMap(({ edges }) => {
      const place = leaves(edges, drawn);
      return place === null ? [] : [{ nominal, place }];
    }),
  );
  const expected = setOf(
    nominals.flatMap((nominal) =>
      [...nominal.scribes, ...nominal.labels.flatMap(({ strokes }) => strokes)].flatMap(({ edges }) => edges),
    ),
  );
  const stray = expected === null ? any.map(({ ax, ay }) => ({ x: ax, y: ay })) : straying(any, expected);
  return { labels, scribes, stray };
}

function straying(edges: readonly ProofEdge[], expected: EdgeSet): ProofPoint[] {
  const first = new Map<ProofEdge, ProofPoint>();
  for (const { edge, place } of farthestFrom(edges, expected, cutTolerance).beyond)
    if (!first.has(edge)) first.set(edge, place);
  return [...first.values()];
}
