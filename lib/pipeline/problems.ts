/** What the nest and machining found, as diagnostics about keys of the design file. */
import type { Design } from '../design/index.js';
import { type Diagnostic, diagnostic, type KeyPath } from '../diagnostic/index.js';
import { bounds, commandedPoint, contourFromPoints, rectangle } from '../geometry/index.js';
import {
  type CutProblem,
  cutWidth,
  type Process,
  type RouterData,
  type RouterProblem,
  settingProblems,
} from '../machining/index.js';
import type { NestStock, Unplaced } from '../nest/index.js';
import type { NestRequest } from './nesting-request.js';
import type { Part } from '../part/index.js';
import { countPath } from './stock-problems.js';
import { formatLength } from '../units/index.js';

/** A part that found no place in the nest. */
export function unplacedProblem({ copies }: Unplaced, part: Part, design: Design): Diagnostic {
  const material = `${part.material} (${formatLength(part.thickness, design.units)})`;
  return diagnostic(
    'stock-used-up',
    countPath(design, part.material),
    `the stock of ${material} is used up with ${copies} x ${part.name.toLowerCase()} (${part.id}) left`,
    'allow more of it (count)',
  );
}

/**
 * A hole or opening that the process cannot cut.
 * @param section whose tool it is: `process` for parts on the stock, `template` for aids
 */
export function cutProblem(problem: CutProblem, section: 'process' | 'template', process: Process): Diagnostic {
  const key: KeyPath =
    process.kind === 'laser'
      ? [section, 'kerf']
      : problem.code === 'hole-smaller-than-tool'
        ? ['process', 'drillBits']
        : [section, 'toolDiameter'];
  return diagnostic(problem.code, key, problem.message, problem.remedy);
}

/** The machining data of a design, with the machine that they are for; what was measured of it stands in the process. */
export function routerData({ router, machine }: Pick<Design, 'router' | 'machine'>): RouterData {
  const described = { ...machine, calibration: undefined };
  return { ...router, machine: described };
}

/** Settings of the router that no bit or machine can keep to, for parts that it cuts. */
export function settingsProblems(design: Design, requests: readonly NestRequest[]): Diagnostic[] {
  return routerProblems(
    requests.flatMap(({ process }) =>
      process.kind === 'router' ? settingProblems(routerData(design), process.toolDiameter) : [],
    ),
  );
}

/** What routing found, each message once: sheets of one material have their faults in common. */
export function routerProblems(problems: readonly RouterProblem[]): Diagnostic[] {
  const found = new Map<string, Diagnostic>();
  for (const { code, severity, key, message, remedy } of problems)
    found.set(message, diagnostic(code, key, message, remedy, severity));
  return [...found.values()];
}

/** How far a machine whose axes are not true has to be sent past an edge of the stock to come to that edge, mm. */
function overhang(process: Process, shape: NestStock['shape']): number {
  if (process.kind === 'hand' || process.axes === undefined || shape.kind === 'roll') return 0;
  const { axes } = process;
  const corners = shape.kind === 'offcut' ? shape.outline : rectangle(0, 0, shape.width, shape.height);
  const real = bounds(contourFromPoints(corners));
  const sent = bounds(contourFromPoints(corners.map((corner) => commandedPoint(axes, corner))));
  return Math.max(0, real.minX - sent.minX, real.minY - sent.minY, sent.maxX - real.maxX, sent.maxY - real.maxY);
}

/** Stock whose margin would let the tool run off its edge. */
export function marginProblems(design: Design, requests: readonly NestRequest[]): Diagnostic[] {
  return requests.flatMap(({ process, parts, stock }) => {
    const used = new Set(parts.map(({ group }) => group));
    return stock
      .filter(({ group }) => used.has(group))
      .flatMap(({ id, shape, margin }): Diagnostic[] => {
        const over = overhang(process, shape);
        const min = cutWidth(process) / 2 + over;
        if (margin >= min) return [];
        const size = (mm: number) => formatLength(mm, design.units, 3);
        const cause = `half the width of the cut${over > 0 ? ' and what the correction of the axes adds' : ''}`;
        return [
          diagnostic(
            'margin',
            ['stock', design.stock.findIndex((item) => item.id === id), 'margin'],
            `a margin of ${size(margin)} on ${id} lets the cut run off the sheet`,
            `use at least ${size(Math.ceil(1000 * min) / 1000)}, ${cause}`,
          ),
        ];
      });
  });
}
