/** What the nest and machining found, as diagnostics about keys of the design file. */
import { type Design, routerOf } from '../design/index.js';
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
import type { JobSheet } from './types.js';
import { countPath } from './stock-problems.js';
import { formatLength } from '../units/index.js';

/** A part that found no place in the nest. */
export function unplacedProblem({ copies }: Unplaced, part: Part, design: Design): Diagnostic {
  const material = `${part.material} (${formatLength(part.thickness, design.units)})`;
  return diagnostic(
    'stock-used-up',
    countPath(design, part.material),
    `the stock of ${material} is used up with ${copies} x ${part.name.toLowerCase()} (${part.id}) left`,
    'allow more of it (stock.count)',
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

/** The machining data of a design, with the machine that they are for. */
export function routerData(design: Pick<Design, 'router' | 'machine'>): RouterData {
  return { ...design.router, machine: routerOf(design) };
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
        const cause = `half the width of the cut${over > 0 ? ' and the correction of the axes' : ''}`;
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

/** A sheet beyond the working area, with the way in which it is to be cut. */
function beyondArea(
  { machine, units }: Design,
  kind: Process['kind'],
  { id, width, height }: { readonly id: string; readonly width: number; readonly height: number },
): { readonly message: string } | null {
  const { area } = machine;
  if (kind !== machine.kind || area === undefined || (width <= area.width && height <= area.height)) return null;
  const size = (a: number, b: number) => `${formatLength(a, units, 3)} x ${formatLength(b, units, 3)}`;
  return {
    message: `${id} is ${size(width, height)}, but the working area of the ${kind} is ${size(area.width, area.height)}`,
  };
}

/** Sheets and offcuts in use that are larger than the working area of their machine. */
export function areaProblems(design: Design, requests: readonly NestRequest[]): Diagnostic[] {
  return requests.flatMap(({ process, parts, stock }) => {
    const used = new Set(parts.map(({ group }) => group));
    return stock.flatMap(({ id, group, shape }): Diagnostic[] => {
      if (!used.has(group) || shape.kind === 'roll') return [];
      const size =
        shape.kind === 'sheet'
          ? shape
          : {
              width: Math.max(...shape.outline.map(({ x }) => x)),
              height: Math.max(...shape.outline.map(({ y }) => y)),
            };
      const found = beyondArea(design, process.kind, { id, width: size.width, height: size.height });
      if (found === null) return [];
      const remedy = 'buy or cut the sheet to the working area (`stock`), or use a larger machine';
      return [diagnostic('machine-area', ['machine', 'area'], found.message, remedy)];
    });
  });
}

/** Lengths of a roll, templates and gauges that came out larger than the working area. */
export function areaProblemsOf(design: Design, sheets: readonly JobSheet[], aids: readonly JobSheet[]): Diagnostic[] {
  const path = ['machine', 'area'];
  return [
    ...sheets.flatMap(({ cut }) => {
      const found = beyondArea(design, cut.process.kind, cut);
      const remedy = 'state a shorter stock.rollLength, or use a larger machine';
      return found === null ? [] : [diagnostic('machine-area', path, found.message, remedy)];
    }),
    ...aids.flatMap(({ cut }) => {
      const found = beyondArea(design, cut.process.kind, cut);
      const remedy = 'cut it on a larger machine, or by hand from its print';
      return found === null ? [] : [diagnostic('machine-area', path, found.message, remedy, 'warning')];
    }),
  ];
}
