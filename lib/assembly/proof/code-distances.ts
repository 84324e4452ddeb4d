/** Distances of screws, pins and staples from edges and from each other, beside those of the timber code. */
import { type Boring, codeEdge, type CodeLoad, codeSpacing } from '../../hardware/index.js';
import { vecAdd, vecDot } from '../../geometry/index.js';
import type { PartKind } from '../../part/index.js';
import { isPlate } from '../copies.js';
import { directionInPart } from '../frame.js';
import type { Assembly, AssembledPart, AssembledPlate, Fastener, JointKind, Passage } from '../types.js';
import { woodBeside } from './holes.js';

/** The least distance of a joint in one kind of part. */
export interface CodeDistance {
  readonly joint: JointKind;
  readonly part: PartKind;
  readonly what: 'edge' | 'spacing';
  readonly boring: Boring;
  readonly passage: Passage;
  /** What there is, mm, and in shanks. */
  readonly distance: number;
  readonly shanks: number;
  /** What the code asks for, in shanks. */
  readonly asked: number;
}

const held: ReadonlySet<string> = new Set(['wood-screw', 'pin', 'staple']);

const boringOf = ({ item }: Fastener): Boring => (item.kind === 'wood-screw' ? 'predrilled' : 'driven');

/** What holds the skin down is pulled along its axis; what holds cleats, plates and hub carries across it. */
const loadOf = (joint: JointKind): CodeLoad =>
  joint === 'batten-to-rib' || joint === 'panel-over-joint' ? 'along' : 'across';

/** Whether a fastener runs along the faces of a plate, into its edge. */
const isEdgewise = ({ frame }: AssembledPlate, { direction }: Fastener): boolean =>
  Math.abs(directionInPart(frame, direction)[2]) < 0.5;

/** Distance of two axes that run the same way, mm; without end for others. */
function between(a: Fastener, b: Fastener): number {
  if (vecDot(a.direction, b.direction) < 0.9) return Infinity;
  const apart = vecAdd(b.entry, a.entry, -1);
  const along = vecDot(apart, a.direction);
  return Math.sqrt(Math.max(0, vecDot(apart, apart) - along * along));
}

/** The first copy of each part stands for all. */
const isFirst = ({ copy }: AssembledPart): boolean => copy === 1;

function ofJoint(joint: JointKind, all: readonly Fastener[]): CodeDistance[] {
  const load = loadOf(joint);
  const found = new Map<string, CodeDistance>();
  const offer = (one: CodeDistance): void => {
    const key = `${one.part} ${one.what}`;
    const known = found.get(key);
    if (known === undefined || one.shanks - one.asked < known.shanks - known.asked) found.set(key, one);
  };
  const byPart = new Map<AssembledPlate, { readonly one: Fastener; readonly passage: Passage }[]>();
  for (const one of all)
    for (const { part, passage } of one.through)
      if (isPlate(part) && isFirst(part)) byPart.set(part, [...(byPart.get(part) ?? []), { one, passage }]);
  for (const [plate, own] of byPart) {
    const { kind } = plate.part;
    own.forEach(({ one, passage }, i) => {
      const d = one.item.diameter;
      const boring = boringOf(one);
      const wood = woodBeside(plate, one.entry, one.direction);
      const common = { joint, part: kind, boring, passage };
      const edgewise = isEdgewise(plate, one);
      offer({ ...common, what: 'edge', distance: wood, shanks: wood / d, asked: codeEdge(boring, edgewise, load) });
      const next = Math.min(...own.slice(i + 1).map((other) => between(one, other.one)));
      if (next < Infinity)
        offer({ ...common, what: 'spacing', distance: next, shanks: next / d, asked: codeSpacing(boring, load) });
    });
  }
  return [...found.values()];
}

/** The least distances of every joint that screws, pins or staples hold, part by part. */
export function codeDistances({ fasteners }: Assembly): CodeDistance[] {
  const joints = [...new Set(fasteners.map(({ joint }) => joint))].filter((joint) => joint !== 'stand-joint');
  return joints.flatMap((joint) =>
    ofJoint(
      joint,
      fasteners.filter((one) => one.joint === joint && held.has(one.item.kind)),
    ),
  );
}
