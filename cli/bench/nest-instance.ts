/** A strip-packing instance as a file, as a request to the nest, and the check of what the nest made of it. */
import { element } from '../../lib/geometry/index.js';
import { readFileSync } from 'node:fs';
import * as z from 'zod';
import type { Layout, NestPart, NestStock } from '../../lib/index.js';
import { gapBetween, placedSolid, type PlainSolid } from './nest-overlap.js';

/** Overlap that passes (in the instance's unit). */
const TOLERANCE = 1e-6;

const instanceSchema = z.object({
  name: z.string(),
  stripWidth: z.number().positive(),
  items: z.array(
    z.object({
      id: z.string(),
      quantity: z.number().int().nonnegative(),
      rotations: z.array(z.number()).nonempty(),
      outline: z.array(z.tuple([z.number(), z.number()])).min(3),
    }),
  ),
});

export type StripInstance = z.infer<typeof instanceSchema>;

export interface StripPlacement {
  readonly id: string;
  readonly copy: number;
  readonly x: number;
  readonly y: number;
  readonly rotationDeg: number;
}

/**
 * The instance in a text.
 * @throws Error that names the file and what is wrong in it
 */
export function instanceOf(text: string, file: string): StripInstance {
  try {
    return instanceSchema.parse(JSON.parse(text));
  } catch (error) {
    throw new Error(`${file} is not a nesting instance: ${error instanceof Error ? error.message : String(error)}`);
  }
}

/** @throws Error that names the file and what is wrong in it */
export function readInstance(file: string): StripInstance {
  return instanceOf(readFileSync(file, 'utf8'), file);
}

/** The instance as parts and a roll of open length. */
export function requestOf(instance: StripInstance): { parts: NestPart[]; stock: NestStock[] } {
  const parts = instance.items.map(({ id, quantity, rotations, outline }): NestPart => ({
    id,
    quantity,
    rotations,
    outline: outline.map(([x, y]) => ({ x, y })),
    openings: [],
    group: 'strip',
    faces: ['front'],
  }));
  const shape = { kind: 'roll', height: instance.stripWidth, maxLength: Infinity } as const;
  return { parts, stock: [{ id: 'strip', group: 'strip', shape, count: 1, price: 1, margin: 0, keepOuts: [] }] };
}

export function placementsOf(layout: Layout): StripPlacement[] {
  return layout.sheets.flatMap(({ placed: parts }) =>
    parts.map(({ part, copy, x, y, rotationDeg }) => ({ id: part, copy, x, y, rotationDeg })),
  );
}

/** Area of all pieces. */
export function areaOf(instance: StripInstance): number {
  return instance.items.reduce((sum, { quantity, outline }) => {
    const twice = outline.reduce((area, [x, y], i) => {
      const [u, v] = element(outline, (i + 1) % outline.length);
      return area + x * v - u * y;
    }, 0);
    return sum + (quantity * Math.abs(twice)) / 2;
  }, 0);
}

/** What is wrong with placements on a strip of the given length; empty when they are valid. */
export function stripFaults(instance: StripInstance, placements: readonly StripPlacement[], length: number): string[] {
  const faults: string[] = [];
  const itemOf = new Map(instance.items.map((item) => [item.id, item]));
  const counted = new Map<string, number>();
  const solids: { name: string; solid: PlainSolid }[] = [];
  for (const { id, copy, x, y, rotationDeg } of placements) {
    const item = itemOf.get(id);
    const name = `${id}-${copy}`;
    counted.set(id, (counted.get(id) ?? 0) + 1);
    if (!item?.rotations.includes(rotationDeg)) {
      faults.push(`${name} is unknown or may not lie at ${rotationDeg}`);
      continue;
    }
    const outer = placedSolid(item.outline, x, y, rotationDeg);
    const outside = outer.some(
      ([u, v]) => u < -TOLERANCE || u > length + TOLERANCE || v < -TOLERANCE || v > instance.stripWidth + TOLERANCE,
    );
    if (outside) faults.push(`${name} sticks out of the strip`);
    for (const other of solids) {
      const gap = gapBetween({ outer, openings: [] }, other.solid);
      if (gap < -TOLERANCE) faults.push(`${name} reaches ${-gap} into ${other.name}`);
    }
    solids.push({ name, solid: { outer, openings: [] } });
  }
  for (const { id, quantity } of instance.items) {
    if ((counted.get(id) ?? 0) !== quantity) faults.push(`${counted.get(id) ?? 0} of ${quantity} ${id}`);
  }
  return faults;
}
