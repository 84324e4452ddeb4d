/** The parts that tilt with the dish: arms, cross beams and their flanges. */
import { contourFromPoints } from '../geometry/index.js';
import { throughHole } from '../part/index.js';
import type { Cradle } from './cradle.js';
import { slotFor, tabsAlong } from './edge-joint.js';
import { rounded } from './outline.js';
import {
  around,
  beamBetween,
  clearanceOf,
  corner,
  drillEdges,
  heavyBolt,
  holeLetters,
  label,
  type Made,
  type StandMaterials,
} from './part-shapes.js';

/** Half the width of an arm's upper end, on which the sight stands: no less where a pipe goes through it. */
const endWidth = ({ linkage, arm: { head } }: Cradle): number => (linkage === null ? 40 : head);

export function arm(cradle: Cradle): Made {
  const { arm: shape, axis, focus, cross, lever, linkage, lock, sheet, thin, fit, bolt: size } = cradle;
  const { halfWidth, bottom, head } = shape;
  const top = { x: 0, y: axis };
  const armEnd = endWidth(cradle);
  const waist = lever === 0 ? axis + head : axis + lever / 2;
  const upper = [
    { x: head, y: axis - head },
    { x: head, y: axis + 10 },
    { x: armEnd, y: waist },
    { x: armEnd, y: shape.top },
    { x: -armEnd, y: shape.top },
    { x: -armEnd, y: waist },
    { x: -head, y: axis + 10 },
    { x: -head, y: axis - head },
  ];
  const points = [
    { x: -halfWidth, y: bottom },
    { x: halfWidth, y: bottom },
    { x: halfWidth, y: cross.top + thin + 25 },
    ...upper,
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
      ...(linkage === null ? [] : [throughHole({ x: 0, y: focus }, cradle.pipeHole)]),
    ],
    marks: [
      label('arm {n}', 0, focus === axis ? axis - lock.radius - 60 : axis - lock.radius / 2 - head / 2),
      ...lock.arm.map((angle, j) => {
        const at = around(lock.radius + 22, angle, top);
        return { ...label(holeLetters.charAt(j), at.x, at.y), height: 7 };
      }),
    ],
    notes: [
      linkage === null
        ? 'Wax the pipe hole and both faces around it: the arm turns there.'
        : 'Wax both pipe holes and the faces around them: the arm turns on the lower pipe, the hanger’s in the upper hole.',
    ],
  };
}

export function crossBeam(cradle: Cradle, { mountingBolt, board }: StandMaterials): Made {
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
export function flange(cradle: Cradle, { mountingBolt }: StandMaterials): Made {
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
