/** Copies of parts with the ways in which each may lie. */
import type { Piece } from './packing.js';
import type { Orientation, Shapes } from './shape.js';
import type { NestPart } from './types.js';

/** Angles tried first for a part that may lie at any. */
const SQUARE = [0, 90, 180, 270];

/** Ways in which a part may lie, each different shape once. */
export function orientationsOf(part: NestPart, shapes: Shapes): Orientation[] {
  const angles = part.rotations === 'any' ? SQUARE : part.rotations;
  const lies: Orientation[] = [];
  for (const mirrored of part.mirrorable ? [false, true] : [false]) {
    for (const angle of angles) {
      const lie = shapes.lay(part.outline, part.openings, angle, mirrored);
      if (!lies.some(({ shape }) => shape === lie.shape)) lies.push(lie);
    }
  }
  return lies;
}

/** All copies, large parts first; equal parts of different names are of one kind. */
export function piecesOf(parts: readonly NestPart[], shapes: Shapes): Piece[] {
  const kinds = new Map<string, number>();
  const pieces = parts.flatMap((part) => {
    const orientations = orientationsOf(part, shapes);
    const name = orientations.map(({ shape }) => shape.index).join(' ');
    const kind = kinds.get(name) ?? kinds.size;
    kinds.set(name, kind);
    return Array.from({ length: part.quantity }, (_, i): Piece => ({ part, copy: i + 1, kind, orientations }));
  });
  const area = ({ orientations }: Piece): number => orientations[0]!.shape.area;
  return pieces
    .map((piece, at) => ({ piece, at }))
    .sort((a, b) => area(b.piece) - area(a.piece) || a.piece.kind - b.piece.kind || a.at - b.at)
    .map(({ piece }) => piece);
}
