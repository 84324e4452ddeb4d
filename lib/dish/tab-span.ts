/** Where the tabs of a rib may lie along its base, as radii from the axis. Lengths in mm. */

/** What tabs go through, and between what. */
export interface TabSpanSource {
  readonly ribThickness: number;
  readonly boardThickness: number;
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
  const { boardThickness, boardSize, fit, halfAngle, hubReach, ribThickness, toeRadius } = source;
  const wood = Math.max(6, 2 * boardThickness);
  const web = Math.max(3, boardThickness);
  const apart = (ribThickness + fit + web) / (2 * Math.sin(halfAngle));
  return { from: Math.max(hubReach + wood, apart), to: Math.min(toeRadius, boardSize / 2) - wood };
}

/** Length of the tabs in a span, 0 where there is none: two of them, and as much again between. */
export function tabLength({ from, to }: Span): number {
  return Math.max(0, Math.min(longestTab, (to - from) / 4));
}

/** Length that a tab needs to hold. */
export function minTabLength(ribThickness: number): number {
  return shortestTab * ribThickness;
}
