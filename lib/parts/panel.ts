/** The facing panel: its exact flat pattern at mid-thickness, with fixings along both ribs and a clamp line. */
import { contourFromPoints, strokeTextWidth } from '../geometry/index.js';
import { type DevelopedPanel, developPanel, type Dish, facetAt } from '../dish/index.js';
import type { Design } from '../design/index.js';
import { type Diagnostic, diagnostic } from '../diagnostic/index.js';
import { grainThatFits, inUnits } from './blank.js';
import { chordAtLength } from './chord.js';
import { flatPattern } from './flat-pattern.js';
import { blank, type Hole, lineMark, type Part, textMark, throughHole } from '../part/index.js';

/** From the rim to the middle of the batten that is clamped across it, mm: half of a common batten. */
const clampLineFromRim = 20;
/** From a panel's end to the first fixing, mm: common practice, no source. */
const fixingFromEnd = 15;
/** Wood between a fixing and an edge that is enough, and the least that holds at all, mm. */
const fixingWall = 1;
const fixingBreaksOut = 0.4;
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

/** From a panel's edge to the fixings, square to the rib and at its worst (the rim, where the edge has moved most). */
function bearing(edgeOffset: number, dish: Dish): number {
  return dish.ribThickness / 2 - edgeOffset;
}

/**
 * Fixings along both edges, over the middle of what the panel bears on of each rib. They begin where the panel is
 * wide enough to part the two rows.
 */
function fixings(design: Design, dish: Dish, panel: DevelopedPanel): Hole[] {
  const { fixingDiameter, fixingSpacing } = design.panel;
  if (fixingDiameter === 0 || wallAtFixing(design, dish, panel) < fixingBreaksOut) return [];
  const place = (t: number): { readonly x: number; readonly y: number } => {
    const { length, halfWidth, facet } = panel.chord(t);
    return { x: length, y: halfWidth - bearing(facet.edgeOffset, dish) / 2 / Math.cos(dish.layout.halfAngle) };
  };
  const last = panel.length - fixingFromEnd;
  let first = fixingFromEnd;
  while (first < last && place(chordAtLength(panel, first)).y < 2 * fixingDiameter) first += 5;
  if (first >= last) return [];
  const gaps = Math.max(1, Math.ceil((last - first) / fixingSpacing));
  return Array.from({ length: gaps + 1 }, (_, i) =>
    place(chordAtLength(panel, first + ((last - first) * i) / gaps)),
  ).flatMap(({ x, y }) => [throughHole({ x, y: -y }, fixingDiameter), throughHole({ x, y }, fixingDiameter)]);
}

/** Wood between a fixing and the edges of panel and rib, at its least, mm. */
function wallAtFixing(design: Design, dish: Dish, panel: DevelopedPanel): number {
  return (bearing(panel.chord(panel.to).facet.edgeOffset, dish) - design.panel.fixingDiameter) / 2;
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
  return fixingProblems(design, dish);
}

function fixingProblems(design: Design, dish: Dish): Diagnostic[] {
  const { fixingDiameter } = design.panel;
  if (fixingDiameter === 0) return [];
  const wall = wallAtFixing(design, dish, developedPanel(dish));
  if (wall >= fixingWall) return [];
  const max = Math.max(0, Math.floor(10 * (fixingDiameter + 2 * (wall - fixingWall))) / 10);
  const show = (mm: number) => inUnits(design, mm);
  const what =
    wall < fixingBreaksOut
      ? `would break out of the edges of panel or rib, so the fixings are left out`
      : `leaves ${show(Math.round(10 * wall) / 10)} between a hole and the edges of panel and rib`;
  return [
    diagnostic(
      'fixing-edge',
      ['panel', 'fixingDiameter'],
      `panel.fixingDiameter of ${show(fixingDiameter)} ${what}`,
      `use ${max > 0.5 ? `${show(max)} at most` : '0 and glue'}, thicker ribs or a smaller panel.gap`,
      'warning',
    ),
  ];
}

/** The panel, one between every two ribs. */
export function makePanel(design: Design, dish: Dish): Part {
  const panel = developedPanel(dish);
  const pattern = flatPattern(panel, { from: 0, to: panel.length, inset: 0, past: 0 }, design.dish.arcTolerance);
  const rim = panel.chord(panel.to);
  const clamp = panel.chord(chordAtLength(panel, panel.length - clampLineFromRim));
  const show = (mm: number) => inUnits(design, mm);
  const label = 'PANEL {n}';
  const height = Math.min(8, (1.4 * rim.halfWidth) / strokeTextWidth('PANEL 888', 1));
  const opening = 2 * rim.facet.edgeOffset;
  // what a millimetre off the lower edge lets the panel down: the contact moves out along the rising rib
  const sinks = Math.tan(rim.facet.slopeAngle) * Math.tan(dish.layout.halfAngle);
  const notes = [
    'The scribed face is the underside if a mirror is glued on; lay the panel with its narrow end to the hub.',
    `A bent sheet wants to be straight at its free end: clamp a batten across on the scribed line, ${show(clampLineFromRim)} from the rim, until the glue is hard.`,
    `Edges are cut square: over the rib the seam is ${show(design.panel.gap)} wide on the mirror side and ${show(Math.round(10 * opening) / 10)} at the rib.`,
  ];
  if (dish.panelThickness >= thickPanel)
    notes.push(
      `A panel this thick rests on its sharp lower edges: leave them square. A chamfer lets it down, at the rim by ${show(Math.round(100 * sinks) / 100)} for every ${show(1)}; break the upper edges only.`,
    );
  return blank({
    id: 'panel',
    kind: 'panel',
    name: 'Facing panel',
    material: design.panel.material,
    thickness: dish.panelThickness,
    quantity: dish.layout.ribs.length,
    // a thin sheet bends best about its grain, and the panel's bending line runs across it
    grain: grainThatFits(design, design.panel.material, 'across', panel.length, 2 * rim.halfWidth),
    outline: pattern.outline,
    holes: fixings(design, dish, panel),
    marks: [
      lineMark(
        contourFromPoints([
          { x: clamp.length, y: lineFromEdge - clamp.halfWidth },
          { x: clamp.length, y: clamp.halfWidth - lineFromEdge },
        ]),
      ),
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
