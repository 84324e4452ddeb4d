/** The record as the assembly needs it: the design's figures, and the parts as the files cut them. */
import * as z from 'zod';
import type { Vertex } from '../../geometry/index.js';
import { pointAlong, proofEdges } from '../edge.js';
import type { ProofPoint } from '../types.js';

const number = z.number();
const fastener = z.object({
  joint: z.string(),
  item: z.string(),
  diameter: number,
  length: number.nullable(),
  count: number,
});
const schema = z.object({
  design: z.object({
    dish: z.object({
      aperture: number,
      focalLength: number,
      profile: z.string(),
      figure: z.string(),
      ribs: number,
      baseHeight: number,
      arcTolerance: number,
    }),
    materials: z.record(z.string(), z.object({ thickness: number })),
    hub: z.object({ radius: number, boltDiameter: number, dowels: number, dowelDiameter: number }),
    cleat: z.object({ perRib: number, downScrews: number, ribScrews: number }),
    panel: z.object({ material: z.string(), gap: number, fixing: z.string(), battenWidth: number }),
    reflector: z.object({
      material: z.string().optional(),
      glue: number,
      layout: z.string(),
      inset: number,
      hem: number,
      overlap: number,
    }),
    board: z.object({ spliceWidth: number, centreHole: number }),
  }),
  fasteners: z.array(fastener),
  parts: z.array(
    z.object({
      id: z.string(),
      thickness: number,
      quantity: number,
      contours: z.array(
        z.object({
          operation: z.string(),
          closed: z.boolean().optional(),
          depth: number.optional(),
          vertices: z.array(z.tuple([number, number, number])),
        }),
      ),
      drills: z.array(z.object({ x: number, y: number, diameter: number })),
    }),
  ),
  sheets: z.array(z.object({ placed: z.array(z.object({ part: z.string(), mirrored: z.boolean() })) })),
});

export type BuiltRecord = z.infer<typeof schema>;
export type BuiltPart = BuiltRecord['parts'][number];
export type BuiltFastener = BuiltRecord['fasteners'][number];
export type Drill = BuiltPart['drills'][number];

/** The dish as a builder would put it together from the files. Lengths in mm, angles in radians. */
export interface Built {
  readonly design: BuiltRecord['design'];
  readonly fasteners: readonly BuiltFastener[];
  readonly rib: BuiltPart;
  readonly hub: BuiltPart;
  /** Null where the ribs stand in slots. */
  readonly cleat: BuiltPart | null;
  /** One, or its segments. */
  readonly boards: readonly BuiltPart[];
  readonly splice: BuiltPart | null;
  readonly panel: BuiltPart | null;
  readonly batten: BuiltPart | null;
  /** One strip of mirror, or its rows from the hub outward; none where the panel itself is bright. */
  readonly mirrors: readonly BuiltPart[];
  /** Directions of the ribs. */
  readonly turns: readonly number[];
  /** Half the angle between two. */
  readonly half: number;
  /** Where the ribs' inner ends lie. */
  readonly start: number;
  /** Whether the ribs lie with their back up when they are cut, which is then the face with the marks. */
  readonly scribedOnBack: boolean;
}

const dishParts = z.object({ parts: z.array(z.object({ id: z.string() })) });

/** What stands in the record; null where it is no record of a dish, text where a value is missing. */
export function builtOf(data: unknown): Built | string | null {
  const ids = dishParts.safeParse(data).data?.parts.map(({ id }) => id) ?? [];
  if (!ids.includes('rib') || !ids.includes('hub')) return null;
  const result = schema.safeParse(data);
  if (!result.success) {
    const [issue] = result.error.issues;
    return `${issue?.path.join('.') ?? ''}: ${issue?.message ?? ''}`;
  }
  const { design, fasteners, parts: all, sheets } = result.data;
  const find = (id: string): BuiltPart | null => all.find((part) => part.id === id) ?? null;
  const [rib, hub] = [find('rib'), find('hub')];
  if (rib === null || hub === null) return null;
  const count = design.dish.ribs;
  return {
    design,
    fasteners,
    rib,
    hub,
    cleat: find('cleat'),
    boards: all.filter(({ id }) => /^board(?:-\d+)?$/.test(id)),
    splice: find('splice'),
    panel: find('panel'),
    batten: find('batten'),
    mirrors: all.filter(({ id }) => /^reflector(?:-\d+)?$/.test(id)),
    turns: Array.from({ length: count }, (_, k) => (2 * Math.PI * k) / count),
    half: Math.PI / count,
    start: design.hub.radius,
    scribedOnBack: sheets.some(({ placed }) => placed.some(({ part, mirrored }) => part === 'rib' && mirrored)),
  };
}

/** Chords of arcs, mm: well below what the assembly may be off. */
const chord = 0.002;

/** A ring or path as points, arcs as chords. */
function pointsOf(vertices: readonly (readonly [number, number, number])[], closed: boolean): ProofPoint[] {
  const path = vertices.map(([x, y, bulge]): Vertex => ({ x, y, bulge }));
  const points = proofEdges(path, closed).flatMap((edge) => {
    const steps = edge.sweep === 0 ? 1 : Math.ceil(Math.abs(edge.sweep) / (2 * Math.sqrt((2 * chord) / edge.radius)));
    return Array.from({ length: steps }, (_, i) => pointAlong(edge, i / steps));
  });
  const last = path.at(-1);
  return closed || last === undefined ? points : [...points, last];
}

/** The outline of a part as points. */
export function outlineOf(part: BuiltPart): ProofPoint[] {
  const found = part.contours.find(({ operation }) => operation === 'outline');
  return found === undefined ? [] : pointsOf(found.vertices, true);
}

/** Openings of a part as points. */
export function openingsOf(part: BuiltPart): ProofPoint[][] {
  return part.contours
    .filter(({ operation }) => operation === 'opening')
    .map(({ vertices }) => pointsOf(vertices, true));
}

/** Pockets of a part: their rings as points, and their depth. */
export function pocketsOf(part: BuiltPart): { readonly ring: ProofPoint[]; readonly depth: number }[] {
  return part.contours
    .filter(({ operation }) => operation === 'pocket')
    .map(({ vertices, depth = 0 }) => ({ ring: pointsOf(vertices, true), depth }));
}

/** Where straight scribed lines square to x lie, with their ends. */
export function uprightLines(part: BuiltPart): { readonly x: number; readonly low: number; readonly high: number }[] {
  return part.contours.flatMap(({ operation, closed, vertices }) => {
    const [a, b] = vertices;
    if (operation !== 'scribe' || closed !== false || vertices.length !== 2 || !a || !b) return [];
    if (Math.abs(a[0] - b[0]) > 1e-4) return [];
    return [{ x: a[0], low: Math.min(a[1], b[1]), high: Math.max(a[1], b[1]) }];
  });
}

export const turned = ({ x, y }: ProofPoint, angle: number): ProofPoint => ({
  x: x * Math.cos(angle) - y * Math.sin(angle),
  y: x * Math.sin(angle) + y * Math.cos(angle),
});

/** Where an upright line at `x` crosses a ring, lowest first. */
export function crossings(ring: readonly ProofPoint[], x: number): number[] {
  return ring
    .flatMap((p, i) => {
      const q = ring[(i + 1) % ring.length] ?? p;
      if (Math.min(p.x, q.x) > x || Math.max(p.x, q.x) < x || p.x === q.x) return [];
      return [p.y + ((x - p.x) / (q.x - p.x)) * (q.y - p.y)];
    })
    .sort((a, b) => a - b);
}

/** Solids may run into each other by this, and an axis may lie this far off another, mm. */
export const overlapTolerance = 0.01;
export const axisTolerance = 0.05;

/** How far off a place the nearest of some holes lies, and its width. */
export const nearestDrill = (
  drills: readonly Drill[],
  at: ProofPoint,
): { readonly off: number; readonly diameter: number } =>
  drills.reduce(
    (best, { x, y, diameter }) => {
      const off = Math.hypot(x - at.x, y - at.y);
      return off < best.off ? { off, diameter } : best;
    },
    { off: Infinity, diameter: 0 },
  );
