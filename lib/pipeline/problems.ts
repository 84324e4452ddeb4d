/** What the nest and machining found, in the words of the design file. */
import type { Design, Problem } from '../design/index.js';
import { type CutProblem, cutWidth } from '../machining/index.js';
import type { Unplaced } from '../nest/index.js';
import type { NestRequest } from './nesting-request.js';
import type { Part } from '../parts/index.js';
import { formatLength } from '../units/index.js';

/** A part that found no place, with what would do. */
export function unplacedProblem(unplaced: Unplaced, part: Part, design: Design): Problem {
  const material = `${part.material} (${formatLength(part.thickness, design.units)})`;
  const least = unplaced.minSheet;
  const size = (mm: number) => formatLength(mm, design.units, 2);
  const which = `${part.name.toLowerCase()} (${part.id})`;
  const messages = {
    'no-stock-for-group': `no stock of ${material} for ${part.quantity} x ${which}; add one to stock`,
    'larger-than-stock': `${which} fits no stock of ${material}`,
    'stock-used-up': `the stock of ${material} is used up with ${unplaced.copies} x ${which} left; allow more of it (count)`,
  } as const;
  const advice =
    least === null
      ? ''
      : `; a sheet of ${size(least.width)} x ${size(least.height)} would do, margins and grain included`;
  return {
    code: unplaced.reason,
    severity: 'error',
    message: `${messages[unplaced.reason]}${advice}`,
    place: { path: ['stock'] },
  };
}

/** A hole or opening that the process cannot cut. */
export function cutProblem(problem: CutProblem): Problem {
  const key = problem.code === 'hole-smaller-than-tool' ? 'drillBits' : 'toolDiameter';
  return { code: problem.code, severity: 'error', message: problem.message, place: { path: ['process', key] } };
}

/** Stock whose margin would let the tool run off its edge. */
export function marginProblems(design: Design, requests: readonly NestRequest[]): Problem[] {
  return requests.flatMap(({ process, parts, stock }) => {
    const least = cutWidth(process) / 2;
    const used = new Set(parts.map(({ group }) => group));
    return stock
      .filter(({ group, margin }) => used.has(group) && margin < least)
      .map(({ id, margin }): Problem => {
        const size = (mm: number) => formatLength(mm, design.units, 3);
        return {
          code: 'margin',
          severity: 'error',
          message: `a margin of ${size(margin)} on ${id} lets the cut run off the sheet; use at least ${size(least)}, half the width of the cut`,
          place: { path: ['stock', design.stock.findIndex((item) => item.id === id), 'margin'] },
        };
      });
  });
}
