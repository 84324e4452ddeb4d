/** Scenes of boards in segments, hubs of two discs, and stands. */
import { type Vec3, vecAdd, vecTimes } from '../../../geometry/index.js';
import type { Look, Note, Piece } from '../../illustrate/index.js';
import { baysOverJoints } from '../segment-steps.js';
import type { Solid } from '../../illustrate/solids.js';
import {
  balloon,
  copies,
  directionOf,
  driven,
  fastenersOfJoint,
  fresh,
  label,
  ofRole,
  outward,
  platePiece,
  platesOf,
  type Shot,
  type Stage,
  up,
  wayIn,
} from './stage.js';

/** The board face down, seen from below, with the plates under its joints. */
export function join(stage: Stage): Shot {
  const { R } = stage;
  const away: Vec3 = up(-0.16 * R);
  const pieces = copies(stage, ({ role }) => (role === 'board' ? 'there' : 'hidden'));
  const plates = platesOf(stage, 'splice').map((one) => platePiece(stage, one.part, 'hub', one.frame, away));
  const first = plates.slice(0, 1);
  const screws = driven(stage, fastenersOfJoint(stage, 'splice-to-board'), 0.24 * R, R);
  const bolts = driven(stage, fastenersOfJoint(stage, 'splice-bolt'), 0.3 * R, R);
  return {
    pieces: [...pieces, ...plates, ...screws.pieces, ...bolts.pieces],
    from: { azimuth: stage.from.azimuth, elevation: -0.7 },
    notes: [
      ...screws.notes,
      ...bolts.notes,
      ...balloon(stage, 'board', pieces),
      ...balloon(stage, 'splice', plates),
      ...platesOf(stage, 'splice').map(({ frame, part }) =>
        wayIn(vecAdd(vecAdd(frame.origin, frame.x, part.thickness * 3), up(-part.thickness)), away),
      ),
      ...(screws.pieces[0] ? [label('screws, with glue', screws.pieces)] : []),
      ...(bolts.pieces[0] ? [label('bolts, dry', bolts.pieces)] : []),
      ...(first[0] ? [label('underside up, face on the floor', pieces)] : []),
    ],
  };
}

/** The upper disc goes down over the noses of the ribs, with its bolt. */
export function upperDisc(stage: Stage): Shot {
  const { R, input } = stage;
  const lift = up(0.3 * R);
  const pieces = copies(
    stage,
    ({ role }, i) =>
      role === 'hub' ? (i > 0 ? 'new' : 'there') : ['board', 'rib', 'cleat'].includes(role) ? 'there' : 'hidden',
    ({ role }, i) => (role === 'hub' && i > 0 ? lift : [0, 0, 0]),
  );
  const bolt = driven(stage, fastenersOfJoint(stage, 'hub-bolt'), 0.5 * R, 1.4 * R);
  const disc = fresh(pieces);
  return {
    pieces: [...pieces, ...bolt.pieces],
    notes: [
      ...bolt.notes,
      ...balloon(stage, 'hub', disc),
      wayIn(outward(stage.from.azimuth + 1.5, 1.2 * input.dish.innerRadius, input.dish.baseHeight), lift),
      ...(bolt.pieces.length > 0 ? [label('bolt, washers on both sides', bolt.pieces)] : []),
      label(
        'every nose in its slot',
        outward(stage.from.azimuth - 0.7, input.dish.innerRadius * 1.4, input.dish.baseHeight),
      ),
      label('numbers up', disc),
    ],
  };
}

/** What comes off first, second and third. */
export function apart(stage: Stage): Shot {
  const { R } = stage;
  const joints = new Set(baysOverJoints(stage.input));
  const count = stage.input.dish.layout.ribs.length;
  const overBattens = new Set([...joints].flatMap((rib) => [rib, (rib % count) + 1]));
  const segments = stage.model.solids.filter(({ role }) => role === 'board');
  const lift = up(0.35 * R);
  const pieces = copies(
    stage,
    ({ role }, i): Look => {
      if (role === 'vessel' || role === 'stand') return 'hidden';
      if (role === 'hub') return 'new';
      if (role === 'panel' || role === 'mirror') return joints.has(i + 1) ? 'new' : 'there';
      if (role === 'batten') return overBattens.has(i + 1) ? 'new' : 'there';
      return 'there';
    },
    ({ role }, i) =>
      role === 'hub'
        ? up(0.25 * R)
        : (role === 'panel' || role === 'mirror') && joints.has(i + 1)
          ? lift
          : role === 'batten' && overBattens.has(i + 1)
            ? vecTimes(lift, 1.5)
            : [0, 0, 0],
  );
  const panels = pieces.filter(({ body, look }) => look === 'new' && body.role !== 'hub');
  const hub = ofRole(pieces, 'hub');
  const turn = directionOf(stage, 1);
  return {
    pieces,
    notes: [
      label('1  panels over the joints', panels),
      label('2  hub, straight up', hub),
      ...(segments.length > 1 ? [label('3  bolts from below, then outward', ofRole(pieces, 'board'))] : []),
      { kind: 'way', from: outward(turn, 0.05 * R, 0.1 * R), to: outward(turn, 0.05 * R, 0.275 * R) },
    ],
  };
}

/** What the dish is lowered on, or hung into with all that swings. */
function lowered(stage: Stage, look: Look | null, over: readonly Piece[]): Shot {
  const { R } = stage;
  const lift = up(0.55 * R);
  // without anything that stands, the beams wait for the dish alone
  const onBeams = look === null;
  const pieces = over.map((piece): Piece => {
    const swings = piece.body.role === 'stand' ? piece.look === 'new' && !onBeams : true;
    return { ...piece, look: swings ? 'new' : 'there', moved: swings ? lift : [0, 0, 0] };
  });
  const moving = fresh(pieces);
  return {
    pieces,
    notes: [
      ...[-1, 1].map((side) => wayIn(outward(stage.from.azimuth + side * 1.57, 1.06 * R, 0), lift)),
      label(
        onBeams ? 'mounting holes over those of the beams' : 'the mirror up, and covered',
        ofRole(moving, 'board', 'mirror'),
      ),
    ],
  };
}

/** Parts of the stand as they are set on what stands already, each with its number. */
export function standScene(stage: Stage, look: (solid: Solid, index: number) => Look): Shot {
  const { R, input, model } = stage;
  const isNew = (solid: Solid, i: number): boolean => solid.role === 'stand' && look(solid, i) === 'new';
  const stands = model.solids.some((solid) => solid.role === 'stand' && look(solid, 0) === 'there');
  const dishThere = model.solids.some((solid) => solid.role === 'board' && look(solid, 0) !== 'hidden');
  const swings = model.solids.some((solid) => isNew(solid, 0) && solid.parts.some((id) => id.includes('cross')));
  if (dishThere && swings) return lowered(stage, stands ? 'there' : null, copies(stage, look));
  const pulled = ({ instances }: Solid, i: number): Vec3 => {
    const [x, y] = instances[i]?.frame.origin ?? [0, 0, 0];
    return stands
      ? [Math.abs(x) > Math.abs(y) ? 0.4 * x : 0, 0, (dishThere ? 0.15 : 0.35) * R]
      : [0.35 * x, 0.35 * y, 0];
  };
  const pieces: Piece[] = copies(stage, look, (solid, i) => (isNew(solid, i) ? pulled(solid, i) : [0, 0, 0]));
  const news = fresh(pieces);
  const ids = [...new Set(news.flatMap(({ body }) => body.parts))].filter((id) => id.startsWith('stand'));
  return {
    pieces,
    notes: [
      ...news
        .slice(0, 4)
        .map(({ frame, moved }): Note => ({ kind: 'axis', from: vecAdd(frame.origin, moved), to: frame.origin })),
      ...ids.flatMap((id): Note[] => {
        const index = input.parts.findIndex((part) => part.id === id);
        const mine = news.filter(({ body }) => body.parts.includes(id));
        return index < 0 ? [] : [{ kind: 'balloon', at: { pieces: mine }, text: String(index + 1) }];
      }),
    ],
  };
}
