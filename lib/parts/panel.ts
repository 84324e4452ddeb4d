/** The facing panel: its exact flat pattern at mid-thickness, with marks for pins along both ribs and a clamp line. */
import { contourFromPoints, strokeTextWidth } from '../geometry/index.js';
import { type DevelopedPanel, developPanel, type Dish, facetAt, pinFromEdge } from '../dish/index.js';
import type { Design } from '../design/index.js';
import { type Diagnostic, diagnostic } from '../diagnostic/index.js';
import { hasBattens } from './battens.js';
import { grainThatFits, inUnits } from './blank.js';
import { bendingProblems } from './bending.js';
import { chordAtLength } from './chord.js';
import { panelFixing } from './panel-fixing.js';
import { woodAtPin } from '../hardware/index.js';
import { flatPattern } from './flat-pattern.js';
import { blank, type Grain, type LineMark, lineMark, type Part, textMark } from '../part/index.js';

/** From the rim to the middle of the batten that is clamped across it, mm: half of a common batten. */
const clampLineFromRim = 20;
/** From a panel's end to the first pin, mm: common practice, no source. */
const pinFromEnd = 15;
/** Length of the mark across a pin's place. */
const pinMark = 4;
/** The clamp line stays this far off the panel's edges, mm. */
const lineFromEdge = 1;
/** From this thickness on a person is tempted to chamfer a panel's edges, mm. */
const thickPanel = 6;

/** Depth of the panel's neutral layer below the reflecting face. */
function midDepth(dish: Dish): number {
  return dish.reflectorThickness + dish.panelThickness / 2;
}

/** The panel's flat pattern, chord by chord. */
function developedPanel(dish: Dish): DevelopedPanel {
  return developPanel(dish, midDepth(dish));
}

/** A pin through the panel into a rib, on the flat pattern. */
export interface PinPlace {
  /** Length from the panel's inner end. */
  readonly x: number;
  /** Off the mid-line; the same on both sides. */
  readonly y: number;
  /** Square to the panel's edge, mm. */
  readonly fromEdge: number;
  /** Which of the panel's edges: that of the rib before its bay, or after. */
  readonly side: 'before' | 'after';
}

/**
 * Pins along both edges, over what the panel bears on of each rib. They begin where the panel is wide
 * enough to part the two rows. The rows are staggered by half a step, because the next panel's pins go into the same
 * edge of the rib.
 */
export function pinPlaces(design: Design, dish: Dish, panel: DevelopedPanel = developedPanel(dish)): PinPlace[] {
  const fixing = panelFixing(design, dish);
  if (fixing === null) return [];
  const place = (length: number): Omit<PinPlace, 'side'> => {
    const { halfWidth, facet } = panel.chord(chordAtLength(panel, length));
    const fromEdge = pinFromEdge(dish, facet.slopeAngle, fixing.reach);
    return { x: length, y: halfWidth - fromEdge / Math.cos(dish.layout.halfAngle), fromEdge };
  };
  const last = panel.length - pinFromEnd;
  let first = pinFromEnd;
  while (first < last && place(first).y < 2 * pinMark) first += 5;
  if (first >= last) return [];
  const steps = Math.max(1, Math.ceil((last - first) / design.panel.fixingSpacing));
  const step = (last - first) / steps;
  const row = (side: PinPlace['side'], from: number, count: number): PinPlace[] =>
    Array.from({ length: count }, (_, i) => ({ ...place(from + i * step), side }));
  return [...row('before', first, steps + 1), ...row('after', first + step / 2, steps)];
}

/** A short mark across the edge at each pin; the pin goes through its middle. */
function pinMarks(pins: readonly PinPlace[]): LineMark[] {
  return pins.map(({ x, y, fromEdge, side }) => {
    const at = side === 'before' ? -y : y;
    // near the edge the mark is shorter, so that it stays on the panel
    const half = Math.min(pinMark / 2, 0.75 * fromEdge);
    return lineMark(
      contourFromPoints([
        { x, y: at - half },
        { x, y: at + half },
      ]),
    );
  });
}

/** The line along which a batten is clamped across the panel until its glue is hard. */
function clampLine({ length, halfWidth }: { readonly length: number; readonly halfWidth: number }): LineMark {
  return lineMark(
    contourFromPoints([
      { x: length, y: lineFromEdge - halfWidth },
      { x: length, y: halfWidth - lineFromEdge },
    ]),
  );
}

/** Half the width that a panel needs at its narrow end to be cut and handled, mm. */
const minHalfWidth = 1;

/** Whether the panel's narrow end is anything, and the fixings have material round them. */
export function panelProblems(design: Design, dish: Dish): Diagnostic[] {
  const { layout, seamGap } = dish;
  const { halfAngle } = layout;
  if (facetAt(dish, dish.litFrom).halfWidth < minHalfWidth) {
    const u = (minHalfWidth + seamGap / 2 / Math.cos(halfAngle)) / Math.tan(halfAngle);
    return [
      diagnostic(
        'panel-narrow',
        ['panel', 'gap'],
        `a panel.gap of ${inUnits(design, seamGap)} leaves nothing of the panels at the hub`,
        `use a smaller gap, or a hub.radius of ${inUnits(design, Math.ceil(facetAt(dish, u).ribRadius))} or more`,
      ),
    ];
  }
  const grain = panelGrain(design, developedPanel(dish));
  return [...bendingProblems(design, dish, grain), ...pinProblems(design, dish)];
}

function pinProblems(design: Design, dish: Dish): Diagnostic[] {
  const fixing = panelFixing(design, dish);
  if (fixing === null) return [];
  const panel = developedPanel(dish);
  // judged as it is bought, whatever the places allow for
  const space = pinFromEdge(dish, panel.chord(panel.to).facet.slopeAngle, fixing.length);
  if (space >= woodAtPin) return [];
  const show = (mm: number) => inUnits(design, Math.round(10 * mm) / 10);
  return [
    diagnostic(
      'pin-edge',
      ['panel', 'fixing'],
      `${design.panel.fixing} are ${show(space)} from the edge of the panel and from the face of the rib, and would split them`,
      `use panel.fixing: glue, ribs at least ${show(dish.ribThickness + 4 * (woodAtPin - space))} thick, or a smaller panel.gap`,
    ),
  ];
}

/** How panels lie on their sheets: a thin sheet bends best about its grain, and a panel's bending line runs across it. */
function panelGrain(design: Design, panel: DevelopedPanel): Grain {
  return grainThatFits(design, design.panel.material, 'across', panel.length, 2 * panel.chord(panel.to).halfWidth);
}

/** The panel, one between every two ribs. */
export function makePanel(design: Design, dish: Dish): Part {
  const panel = developedPanel(dish);
  const pattern = flatPattern(panel, { from: 0, to: panel.length, inset: 0 }, design.dish.arcTolerance);
  const rim = panel.chord(panel.to);
  const clamp = panel.chord(chordAtLength(panel, panel.length - clampLineFromRim));
  const show = (mm: number) => inUnits(design, mm);
  const label = 'PANEL {n}';
  const height = Math.min(8, (1.4 * rim.halfWidth) / strokeTextWidth('PANEL 888', 1));
  const pins = pinPlaces(design, dish, panel);
  const opening = 2 * rim.facet.edgeOffset;
  // what a millimetre off the lower edge lets the panel down: the contact moves out along the rising rib
  const sinks = Math.tan(rim.facet.slopeAngle) * Math.tan(dish.layout.halfAngle);
  const battened = hasBattens(design);
  const notes = [
    pins.length > 0
      ? `The scribed face is up, towards the sun: ${design.panel.fixing === 'staples' ? 'a staple goes over the middle of each short mark, its back along the rib,' : 'a pin goes through the middle of each short mark,'} and the mirror is glued on over them. Lay the panel with its narrow end to the hub.`
      : 'The scribed face is the underside; lay the panel with its narrow end to the hub.',
    battened
      ? 'It lies dry on two ribs, under a batten along each of its sides.'
      : `A bent sheet straightens at its free end: clamp a batten across on the scribed line, ${show(clampLineFromRim)} from the rim, until the glue has set.`,
    `Edges are cut square: over the rib the seam is ${show(design.panel.gap)} wide on the mirror side and ${show(Math.round(10 * opening) / 10)} at the rib.`,
  ];
  if (dish.panelThickness >= thickPanel)
    notes.push(
      `A panel this thick rests on its sharp lower edges: leave them square. A chamfer lowers it, at the rim by ${show(Math.round(100 * sinks) / 100)} for every ${show(1)}; only break the upper edges.`,
    );
  return blank({
    id: 'panel',
    kind: 'panel',
    name: 'Facing panel',
    material: design.panel.material,
    thickness: dish.panelThickness,
    quantity: dish.layout.ribs.length,
    grain: panelGrain(design, panel),
    outline: pattern.outline,
    marks: [
      ...(battened ? [] : [clampLine(clamp)]),
      ...pinMarks(pins),
      textMark(
        label,
        { x: panel.length - clampLineFromRim - 2 * height, y: -strokeTextWidth(label, height) / 2 },
        height,
        Math.PI / 2,
      ),
    ],
    edges: [
      { ring: 0, ...pattern.lower, role: 'seat' },
      { ring: 0, ...pattern.upper, role: 'seat' },
    ],
    fitDeviation: pattern.deviation,
    notes,
  });
}
