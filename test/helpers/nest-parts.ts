/** Invented parts and stock for the tests of the nest. */
import type { NestPart, NestStock } from '../../lib/nest/index.js';

export type Corners = readonly (readonly [number, number])[];

export const ring = (corners: Corners): { x: number; y: number }[] => corners.map(([x, y]) => ({ x, y }));

export const box = (width: number, height: number, x = 0, y = 0): { x: number; y: number }[] =>
  ring([
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ]);

export function part(id: string, outline: NestPart['outline'], changes: Partial<NestPart> = {}): NestPart {
  return { id, quantity: 1, outline, openings: [], group: 'ply', rotations: [0], faces: ['front'], ...changes };
}

export function sheet(id: string, width: number, height: number, changes: Partial<NestStock> = {}): NestStock {
  const shape = { kind: 'sheet', width, height } as const;
  return { id, group: 'ply', shape, count: Infinity, price: 10, margin: 0, keepOuts: [], ...changes };
}

/** A long curved sliver, as a rib is. */
export function sliver(length: number, rise: number): NestPart['outline'] {
  const upper = Array.from({ length: 13 }, (_, i): [number, number] => {
    const x = length * (1 - i / 12);
    return [x, 40 + rise * (x / length) ** 2];
  });
  return ring([[0, 0], [length, 0], ...upper]);
}
