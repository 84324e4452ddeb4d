/**
 * Ribs in slots and grooves: every slot of board and hub holds a rib with the play that the design asks for, the rib is home where
 * it should meet, and no tab stands out below. That no wood is in one place with other wood, `overlap.ts` says.
 */
import { type Bounds, bounds, type Contour, flatten, intersectPolygons, rectangle } from '../../geometry/index.js';
import type { Part } from '../../part/index.js';
import type { Design } from '../../design/index.js';
import { takesRibs } from '../../parts/index.js';
import { isPlate, nameOf } from '../copies.js';
import { housingFaults } from './housing.js';
import { type Stretch, stretches, toRing } from './stretch.js';
import { toPart, toSpace } from '../frame.js';
import type { Assembly, AssembledPlate } from '../types.js';
import type { AssemblyFault } from './fault.js';

/** Play and seats may be off by this much, mm. */
const tolerance = 0.01;
/** Chords of curved edges, mm. */
const chord = 0.01;

/** One stretch of a rib in the slot that a ring of a level plate makes for it. */
function playIn(
  fit: number,
  plate: AssembledPlate,
  ring: Contour,
  rib: AssembledPlate,
  at: Stretch,
  open: boolean,
): AssemblyFault[] {
  const between = [nameOf(rib), nameOf(plate)] as const;
  const thickness = rib.part.thickness;
  // near the inner end, which every slot has
  const along = at.from + Math.min(1, (at.to - at.from) / 2);
  const off = (x: number, h: number) => toRing(plate, ring, rib, at, x, h);
  const across = off(along, 0) + off(along, thickness);
  const faults: AssemblyFault[] = [];
  if (Math.abs(across - fit) > tolerance) faults.push({ kind: 'play', between, play: across, wanted: fit });
  const inner = off(at.from, thickness / 2);
  if (open && inner > tolerance) faults.push({ kind: 'gap', between, gap: inner });
  // a slot that is open to the rim has no outer end
  if (open) return faults;
  const lengthwise = inner + off(at.to, thickness / 2);
  if (Math.abs(lengthwise - fit) > tolerance) faults.push({ kind: 'play', between, play: lengthwise, wanted: fit });
  return faults;
}

/** The opening of a level plate about the middle of a stretch. */
function openingAbout(plate: AssembledPlate, rib: AssembledPlate, at: Stretch): Contour | undefined {
  const middle = toSpace(rib.frame, (at.from + at.to) / 2, at.middle, rib.part.thickness / 2);
  const [x, y] = toPart(plate.frame, middle);
  const off = ({ minX, maxX, minY, maxY }: Bounds): number => Math.hypot((minX + maxX) / 2 - x, (minY + maxY) / 2 - y);
  // the boxes of slots that lie askew overlap: the slot is the one whose middle is nearest
  return plate.part.openings
    .map((ring) => ({ ring, box: bounds(ring) }))
    .filter(({ box }) => x > box.minX && x < box.maxX && y > box.minY && y < box.maxY)
    .sort((one, other) => off(one.box) - off(other.box))[0]?.ring;
}

/** Tabs of all ribs in the openings of the pieces of the board. */
function tabFaults(fit: number, ribs: readonly AssembledPlate[], boards: readonly AssembledPlate[]): AssemblyFault[] {
  const [board] = boards;
  const [rib] = ribs;
  if (board === undefined || rib === undefined) return [];
  const thickness = board.part.thickness;
  const tabs = stretches(rib.part, -thickness, 0);
  const lowest = bounds(rib.part.outline).minY;
  const faults: AssemblyFault[] = [];
  if (lowest < -thickness - tolerance)
    faults.push({ kind: 'proud', part: rib.part.id, of: 'the board', by: -thickness - lowest });
  let filled = 0;
  for (const one of ribs)
    for (const tab of tabs)
      for (const plate of boards) {
        const ring = openingAbout(plate, one, tab);
        if (ring === undefined) continue;
        filled += 1;
        faults.push(...playIn(fit, plate, ring, one, tab, false));
      }
  const slots = boards.reduce((sum, { part }) => sum + part.openings.length, 0);
  if (filled !== slots || filled !== tabs.length * ribs.length)
    faults.push({ kind: 'parts', what: 'slots of the board with a tab in them', found: filled, wanted: slots });
  return faults;
}

/** Height of the rib's base above the board, near its inner end, where it is level. */
function baseOf(rib: Part): number {
  const ring = flatten(rib.outline, chord, 'on');
  const [piece] = intersectPolygons([ring], [rectangle(1.5, -1e5, 2.5, 1e5)]);
  return piece === undefined ? Infinity : Math.min(...piece.map(({ y }) => y));
}

/** Inner ends of the ribs in the slots of the hub's plates, and the upper of two discs on their noses. */
function discFaults(
  fit: number,
  ribs: readonly AssembledPlate[],
  discs: readonly AssembledPlate[],
  noses: boolean,
): AssemblyFault[] {
  const upper = discs[1];
  const [rib] = ribs;
  const faults = discs.flatMap((disc) => {
    const low = disc.frame.origin[2];
    // the ribs are copies of one part
    const [inner] = rib === undefined ? [] : stretches(rib.part, low, low + disc.part.thickness);
    return inner === undefined ? [] : ribs.flatMap((one) => playIn(fit, disc, disc.part.outline, one, inner, true));
  });
  if (!noses || upper === undefined || rib === undefined) return faults;
  const box = bounds(rib.part.outline);
  const nose = stretches(rib.part, discs[0]?.part.thickness ?? 0, upper.frame.origin[2])[0];
  const top = Math.max(...rib.part.outline.filter(({ x }) => x < box.minX + tolerance).map(({ y }) => y));
  const gap = upper.frame.origin[2] - top;
  if (nose === undefined || gap > tolerance)
    faults.push({ kind: 'gap', between: [nameOf(upper), nameOf(rib)], gap: nose === undefined ? Infinity : gap });
  return faults;
}

/** What is wrong with ribs in slots, and plates of the hub that are missing. */
export function slotFaults(design: Design, { placed }: Assembly): AssemblyFault[] {
  const plates = placed.filter(isPlate);
  const of = (kind: Part['kind']) => plates.filter(({ part }) => part.kind === kind);
  const [ribs, boards, hub] = [of('rib'), of('board'), of('hub')];
  const { fit } = design.rib;
  const [rib] = ribs;
  const base = rib === undefined ? 0 : baseOf(rib.part);
  return [
    ...(hub.length === design.hub.layers
      ? []
      : [{ kind: 'parts' as const, what: 'plates of the hub', found: hub.length, wanted: design.hub.layers }]),
    ...(rib !== undefined && base > tolerance
      ? [{ kind: 'gap' as const, between: [nameOf(rib), 'the board'] as const, gap: base }]
      : []),
    ...(design.rib.joint === 'tab-slot' ? tabFaults(fit, ribs, boards) : []),
    ...(design.rib.joint === 'housing' ? housingFaults(fit, ribs, boards) : []),
    ...(takesRibs(design) ? discFaults(fit, ribs, hub, design.hub.build === 'slotted-discs') : []),
  ];
}
