/** Good files to be mutated: one small sheet with every operation on it, made by the writers themselves, and the like. */
import { readFileSync } from 'node:fs';
import { defaultColours, type Design, readDesign } from '../../lib/index.js';
import { routerOf } from '../../lib/design/index.js';
import { circle, reversed, type Vertex } from '../../lib/geometry/index.js';
import { blank, lineMark, textMark, throughHole } from '../../lib/part/index.js';
import { type CutSheet, machine, planRouter, type Process } from '../../lib/machining/index.js';
import { headNotes } from '../../lib/pipeline/router-files.js';
import { sheetMarks } from '../../lib/pipeline/sheet-marks.js';
import { drawSheet, recordPart, writeDxf, writeJob, writeNgc, writeSvg } from '../../lib/output/index.js';

const v = (x: number, y: number, bulge = 0): Vertex => ({ x, y, bulge });

const plate = blank({
  id: 'plate',
  kind: 'extra',
  name: 'Plate',
  material: 'ply',
  thickness: 12,
  quantity: 2,
  outline: [v(0, 0), v(120, 0, 0.2), v(120, 60), v(70, 60), v(70, 40), v(50, 40), v(50, 60), v(0, 60)],
  openings: [reversed(circle({ x: 25, y: 30 }, 12))],
  holes: [{ ...throughHole({ x: 90, y: 45 }, 6), countersink: 10 }, throughHole({ x: 60, y: 15 }, 9.5)],
  marks: [lineMark([v(80, 10), v(100, 20, 0.3), v(110, 10)]), textMark('P{n}', { x: 78, y: 26 }, 8)],
  seatCorners: [
    { ring: 0, vertex: 4 },
    { ring: 0, vertex: 5 },
  ],
});

const process: Process = { kind: 'router', toolDiameter: 6, web: 4, relief: 'dogbone', drills: [] };
const placed = [
  { part: 'plate', copy: 1, x: 20, y: 20, rotationDeg: 0, mirrored: false },
  { part: 'plate', copy: 2, x: 340, y: 150, rotationDeg: 30, mirrored: true },
] as const;

/** The folder of the small job, by file name. */
export function smallFolder(): Map<string, string> {
  const size = { stock: 'ply', width: 400, height: 250, margin: 10 };
  const [cut] = machine([{ ...size, placed }], [plate], process, { compensated: true }) as [CutSheet];
  const design = accepted(
    fuzzDesign.replace(/^process: .*$/m, 'process: { kind: router, toolDiameter: 6, drillBits: [2, 2.5, 3, 6] }'),
  );
  // the second copy lies mirrored and has no lettering
  const marked = { ...cut, marks: sheetMarks({ ...size, placed }, new Map([[plate.id, plate]])) };
  const plan = planRouter(
    { cut: marked, placed },
    new Map([[plate.id, plate]]),
    { ...design.router, machine: routerOf(design) },
    {
      kind: 'plywood',
      thickness: plate.thickness,
    },
  );
  const routed = [...writeNgc(plan.toolpath, { job: 'fuzz', material: 'ply', notes: headNotes(plan, null) })];
  const { limits, cuttingSeconds, travelLength, toolWear } = plan;
  const files = routed.map(([name]) => `sheets/${name}`);
  const drawing = drawSheet(marked, defaultColours);
  const record = writeJob({
    version: '0.1.0',
    units: 'mm',
    seed: 1,
    design: { name: 'fuzz', process: { web: 4 }, router: { safeHeight: design.router.safeHeight } },
    dish: null,
    parts: [recordPart(plate)],
    fasteners: [],
    sheets: [
      { file: 'sheets/ply-1', ...size, placed, router: { files, limits, cuttingSeconds, travelLength, toolWear } },
    ],
    process: { kind: 'router', toolDiameter: 6, compensated: true },
    optics: null,
    problems: [],
    offcuts: [],
    extras: [],
  });
  return new Map([
    ['job.json', record],
    ['sheets/ply-1.dxf', writeDxf(drawing)],
    ['sheets/ply-1.svg', writeSvg(drawing)],
    ...routed.map(([name, text]) => [`sheets/${name}`, text] as const),
  ]);
}

/** A design that is taken. @throws Error when it is not */
function accepted(text: string): Design {
  const reading = readDesign(text);
  if (reading.kind === 'refused') throw new Error(reading.problems.map(({ message }) => message).join('; '));
  return reading.design;
}

/** The design with two drawings of the user's own, and those drawings, by name. */
export function withDrawings(): { readonly design: Design; readonly drawings: ReadonlyMap<string, string> } {
  const names = ['bracket.dxf', 'trivet.svg'] as const;
  const items = names.map((file) => `  - { file: ${file}, material: ply5, quantity: 1 }`);
  return {
    design: accepted([fuzzDesign, 'extra:', ...items, ''].join('\n')),
    drawings: new Map(names.map((name) => [name, readFileSync(`fixtures/extra/${name}`, 'utf8')])),
  };
}

/** A design file with something of every section. */
export const fuzzDesign = `name: Fuzzed dish
units: mm
dish: { aperture: 640, focalLength: 220, ribs: 20, baseHeight: 40 }
materials:
  ply5: { kind: plywood, thickness: 5, description: Poplar plywood 5 mm }
  card1: { kind: card, thickness: 1 }
stock:
  - { material: ply5, size: 600 x 400, price: 7, keepOuts: [[[0, 0], [20, 0], [0, 20]]] }
  - { material: card1, size: 2 ft 6 in x 400 mm, margin: 1/8 in }
rib: { material: ply5, pilotDiameter: 1.5 } # a comment
cleat: { length: 40, width: 16, screwDiameter: 2.5, headDiameter: 5 }
board: { shape: round, size: 500, mountingHoles: 3 }
panel: { material: card1, gap: 1 }
vessel: { diameter: 110, offset: -3 }
load: { mass: 0.8, start: 15, target: 90 }
process: { kind: laser, kerf: 0.2, web: 2, margin: 5 }
site: { latitude: 50, longitude: 8.5 }
day: { date: 2026-06-21 }
colours: { outline: "#009E73" }
`;

/** A strip-packing instance as `npm run bench:nest` reads it. */
export const instance = JSON.stringify({
  name: 'small',
  stripWidth: 10,
  items: [
    {
      id: 'a',
      quantity: 3,
      rotations: [0, 90],
      outline: [
        [0, 0],
        [4, 0],
        [4, 3],
        [0, 3],
      ],
    },
  ],
});
