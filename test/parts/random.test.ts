/** Parts, templates and gauges of random designs: rings that hold together, and nothing off its part. */
import { describe, expect, it } from 'vitest';
import { readDesign, shapeOf } from '../../lib/design/index.js';
import { solveDish } from '../../lib/dish/index.js';
import { sideOfContour, signedArea, simplicity } from '../../lib/geometry/index.js';
import type { Part } from '../../lib/part/index.js';
import { makeGauges, makeParts, makeTemplates } from '../../lib/parts/index.js';
import { byDay, jobSeeds } from '../helpers/seeds.js';
import { designIn } from '../helpers/random-design.js';

function faults(part: Part): string[] {
  const outline = part.outline;
  const found: string[] = [];
  if (!(signedArea(outline) > 0)) found.push('outline runs clockwise');
  const lines = part.marks.flatMap((mark) => (mark.kind === 'line' ? [mark] : []));
  const rings = [outline, ...part.openings, ...lines.flatMap(({ closed, vertices }) => (closed ? [vertices] : []))];
  rings.forEach((ring, i) => {
    if (simplicity(ring, 1e-6).kind !== 'simple') found.push(`ring ${i} meets itself`);
  });
  part.openings.forEach((opening, i) => {
    if (!(signedArea(opening) < 0)) found.push(`opening ${i} runs anticlockwise`);
  });
  [...part.openings, ...lines.map(({ vertices }) => vertices)].forEach((vertices, i) => {
    if (vertices.some((vertex) => sideOfContour(outline, vertex, 1e-3) === 'outside'))
      found.push(`opening or line ${i} leaves the part`);
  });
  for (const { x, y, diameter } of part.holes)
    if (sideOfContour(outline, { x, y }, diameter / 2) !== 'inside') found.push(`a hole at ${x}, ${y} breaks the edge`);
  return found.map((fault) => `${part.id}: ${fault}`);
}

describe('random designs', () => {
  it.each(jobSeeds('parts/random', 100, byDay(10, 200)))('of seed %d have sound parts', (seed) => {
    const reading = readDesign(designIn('mm', seed));
    if (reading.kind === 'refused') throw new Error(reading.problems.map(({ message }) => message).join('\n'));
    const { template, dish: shape } = reading.design;
    const gauge = shape.ribs % 2 === 0 ? 'rim-to-rim' : 'vertex-to-rim';
    const others = { guide: 'bushing', gauge, joint: 'finger', bed: { width: 700, height: 500 } } as const;
    for (const changes of [{}, others]) {
      const design = { ...reading.design, template: { ...template, ...changes } };
      const dish = solveDish(shapeOf(design), design.dish.arcTolerance);
      const made = makeParts(design, dish);
      // parts that cannot be built as asked are named in the problems, and may be drawn as they would be
      if (made.problems.some(({ severity }) => severity === 'error')) continue;
      const aids = [...makeTemplates(design, dish, made.parts), ...makeGauges(design, dish)];
      expect([...made.parts, ...aids].flatMap(faults)).toEqual([]);
      expect(new Set([...made.parts, ...aids].map(({ id }) => id)).size).toBe(made.parts.length + aids.length);
    }
  });
});
