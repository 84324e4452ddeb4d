/** Jigs for those who set out and drill by hand: hub disc, board arm and cleat block. */
import { circle, contourFromPoints, polar, rectangle, strokeTextWidth } from '../geometry/index.js';
import { type Dish, ribNumbers } from '../dish/index.js';
import type { Design } from '../design/index.js';
import { blank, type LineMark, lineMark, type Part, ringMark, textMark, throughHole } from '../part/index.js';
import { inUnits, thicknessOf } from './blank.js';
import { cleatScrews } from './cleat.js';
import { hubOutline, hubReach } from './hub-build.js';
import { cleatOutlines, cleatPlaces, downScrewPoints, placeCleats, ribDirectionDeg } from './plan.js';

/** Material round the holes of a jig (mm). */
const border = 10;
/** How far the hub disc reaches past the hub at most, and its own largest radius (mm). */
const disc = { past: 80, max: 250 };

function base(design: Design) {
  const { material } = design.template;
  return { kind: 'jig' as const, material, thickness: thicknessOf(design, material), quantity: 1 };
}

const line = (x1: number, y1: number, x2: number, y2: number): LineMark =>
  lineMark(
    contourFromPoints([
      { x: x1, y: y1 },
      { x: x2, y: y2 },
    ]),
  );

/** A disc with the directions of all ribs and the hub's outline, to prick through onto board and hub. */
function hubJig(design: Design, dish: Dish): Part {
  const bed = design.template.bed;
  const space = bed ? Math.min(bed.width, bed.height) / 2 : Infinity;
  const hub = hubReach(design, dish);
  const radius = Math.min(Math.max(hub + disc.past, hub * 1.5), disc.max, space);
  const outer = Math.max(radius, hub + border);
  const pin = design.board.centreHole > 0 ? design.board.centreHole : design.rib.pilotDiameter;
  const angles = ribNumbers(dish.layout).map((rib) => (ribDirectionDeg(dish, rib) * Math.PI) / 180);
  const prick = outer - border / 2 - design.rib.pilotDiameter / 2;
  const height = Math.min(
    6,
    (0.6 * 2 * Math.PI * (outer - 3 * border)) / dish.layout.ribs.length / strokeTextWidth('88', 1),
  );
  return blank({
    ...base(design),
    id: 'jig-hub',
    name: 'Hub template',
    outline: circle({ x: 0, y: 0 }, outer),
    holes: [
      throughHole({ x: 0, y: 0 }, pin),
      ...angles.map((angle) => throughHole(polar(prick, angle), design.rib.pilotDiameter)),
    ],
    marks: [
      ringMark(hubOutline(design, dish)),
      ...angles.map((angle) =>
        lineMark(contourFromPoints([polar(0.6 * dish.innerRadius, angle), polar(outer - 1, angle)])),
      ),
      ...angles.map((angle, i) => {
        // beside its line, on the anticlockwise side
        const at = polar(prick - border / 2 - 2 * height, angle);
        const corner = { x: at.x - 2 * Math.sin(angle), y: at.y + 2 * Math.cos(angle) };
        return textMark(String(i + 1), corner, height, angle);
      }),
    ],
    notes: [
      'Pin it on the axis; prick the direction of every rib through its hole and draw the rib lines outward with a long straight edge.',
      'Opposite holes and the pin must lie on one straight line: check one pair before you trust the rest.',
      'The inner outline is the hub.',
    ],
  });
}

/** An arm from the axis past the cleats that carries the board's pilot holes of one rib. */
function boardJig(design: Design, dish: Dish, start: number): Part {
  const { length, width, perRib } = design.cleat;
  const half = dish.ribThickness / 2;
  const wide = half + width + border;
  const narrow = half + border;
  const places = cleatPlaces(design, dish, start);
  const end = Math.max(...places.map(({ x, rotationDeg }) => (rotationDeg === 0 ? x + length : x))) + 2 * border;
  const pin = design.board.centreHole > 0 ? design.board.centreHole : design.rib.pilotDiameter;
  const back = -Math.max(2 * border, pin);
  return blank({
    ...base(design),
    id: 'jig-board',
    name: 'Board drill template',
    outline: rectangle(back, -wide, end, perRib === 2 ? wide : narrow),
    holes: [
      throughHole({ x: 0, y: 0 }, pin),
      throughHole({ x: end - border, y: 0 }, design.rib.pilotDiameter),
      ...downScrewPoints(design, dish, start).map((at) => throughHole(at, design.board.pilotDiameter)),
    ],
    marks: [
      line(back, 0, end, 0),
      ...cleatOutlines(design, dish, start).map(ringMark),
      textMark('BOARD: PIN ON AXIS', { x: pin, y: 2 }, 6),
    ],
    notes: [
      `Before the hub is on: pin it on the axis, swing its line onto a rib line, prick the hole at its end onto the line, ${cleatScrews(design).down.length > 0 ? 'drill the cleat pilots through it' : 'prick the corners of the cleat’s outline through it and join them'}; then the next rib.`,
      'Keep the lettering up: turned over, it puts the cleats on the other side of the ribs.',
    ],
  });
}

/** A block of the cleat's own size that carries its holes; none for cleats that are glued alone. */
function cleatJig(design: Design): Part[] {
  const { length, width, screwDiameter } = design.cleat;
  const { rib, down } = cleatScrews(design);
  if (rib.length + down.length === 0) return [];
  const drilled = `drill ${inUnits(design, screwDiameter)} through the holes`;
  const squared = 'square the scribed lines over the edge for the screws into the rib';
  return [
    blank({
      ...base(design),
      id: 'jig-cleat',
      name: 'Cleat drill template',
      outline: rectangle(0, 0, length, width),
      holes: down.map((x) => throughHole({ x, y: width / 2 }, screwDiameter)),
      marks: [...rib.map((x) => line(x, 0, x, width)), textMark('RIB', { x: 2, y: 2 }, Math.min(5, width / 5))],
      notes: [
        `Lay it flush on a cleat with RIB at the edge that meets the rib; ${[...(down.length > 0 ? [drilled] : []), ...(rib.length > 0 ? [squared] : [])].join(', and ')}.`,
      ],
    }),
  ];
}

/** The jigs; none where slots take the place of lines and drilled holes. */
export function makeJigs(design: Design, dish: Dish): Part[] {
  const { start } = placeCleats(design, dish);
  return start === null ? [] : [hubJig(design, dish), boardJig(design, dish, start), ...cleatJig(design)];
}
