/** Plain parts and sheets for the tests of machining. */
import type { PartShape } from '../../lib/part/index.js';
import { type CutOperation, machine, type MachinedSheet, type Process } from '../../lib/machining/index.js';

export const router = { kind: 'router', toolDiameter: 6, web: 4, relief: 'dogbone' } as const satisfies Process;
export const laser: Process = { kind: 'laser', kerf: 0.2, web: 1 };
export const hand: Process = { kind: 'hand', web: 5 };

export function sheetOf(...placed: MachinedSheet['placed']): MachinedSheet {
  return { stock: 'ply', width: 2440, height: 1220, margin: 10, placed };
}

export const plateAt = (part: string, x = 0, y = 0, copy = 1): MachinedSheet['placed'][number] => ({
  part,
  copy,
  x,
  y,
  rotationDeg: 0,
  mirrored: false,
});

export function cut(part: PartShape, process: Process, compensated = true): readonly CutOperation[] {
  return machine([sheetOf(plateAt(part.id))], [part], process, { compensated })[0]!.operations;
}
