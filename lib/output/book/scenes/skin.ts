/** Scenes of what lies on the ribs: gauge, tape, panels, mirror, film and cover. */
import { cyclic, flattenPath, type Vec3, vecAdd, vecTimes } from '../../../geometry/index.js';
import { hasBattens } from '../batten-steps.js';
import type { Body, Piece, SurfaceLine } from '../../illustrate/index.js';
import type { BentSection, Solid } from '../../illustrate/solids.js';
import {
  aidOf,
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

const frameRoles = ['board', 'hub', 'cleat', 'rib'];

/** Lines along the top edges of ribs, over the middle of their thickness. */
function topLine(stage: Stage, kind: SurfaceLine['kind']): SurfaceLine[] {
  const part = platesOf(stage, 'rib')[0]?.part;
  if (part === undefined) return [];
  return part.edges
    .filter(({ ring, role }) => ring === 0 && role === 'optical')
    .map(({ from, to }) => {
      const run = Array.from({ length: to - from + 2 }, (_, i) => cyclic(part.outline, from + i));
      const points = flattenPath(run, 1).map(({ x, y }): Vec3 => [x, y, part.thickness / 2]);
      return { kind, points };
    });
}

const withLines = (
  pieces: readonly Piece[],
  lines: readonly SurfaceLine[],
  which: (piece: Piece) => boolean,
): Piece[] => pieces.map((piece) => (which(piece) ? { ...piece, lines: [...(piece.lines ?? []), ...lines] } : piece));

/** The gauge over a rib, in the rib's plane. */
export function curve(stage: Stage): Shot {
  const { R, input } = stage;
  const rib = ribTowards(stage, 1.35);
  const turn = directionOf(stage, rib);
  const gauges = input.aids.filter(({ id }) => id.startsWith('gauge-rib'));
  const pieces = copies(stage, ({ role }, i) =>
    !frameRoles.includes(role) ? 'hidden' : role === 'rib' && i + 1 === rib ? 'new' : 'there',
  );
  const lift = up(0.16 * R);
  const held = gauges.map((part) => {
    const half = part.thickness / 2;
    const origin: Vec3 = [half * Math.sin(turn), -half * Math.cos(turn), 0];
    return platePiece(stage, part, 'aid', { origin, x: [Math.cos(turn), Math.sin(turn), 0], y: [0, 0, 1] }, lift);
  });
  const at = outward(turn, 0.6 * R, 0.3 * input.dish.rimEndHeight + input.dish.baseHeight);
  return {
    pieces: [...pieces, ...held],
    notes: [
      ...(held.length > 0 ? [label(aidWords(gauges[0]?.name), held), wayIn(at, vecTimes(lift, 1.2))] : []),
      label('a mark at the inner end', outward(turn, input.dish.innerRadius, input.dish.baseHeight + 0.16 * R)),
      label('a mark at the rim', outward(turn, 0.98 * R, input.dish.rimEndHeight + 0.16 * R)),
      ...balloon(stage, 'rib', ofRole(fresh(pieces), 'rib')),
    ],
  };
}

const aidWords = (name = ''): string => name.charAt(0).toLowerCase() + name.slice(1);

/** Tape on what will be glued, coats on the rest; a panel lies with its underside up. */
export function seal(stage: Stage): Shot {
  const { R, input } = stage;
  const pieces = withLines(
    copies(stage, ({ role }) => (frameRoles.includes(role) ? 'new' : 'hidden')),
    hasBattens(input) ? [] : topLine(stage, 'tape'),
    ({ body }) => body.role === 'rib',
  );
  const side = directionOf(stage, ribTowards(stage, -0.9));
  return {
    pieces,
    notes: [
      ...(hasBattens(input)
        ? []
        : [
            label(
              'tape on the top edges',
              outward(side, 0.75 * R, input.dish.baseHeight + 0.56 * (input.dish.rimEndHeight - input.dish.baseHeight)),
            ),
          ]),
      label(
        '2 coats on all faces',
        outward(directionOf(stage, ribTowards(stage, 0.2)), 0.8 * R, input.dish.baseHeight),
      ),
      label('3 on every edge', ofRole(pieces, 'board')),
    ],
  };
}

const skinOf = (stage: Stage): Solid[] =>
  stage.model.solids.filter(({ role, shape }) => shape.kind === 'bent' && (role === 'panel' || role === 'mirror'));

/** Square to a panel in its middle, in space. */
export function offPanel(stage: Stage, bay: number, by: number): Vec3 {
  const { halfAngle } = stage.input.dish.layout;
  return outward(directionOf(stage, bay) + halfAngle, -0.35 * by, 0.94 * by);
}

/** A point of a bay over the skin: share of the radius, height above the mirror. */
export function overBay(stage: Stage, bay: number, share: number, above = 0): Vec3 {
  const { input } = stage;
  const facets = input.facets;
  const facet = facets[Math.round(share * (facets.length - 1))];
  const turn = directionOf(stage, bay) + input.dish.layout.halfAngle;
  return outward(turn, facet?.u ?? 0, input.dish.baseHeight + (facet?.z ?? 0) + above);
}

/** Whether a copy of the skin is still to come where a bay is being laid: the bays after it show what they go on. */
function stillBare({ input }: Stage, bay: number): (index: number) => boolean {
  const count = input.dish.layout.ribs.length;
  return (index) => {
    const after = (index + 1 - bay + count) % count;
    return after > 0 && after < 0.3 * count;
  };
}

/** The batten that is clamped across a panel at the rim until its glue is hard. */
function batten(stage: Stage, bay: number): Piece | null {
  const facet = stage.input.facets.at(-2);
  if (facet === undefined) return null;
  const turn = directionOf(stage, bay) + stage.input.dish.layout.halfAngle;
  const thick = 0.018 * stage.R;
  const half = facet.halfWidth * 0.97;
  const [cos, sin] = [Math.cos(facet.slopeAngle), Math.sin(facet.slopeAngle)];
  const wide = 2.2 * thick;
  return {
    body: {
      parts: [],
      role: 'aid',
      shape: {
        kind: 'plate',
        outline: [
          [0, -half],
          [wide, -half],
          [wide, half],
          [0, half],
        ],
        holes: [],
        thickness: thick,
      },
    },
    frame: {
      origin: vecAdd(
        overBay(stage, bay, (stage.input.facets.length - 2) / (stage.input.facets.length - 1)),
        outward(turn, -1, 1),
        1,
      ),
      x: [cos * Math.cos(turn), cos * Math.sin(turn), sin],
      y: [-Math.sin(turn), Math.cos(turn), 0],
    },
    moved: [0, 0, 0],
    look: 'new',
  };
}

/** A panel comes down on two beads of glue, its pins above their marks; a batten holds its neighbour. */
export function panels(stage: Stage): Shot {
  const { R, input } = stage;
  const count = input.dish.layout.ribs.length;
  const bay = ribTowards(stage, 2.6);
  const bare = stillBare(stage, bay);
  const lift = offPanel(stage, bay, 0.3 * R);
  const skin = skinOf(stage);
  const lowest = skin[0];
  const mirrorToo = fastenersOfJoint(stage, 'panel-to-rib').length === 0;
  const pieces = copies(
    stage,
    (solid, i) => {
      if (solid.role === 'vessel' || solid.role === 'stand' || solid.role === 'batten') return 'hidden';
      if (!skin.includes(solid)) return 'there';
      if (solid !== lowest && !mirrorToo) return 'hidden';
      return i + 1 === bay ? 'new' : bare(i) ? 'hidden' : 'there';
    },
    (solid, i) => (skin.includes(solid) && i + 1 === bay ? lift : [0, 0, 0]),
  );
  const neighbours = [bay, (bay % count) + 1];
  const dry = hasBattens(input);
  const glued = withLines(
    pieces,
    dry ? [] : topLine(stage, 'glue'),
    ({ body, frame }) =>
      body.role === 'rib' &&
      platesOf(stage, 'rib').some((one) => one.frame === frame && neighbours.includes(one.rib ?? 0)),
  );
  const pins = fastenersOfJoint(stage, 'panel-to-rib').filter((one) => ribOf(one) === bay);
  const put = driven(stage, pins, 0.36 * R, 1.2 * R);
  const held = dry ? null : batten(stage, bay === 1 ? count : bay - 1);
  return {
    pieces: [...glued, ...put.pieces, ...(held ? [held] : [])],
    notes: [
      ...balloon(stage, 'panel', ofRole(fresh(glued), 'panel', 'mirror')),
      wayIn(overBay(stage, bay, 0.55), lift),
      ...(dry
        ? []
        : [
            label(
              'gap-filling glue',
              outward(directionOf(stage, neighbours[1] ?? 1), 0.55 * R, overBay(stage, bay, 0.5)[2]),
            ),
          ]),
      ...(put.pieces.length > 0 ? [label('from the hub outward', overBay(stage, bay, 0.15, 0.2 * R))] : []),
      ...(held ? [label('batten clamped across', [held])] : []),
    ],
  };
}

/** A strip comes down on its panel, from the hub outward. */
export function mirror(stage: Stage): Shot {
  const { R } = stage;
  const bay = ribTowards(stage, 2.6);
  const bare = stillBare(stage, bay);
  const lift = offPanel(stage, bay, 0.22 * R);
  const pieces = copies(
    stage,
    ({ role }, i) => {
      if (role === 'vessel' || role === 'stand') return 'hidden';
      if (role !== 'mirror') return 'there';
      return i + 1 === bay ? 'new' : bare(i) ? 'hidden' : 'there';
    },
    ({ role }, i) => (role === 'mirror' && i + 1 === bay ? lift : [0, 0, 0]),
  );
  return {
    pieces,
    notes: [
      ...balloon(stage, 'reflector', ofRole(fresh(pieces), 'mirror')),
      wayIn(overBay(stage, bay, 0.55), lift),
      { kind: 'way', from: vecAdd(overBay(stage, bay, 0.3), lift), to: vecAdd(overBay(stage, bay, 0.85), lift) },
      label('narrow ends flush', overBay(stage, bay, 0)),
      label('pressed on from the hub outward', vecAdd(overBay(stage, bay, 0.7), lift)),
    ],
  };
}

/** A layer over some bays, a little above the mirror. */
function layer(stage: Stage, role: Body['role'], above: number, bays: readonly number[], upTo = 1): Piece[] {
  const top = skinOf(stage).at(-1);
  if (top?.shape.kind !== 'bent') return [];
  const lifted = top.shape.sections.map(({ top: [x, z], halfWidth }): BentSection => ({
    top: [x, z + above],
    bottom: [x, z + above - 0.4 * above],
    halfWidth,
  }));
  const sections = lifted.slice(0, Math.max(2, Math.ceil(upTo * lifted.length)));
  const body: Body = { parts: [], role, shape: { kind: 'bent', sections } };
  return bays.flatMap((bay): Piece[] => {
    const frame = top.instances[bay - 1]?.frame;
    return frame ? [{ body, frame, moved: [0, 0, 0], look: 'new' }] : [];
  });
}

const dishRoles = [...frameRoles, 'panel', 'mirror', 'batten'];

/** The film comes off from the rim inward, the cover follows panel by panel. */
export function film(stage: Stage): Shot {
  const { R, input } = stage;
  const count = input.dish.layout.ribs.length;
  const bay = ribTowards(stage, 2.6);
  const pieces = copies(stage, ({ role }) => (dishRoles.includes(role) ? 'there' : 'hidden'));
  const behind = Array.from({ length: Math.floor(count / 3) }, (_, k) => ((bay - 2 - k + 2 * count) % count) + 1);
  const covered = layer(stage, 'cover', 0.02 * R, behind);
  const left = layer(stage, 'panel', 0.004 * R, [bay], 0.55);
  return {
    pieces: [...pieces, ...covered, ...left],
    notes: [
      { kind: 'way', from: overBay(stage, bay, 0.95, 0.03 * R), to: overBay(stage, bay, 0.5, 0.12 * R) },
      label('film, from the rim inward', left),
      label('the cover follows', covered),
    ],
  };
}

/** A quarter of the mirror is uncovered; whoever looks stands behind the dish. */
export function firstLight(stage: Stage): Shot {
  const { R, input } = stage;
  const count = input.dish.layout.ribs.length;
  const first = ribTowards(stage, 2.4);
  const open = Math.round(count / 4);
  const bays = Array.from({ length: count - open }, (_, k) => ((first - 1 + open + k) % count) + 1);
  const pieces = copies(stage, ({ role }) => (dishRoles.includes(role) || role === 'vessel' ? 'there' : 'hidden'));
  const covered = layer(stage, 'cover', 0.02 * R, bays);
  return {
    pieces: [...pieces, ...covered],
    notes: [
      label('a quarter is uncovered', overBay(stage, ((first + open - 2) % count) + 1, 0.8)),
      label('cover', covered),
      label('stand behind the dish, out of the light', outward(stage.from.azimuth + 0.5, 1.0 * R, 0)),
      ...(aidOf(stage, 'focal-stick') && input.design.vessel
        ? [label('look only through dark glass', ofRole(pieces, 'vessel'))]
        : []),
    ],
  };
}
