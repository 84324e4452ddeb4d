/** Hub, ribs' inner ends, dowels and bolt: what meets in the middle. */
import { mm } from '../faults.js';
import {
  axisTolerance,
  type Built,
  crossings,
  nearestDrill,
  openingsOf,
  outlineOf,
  overlapTolerance,
  pocketsOf,
  turned,
} from './built.js';
import type { ProofPoint } from '../types.js';
import type { Report } from './report.js';

/** How far a ring reaches from the axis along a line aside the axis, its first crossing outward. */
function reach(ring: readonly ProofPoint[], angle: number, aside: number): number {
  // turned so that the line runs up
  const upright = ring.map((point) => turned(point, Math.PI / 2 - angle));
  return crossings(upright, -aside).find((y) => y > 0) ?? 0;
}

function hubSeats({ hub, rib, turns, start }: Built, report: Report): void {
  const ring = outlineOf(hub);
  const inside = 0.98 * (rib.thickness / 2);
  turns.forEach((angle, k) => {
    const reached = Math.max(...[-inside, 0, inside].map((aside) => reach(ring, angle, aside)));
    if (Math.abs(reached - start) > overlapTolerance)
      report('hub-reach', { rib: k + 1, reach: mm(reached), start: mm(start) });
  });
}

/** Past the edge of a slot with the greatest play, and on the wood between two, mm. */
const besideSlot = 1.5;

/** Ribs whose inner ends lie in slots of the hub need the slot as wide as they are thick. */
function hubSlots({ hub, rib, turns, start }: Built, report: Report): void {
  const ring = outlineOf(hub);
  turns.forEach((angle, k) => {
    // beside its slot, where there is one, the hub reaches past the rib's inner end
    const mouth = reach(ring, angle, rib.thickness / 2 + besideSlot);
    if (reach(ring, angle, 0) > start + 1 || mouth < start + 1) return;
    for (const share of [0.1, 0.5, 0.9]) {
      const along = start + share * (mouth - start);
      const across = crossings(
        ring.map((point) => turned(point, -angle)),
        along,
      );
      const above = across.find((y) => y > 0);
      const below = across.findLast((y) => y < 0);
      if (above === undefined || below === undefined) continue;
      const width = 2 * Math.min(above, -below);
      if (width < rib.thickness - overlapTolerance)
        report('hub-slot', { rib: k + 1, width: mm(width), thickness: mm(rib.thickness) });
    }
  });
}

function ribsMeet({ rib, half, start }: Built, report: Report): void {
  const inner = start + Math.min(...outlineOf(rib).map(({ x }) => x));
  // the inner corner of a rib, from the plane in the middle between it and the next
  const space = inner * Math.sin(half) - (rib.thickness / 2) * Math.cos(half);
  if (space < -overlapTolerance / 2) report('ribs-meet', { depth: mm(-2 * space) });
}

function fixings({ design, hub, boards }: Built, report: Report): void {
  const onAxis = hub.drills.filter(({ x, y }) => Math.hypot(x, y) <= axisTolerance);
  const { boltDiameter, dowels } = design.hub;
  if (boltDiameter > 0 && !onAxis.some(({ diameter }) => Math.abs(diameter - boltDiameter) < 1e-3))
    report('bolt-hole', { diameter: mm(boltDiameter) });
  const pegs = hub.drills.filter((drill) => !onAxis.includes(drill));
  if (pegs.length !== dowels) report('dowel-count', { count: pegs.length, wanted: dowels });
  const inBoard = boards.flatMap(({ drills }) => drills);
  for (const peg of pegs) {
    const found = nearestDrill(inBoard, peg);
    if (found.off > axisTolerance || Math.abs(found.diameter - peg.diameter) > 1e-3)
      report('dowel-board', { diameter: mm(peg.diameter), off: mm(found.off) });
  }
}

/** Tabs of the ribs in slots of the board, or their bases in grooves of it. */
function tabs({ rib, boards, turns, start }: Built, report: Report): void {
  const outline = outlineOf(rib);
  const low = Math.min(...outline.map(({ y }) => y));
  if (low > -overlapTolerance) return;
  const thick = Math.min(...boards.map(({ thickness }) => thickness));
  const grooves = boards.flatMap(pocketsOf);
  const shallowest = Math.min(...grooves.map(({ depth }) => depth));
  if (-low > thick + overlapTolerance) report('tab-long', { depth: mm(-low), board: mm(thick) });
  else if (-low > shallowest + overlapTolerance) report('groove-shallow', { depth: mm(-low), groove: mm(shallowest) });
  // where a level line half way down the tabs crosses the outline, in pairs
  const ends = crossings(
    outline.map(({ x, y }) => ({ x: y, y: x })),
    low / 2,
  );
  const slots = [...boards.flatMap(openingsOf), ...grooves.map(({ ring }) => ring)].map((ring) => {
    const middle = ring.reduce((sum, { x, y }) => ({ x: sum.x + x / ring.length, y: sum.y + y / ring.length }), {
      x: 0,
      y: 0,
    });
    return { ring, middle };
  });
  turns.forEach((angle, k) => {
    for (let i = 0; i + 1 < ends.length; i += 2) {
      const [from, to] = [start + (ends[i] ?? 0), start + (ends[i + 1] ?? 0)];
      const middle = turned({ x: (from + to) / 2, y: 0 }, angle);
      const own = slots.find((slot) => Math.hypot(slot.middle.x - middle.x, slot.middle.y - middle.y) < 1);
      if (own === undefined) {
        report('tab-slot-missing', { rib: k + 1 });
        continue;
      }
      const flat = own.ring.map((point) => turned(point, -angle));
      // square ends reach as far as the slot is straight
      const widths = [from, (from + to) / 2, to].map((x) => {
        const across = crossings(flat, x);
        return 2 * Math.min(-(across[0] ?? 0), across.at(-1) ?? 0);
      });
      const along = crossings(
        flat.map(({ x, y }) => ({ x: y, y: x })),
        0,
      );
      const width = Math.min(...widths);
      const short = Math.max((along[0] ?? Infinity) - from, to - (along.at(-1) ?? -Infinity));
      if (width < rib.thickness - overlapTolerance || short > overlapTolerance)
        report('tab-slot', {
          rib: k + 1,
          tight: mm(Math.max(rib.thickness - width, short)),
        });
    }
  });
}

export function checkCentre(built: Built, report: Report): void {
  hubSeats(built, report);
  hubSlots(built, report);
  ribsMeet(built, report);
  fixings(built, report);
  tabs(built, report);
}
