/** What the scenes of the steps are put together from: the model's copies, fasteners, aids, and words about them. */
import type { AssembledPlate, Fastener, JointKind } from '../../../assembly/index.js';
import { fastenerPiece } from '../../illustrate/hardware.js';
import type { Body, Look, Note, Piece, Scene, SurfaceLine } from '../../illustrate/index.js';
import { type Vec3, vecAdd } from '../../../geometry/index.js';
import type { Model, Solid } from '../../illustrate/solids.js';
import type { Part, PartKind } from '../../../part/index.js';
import type { BookInput } from '../input.js';
import { plateShape } from '../model.js';
import { numberOf } from '../../part-numbers.js';
import { piecesOf } from '../still.js';

export interface Stage {
  readonly input: BookInput;
  readonly model: Model;
  /** Radius of the aperture, mm: what distances in a picture are measured by. */
  readonly R: number;
  readonly from: Scene['from'];
}

/** What a scene shows, seen from where the others are unless it says so. */
export type Shot = Omit<Scene, 'from' | 'label'> & Partial<Pick<Scene, 'from'>>;

export const up = (by: number): Vec3 => [0, 0, by];

/** Direction of a rib's plane from the axis, radians; ribs count from 1. */
export function directionOf({ input }: Stage, rib: number): number {
  return ((input.dish.layout.ribs[rib - 1]?.rotationDeg ?? 0) * Math.PI) / 180;
}

/** Along a direction from the axis, and up. */
export const outward = (angle: number, out: number, high = 0): Vec3 => [
  out * Math.cos(angle),
  out * Math.sin(angle),
  high,
];

/** The number of the rib, or bay, that looks at the eye most: its direction is nearest to the eye's, turned by some. */
export function ribTowards(stage: Stage, turned = 0): number {
  const wanted = stage.from.azimuth + turned;
  const off = (rib: number): number => {
    const angle = directionOf(stage, rib) - wanted;
    return Math.abs(Math.atan2(Math.sin(angle), Math.cos(angle)));
  };
  const { ribs } = stage.input.dish.layout;
  return ribs.reduce((best, _, k) => (off(k + 1) < off(best) ? k + 1 : best), 1);
}

/** A circle on the front of a plate for each of its holes. */
function drillsOf({ holes, thickness }: Part): SurfaceLine[] {
  return holes.map(({ x, y, diameter }) => ({
    kind: 'drill',
    points: Array.from({ length: 13 }, (_, k): Vec3 => {
      const angle = (2 * Math.PI * k) / 12;
      return [x + (diameter / 2) * Math.cos(angle), y + (diameter / 2) * Math.sin(angle), thickness];
    }),
  }));
}

/** Copies of the model, with the holes of their parts; a copy that is pulled away by `moved` is new. */
export function copies(
  stage: Stage,
  look: (solid: Solid, index: number) => Look,
  moved?: (solid: Solid, index: number) => Vec3,
): Piece[] {
  const lines = new Map<Body, SurfaceLine[]>();
  for (const solid of stage.model.solids) {
    const part = stage.input.parts.find(({ id }) => id === solid.parts[0]);
    if (part && solid.shape.kind === 'plate') lines.set(solid, drillsOf(part));
  }
  return piecesOf(stage.model, look, moved).map((piece) => ({ ...piece, lines: lines.get(piece.body) ?? [] }));
}

/** A plate that the model does not have: an aid where it is used, a splice plate. */
export function platePiece(
  { input }: Stage,
  part: Part,
  role: Body['role'],
  frame: Piece['frame'],
  moved: Vec3 = [0, 0, 0],
  look: Piece['look'] = 'new',
): Piece {
  const shape = plateShape(input, part);
  return { body: { parts: [part.id], role, shape }, frame, moved, look, lines: drillsOf(part) };
}

export const platesOf = ({ input }: Stage, kind: PartKind): AssembledPlate[] =>
  input.assembly.placed.filter((one): one is AssembledPlate => one.form === 'plate' && one.part.kind === kind);

export const fastenersOfJoint = ({ input }: Stage, joint: JointKind): Fastener[] =>
  input.assembly.fasteners.filter((one) => one.joint === joint);

/** Which rib the first part that a fastener goes through stands at. */
export const ribOf = ({ through }: Fastener): number => through[0]?.part.rib ?? 0;

/** Fasteners pulled out along their axes, thick enough to be seen, with the lines along which they go in. */
export function driven(
  { R }: Stage,
  fasteners: readonly Fastener[],
  pulled: number,
  view = R,
): { pieces: Piece[]; notes: Note[] } {
  const pieces = fasteners.map((one) => {
    const reach = Math.min(one.wood, 60);
    return fastenerPiece(one, pulled, reach, Math.max(1, (0.006 * view) / one.item.diameter));
  });
  const notes = fasteners.map((one, i): Note => {
    const from = vecAdd(one.entry, pieces[i]?.moved ?? [0, 0, 0]);
    return { kind: 'axis', from, to: vecAdd(one.entry, one.direction, Math.min(one.wood, one.item.length ?? 30)) };
  });
  return { pieces, notes };
}

/** The number of the part list at the best seen of some pieces. */
export function balloon({ input }: Stage, kind: PartKind, pieces: readonly Piece[]): Note[] {
  const text = numberOf(input.parts, kind);
  return text === null || pieces.length === 0 ? [] : [{ kind: 'balloon', at: { pieces }, text }];
}

export const ofRole = (pieces: readonly Piece[], ...roles: readonly Body['role'][]): Piece[] =>
  pieces.filter(({ body }) => roles.includes(body.role));

export const fresh = (pieces: readonly Piece[]): Piece[] => pieces.filter(({ look }) => look === 'new');

/** An arrow from a place that is pulled away back towards it. */
export function wayIn(at: Vec3, moved: Vec3): Note {
  return { kind: 'way', from: vecAdd(at, moved, 0.82), to: vecAdd(at, moved, 0.3) };
}

export const label = (text: string, at: Vec3 | readonly Piece[]): Note => ({
  kind: 'label',
  at: typeof at[0] === 'number' ? (at as Vec3) : { pieces: at as readonly Piece[] },
  text,
});

export const aidOf = ({ input }: Stage, id: string): Part | null => input.aids.find((part) => part.id === id) ?? null;
