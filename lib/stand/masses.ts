/** Masses and centres of gravity, read off the parts at their places. Kilograms, millimetres. */
import { sheetPoint, sheetShape } from '../assembly/sheet-shape.js';
import type { AssembledPart, AssembledSheet, Fastener } from '../assembly/index.js';
import { toSpace } from '../assembly/frame.js';
import type { Design } from '../design/index.js';
import type { Dish } from '../dish/index.js';
import {
  bounds,
  flatten,
  intersectPolygons,
  type Point,
  rectangle,
  rotate,
  type Vec3,
  vecAdd,
} from '../geometry/index.js';
import { steelDensity } from '../hardware/index.js';
import { type Part, ringsOf } from '../part/index.js';

export interface Mass {
  readonly name: string;
  readonly kg: number;
  readonly at: Vec3;
}

/** Area and its middle, holes taken off. */
interface Face {
  readonly area: number;
  readonly x: number;
  readonly y: number;
}

/** Chords of curved edges, mm: a ten-thousandth of the area of a small disc. */
const chord = 0.005;
/** Strips that a bent sheet is cut into. */
const strips = 24;

/** Area of a ring and its first moments. */
function ringMoments(ring: readonly Point[]): readonly [number, number, number] {
  const [origin] = ring;
  if (origin === undefined) return [0, 0, 0];
  let [area, mx, my] = [0, 0, 0];
  ring.forEach((p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    const [ax, ay, bx, by] = [p.x - origin.x, p.y - origin.y, q.x - origin.x, q.y - origin.y];
    const cross = (ax * by - bx * ay) / 2;
    area += cross;
    mx += (cross * (ax + bx)) / 3;
    my += (cross * (ay + by)) / 3;
  });
  return [area, mx + area * origin.x, my + area * origin.y];
}

function faceOf(rings: readonly (readonly Point[])[], part: Pick<Part, 'holes'> | null): Face {
  const sums = rings.map(ringMoments);
  for (const { x, y, diameter, depth } of part?.holes ?? []) {
    if (depth !== 'through') continue;
    const hole = (Math.PI / 4) * diameter ** 2;
    sums.push([-hole, -hole * x, -hole * y]);
  }
  const [area, mx, my] = sums.reduce<readonly [number, number, number]>(
    (a, b) => [a[0] + b[0], a[1] + b[1], a[2] + b[2]],
    [0, 0, 0],
  );
  return { area, x: area === 0 ? 0 : mx / area, y: area === 0 ? 0 : my / area };
}

const flat = (part: Part): Point[][] =>
  ringsOf(part).map((ring) => flatten(ring, chord, 'on').map(({ x, y }) => ({ x, y })));

/** The middle of a bent sheet, in the bay of its copy: strip by strip across its length. */
function sheetMiddle(design: Design, dish: Dish, sheet: AssembledSheet): { readonly area: number; readonly at: Vec3 } {
  const { part } = sheet;
  const rings = flat(part);
  const { minX, maxX, minY, maxY } = bounds(part.outline);
  const shape = sheetShape(design, dish, sheet);
  let [area, at] = [0, [0, 0, 0] as Vec3];
  for (let i = 0; i < strips; i++) {
    const [from, to] = [minX + ((maxX - minX) * i) / strips, minX + ((maxX - minX) * (i + 1)) / strips];
    const strip = faceOf(intersectPolygons(rings, [rectangle(from, minY, to, maxY)]), null);
    const length = Math.max(0, Math.min(shape.length, sheet.start + strip.x));
    const place = sheetPoint(shape, sheet.bay, shape.at(length), strip.y, part.thickness / 2);
    area += strip.area;
    at = vecAdd(at, place, strip.area);
  }
  return { area, at: vecAdd([0, 0, 0], at, area === 0 ? 0 : 1 / area) };
}

/** Every copy of every part as a mass at its place. */
export function partMasses(design: Design, dish: Dish, placed: readonly AssembledPart[]): Mass[] {
  const faces = new Map<Part, Face>();
  const first = new Map<Part, { readonly area: number; readonly at: Vec3; readonly turn: number }>();
  return placed.map((one): Mass => {
    const { part } = one;
    const perArea = part.thickness * 1e-9 * (design.materials[part.material]?.densityKgPerM3 ?? 0);
    if (one.form === 'plate') {
      const face = faces.get(part) ?? faceOf(flat(part), part);
      faces.set(part, face);
      return { name: part.id, kg: face.area * perArea, at: toSpace(one.frame, face.x, face.y, part.thickness / 2) };
    }
    // copies of a sheet are turns of the first about the axis
    const known = first.get(part) ?? { ...sheetMiddle(design, dish, one), turn: one.bay.rotationDeg };
    first.set(part, known);
    const turn = ((one.bay.rotationDeg - known.turn) * Math.PI) / 180;
    const [x, y, z] = known.at;
    const at = rotate({ x, y }, turn);
    return { name: part.id, kg: known.area * perArea, at: [at.x, at.y, z] };
  });
}

/** Head and nut of a bolt, as a share of its shank: common practice, no source. */
const headShare = 0.6;

/** Screws, bolts and dowels; what has no length is left out. */
export function fastenerMasses(fasteners: readonly Fastener[]): Mass[] {
  return fasteners.flatMap(({ joint, item, entry, direction }): Mass[] => {
    const { kind, diameter, length } = item;
    if (length === null || kind === 'dowel') return [];
    const shank = (Math.PI / 4) * diameter ** 2 * length * steelDensity * 1e-9;
    return [
      { name: joint, kg: shank * (kind === 'bolt' ? 1 + headShare : 1), at: vecAdd(entry, direction, length / 2) },
    ];
  });
}

/** All together; without any at the origin. */
export function together(name: string, masses: readonly Mass[]): Mass {
  const kg = masses.reduce((sum, one) => sum + one.kg, 0);
  const sum = masses.reduce<Vec3>((at, one) => vecAdd(at, one.at, one.kg), [0, 0, 0]);
  return { name, kg, at: kg === 0 ? [0, 0, 0] : vecAdd([0, 0, 0], sum, 1 / kg) };
}
