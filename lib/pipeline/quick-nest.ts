/** A nest within a moment, for what sheets, cost and time come to: no search, and outlines in few edges. */
import { flatten } from '../geometry/index.js';
import { type Layout, nest } from '../nest/index.js';
import type { Prepared } from './types.js';

/** Arcs are covered by edges that stand out this far at most (mm): a tenth of the time, and rarely another sheet. */
const coverTolerance = 0.5;

/** Layouts of the requests, in their order. What lies there fits; a search may need less. */
export function quickNest({ parts, requests }: Pick<Prepared, 'parts' | 'requests'>): Layout[] {
  const outlines = new Map(parts.map(({ id, outline }) => [id, flatten(outline, coverTolerance, 'outside')]));
  return requests.map(({ parts: asked, stock, options }) =>
    nest(
      asked.map((part) => ({ ...part, outline: outlines.get(part.id) ?? part.outline, openings: [] })),
      stock,
      { ...options, effort: 0 },
    ),
  );
}
