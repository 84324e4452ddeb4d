/** Inside corners: what a round tool must leave there is no fault, what it takes beside a relieved corner neither. */
import { describe, expect, it } from 'vitest';
import { smallFolder } from '../../cli/fuzz/corpus.js';
import { verify } from '../../lib/check/index.js';
import type { ReadBackPath, ReadBackSheet } from '../../lib/check/drawn.js';
import { placePart } from '../../lib/check/nominal.js';
import { insideCorners, isSpur } from '../../lib/check/relief.js';
import { lineOf } from '../../lib/check/ring.js';
import type { Vertex } from '../../lib/geometry/index.js';
import { filesOf, type OneSheet, singleSheets } from '../helpers/jobs.js';

const [{ record, drawing: sheet }] = singleSheets(smallFolder()) as [OneSheet];
const radius = 3;

const placed = record.sheets[0]!.placed.map((placement) => placePart(record.parts[0]!, placement));
const corners = placed.flatMap(({ outlines }) => outlines.flatMap(insideCorners));

/** The vertices of the outlines at which the tool stands in a relieved corner. */
function spurEnds(path: ReadBackPath): number[] {
  return path.line.edges.flatMap((edge, i) =>
    corners.some(
      (corner) => isSpur(edge, corner, radius) && Math.hypot(edge.bx - corner.x, edge.by - corner.y) < radius + 0.01,
    )
      ? [(i + 1) % path.line.edges.length]
      : [],
  );
}

/** The sheet with each outline's vertices changed. */
function changed(change: (path: ReadBackPath) => readonly Vertex[]): ReadBackSheet {
  const entities = sheet.entities.map((entity) =>
    entity.kind === 'path' && entity.layer === 'outline' ? { ...entity, line: lineOf(change(entity), true) } : entity,
  );
  return { ...sheet, entities };
}

const codes = (drawing: ReadBackSheet): string[] => [
  ...new Set(verify(filesOf({ record, drawing })).faults.map(({ code }) => code)),
];

describe('a relieved corner', () => {
  it('is known by its spur: both corners of the slot, on both parts', () => {
    const ends = sheet.entities.flatMap((entity) =>
      entity.kind === 'path' && entity.layer === 'outline' ? spurEnds(entity) : [],
    );
    expect(corners.length).toBe(4);
    expect(ends.length).toBe(4);
    expect(codes(sheet)).toEqual([]);
  });

  it.each([0.1, 0.5])('is a gouge where the tool goes %f mm too far', (by) => {
    const drawing = changed((path) => {
      const ends = new Set(spurEnds(path));
      return path.line.vertices.map((vertex, i) => {
        if (!ends.has(i)) return vertex;
        const corner = corners.find(({ x, y }) => Math.hypot(x - vertex.x, y - vertex.y) < radius + 0.01)!;
        return { ...vertex, x: vertex.x - by * corner.outX, y: vertex.y - by * corner.outY };
      });
    });
    expect(codes(drawing)).toEqual(['cut-error']);
  });

  it('may be left as the tool leaves it', () => {
    const drawing = changed((path) => {
      const ends = new Set(spurEnds(path));
      // the end of a spur, and the vertex to which it comes back
      return path.line.vertices.filter(
        (_, i) => !ends.has(i) && !ends.has((i + path.line.vertices.length - 1) % path.line.vertices.length),
      );
    });
    expect(codes(drawing)).toEqual([]);
  });

  it('is told when the tool could have gone farther in', () => {
    // the floor of the slot is given up: the path goes straight on across its mouth
    const drawing = changed((path) => {
      const ends = new Set(spurEnds(path));
      const count = path.line.vertices.length;
      return path.line.vertices.filter((_, i) => ![-1, 0, 1].some((step) => ends.has((i + step + count) % count)));
    });
    expect(codes(drawing)).toContain('cut-error');
  });
});
