/** Every part of the fixtures, cut by routers and a laser: what the tool leaves is the part. */
import { diagnosticText } from '../../lib/diagnostic/index.js';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readDesign } from '../../lib/design/index.js';
import { simplicity } from '../../lib/geometry/index.js';
import { cutProblems, machine, type Process } from '../../lib/machining/index.js';
import type { Part } from '../../lib/part/index.js';
import { prepare } from '../../lib/pipeline.js';
import { faults } from './sweep.js';

const fixtures = ['press-house', 'table-top', 'hand-cut-inch'] as const;
const drills = [1.5, (25.4 * 5) / 64, 2, 2.5, 3, 25.4 / 8, 3.5, (25.4 * 9) / 64, 4, 4.5, 5, 5.5];
const processes: readonly [string, number, Process][] = [
  ['a 6 mm router bit', 6, { kind: 'router', toolDiameter: 6, web: 4, relief: 'none', drills }],
  ['a 1/8 in router bit', 25.4 / 8, { kind: 'router', toolDiameter: 25.4 / 8, web: 3, relief: 'none', drills }],
  ['a laser of 0.2 mm kerf', 0.2, { kind: 'laser', kerf: 0.2, web: 1 }],
];

function partsOf(fixture: string): readonly Part[] {
  const reading = readDesign(readFileSync(new URL(`../../fixtures/${fixture}.yaml`, import.meta.url), 'utf8'));
  if (reading.kind !== 'design') throw new Error(reading.problems.map(diagnosticText).join('\n'));
  return prepare(reading.design).parts;
}

describe.each(fixtures)('the parts of %s', (fixture) => {
  const parts = partsOf(fixture);

  it('have rings that do not meet themselves', () => {
    for (const part of parts) {
      const lines = part.marks.flatMap((mark) => (mark.kind === 'line' && mark.closed ? [mark.vertices] : []));
      for (const ring of [part.outline, ...part.openings, ...lines])
        expect([part.id, simplicity(ring, 1e-6)]).toEqual([part.id, { kind: 'simple' }]);
    }
  });

  it.each(processes)('cut by %s come out true within 0.02 mm', (_, tool, process) => {
    expect(cutProblems(parts, process)).toEqual([]);
    for (const part of parts) {
      const sheet = { stock: 's', width: 1, height: 1, margin: 0 };
      const placed = [{ part: part.id, copy: 1, x: 0, y: 0, rotationDeg: 0, mirrored: false }];
      const [done] = machine([{ ...sheet, placed }], [part], process, { compensated: true });
      const rings = [part.outline, ...part.openings];
      const paths = done!.operations.filter((one) => one.operation === 'outline' || one.operation === 'opening');
      const { overcut, left } = faults(rings, paths, tool);
      expect([part.id, overcut < 1e-4, left < 1e-4]).toEqual([part.id, true, true]);
    }
  });
});
