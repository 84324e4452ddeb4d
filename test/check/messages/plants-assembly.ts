/** Faults of the dish that is put together from the files, one for each message about them. */
import type { assemblyMessages } from '../../../lib/check/messages/assembly.js';
import { readDesign } from '../../../lib/design/index.js';
import { buildCutFiles } from '../../../lib/pipeline.js';
import { fixtureText } from '../../helpers/fixtures.js';
import { sealed } from '../../helpers/small-job.js';
import { shelfNester } from '../../helpers/shelf-nester.js';
import type { Planted } from './planted.js';

/** What the plants change of a record. */
interface DishRecord {
  design: { hub: { boltDiameter: number; dowels: number } };
  parts: DishPart[];
  fasteners: { joint: string; diameter: number; length: number; count: number }[];
}

interface DishPart {
  id: string;
  quantity: number;
  thickness: number;
  contours: { operation: string; vertices: [number, number, number][] }[];
  drills: { x: number; y: number; diameter: number }[];
}

/** The record of a dish cut by hand as it is written; without a vessel no light is traced. */
async function recordText(design: string): Promise<string> {
  const reading = readDesign(design);
  if (reading.kind === 'refused') throw new Error('the design is refused');
  const job = await buildCutFiles(reading.design, new Map(), shelfNester);
  return String(job.files.get('job.json'));
}

/** A board in two segments that are bolted, on ribs of a small dish cut by hand. */
const apart = `name: Small dish in two
dish: { aperture: 900, focalLength: 330, ribs: 8 }
materials:
  ply15: { kind: plywood, thickness: 15 }
  card: { kind: card, thickness: 1 }
stock: [{ material: ply15, size: 2500 x 1250 }, { material: card, size: 1500 x 1000 }]
rib: { material: ply15 }
board: { splice: bolted, segments: 2 }
panel: { material: card, fixing: glue }
process: { kind: hand }
`;

/** Battens over the seams of a small dish cut by hand, held by screws. */
const battened = `name: Small dish under battens
dish: { aperture: 900, focalLength: 330, ribs: 12 }
materials:
  ply15: { kind: plywood, thickness: 15 }
  hardboard: { kind: hardboard, thickness: 3 }
  foil: { kind: aluminium, thickness: 0.3 }
stock: [{ material: ply15, size: 2500 x 1250 }, { material: hardboard, size: 2440 x 1220 }, { material: foil, rollWidth: 500 }]
rib: { material: ply15 }
panel: { material: hardboard, gap: 3, fixing: battens }
reflector: { material: foil }
process: { kind: hand }
`;

const text = await recordText(fixtureText('hand-cut-inch').replace(/^vessel: .*\n/m, ''));
const apartText = await recordText(apart);
const battenText = await recordText(battened);

const plantedIn =
  (of: string, changes: readonly ((record: DishRecord) => void)[]): Planted[0] =>
  () => {
    const record = JSON.parse(of) as DishRecord;
    for (const change of changes) change(record);
    return new Map([['job.json', sealed(record, new Map())]]);
  };

const planted = (...changes: ((record: DishRecord) => void)[]): Planted[0] => plantedIn(text, changes);

const part = ({ parts }: DishRecord, id: string): DishPart => {
  const found = parts.find((one) => one.id === id);
  if (found === undefined) throw new Error(`no ${id}`);
  return found;
};

const outline = (one: DishPart): [number, number, number][] => one.contours[0]!.vertices;

/** Every point of a part's outline moved. */
const moved = (id: string, by: (x: number, y: number) => readonly [number, number]) => (record: DishRecord) => {
  for (const vertex of outline(part(record, id))) [vertex[0], vertex[1]] = by(vertex[0], vertex[1]);
};

/** The hem of the mirror's strip or outermost row as wide as the strip is beside it. */
const hemAsWideAsTheStrip = (id: string) => (record: DishRecord) => {
  const points = outline(part(record, id));
  const end = Math.max(...points.map(([x]) => x));
  const wide = Math.max(...points.map(([, y]) => y));
  for (const vertex of points) if (vertex[0] > end - 1) vertex[1] = wide * Math.sign(vertex[1]);
};

/** Scribed lines of a part taken away. */
const unscribed = (id: string) => (record: DishRecord) => {
  const one = part(record, id);
  one.contours = one.contours.filter(({ operation }) => operation !== 'scribe');
};

type Rows = readonly (readonly [number, number])[];

const ribs = 18;
const turned = (points: Rows, k: number): [number, number, number][] =>
  points.map(([x, y]) => {
    const turn = (2 * Math.PI * k) / ribs;
    return [x * Math.cos(turn) - y * Math.sin(turn), x * Math.sin(turn) + y * Math.cos(turn), 0];
  });

/** A hub that reaches 20 mm past the inner ends of the ribs, with slots that are 0.2 mm narrower than they. */
function slottedHub(record: DishRecord): void {
  const start = Math.max(...outline(part(record, 'hub')).map(([x]) => x));
  const half = part(record, 'rib').thickness / 2 - 0.1;
  const slot: Rows = [
    [start + 20, -half],
    [start, -half],
    [start, half],
    [start + 20, half],
  ];
  part(record, 'hub').contours[0]!.vertices = Array.from({ length: ribs }, (_, k) => turned(slot, k)).flat();
}

/** The whole base of the ribs as a tab of 5 mm, in slots of the board that are 0.2 mm narrower than the ribs. */
function tabbed(record: DishRecord): void {
  const rib = part(record, 'rib');
  const start = Math.max(...outline(part(record, 'hub')).map(([x]) => x));
  const [inner, toe, foot] = outline(rib);
  for (const vertex of [inner!, toe!]) vertex[1] = -5;
  // half way down, the toe cut has gone a little further out
  const end = start + toe![0] + (2.5 / (foot![1] + 5)) * (foot![0] - toe![0]) + 5;
  const half = rib.thickness / 2 - 0.1;
  const slot: Rows = [
    [start - 5, -half],
    [start - 5, half],
    [end, half],
    [end, -half],
  ];
  const slots = Array.from({ length: ribs }, (_, k) => ({ operation: 'opening', vertices: turned(slot, k) }));
  part(record, 'board').contours.push(...slots);
}

/** The slots as grooves of 4 mm. */
function grooved(record: DishRecord): void {
  for (const contour of part(record, 'board').contours)
    if (contour.operation === 'opening') Object.assign(contour, { operation: 'pocket', depth: 4 });
}

const listed = (record: DishRecord, joint: string) => record.fasteners.find((one) => one.joint === joint)!;

export const assemblyPlants = {
  'assembly-value': [
    planted((record) => {
      record.fasteners = 1 as unknown as DishRecord['fasteners'];
    }),
    'putting the dish together is missing or wrong: fasteners: ',
  ],
  'hub-reach': [planted(moved('hub', (x, y) => [1.005 * x, 1.005 * y])), 'the hub reaches '],
  'hub-slot': [planted(slottedHub), 'the hub’s slot for rib 1 is '],
  'ribs-meet': [
    planted((record) => {
      part(record, 'rib').thickness += 4;
    }),
    'neighbouring ribs run ',
  ],
  'bolt-hole': [
    planted(({ design }) => {
      design.hub.boltDiameter += 0.5;
    }),
    'the hub has no hole of ',
  ],
  'dowel-count': [
    planted(({ design }) => {
      design.hub.dowels += 1;
    }),
    'holes for dowels, but 3 in the design',
  ],
  'dowel-board': [
    planted((record) => {
      part(record, 'hub').drills.at(-1)!.x += 0.5;
    }),
    'finds no hole of its size in the board; the nearest is 0.5 mm off',
  ],
  'tab-long': [planted(moved('rib', (x, y) => [x, y === 0 ? -20 : y])), 'are 20 mm long and come out of the board of '],
  'tab-slot-missing': [
    planted(moved('rib', (x, y) => [x, y === 0 ? -5 : y])),
    'a tab of rib 1 finds no slot in the board',
  ],
  'groove-shallow': [planted(tabbed, grooved), 'go 5 mm into the board, but its grooves are 4 mm deep'],
  'tab-slot': [planted(tabbed), 'in the board is 0.2 mm too narrow or short'],
  'cleat-line': [planted(unscribed('rib')), 'have no line to show where their cleats go'],
  'cleat-screws': [
    planted((record) => {
      part(record, 'cleat').drills.pop();
    }),
    'a cleat has 1 holes down and 2 sideways',
  ],
  'board-pilot': [
    planted((record) => {
      for (const drill of part(record, 'cleat').drills) drill.x += 0.5;
    }),
    'finds no pilot hole in the board; the nearest is 0.5 mm off',
  ],
  'rib-pilot': [
    planted((record) => {
      part(record, 'rib').drills[0]!.x += 0.5;
    }),
    'finds no pilot hole in its rib; the nearest is 0.5 mm off',
  ],
  'cleat-overlap': [planted(moved('cleat', (x, y) => [x, 8 * y])), 'the cleat of rib 1 and rib 18 run '],
  'rib-curve': [planted(moved('rib', (x, y) => [x, y > 50 ? y + 0.1 : y])), 'the ribs’ top edge is 0.1'],
  'panel-length': [planted(moved('panel', (x, y) => [1.001 * x, y])), 'the panels are '],
  'panel-wide': [planted(moved('panel', (x, y) => [x, y + Math.sign(y)])), 'the panels are 1.0'],
  'panel-narrow': [planted(moved('panel', (x, y) => [x, y - Math.sign(y)])), ' mm too narrow on a side'],
  'mirror-length': [planted(moved('reflector', (x, y) => [0.95 * x, y])), 'the mirror covers '],
  'mirror-hem': [planted(hemAsWideAsTheStrip('reflector')), 'the hem of the mirror reaches '],
  'mirror-wide': [planted(moved('reflector', (x, y) => [x, y + 0.5 * Math.sign(y)])), 'the mirror is 0.5'],
  'mirror-narrow': [planted(moved('reflector', (x, y) => [x, y - 0.5 * Math.sign(y)])), ' mm too narrow on a side, '],
  'batten-count': [
    plantedIn(battenText, [(record) => (part(record, 'batten').quantity -= 1)]),
    'there are 11 battens for 12 ribs',
  ],
  'batten-width': [
    plantedIn(battenText, [moved('batten', (x, y) => [x, 1.1 * y])]),
    'the battens are 22 mm wide, but 20 mm in the design',
  ],
  'batten-length': [plantedIn(battenText, [moved('batten', (x, y) => [x - (x > 0 ? 1 : 0), y])]), 'the battens are '],
  'batten-hole': [
    plantedIn(battenText, [
      (record) => {
        part(record, 'batten').drills[0]!.y += 0.5;
      },
    ]),
    'a hole of the battens is 0.5 mm off their middle, over a panel',
  ],
  'batten-gap': [
    plantedIn(battenText, [
      (record) => {
        listed(record, 'batten-to-rib').diameter = 3.5;
      },
    ]),
    'the battens’ screws or pins of 3.5 mm do not fit through the gap of 3 mm between two panels',
  ],
  'splice-nut': [
    plantedIn(apartText, [
      (record) => {
        part(record, 'splice').drills.at(-1)!.x += 0.5;
      },
    ]),
    'finds no hole in its segment; the nearest is 0.5 mm off',
  ],
  'splice-pilot': [
    plantedIn(apartText, [
      (record) => {
        part(record, 'splice').drills[0]!.x += 0.5;
      },
    ]),
    'a screw through a splice plate finds no pilot hole in its segment; the nearest is 0.5 mm off',
  ],
  'board-seam': [
    plantedIn(apartText, [
      (record) => {
        // the edge on which segment 1 begins, 0.2 mm back
        const [axis, begins] = outline(part(record, 'board-1'));
        for (const vertex of [axis!, begins!]) {
          const long = Math.hypot(begins![0], begins![1]);
          [vertex[0], vertex[1]] = [vertex[0] - (0.2 * begins![1]) / long, vertex[1] + (0.2 * begins![0]) / long];
        }
      },
    ]),
    'two segments of the board are 0.2 mm apart',
  ],
  'splice-screw': [
    plantedIn(apartText, [
      (record) => {
        // a slot across the place of every screw of the first joint's left side
        const { vertices } = part(record, 'board-1').contours[0]!;
        part(record, 'board-1').contours.push({ operation: 'opening', vertices });
      },
    ]),
    'a screw through a splice plate runs into a hole or slot of its segment',
  ],
  'fastener-number': [
    planted((record) => {
      listed(record, 'hub-dowel').count = 1;
    }),
    '1 of hub-dowel are listed, but the parts need 2',
  ],
  'screw-long': [
    planted((record) => {
      listed(record, 'cleat-to-board').length += 3;
    }),
    'screws of cleat-to-board are ',
  ],
} as const satisfies Readonly<Record<keyof typeof assemblyMessages, Planted>>;
