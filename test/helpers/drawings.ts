/** Sheets and parts for the tests of the writers. Invented shapes; the rib's top is the demo's. */
import { defaultColours } from '../../lib/design/index.js';
import { type Contour, circle, clockwise, rectangle, reversed } from '../../lib/geometry/index.js';
import { type DishShape, fitRibTop, paraboloid, radialLayout } from '../../lib/dish/index.js';
import { type CutSheetToDraw, type Drawing, drawSheet } from '../../lib/output/index.js';
import { lineMark, textMark, throughHole } from '../../lib/part/index.js';
import { plainPart } from './plain-part.js';

/** The dish of the demo: aperture 1500 mm, f 550 mm, 24 ribs of 12 mm, 3 mm panels with 0.3 mm sheet. */
const dish: DishShape = {
  figure: 'panel',
  profile: paraboloid(550),
  layout: radialLayout(24),
  apertureRadius: 750,
  ribThickness: 12,
  panelThickness: 3,
  reflectorThickness: 0.3,
  facingThickness: 3.3,
  seamGap: 1,
  baseHeight: 60,
  innerRadius: 110,
};

/** A rib: the fitted top curve of that dish on a straight base. */
export function placedRibOutline(): Contour {
  const { path } = fitRibTop(dish, 110, 745, 0.01);
  const first = path[0]!;
  const last = path.at(-1)!;
  return [
    { x: first.x, y: 0, bulge: 0 },
    { x: last.x, y: 0, bulge: 0 },
    ...reversed(path).map((v, i, all) => (i === all.length - 1 ? { ...v, bulge: 0 } : v)),
  ];
}

/** Three quarters of a ring's circle and more: an arc that sweeps 300 degrees. */
export const wideArc: Contour = [
  { x: 1000, y: 700, bulge: Math.tan((300 / 4 / 180) * Math.PI) },
  { x: 1100, y: 700, bulge: 0 },
];

/** A sheet on which every operation is met, in an order of cutting that changes layers to and fro. */
export const sampleSheet: CutSheetToDraw = {
  id: 'ply-12-1',
  width: 1200.5,
  height: 900,
  process: { kind: 'router', toolDiameter: 6, web: 4, relief: 'none' },
  marks: [
    {
      part: 'board',
      copy: 1,
      vertices: [
        { x: 30, y: 40, bulge: 0 },
        { x: 35, y: 48, bulge: 0.5 },
        { x: 41, y: 40, bulge: 0 },
      ],
    },
  ],
  operations: [
    {
      depth: 'through',
      operation: 'scribe',
      part: 'board',
      copy: 1,
      closed: false,
      vertices: [
        { x: 100, y: 600, bulge: 0 },
        { x: 500.1234567, y: 610, bulge: 0 },
      ],
    },
    {
      depth: 'through',
      operation: 'drill',
      part: 'board',
      copy: 1,
      closed: true,
      vertices: [{ x: 150, y: 650, bulge: 0 }],
      diameter: 4,
    },
    {
      depth: 'through',
      operation: 'countersink',
      part: 'board',
      copy: 1,
      closed: true,
      vertices: [{ x: 150, y: 650, bulge: 0 }],
      diameter: 8,
    },
    {
      depth: 'through',
      operation: 'drill',
      part: 'board',
      copy: 1,
      closed: true,
      vertices: [{ x: 300, y: 650, bulge: 0 }],
      diameter: 12.7,
      bore: clockwise(circle({ x: 300, y: 650 }, 3.35)),
    },
    {
      depth: 'through',
      operation: 'opening',
      part: 'board',
      copy: 1,
      closed: true,
      vertices: clockwise(circle({ x: 400, y: 700 }, 50)),
    },
    {
      depth: 'through',
      operation: 'outline',
      part: 'board',
      copy: 1,
      closed: true,
      vertices: rectangle(90, 590, 520, 800),
    },
    {
      depth: 'through',
      operation: 'drill',
      part: 'rib',
      copy: 2,
      closed: true,
      vertices: [{ x: 200, y: 60, bulge: 0 }],
      diameter: 3.175,
    },
    { depth: 'through', operation: 'outline', part: 'rib', copy: 2, closed: true, vertices: placedRibOutline() },
    { depth: 'through', operation: 'outline', part: 'ring', copy: 1, closed: true, vertices: wideArc },
  ],
};

export function sampleDrawing(): Drawing {
  return drawSheet(sampleSheet, defaultColours);
}

/** A part whose names would break out of their place if they were not escaped. */
export const hostileText = `</title><script>alert('1')</script> & "quoted" \u0000\u001b\ud800 0\nSECTION`;

export const samplePart = plainPart('hub', circle({ x: 0, y: 0 }, 60), {
  openings: [clockwise(circle({ x: 0, y: 0 }, 10))],
  holes: [{ ...throughHole({ x: 30, y: 20 }, 4), countersink: 8 }],
  marks: [
    lineMark([
      { x: -40, y: 0, bulge: 0 },
      { x: -20, y: 0, bulge: 0 },
    ]),
    textMark('HUB 1', { x: -30, y: 25 }, 10, 0.2),
  ],
});
