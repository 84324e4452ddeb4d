/** Scene of the battens over the seams. */
import { vecAdd } from '../../../geometry/index.js';
import { offPanel, overBay } from './skin.js';
import {
  balloon,
  copies,
  driven,
  fastenersOfJoint,
  fresh,
  label,
  ofRole,
  ribOf,
  ribTowards,
  type Shot,
  type Stage,
  wayIn,
} from './stage.js';

/** A batten comes down over its seam, its screws or pins above it; those before it are on, those after still to come. */
export function battens(stage: Stage): Shot {
  const { R, input } = stage;
  const count = input.dish.layout.ribs.length;
  const rib = ribTowards(stage, 2.6);
  const lift = offPanel(stage, rib, 0.16 * R);
  const toCome = (index: number): boolean => {
    const after = (index + 1 - rib + count) % count;
    return after > 0 && after < count / 2;
  };
  const pieces = copies(
    stage,
    ({ role }, i) => {
      if (role === 'vessel' || role === 'stand') return 'hidden';
      if (role !== 'batten') return 'there';
      return i + 1 === rib ? 'new' : toCome(i) ? 'hidden' : 'there';
    },
    ({ role }, i) => (role === 'batten' && i + 1 === rib ? lift : [0, 0, 0]),
  );
  const fixings = fastenersOfJoint(stage, 'batten-to-rib').filter((one) => ribOf(one) === rib);
  const put = driven(stage, fixings, 0.3 * R, 1.2 * R);
  return {
    pieces: [...pieces, ...put.pieces],
    notes: [
      ...balloon(stage, 'batten', ofRole(fresh(pieces), 'batten')),
      wayIn(overBay(stage, rib, 0.6), lift),
      label('through the gap into the rib', vecAdd(overBay(stage, rib, 0.35), lift)),
      label('outer end flush', overBay(stage, rib, 1)),
    ],
  };
}
