/** Copies of parts with the orientations in which each may be placed. */
import type { Piece } from './packing.js';
import type { Orientation, Shapes } from './shape.js';
import { convexHull, cyclic, element, type Random } from '../geometry/index.js';
import type { NestPart } from './types.js';

/** Angles tried first for a part that may lie at any. */
const SQUARE = [0, 90, 180, 270];
/** Angles that a part gathers at most: each costs its no-fit regions with all others. */
const MAX_ANGLES = 16;

/** Degrees that lay the longest straight run between two corners of the convex hull along x, both ways. */
function restingAngles({ outline }: NestPart): number[] {
  const hull = convexHull(outline);
  let longest = 0;
  let angle = 0;
  hull.forEach((p, i) => {
    const q = cyclic(hull, i + 1);
    const length = Math.hypot(q.x - p.x, q.y - p.y);
    if (length > longest * (1 + 1e-9)) {
      longest = length;
      angle = (-Math.atan2(q.y - p.y, q.x - p.x) * 180) / Math.PI;
    }
  });
  const turned = ((angle % 360) + 360) % 360;
  // near enough to square is square
  return Math.abs(turned - 90 * Math.round(turned / 90)) < 0.01 ? [] : [turned, (turned + 180) % 360];
}

function addOrientation(part: NestPart, angle: number, shapes: Shapes, found: Orientation[]): void {
  for (const face of part.faces) {
    const orientation = shapes.orient(part.outline, part.openings, angle, face === 'back');
    if (!found.some(({ shape }) => shape === orientation.shape)) found.push(orientation);
  }
}

/** Ways in which a part may lie, each different shape once. */
export function orientationsOf(part: NestPart, shapes: Shapes): Orientation[] {
  const angles = part.rotations === 'any' ? [...SQUARE, ...restingAngles(part)] : part.rotations;
  const found: Orientation[] = [];
  for (const angle of angles) addOrientation(part, angle, shapes, found);
  return found;
}

/** Gives one of the parts that may lie at any angle one more: a fresh one, or one close to one that it has. */
export function addAngle(pieces: readonly Piece[], shapes: Shapes, random: Random): void {
  const free = pieces.filter(({ part, orientations }) => part.rotations === 'any' && orientations.length < MAX_ANGLES);
  const piece = free[random.integer(free.length)];
  if (!piece) return;
  const found = piece.orientations as Orientation[];
  const near = element(found, random.integer(found.length)).rotationDeg + (random.real() - 0.5) * 10;
  const angle = random.real() < 0.5 ? random.real() * 360 : (near + 360) % 360;
  addOrientation(piece.part, angle, shapes, found);
}

/** All copies, large parts first; equal parts of different names are of one kind. */
export function piecesOf(parts: readonly NestPart[], shapes: Shapes): Piece[] {
  const kinds = new Map<string, number>();
  const pieces = parts.flatMap((part) => {
    const orientations = orientationsOf(part, shapes);
    const name = orientations.map(({ shape }) => shape.index).join(' ');
    const kind = kinds.get(name) ?? kinds.size;
    kinds.set(name, kind);
    const { area } = element(orientations, 0).shape;
    return Array.from({ length: part.quantity }, (_, i): Piece => ({ part, copy: i + 1, kind, orientations, area }));
  });
  return pieces
    .map((piece, at) => ({ piece, at }))
    .sort((a, b) => b.piece.area - a.piece.area || a.piece.kind - b.piece.kind || a.at - b.at)
    .map(({ piece }) => piece);
}
