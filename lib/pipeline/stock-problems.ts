/** Whether the stock is enough, as far as that can be known without nesting. */
import type { Design } from '../design/index.js';
import { type Diagnostic, diagnostic, type KeyPath } from '../diagnostic/index.js';
import { polygonArea } from '../geometry/index.js';
import {
  checkRequest,
  NestError,
  type NestPart,
  type NestStock,
  smallestSheet,
  type Unfit,
  unfitParts,
} from '../nest/index.js';
import type { NestRequest } from './nesting-request.js';
import { formatLength, inInches } from '../units/index.js';
import type { Prepared } from './types.js';

/** A size that still does when it is printed: rounded up, to a millimetre or a sixteenth of an inch. */
function sizeText(mm: number, units: Design['units']): string {
  const step = inInches(units) ? 25.4 / 16 : 1;
  const up = step * Math.ceil(mm / step - 1e-6);
  return inInches(units) ? formatLength(up, 'in', 4) : formatLength(up, units, 4);
}

/** Parts that no stock takes, with the sheet that would take every one of them. */
function unfitProblem({ design, parts }: Prepared, { process, options, stock }: NestRequest, unfit: Unfit): Diagnostic {
  const { group } = unfit;
  const margins = stock.filter((item) => item.group === group).map(({ margin }) => margin);
  const margin = margins.length > 0 ? Math.max(...margins) : design.process.margin;
  const { width, height } = smallestSheet(unfit.parts, options.spacing, margin);
  const named = unfit.parts.map(({ id, quantity }) => {
    const name = parts.find((part) => part.id === id)?.name.toLowerCase() ?? id;
    return `${quantity} x ${name} (${id})`;
  });
  const thickness = formatLength(design.materials[group]?.thickness ?? 0, design.units);
  const size = `${sizeText(width, design.units)} x ${sizeText(height, design.units)}`;
  const grain = process.kind === 'hand' ? 'margins' : 'margins and grain';
  if (!unfit.stocked)
    return diagnostic(
      'no-stock-for-group',
      ['materials', group],
      `no stock of ${group} (${thickness}) for ${named.join(', ')}`,
      `add one to stock: a sheet of ${size} would be large enough, ${grain} included`,
    );
  const at = design.stock.findIndex(({ material }) => material === group);
  return diagnostic(
    'larger-than-stock',
    ['stock', at],
    `${named.join(', ')}: larger than any stock of ${group} (${thickness})`,
    `a sheet of ${size} would be large enough, ${grain} included`,
  );
}

const areaOf = ({ outline, openings, quantity }: NestPart): number =>
  quantity * openings.reduce((area, ring) => area - Math.abs(polygonArea(ring)), Math.abs(polygonArea(outline)));

/** Area that parts could cover on all stock of an item; infinite for what can be bought at will. */
function usableOn({ shape, margin, count }: NestStock): number {
  if (shape.kind === 'offcut') return count * Math.abs(polygonArea(shape.outline));
  const width = shape.kind === 'sheet' ? shape.width : shape.maxLength;
  return count * Math.max(0, width - 2 * margin) * Math.max(0, shape.height - 2 * margin);
}

/** Materials whose parts have a greater area than all their stock. */
function areaProblems(design: Design, { parts, stock }: NestRequest): Diagnostic[] {
  return [...new Set(parts.map(({ group }) => group))].flatMap((group) => {
    const needed = parts.filter((part) => part.group === group).reduce((sum, part) => sum + areaOf(part), 0);
    const own = stock.filter((item) => item.group === group);
    const usable = own.reduce((sum, item) => sum + usableOn(item), 0);
    if (needed <= usable) return [];
    const m2 = (area: number) => `${(area / 1e6).toFixed(2)} m²`;
    return [
      diagnostic(
        'stock-used-up',
        countPath(design, group),
        `the parts of ${group} cover ${m2(needed)}, but its stock has only ${m2(usable)} inside the margins`,
        'allow more of it (stock.count)',
      ),
    ];
  });
}

/** The key that limits the stock of a material. */
export function countPath(design: Design, material: string): KeyPath {
  const counted = design.stock.findIndex((item) => item.material === material && item.count !== undefined);
  const any = design.stock.findIndex((item) => item.material === material);
  return counted >= 0 ? ['stock', counted, 'count'] : ['stock', Math.max(0, any)];
}

/** Outlines of offcuts and places to keep clear that cannot be used. */
function outlineProblems(design: Design, { parts, stock, options }: NestRequest): Diagnostic[] {
  checkRequest(parts, [], options);
  return stock.flatMap((item): Diagnostic[] => {
    try {
      checkRequest([], [item], options);
      return [];
    } catch (error) {
      const at = design.stock.findIndex(({ id }) => id === item.id);
      if (!(error instanceof NestError) || error.id !== item.id) throw error;
      const key = error.message.startsWith('a keep-out') ? 'keepOuts' : 'outline';
      return [diagnostic('stock-outline', ['stock', at, key], error.message, 'list its corners in order, once around')];
    }
  });
}

/**
 * What is wrong with the stock of a prepared design: none of a material, none large enough, too little of it, outlines
 * that cross themselves. Stock that is counted may still turn out too little in the nest.
 */
export function stockProblems(prepared: Prepared): Diagnostic[] {
  const { design, requests } = prepared;
  return requests.flatMap((request) => {
    const outlines = outlineProblems(design, request);
    if (outlines.length > 0) return outlines;
    const unfit = unfitParts(request.parts, request.stock, request.options.spacing);
    return unfit.length > 0 ? unfit.map((one) => unfitProblem(prepared, request, one)) : areaProblems(design, request);
  });
}

/** The part of a prepared design whose stock is counted, so that only the nest shows whether it is enough. */
export function countedStock(prepared: Prepared): Prepared {
  const requests = prepared.requests.flatMap((request): NestRequest[] => {
    const endless = new Set(request.stock.filter(({ count }) => count === Infinity).map(({ group }) => group));
    const parts = request.parts.filter(({ group }) => !endless.has(group));
    return parts.length > 0 ? [{ ...request, parts }] : [];
  });
  return { ...prepared, requests };
}
