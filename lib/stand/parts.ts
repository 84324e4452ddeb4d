/**
 * The parts of a cradle, each in its own axes: upright plates along x or y of the cradle have x along it and y up, level
 * ones x and y as the cradle. Heights of side frames and beams count from the base's upper face, of arms and cross
 * beams from the board's.
 */
import { circle, contourFromPoints, type Contour, type Point, rectangle, strokeTextWidth } from '../geometry/index.js';
import { bolt, washerSpace } from '../hardware/index.js';
import { blank, lineMark, type Part, type TextMark, textMark, throughHole } from '../part/index.js';
import type { Cradle } from './cradle.js';
import { edgeBoltHoles, slotFor, tabsAlong } from './edge-joint.js';
import { hullOf, octagon, rounded } from './outline.js';

/** What the parts are made of, and the board's bolts. */
export interface StandMaterials {
  readonly sheet: string;
  readonly thin: string;
  /** Of the plates under the board's joints. */
  readonly packing: string;
  readonly mountingBolt: string;
  readonly board: number;
}

type Made = Omit<Parameters<typeof blank>[0], 'kind' | 'material' | 'thickness'>;

const corner = 12;
const letters = 12;
/** Wood round a hole of the lock, and round the slots of an edge joint (common practice, no source). */
const wood = 22;
/** Bolt of the counterweights and the pivot. */
export const heavyBolt = { hole: 13.5, size: 'M12' } as const;
export const spacerRadius = 45;
export const pivotRadius = 150;

const clearanceOf = (size: string): number => bolt(size).clearance;
const around = (radius: number, angle: number, at: Point): Point => ({
  x: at.x - radius * Math.sin(angle),
  y: at.y - radius * Math.cos(angle),
});

const label = (text: string, x: number, y: number): TextMark =>
  textMark(text, { x: x - strokeTextWidth(text, letters) / 2, y }, letters);

/** Height of the tilt axis above the base's upper face. */
export const axisOverBase = ({ axis, baseTop }: Cradle): number => axis - baseTop;

/** Corners of a side frame before they are rounded: feet, quadrant of the lock and head in one convex ring. */
export function sideHull(cradle: Cradle): Point[] {
  const { foot, lock, arm } = cradle;
  const head = { x: 0, y: axisOverBase(cradle) };
  const [first = 0, last = 0] = [lock.frame[0], lock.frame.at(-1)];
  // as much wood past the first and last hole as outside of them
  const past = wood / lock.radius;
  const quadrant = [first - past, ...lock.frame, last + past].map((angle) => around(lock.radius + wood, angle, head));
  return hullOf([
    { x: -foot, y: 0 },
    { x: foot, y: 0 },
    { x: foot, y: railHeight(cradle) },
    { x: -foot, y: railHeight(cradle) },
    ...quadrant,
    ...octagon(head, arm.head),
  ]);
}

/** The rail between the feet carries the beams. */
const railHeight = ({ beam }: Cradle): number => beam.height + wood;

/** Where a convex ring is cut by a level line. */
function widthAt(ring: readonly Point[], y: number): readonly [number, number] {
  const xs = ring.flatMap((a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    if (Math.min(a.y, b.y) > y || Math.max(a.y, b.y) < y || a.y === b.y) return [];
    return [a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)];
  });
  return [Math.min(...xs), Math.max(...xs)];
}

/** The opening between the legs of a side frame; none where they are too near. */
function sideOpening(cradle: Cradle): Contour[] {
  const ring = sideHull(cradle);
  const low = railHeight(cradle) + 20;
  const high = axisOverBase(cradle) - cradle.lock.radius - wood - 20;
  const leg = Math.max(70, cradle.foot / 5);
  const [fromLow, toLow] = widthAt(ring, low);
  const [fromHigh, toHigh] = widthAt(ring, high);
  if (high - low < 100 || toHigh - fromHigh < 2 * leg + 40) return [];
  const corners = [
    { x: fromLow + leg, y: low },
    { x: toLow - leg, y: low },
    { x: toHigh - leg, y: high },
    { x: fromHigh + leg, y: high },
  ];
  return [rounded(corners.toReversed(), corner)];
}

/** Tabs and bolts of a side frame's foot, along x. */
export const footTabs = ({ foot }: Cradle): readonly (readonly [number, number])[] => [
  [-0.8 * foot - 25, -0.8 * foot + 25],
  [0.8 * foot - 25, 0.8 * foot + 25],
];
export const footBolts = ({ foot }: Cradle): readonly number[] => [-0.5 * foot, 0.5 * foot];
/** Bolts of a beam to the base, along y. */
export const beamBolts = ({ sideY }: Cradle): readonly number[] => [-0.5 * sideY, 0.5 * sideY];

function side(cradle: Cradle): Made {
  const { lock, foot, beam, sheet, thin, fit, bolt: size } = cradle;
  const axis = { x: 0, y: axisOverBase(cradle) };
  const down = Math.max(1, thin - fit);
  const hull = sideHull(cradle);
  // the ring begins with the leftmost of the lowest points: the edge along the ground comes first
  const start = hull.findIndex(({ x, y }) => y === 0 && x === -foot);
  const ring = [...hull.slice(start), ...hull.slice(0, start)];
  const tabs = footTabs(cradle).flatMap(([from, to]) => [
    { x: from, y: 0 },
    { x: from, y: -down },
    { x: to, y: -down },
    { x: to, y: 0 },
  ]);
  // its feet and tabs stay sharp
  const outline = rounded([{ x: -foot, y: 0 }, ...tabs, ...ring.slice(1)], corner, ({ y }) => y <= 0);
  const bolts = footBolts(cradle).map((x) =>
    edgeBoltHoles({ at: { x, y: 0 }, inward: Math.PI / 2, sheet, through: thin, size }),
  );
  const joints = [-beam.x, beam.x];
  const mid = lock.frame.length - 1;
  return {
    id: 'stand-side',
    name: 'Side frame',
    quantity: 2,
    outline,
    openings: [
      ...sideOpening(cradle),
      ...joints.flatMap((x) => tabsAlong(beam.height).map((tab) => slotFor(tab, x, { sheet, fit, upright: true }))),
    ],
    holes: [
      throughHole(axis, cradle.pipeHole),
      ...lock.frame.map((angle) => throughHole(around(lock.radius, angle, axis), lock.hole)),
      ...joints.map((x) => throughHole({ x, y: beam.height / 2 }, clearanceOf(size))),
      ...bolts.map(({ hole }) => hole),
    ],
    edgeHoles: bolts.map(({ edgeHole }) => edgeHole),
    marks: [
      label('side {n}', 0, railHeight(cradle) / 2),
      ...lock.frame.flatMap((angle, k) =>
        k % 2 === 0 && k <= mid
          ? [
              label(
                String(k),
                around(lock.radius - 18, angle, axis).x,
                around(lock.radius - 18, angle, axis).y - letters / 4,
              ),
            ]
          : [],
      ),
    ].map((mark, i) => (i === 0 ? mark : { ...mark, height: 5 })),
    edges: [{ ring: 0, from: 0, to: 8, role: 'seat' }],
    seatCorners: [1, 4, 5, 8].map((vertex) => ({ ring: 0, vertex })),
    notes: [
      'Both stand the same way round, the row of lock holes on the side away from the sun; they are no mirror pair.',
      'Drill the holes for the bolts into the lower edge at the bench, plumb, on the middle of the thickness.',
    ],
  };
}

function arm(cradle: Cradle): Made {
  const { arm: shape, axis, cross, lever, lock, sheet, thin, fit, bolt: size } = cradle;
  const { halfWidth, bottom, head } = shape;
  const top = { x: 0, y: axis };
  const upper =
    lever === 0
      ? octagon(top, head).filter(({ y }) => y > axis)
      : [
          { x: head, y: axis + 10 },
          { x: 40, y: axis + lever / 2 },
          { x: 40, y: axis + lever + 40 },
          { x: -40, y: axis + lever + 40 },
          { x: -40, y: axis + lever / 2 },
          { x: -head, y: axis + 10 },
        ];
  const points = [
    { x: -halfWidth, y: bottom },
    { x: halfWidth, y: bottom },
    { x: halfWidth, y: cross.top + thin + 25 },
    ...(lever === 0 ? [] : [{ x: head, y: axis - head }]),
    ...upper,
    ...(lever === 0 ? [] : [{ x: -head, y: axis - head }]),
    { x: -halfWidth, y: cross.top + thin + 25 },
  ];
  const low = cross.top - cross.height;
  const joints = [-cross.x, cross.x];
  const tabs = tabsAlong(cross.height).map(([from, to]): [number, number] => [low + from, low + to]);
  return {
    id: 'stand-arm',
    name: 'Arm',
    quantity: 2,
    outline: rounded(points, corner),
    openings: joints.flatMap((x) => [
      ...tabs.map((tab) => slotFor(tab, x, { sheet, fit, upright: true })),
      slotFor(flangeTab(cradle, x), cross.top + thin / 2, { sheet: thin, fit, upright: false }),
    ]),
    holes: [
      throughHole(top, cradle.pipeHole),
      ...lock.arm.map((angle) => throughHole(around(lock.radius, angle, top), lock.hole)),
      ...joints.map((x) => throughHole({ x, y: low + cross.height / 2 }, clearanceOf(size))),
      ...(lever === 0 ? [] : [throughHole({ x: 0, y: axis + lever }, heavyBolt.hole)]),
    ],
    marks: [
      label('arm {n}', 0, axis - lock.radius - 60),
      ...lock.arm.map((angle, j) => {
        const at = around(lock.radius + 22, angle, top);
        return { ...label('abcde'.charAt(j), at.x, at.y), height: 7 };
      }),
    ],
    notes: ['Wax the hole of the pipe and both faces round it: the arm turns there.'],
  };
}

/** A beam between two plates: tabs at both ends, bolts into both ends, and bolts into its lower or upper edge. */
function beamBetween(
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

const drillEdges = 'Drill the holes for the bolts into its edges at the bench, square, on the middle of the thickness.';

function crossBeam(cradle: Cradle, { mountingBolt, board }: StandMaterials): Made {
  const { cross, armY, mountY, packing } = cradle;
  const along = [-mountY, mountY].map((x) => ({
    at: { x, y: cross.height },
    inward: -Math.PI / 2,
    through: board + packing + cradle.thin,
    size: mountingBolt,
  }));
  return {
    id: 'stand-cross',
    name: 'Cross beam',
    quantity: 2,
    ...beamBetween(armY, cross.height, cradle, along),
    marks: [label('cross {n}', 0, cross.height / 2)],
    notes: [drillEdges],
  };
}

/** The tab of a flange, along x: in the middle of its width. */
const flangeTab = ({ cross }: Cradle, x: number): readonly [number, number] => [
  x - 0.3 * cross.flange,
  x + 0.3 * cross.flange,
];

/** A level strip on a cross beam, x along y of the cradle as the beam's. */
function flange(cradle: Cradle, { mountingBolt }: StandMaterials): Made {
  const { cross, armY, mountY, sheet, fit } = cradle;
  const [half, tab, out] = [cross.flange / 2, 0.3 * cross.flange, armY + sheet - fit];
  const right = [
    { x: armY, y: -half },
    { x: armY, y: -tab },
    { x: out, y: -tab },
    { x: out, y: tab },
    { x: armY, y: tab },
    { x: armY, y: half },
  ];
  return {
    id: 'stand-flange',
    name: 'Flange',
    quantity: 2,
    outline: contourFromPoints([...right, ...right.map(({ x, y }) => ({ x: -x, y: -y }))]),
    holes: [-mountY, mountY].map((x) => throughHole({ x, y: 0 }, clearanceOf(mountingBolt))),
    edges: [
      { ring: 0, from: 0, to: 4, role: 'seat' },
      { ring: 0, from: 6, to: 10, role: 'seat' },
    ],
    seatCorners: [1, 4, 7, 10].map((vertex) => ({ ring: 0, vertex })),
    notes: ['Glued and screwed along the middle of its cross beam: together they bend in neither direction.'],
  };
}

function baseBeam(cradle: Cradle): Made {
  const { beam, sideY, thin, bolt: size } = cradle;
  const along = beamBolts(cradle).map((x) => ({ at: { x, y: 0 }, inward: Math.PI / 2, through: thin, size }));
  return {
    id: 'stand-beam',
    name: 'Base beam',
    quantity: 2,
    ...beamBetween(sideY, beam.height, cradle, along),
    marks: [label('beam {n}', 0, beam.height / 2)],
    notes: [drillEdges],
  };
}

function base(cradle: Cradle): Made {
  const { base: size, sideY, sheet, fit, beam, castors, bolt: bolted } = cradle;
  const middle = sideY + sheet / 2;
  const across = 30;
  return {
    id: 'stand-base',
    name: 'Base',
    quantity: 1,
    outline: rounded(
      [
        { x: -size.halfX, y: -size.halfY },
        { x: size.halfX, y: -size.halfY },
        { x: size.halfX, y: size.halfY },
        { x: -size.halfX, y: size.halfY },
      ],
      25,
    ),
    openings: [-middle, middle].flatMap((y) =>
      footTabs(cradle).map((tab) => slotFor(tab, y, { sheet, fit, upright: false })),
    ),
    holes: [
      throughHole({ x: 0, y: 0 }, heavyBolt.hole),
      ...[-middle, middle].flatMap((y) => footBolts(cradle).map((x) => throughHole({ x, y }, clearanceOf(bolted)))),
      ...[-beam.x, beam.x].flatMap((x) => beamBolts(cradle).map((y) => throughHole({ x, y }, clearanceOf(bolted)))),
    ],
    marks: [
      label('base, sun', size.halfX - 120, 0),
      // castors go under the crosses
      ...[-1, 1].flatMap((i) =>
        [-1, 1].flatMap((j) => {
          const [x, y] = [i * castors.x, j * castors.y];
          return [
            lineMark(
              contourFromPoints([
                { x: x - across, y },
                { x: x + across, y },
              ]),
            ),
            lineMark(
              contourFromPoints([
                { x, y: y - across },
                { x, y: y + across },
              ]),
            ),
          ];
        }),
      ),
    ],
    notes: ['Castors go under the scribed crosses, below; their screws must not come out above.'],
  };
}

/** All parts of a cradle, in the order of building. */
export function cradleParts(cradle: Cradle, materials: StandMaterials): Part[] {
  const thick = { kind: 'stand', material: materials.sheet, thickness: cradle.sheet } as const;
  const thin = { kind: 'stand', material: materials.thin, thickness: cradle.thin } as const;
  const packing = 2 * washerSpace(clearanceOf(materials.mountingBolt)) + 20;
  return [
    blank({ ...thin, ...base(cradle) }),
    blank({ ...thick, ...baseBeam(cradle) }),
    blank({ ...thick, ...side(cradle) }),
    blank({ ...thick, ...crossBeam(cradle, materials) }),
    blank({ ...thin, ...flange(cradle, materials) }),
    blank({ ...thick, ...arm(cradle) }),
    blank({
      ...thin,
      id: 'stand-spacer',
      name: 'Spacer',
      quantity: 2,
      outline: circle({ x: 0, y: 0 }, Math.max(spacerRadius, cradle.pipe.outside)),
      holes: [throughHole({ x: 0, y: 0 }, cradle.pipeHole)],
      notes: ['Keeps arm and side frame apart on the pipe; wax both faces.'],
    }),
    blank({
      ...thin,
      id: 'stand-pivot',
      name: 'Pivot plate',
      quantity: 1,
      outline: circle({ x: 0, y: 0 }, pivotRadius),
      holes: [throughHole({ x: 0, y: 0 }, heavyBolt.hole)],
      notes: ['Lies on the ground, pegged or weighted; the base turns about its bolt.'],
    }),
    ...(cradle.packing === 0
      ? []
      : [
          blank({
            kind: 'stand',
            material: materials.packing,
            id: 'stand-packing',
            name: 'Packing',
            thickness: cradle.packing,
            quantity: 4,
            outline: rectangle(-packing / 2, -packing / 2, packing / 2, packing / 2),
            holes: [throughHole({ x: 0, y: 0 }, clearanceOf(materials.mountingBolt))],
          }),
        ]),
  ];
}
