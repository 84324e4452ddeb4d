/** Size and screws of the cleats where the file leaves them out: the largest that the room between the ribs takes. */
import {
  bestStart,
  type CleatBase,
  jointPasses,
  maxStart,
  planClearance,
  screwFromJoint,
  startFrom,
} from '../dish/index.js';
import type { RibJoint } from './sections/structure.js';
import { roundingSlack } from './worked-out.js';
import { screwLengthWithin, tipCover, type WoodScrew } from '../hardware/index.js';

/** What the cleats stand among, and what they hold together. Lengths in mm. */
export interface CleatSpace extends CleatBase {
  readonly aperture: number;
  readonly ribs: number;
  readonly cleatThickness: number;
  readonly boardThickness: number;
  /** How far the hub reaches between the ribs. */
  readonly hubReach: number;
  /** Null for cleats, glued or screwed as their thickness allows. */
  readonly joint: RibJoint | null;
  /** Whether the board comes in segments, whose joints keep off the screws. */
  readonly segmented: boolean;
  /** Whether the segments come apart, so that no cleat lies across a joint. */
  readonly comesApart: boolean;
}

/** What the file says of its cleats. */
export interface StatedCleat {
  readonly length?: number | undefined;
  readonly width?: number | undefined;
  readonly start?: number | undefined;
  readonly rows: number;
  readonly perRib: number;
  readonly ribScrews?: number | undefined;
  readonly downScrews?: number | undefined;
}

export interface CleatSize {
  readonly length: number;
  readonly width: number;
  readonly ribScrews: number;
  readonly downScrews: number;
}

/** With where the cleats stand, as far as that is known before the parts are. */
export interface FoundCleat {
  readonly size: CleatSize;
  readonly start: number | null;
}

/** Thread that a screw needs in the last part, in shanks: common practice, no source. */
const minBite = 1.5;
/** Wood between a screw's head and the end or the side of the cleat: common practice, no source. */
const woodAtHead = 2;
/** Room to the next rib or cleat for a driver: common practice, no source. */
const driverClearance = 5;
/** Cleats smaller than this hold nothing: common practice, no source. */
const smallest = { length: 24, width: 12 };

/** Whether a screw of a length that is sold holds in `last` mm of wood behind `first`. */
function holds(screw: WoodScrew, first: number, last: number): boolean {
  const length = screwLengthWithin(screw, first + last - tipCover);
  return length !== null && length - first >= Math.min(minBite * screw.diameter, last - tipCover) - 1e-6;
}

/** Radius from which a cleat clears the hub and the next rib, or the next rib's cleat. */
function clearFrom({ ribs, ribThickness, hubReach }: CleatSpace, width: number, perRib: number): number {
  const half = Math.PI / ribs;
  const out = ribThickness / 2 + width;
  const [sin, cos] = [Math.sin(2 * half), Math.cos(2 * half)];
  const toNext =
    perRib === 2
      ? (out * Math.cos(half) + planClearance / 2) / Math.sin(half)
      : (out * cos + ribThickness / 2 + planClearance) / sin;
  return Math.max(hubReach + planClearance, toNext);
}

/** Whether a screw down through a cleat that starts there leaves room for a driver, and for a joint beside it. */
function screwIsClear(space: CleatSpace, start: number, width: number, perRib: number): boolean {
  const bay = (2 * Math.PI) / space.ribs;
  const half = space.ribThickness / 2;
  const out = half + width / 2;
  const reach = start * Math.sin(bay) - out * Math.cos(bay) - half;
  if (reach < driverClearance) return false;
  if (!space.segmented) return true;
  // a joint clears the inner corner of the rib before the bay, and the screws of that rib's second cleat
  const corner = Math.asin(Math.min(1, half / space.innerRadius));
  const besideScrew = Math.atan2(out, start) + Math.asin(Math.min(1, screwFromJoint / Math.hypot(start, out)));
  return besideScrew + (perRib === 2 ? Math.max(besideScrew, corner) : corner) <= bay;
}

/** The radius at which a cleat of that size would stand, or null when it stands nowhere. */
function startOf(space: CleatSpace, stated: StatedCleat, size: CleatSize): number | null {
  const cleat = { ...size, rows: stated.rows, perRib: stated.perRib };
  const max = maxStart(space, cleat);
  const clear = clearFrom(space, size.width, stated.perRib);
  const best = bestStart(space, cleat);
  const start = stated.start ?? (best >= clear ? best : startFrom(clear, space, cleat));
  if (start < clear || start > max) return null;
  return space.comesApart && !jointPasses(space, cleat, Math.PI / space.ribs, start) ? null : start;
}

function fits(space: CleatSpace, stated: StatedCleat, screw: WoodScrew, size: CleatSize): boolean {
  const start = startOf(space, stated, size);
  if (start === null) return false;
  if (size.ribScrews > 0 && !holds(screw, size.width, space.ribThickness)) return false;
  return size.downScrews === 0 || screwIsClear(space, start, size.width, stated.perRib);
}

/** Numbers of screws from the best to glue alone; what the file states stays. */
function screwChoices(space: CleatSpace, stated: StatedCleat, screw: WoodScrew): [number, number][] {
  const glued = space.joint === 'glued-cleat';
  const sideways = glued || space.cleatThickness < 3 * screw.diameter ? 0 : 2;
  const down = !glued && holds(screw, space.cleatThickness, space.boardThickness) ? 2 : 0;
  const steps: readonly [number, number][] = [
    [sideways, down],
    [Math.min(1, sideways), Math.min(1, down)],
    [0, Math.min(1, down)],
    [0, 0],
  ];
  return steps.map(([rib, board]) => [stated.ribScrews ?? rib, stated.downScrews ?? board]);
}

/**
 * Size of the cleats in proportion to the dish, smaller where ribs stand close, with as many screws as hold in them.
 * Where no cleat fits, the smallest is given without a start, and the parts say why it does not.
 */
export function cleatSize(space: CleatSpace, stated: StatedCleat, screw: WoodScrew): FoundCleat {
  const share = Math.min(1.5, Math.max(0.5, space.aperture / 1500));
  const rounded = (size: number): number => Math.round(size - roundingSlack);
  const [usualLength, usualWidth] = [rounded(80 * share), rounded(36 * share)];
  const headWidth = screw.headDiameter + 2 * woodAtHead;
  let last: CleatSize | null = null;
  for (const [ribScrews, downScrews] of screwChoices(space, stated, screw)) {
    // screws of both kinds at even steps, with wood between a head and the end of the cleat
    const minLength = Math.max(smallest.length, Math.ceil((ribScrews + downScrews) * headWidth - roundingSlack));
    const minWidth = Math.max(smallest.width, downScrews > 0 ? Math.ceil(headWidth - roundingSlack) : 0);
    let best: CleatSize | null = null;
    for (let length = Math.max(usualLength, minLength); length >= minLength; length -= 2)
      for (let width = Math.max(usualWidth, minWidth); width >= minWidth; width -= 1) {
        const size = { length: stated.length ?? length, width: stated.width ?? width, ribScrews, downScrews };
        last = size;
        if (best !== null && size.length * size.width <= best.length * best.width) break;
        if (fits(space, stated, screw, size)) best = size;
      }
    if (best !== null) return { size: best, start: startOf(space, stated, best) };
  }
  return { size: last ?? { length: usualLength, width: usualWidth, ribScrews: 0, downScrews: 0 }, start: null };
}
