/** Where the tabs of a rib may lie along its base, as radii from the axis. Lengths in mm. */

/** What tabs go through, and between what. */
export interface TabSpanSource {
  readonly ribThickness: number;
  /** Of the board, or the depth of a groove in it: how far the wood beside a slot is cut. */
  readonly slotDepth: number;
  /** Play of a tab in its slot. */
  readonly fit: number;
  /** Half the angle between two ribs, radians. */
  readonly halfAngle: number;
  readonly hubReach: number;
  /** Where the ribs' base ends. */
  readonly toeRadius: number;
  readonly boardSize: number;
}

/** Between two radii from the axis. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** Longest tab, and the shortest in thicknesses of the rib: common practice, no source. */
const longestTab = 40;
const shortestTab = 3;

/** Where tabs may lie: wood on all sides of their slots, and between those of two neighbours. */
export function tabSpan(source: TabSpanSource): Span {
  const { slotDepth, boardSize, fit, halfAngle, hubReach, ribThickness, toeRadius } = source;
  const wood = Math.max(6, 2 * slotDepth);
  const web = Math.max(3, slotDepth);
  const apart = (ribThickness + fit + web) / (2 * Math.sin(halfAngle));
  return { from: Math.max(hubReach + wood, apart), to: Math.min(toeRadius, boardSize / 2) - wood };
}

/** A housing is a groove with ends as round as it is wide, the base of the rib straight between them. */
export function housingSpan(source: TabSpanSource): Span {
  const { from, to } = tabSpan(source);
  const end = (source.ribThickness + source.fit) / 2;
  return { from: from + end, to: to - end };
}

/** Length of the tabs in a span, 0 where there is none: two of them, and as much again between. */
export function tabLength({ from, to }: Span): number {
  return Math.max(0, Math.min(longestTab, (to - from) / 4));
}

/** Length that a tab needs to hold. */
export function minTabLength(ribThickness: number): number {
  return shortestTab * ribThickness;
}
