/** What the parts of a stand have in common: sizes, lettering, beams. */
import { contourFromPoints, type Point, strokeTextWidth } from '../geometry/index.js';
import { bolt } from '../hardware/index.js';
import { type blank, type TextMark, textMark } from '../part/index.js';
import type { Cradle } from './cradle.js';
import { edgeBoltHoles, tabsAlong } from './edge-joint.js';

/** What the parts are made of, and the board's bolts. */
export interface StandMaterials {
  readonly sheet: string;
  readonly thin: string;
  /** Of the plates under the board's joints. */
  readonly packing: string;
  readonly mountingBolt: string;
  readonly board: number;
}

export type Made = Omit<Parameters<typeof blank>[0], 'kind' | 'material' | 'thickness'>;

/** Radius of corners. */
export const corner = 12;
export const letters = 12;
/** Wood round a hole of the lock, and round the slots of an edge joint (common practice, no source). */
export const wood = 22;
/** Bolt of the counterweights and the pivot. */
export const heavyBolt = { hole: 13.5, size: 'M12' } as const;
/** Of the arms' holes, from the one furthest towards the sun. */
export const holeLetters = 'abcdefghi';
export const spacerRadius = 45;
export const pivotRadius = 150;

export const clearanceOf = (size: string): number => bolt(size).clearance;
export const around = (radius: number, angle: number, at: Point): Point => ({
  x: at.x - radius * Math.sin(angle),
  y: at.y - radius * Math.cos(angle),
});

export const label = (text: string, x: number, y: number): TextMark =>
  textMark(text, { x: x - strokeTextWidth(text, letters) / 2, y }, letters);

/** Height of the tilt axis above the base's upper face. */
export const axisOverBase = ({ axis, baseTop }: Cradle): number => axis - baseTop;

/** A beam between two plates: tabs at both ends, bolts into both ends, and bolts into its lower or upper edge. */
export function beamBetween(
  half: number,
  height: number,
  cradle: Cradle,
  along: readonly { readonly at: Point; readonly inward: number; readonly through: number; readonly size: string }[],
): Pick<Made, 'outline' | 'holes' | 'edgeHoles' | 'edges' | 'seatCorners'> {
  const { sheet, fit, bolt: size } = cradle;
  const out = half + sheet - fit;
  const tabs = tabsAlong(height);
  const right = tabs.flatMap(([from, to]) => [
    { x: half, y: from },
    { x: out, y: from },
    { x: out, y: to },
    { x: half, y: to },
  ]);
  const points = [
    { x: -half, y: 0 },
    { x: half, y: 0 },
    ...right,
    { x: half, y: height },
    { x: -half, y: height },
    ...right.map(({ x, y }) => ({ x: -x, y })).reverse(),
  ];
  const bolts = [
    { at: { x: half, y: height / 2 }, inward: Math.PI, through: sheet, size },
    { at: { x: -half, y: height / 2 }, inward: 0, through: sheet, size },
    ...along,
  ].map((one) => edgeBoltHoles({ ...one, sheet }));
  const foot = [2, 5, 6, 9];
  return {
    outline: contourFromPoints(points),
    holes: bolts.map(({ hole }) => hole),
    edgeHoles: bolts.map(({ edgeHole }) => edgeHole),
    edges: [
      { ring: 0, from: 1, to: 9, role: 'seat' },
      { ring: 0, from: 11, to: 19, role: 'seat' },
    ],
    seatCorners: [...foot, ...foot.map((i) => i + 10)].map((vertex) => ({ ring: 0, vertex })),
  };
}

export const drillEdges =
  'Drill the holes for the bolts into its edges at the bench, square, on the middle of the thickness.';
