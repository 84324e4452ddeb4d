/** The parts that stand: side frames, base and its beams. */
import { add, contourFromPoints, type Contour, type Point } from '../geometry/index.js';
import { lineMark, throughHole } from '../part/index.js';
import type { Cradle } from './cradle.js';
import { edgeBoltHoles, slotFor, tabsAlong } from './edge-joint.js';
import { hullOf, octagon, rounded } from './outline.js';
import {
  around,
  axisOverBase,
  beamBetween,
  clearanceOf,
  corner,
  drillEdges,
  heavyBolt,
  label,
  letters,
  type Made,
  wood,
} from './part-shapes.js';

/** Corners of a side frame before they are rounded: feet, quadrant of the lock and head in one convex ring. */
export function sideHull(cradle: Cradle): Point[] {
  const { foot, lock, arm, linkage } = cradle;
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
    ...(linkage === null ? [] : octagon(add(head, linkage.lever), linkage.half + 10)),
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
const footTabs = ({ foot }: Cradle): readonly (readonly [number, number])[] => [
  [-0.8 * foot - 25, -0.8 * foot + 25],
  [0.8 * foot - 25, 0.8 * foot + 25],
];
const footBolts = ({ foot }: Cradle): readonly number[] => [-0.5 * foot, 0.5 * foot];
/** Bolts of a beam to the base, along y. */
const beamBolts = ({ sideY }: Cradle): readonly number[] => [-0.5 * sideY, 0.5 * sideY];

export function side(cradle: Cradle): Made {
  const { lock, linkage, foot, beam, sheet, thin, fit, bolt: size } = cradle;
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
      ...(linkage === null ? [] : [throughHole(add(axis, linkage.lever), linkage.hole)]),
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
      'Both face the same way, with the row of lock holes on the side away from the sun; they are not a mirrored pair.',
      'Drill the holes for the bolts into the lower edge at the bench, plumb, on the middle of the thickness.',
    ],
  };
}

export function baseBeam(cradle: Cradle): Made {
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

export function base(cradle: Cradle): Made {
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
    notes: ['Castors go underneath, below the scribed crosses; their screws must not come through the top.'],
  };
}
