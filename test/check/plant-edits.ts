/** How a good sheet is changed to plant a fault in it. */
import type { ReadBack, ReadBackPath, ReadBackSheet } from '../../lib/check/drawn.js';
import { widthOfCut, processOf } from '../../lib/check/nominal.js';
import { lineOf } from '../../lib/check/ring.js';
import { offsetContour } from '../../lib/geometry/index.js';
import type { Vertex } from '../../lib/geometry/index.js';
import { filesOf, type OneSheet } from '../helpers/jobs.js';

type Files = Map<string, string>;
/** Gives the mutated files and what was done, or null when this sheet has nothing to mutate like this. */
export type Plant = (sheet: OneSheet, random: () => number) => { readonly files: Files; readonly what: string } | null;

export const pick = <T>(items: readonly T[], random: () => number): T | undefined =>
  items[Math.floor(random() * items.length)];

export const isPath = (entity: ReadBack): entity is ReadBackPath => entity.kind === 'path';
export const isCut = (entity: ReadBack): boolean => entity.layer !== 'sheet-edge' && entity.layer !== 'scribe';
export const cutPaths = ({ entities }: ReadBackSheet): ReadBackPath[] => entities.filter(isPath).filter(isCut);

export const withVertices = (
  path: ReadBackPath,
  vertices: readonly Vertex[],
  closed = path.line.closed,
): ReadBackPath => ({
  ...path,
  line: lineOf(vertices, closed),
});

type Map2 = (point: { readonly x: number; readonly y: number }) => { x: number; y: number };

export function mapped(entity: ReadBack, map: Map2, turn: 1 | -1 = 1, scale = 1): ReadBack {
  if (entity.kind === 'circle') return { ...entity, ...map(entity), diameter: scale * entity.diameter };
  return withVertices(
    entity,
    entity.line.vertices.map((vertex) => ({ ...map(vertex), bulge: turn * vertex.bulge })),
  );
}

/** The sheet with some entities replaced, or taken away. */
export function replaced(one: OneSheet, change: (entity: ReadBack) => ReadBack | null): OneSheet {
  const entities = one.drawing.entities.flatMap((entity) => change(entity) ?? []);
  return { ...one, drawing: { ...one.drawing, entities } };
}

export function shiftBy(length: number, random: () => number): Map2 {
  const angle = random() * 2 * Math.PI;
  return ({ x, y }) => ({ x: x + length * Math.cos(angle), y: y + length * Math.sin(angle) });
}

/** An outline and all that lies within its box. */
export function onePart({ drawing }: OneSheet, random: () => number): Set<ReadBack> | null {
  const outline = pick(
    cutPaths(drawing).filter(({ layer }) => layer === 'outline'),
    random,
  );
  if (!outline) return null;
  const { minX, minY, maxX, maxY } = outline.line.box;
  const within = drawing.entities.filter((entity) => {
    const box =
      entity.kind === 'path' ? entity.line.box : { minX: entity.x, minY: entity.y, maxX: entity.x, maxY: entity.y };
    return (
      entity.layer !== 'sheet-edge' && box.minX >= minX && box.minY >= minY && box.maxX <= maxX && box.maxY <= maxY
    );
  });
  return new Set(within);
}

/** Half the width of the cut of the sheet, mm. */
export function radiusOf({ record }: OneSheet): number {
  return widthOfCut(processOf(record, record.sheets[0]!)) / 2;
}

/** The tool's path offset towards the part by some multiple of half the cut. */
export function offsetTowards(times: number): Plant {
  return (one, random) => {
    const radius = radiusOf(one);
    // at a beam of a few hundredths of a millimetre the error drowns in the tolerance
    if (times * radius < 0.03) return null;
    const path = pick(
      cutPaths(one.drawing).filter(({ layer }) => layer === 'outline' || layer === 'opening'),
      random,
    );
    const [ring] = path ? offsetContour(path.line.vertices, -times * radius) : [];
    if (!path || !ring) return null;
    const files = filesOf(replaced(one, (entity) => (entity === path ? withVertices(path, ring) : entity)));
    return { files, what: `a path of ${path.layer} offset by ${-times} radii of ${radius}` };
  };
}

/** How lopsided a ring is: greatest distance of its vertices from those of its mirror image left to right. */
export function lopsided({ line }: ReadBackPath): number {
  const { minX, maxX } = line.box;
  return Math.max(
    ...line.vertices.map(({ x, y }) =>
      Math.min(...line.vertices.map((other) => Math.hypot(minX + maxX - x - other.x, y - other.y))),
    ),
  );
}

/** The files with a changed drawing in the DXF, in the SVG or in both. */
export function drawnIn(
  one: OneSheet,
  other: OneSheet,
  random: () => number,
): { readonly files: Files; readonly where: string } {
  const where = pick(['DXF', 'SVG', 'DXF and SVG'], random)!;
  const [dxf, svg] = [where.startsWith('DXF') ? other : one, where.endsWith('SVG') ? other : one];
  return { files: filesOf(dxf, svg.drawing), where };
}

export const isScribe = ({ layer }: ReadBack): boolean => layer === 'scribe';

/** Alters the text of one file of the sheet. */
export function rewritten(files: Files, ending: string, change: (text: string) => string): Files {
  return new Map([...files].map(([name, text]) => [name, name.endsWith(ending) ? change(text) : text]));
}
