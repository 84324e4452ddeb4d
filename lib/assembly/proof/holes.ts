/** Each fastener runs in holes of its size, keeps to the wood, and can be driven. */
import { nearestOnContour, type Vec3, vecAdd } from '../../geometry/index.js';
import { ringsOf } from '../../part/index.js';
import { tipCover } from '../../hardware/index.js';
import { directionInPart, toPart } from '../frame.js';
import { isPlate, nameOf } from '../copies.js';
import type { Assembly, Fastener, Passage, AssembledPlate } from '../types.js';
import type { AssemblyFault } from './fault.js';

/** A fastener's axis may lie this far off the axis of its hole, mm. */
const axisTolerance = 0.05;
/** A hole may be this much off the size that its fastener needs, mm: the steps of drills sold. */
const sizeStep = 0.5;
/** Thread in the last part, and wood beside a hole, in shanks: common practice, no source. */
const minBite = 1.5;
const minEdge = 1.5;
/** Half the width of a bit in its holder, mm: common practice, no source. */
const driver = 5;

interface FoundHole {
  readonly off: number;
  readonly diameter: number;
}

/** The hole of a plate that lies nearest to a fastener's axis; null when it has none in that direction. */
function holeOnAxis({ part, frame }: AssembledPlate, entry: Vec3, direction: Vec3): FoundHole | null {
  const [x, y, height] = toPart(frame, entry);
  const [dx, dy, dz] = directionInPart(frame, direction);
  let best: FoundHole | null = null;
  const offer = (off: number, diameter: number): void => {
    if (best === null || off < best.off) best = { off, diameter };
  };
  if (Math.abs(dz) > 1 - 1e-9) for (const hole of part.holes) offer(Math.hypot(hole.x - x, hole.y - y), hole.diameter);
  else
    for (const hole of part.edgeHoles) {
      const [hx, hy] = [Math.cos(hole.direction), Math.sin(hole.direction)];
      if (dx * hx + dy * hy < 1 - 1e-9) continue;
      const across = (x - hole.x) * hy - (y - hole.y) * hx;
      offer(Math.hypot(across, height - hole.height), hole.diameter);
    }
  return best;
}

function sizeFits(passage: Passage, diameter: number, { item }: Fastener): boolean {
  if (passage === 'clearance') return diameter >= item.diameter - 1e-6;
  if (passage === 'pilot') return diameter < item.diameter && diameter >= item.diameter / 3;
  return Math.abs(diameter - item.diameter) <= sizeStep / 2;
}

/** Distance of a hole's axis to the nearest edge of the plate, the faces included where it runs along them. */
export function woodBeside({ part, frame }: AssembledPlate, entry: Vec3, direction: Vec3): number {
  const [x, y, height] = toPart(frame, entry);
  if (Math.abs(directionInPart(frame, direction)[2]) < 1e-6) return Math.min(height, part.thickness - height);
  const at = { x, y };
  return Math.min(...ringsOf(part).map((ring) => nearestOnContour(ring, at).distance));
}

function holeFaults(fastener: Fastener): AssemblyFault[] {
  const { joint, entry, direction, item } = fastener;
  return fastener.through.flatMap(({ part: placed, passage }): AssemblyFault[] => {
    // pins, staples and the screws in their place find their way without a hole
    if (placed.form === 'sheet' || item.kind === 'pin' || item.kind === 'staple' || joint === 'panel-over-joint')
      return [];
    const part = nameOf(placed);
    const hole = holeOnAxis(placed, entry, direction);
    if (hole === null || hole.off > Math.max(axisTolerance, hole.diameter))
      return [{ kind: 'hole', joint, part, off: null }];
    if (hole.off > axisTolerance) return [{ kind: 'hole', joint, part, off: hole.off }];
    if (!sizeFits(passage, hole.diameter, fastener))
      return [{ kind: 'hole-size', joint, part, diameter: hole.diameter, shank: item.diameter }];
    const needed = minEdge * item.diameter;
    const wood = item.kind === 'wood-screw' ? woodBeside(placed, entry, direction) : Infinity;
    return wood < needed - 1e-6 ? [{ kind: 'edge', joint, part, wood, needed }] : [];
  });
}

function lengthFaults({ joint, item, wood, before, through }: Fastener): AssemblyFault[] {
  const { length } = item;
  if (joint === 'board-to-stand') return [];
  if (length === null) return [{ kind: 'length', joint, length, wood }];
  if (item.kind !== 'wood-screw') return [];
  if (length > wood - tipCover + 1e-6) return [{ kind: 'length', joint, length, wood }];
  const last = through.at(-1);
  if (last?.passage !== 'pilot') return [];
  const lastWood = before === undefined ? last.part.part.thickness : wood - before;
  const bite = length - (wood - lastWood);
  const needed = Math.min(minBite * item.diameter, lastWood - tipCover);
  return bite < needed - 1e-6 ? [{ kind: 'bite', joint, bite, needed }] : [];
}

/** A pin, or a staple's leg, stays within its rib from top to point. */
function pinFaults({ joint, item, entry, direction, through }: Fastener, ribThickness: number): AssemblyFault[] {
  if ((item.kind !== 'pin' && item.kind !== 'staple') || item.length === null) return [];
  const rib = through.find(({ part }) => part.part.kind === 'rib')?.part;
  if (rib?.form !== 'plate') return [];
  const needed = item.diameter;
  const wood = Math.min(
    ...[entry, vecAdd(entry, direction, item.length)].map((at) => {
      const height = toPart(rib.frame, at)[2];
      return Math.min(height, ribThickness - height);
    }),
  );
  return wood < needed - 1e-6 ? [{ kind: 'edge', joint, part: nameOf(rib), wood, needed }] : [];
}

/** Clearance round the axis of a screw that is driven from above, to ribs other parts stand upright with. */
function reachFaults(fastener: Fastener, ribs: readonly AssembledPlate[]): AssemblyFault[] {
  const { joint, entry } = fastener;
  if (joint !== 'cleat-to-board') return [];
  const clearance = Math.min(
    ...ribs.map(({ part, frame }) => {
      const [along, , height] = toPart(frame, entry);
      const off = Math.max(-height, height - part.thickness);
      return along < 0 ? Math.hypot(along, Math.max(0, off)) : off;
    }),
  );
  return clearance < driver - 1e-6 ? [{ kind: 'reach', joint, clearance, needed: driver }] : [];
}

/** What is wrong with the fasteners, each kind of fault once a joint and part. */
export function fastenerFaults({ placed, fasteners }: Assembly): AssemblyFault[] {
  const ribs = placed.filter(isPlate).filter(({ part }) => part.kind === 'rib');
  const thickness = ribs[0]?.part.thickness ?? 0;
  return fasteners.flatMap((fastener) => [
    ...holeFaults(fastener),
    ...lengthFaults(fastener),
    ...pinFaults(fastener, thickness),
    ...reachFaults(fastener, ribs),
  ]);
}
