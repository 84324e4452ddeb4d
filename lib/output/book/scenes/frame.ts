/** Scenes of board, hub, ribs and cleats. */
import { type Vec3, vecAdd, vecTimes } from '../../../geometry/index.js';
import type { Note, Piece } from '../../illustrate/index.js';
import { firstRibs } from '../step.js';
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
  ribOf,
  ribTowards,
  type Shot,
  type Stage,
  up,
  wayIn,
} from './stage.js';

/** Rib numbers round the board, or on top of some ribs at the rim. */
function ribNumbers(stage: Stage, ribs: readonly number[], out: number, high: number): Note[] {
  return ribs.map((rib) => ({ kind: 'mark', at: outward(directionOf(stage, rib), out, high), text: String(rib) }));
}

const allRibs = ({ input }: Stage): number[] => input.dish.layout.ribs.map((_, k) => k + 1);

/** Everything there is, pulled apart, numbered as in the part list. */
export function overview(stage: Stage): Shot {
  const { model } = stage;
  const pieces = copies(
    stage,
    ({ role }) => (role === 'vessel' || role === 'stand' ? 'hidden' : 'there'),
    (solid, i) => solid.instances[i]?.away ?? [0, 0, 0],
  );
  const mirrored = model.solids.some(({ role }) => role === 'panel');
  return {
    pieces,
    notes: [
      ...balloon(stage, mirrored ? 'reflector' : 'panel', ofRole(pieces, 'mirror')),
      ...(mirrored ? balloon(stage, 'panel', ofRole(pieces, 'panel')) : []),
      ...balloon(stage, 'batten', ofRole(pieces, 'batten')),
      ...balloon(stage, 'rib', ofRole(pieces, 'rib')),
      ...balloon(stage, 'hub', ofRole(pieces, 'hub')),
      ...balloon(stage, 'cleat', ofRole(pieces, 'cleat')),
      ...balloon(stage, 'board', ofRole(pieces, 'board')),
    ],
  };
}

/** The board with its lines, holes and numbers. */
export function board(stage: Stage): Shot {
  const { input } = stage;
  const half = input.design.board.size / 2;
  const pieces = copies(stage, ({ role }) => (role === 'board' ? 'new' : 'hidden'));
  const turn = directionOf(stage, 1);
  return {
    pieces,
    from: { ...stage.from, elevation: 0.95 },
    notes: [
      ...ribNumbers(stage, allRibs(stage), half * 0.9, 0),
      ...balloon(stage, 'board', pieces),
      label('face with the lines up', outward(turn + 1.2, half * 0.45)),
      label('rib 1 along the x axis', outward(turn, half * 0.8)),
      { kind: 'way', from: outward(turn + 0.08, half * 0.72), to: outward(turn + 0.42, half * 0.72) },
      label('numbers run anticlockwise', outward(turn + 0.3, half * 0.72)),
    ],
  };
}

/** The hub's plates over the board, with dowels and bolt. */
export function hub(stage: Stage, which: 'all' | 'lower'): Shot {
  const { R, input } = stage;
  const gap = 0.09 * R;
  const shown = which === 'lower' ? 1 : Infinity;
  const pieces = copies(
    stage,
    ({ role }, i) => (role === 'board' ? 'there' : role === 'hub' && i < shown ? 'new' : 'hidden'),
    ({ role }, i) => (role === 'hub' ? up(gap * (i + 1)) : [0, 0, 0]),
  );
  const hubs = ofRole(pieces, 'hub');
  const top = gap * (hubs.length + 1.4);
  const bolts =
    which === 'all' ? driven(stage, fastenersOfJoint(stage, 'hub-bolt'), top, 1.6 * R) : { pieces: [], notes: [] };
  const dowels = driven(stage, fastenersOfJoint(stage, 'hub-dowel'), 0.35 * gap, 1.6 * R);
  const reach = Math.max(2.4 * input.dish.innerRadius, 0.3 * R);
  return {
    pieces: [...pieces, ...bolts.pieces, ...dowels.pieces],
    notes: [
      ...bolts.notes,
      ...dowels.notes,
      wayIn(outward(stage.from.azimuth + 1.57, 1.35 * input.dish.innerRadius, 0), up(gap * hubs.length)),
      ...balloon(stage, 'hub', hubs),
      label('numbers up', hubs.slice(-1)),
      ...(dowels.pieces.length > 0 ? [label('dowel', dowels.pieces)] : []),
      ...(bolts.pieces.length > 0 ? [label('bolt on the axis', bolts.pieces)] : []),
      label(
        input.design.rib.joint === 'tab-slot'
          ? 'slot of a rib'
          : input.design.rib.joint === 'housing'
            ? 'groove of a rib'
            : 'rib line',
        outward(stage.from.azimuth - 0.8, 0.8 * reach),
      ),
    ],
    fit: [
      ...[0, 1, 2, 3].map((k) => outward(stage.from.azimuth + (k * Math.PI) / 2, reach)),
      up(which === 'all' ? top + 30 : gap * 1.6),
    ],
  };
}

/** A rib with its cleat beside it, on the face with the line. */
export function cleat(stage: Stage): Shot {
  const { R, input } = stage;
  const [first] = platesOf(stage, 'cleat');
  if (first === undefined) return { pieces: [], notes: [] };
  const screws = fastenersOfJoint(stage, 'cleat-to-rib').filter(
    (one) => ribOf(one) === 1 && one.through[0]?.part === first,
  );
  const d: Vec3 = screws[0]?.direction ?? [0, 1, 0];
  const away = vecTimes(d, -0.14 * R);
  const pieces = copies(
    stage,
    ({ role, instances }, i) =>
      role === 'rib' && i === 0
        ? 'there'
        : role === 'cleat' && i === 0 && instances[0]?.frame === first.frame
          ? 'new'
          : 'hidden',
    ({ role }) => (role === 'cleat' ? away : [0, 0, 0]),
  );
  const put = driven(stage, screws, 0.3 * R, R);
  const rib = platesOf(stage, 'rib')[0];
  const height = input.dish.rimEndHeight;
  const side = (first.rib ?? 1) === 1 && d[1] > 0 ? -1.15 : 1.15;
  return {
    pieces: [...pieces, ...put.pieces],
    from: { azimuth: side, elevation: 0.5 },
    notes: [
      ...put.notes,
      ...balloon(stage, 'rib', ofRole(pieces, 'rib')),
      ...balloon(stage, 'cleat', ofRole(pieces, 'cleat')),
      wayIn(vecAdd(first.frame.origin, up(first.part.thickness * 1.6)), away),
      label('rim', [input.dish.apertureRadius, 0, height * 0.9]),
      label('hub', [input.dish.innerRadius, 0, (rib ? 0.3 : 0) * height * 0.5]),
      label('curved edge up', [0.55 * R, 0, height * 0.45]),
    ],
  };
}

/** Ribs let down onto board and hub, with the screws that go down through their cleats. */
function ribsDown(stage: Stage, ribs: readonly number[], there: readonly number[]): Shot {
  const { R, input } = stage;
  const lift = up(0.32 * R);
  const isNew = (solid: { role: string }, i: number) =>
    (solid.role === 'rib' || solid.role === 'cleat') && ribs.includes(i + 1);
  const pieces = copies(
    stage,
    (solid, i) =>
      solid.role === 'board'
        ? 'there'
        : solid.role === 'hub'
          ? input.design.hub.build === 'slotted-discs' && i > 0
            ? 'hidden'
            : 'there'
          : isNew(solid, i)
            ? 'new'
            : (solid.role === 'rib' || solid.role === 'cleat') && there.includes(i + 1)
              ? 'there'
              : 'hidden',
    (solid, i) => (isNew(solid, i) ? lift : [0, 0, 0]),
  );
  const lead = ribs.reduce((best, rib) => {
    const off = (r: number) => Math.cos(directionOf(stage, r) - stage.from.azimuth);
    return off(rib) > off(best) ? rib : best;
  }, ribs[0] ?? 1);
  const screws = fastenersOfJoint(stage, 'cleat-to-board').filter((one) => ribs.includes(ribOf(one)));
  const put = driven(stage, screws, 0.44 * R, R);
  const middle = 0.62 * R;
  return {
    pieces: [...pieces, ...put.pieces],
    notes: [
      ...put.notes,
      ...ribs.map((rib) => wayIn(outward(directionOf(stage, rib), middle, 0.02 * R), lift)),
      ...ribNumbers(stage, ribs, 1.04 * R, input.dish.rimEndHeight + 0.32 * R),
      ...balloon(stage, 'rib', ofRole(fresh(pieces), 'rib')),
      ...balloon(stage, 'cleat', ofRole(fresh(pieces), 'cleat')),
      label(
        'then inward, hard against the hub',
        outward(directionOf(stage, lead), input.dish.innerRadius, 0.2 * input.dish.baseHeight),
      ),
    ],
  };
}

export const firstRibsDown = (stage: Stage): Shot =>
  ribsDown(stage, firstRibs(stage.input.dish.layout.ribs.length), []);

/** All ribs stand but one, which goes down across from the last. */
export function otherRibs(stage: Stage): Shot {
  const last = ribTowards(stage, 0.5);
  const shot = ribsDown(
    stage,
    [last],
    allRibs(stage).filter((rib) => rib !== last),
  );
  const spacers = [1, 2].flatMap((number, k): Piece[] => spacer(stage, number, ribTowards(stage, -0.35) + k));
  return {
    ...shot,
    pieces: [...shot.pieces, ...spacers],
    notes: [...shot.notes, ...(spacers[0] ? [label('rim spacers while the glue sets', spacers)] : [])],
  };
}

/** A rim spacer on edge over the ribs on both sides of a bay. */
function spacer(stage: Stage, number: number, bay: number): Piece[] {
  const { input, R } = stage;
  const { aids, dish } = input;
  const part = aids.find(({ id }) => id === `rim-spacer-${number}`);
  if (part === undefined) return [];
  const turn = directionOf(stage, bay) + dish.layout.halfAngle;
  const rim = R * Math.cos(dish.layout.halfAngle) - (dish.ribThickness / 2) * Math.sin(dish.layout.halfAngle);
  const outer = rim - (number - 1) * (part.thickness + 0.5);
  // its notches hang over the ribs by as much as they are deep
  const frame: Piece['frame'] = {
    origin: outward(turn, outer - part.thickness, dish.rimEndHeight - notchDepth(part)),
    x: [-Math.sin(turn), Math.cos(turn), 0],
    y: [0, 0, 1],
  };
  return [platePiece(stage, part, 'aid', frame)];
}

/** The height of the notches' ends over the feet of the bar. */
function notchDepth({ outline }: { readonly outline: readonly { readonly y: number }[] }): number {
  const levels = [...new Set(outline.map(({ y }) => y))].sort((a, b) => a - b);
  return levels[1] ?? 0;
}
