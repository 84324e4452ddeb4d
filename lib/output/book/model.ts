/** The dish of a design as solids: board, hub, cleats, ribs, panels, mirror and what stands in the focus. */
import { circle, flatten, rectangle, regularPolygon } from '../../geometry/index.js';
import type { Contour } from '../../geometry/index.js';
import type { Design } from '../../design/index.js';
import type { Dish, Facet, PlanFrame } from '../../dish/index.js';
import type { Part, PartKind } from '../../part/index.js';
import { ribInPlace } from './rib-place.js';
import type { BentSection, SolidInstance, Model, SolidShape, Solid, Vec2 } from './solids.js';

export interface ModelInput {
  readonly design: Design;
  readonly dish: Dish;
  readonly parts: readonly Part[];
  /** Radius of the cleats' inner end. */
  readonly cleatStart: number;
  /** The panel's chords from its inner to its outer end, in order. */
  readonly facets: readonly Facet[];
}

/** Pictures need no more: half a millimetre is below a pixel at any size a page shows. */
const pictureTolerance = 0.5;

const ring = (contour: Contour): Vec2[] => flatten(contour, pictureTolerance, 'on').map(({ x, y }) => [x, y]);

const idsOf = (parts: readonly Part[], kind: PartKind): string[] =>
  parts.filter((part) => part.kind === kind).map((part) => part.id);

function holesOf(rib: Part, dish: Dish): Vec2[][] {
  return rib.openings.map((opening) => ring(ribInPlace(opening, dish)));
}

function around(frames: readonly PlanFrame[], rest: Omit<SolidInstance, 'turn'>): SolidInstance[] {
  return frames.map(({ rotationDeg }) => ({ turn: (Math.PI * rotationDeg) / 180, ...rest }));
}

function boardSolid({ design, dish, parts }: ModelInput, out: number): Solid {
  const half = design.board.size / 2;
  const round = design.board.shape === 'round';
  const thickness = design.materials[design.board.material]?.thickness ?? 0;
  const outline = round ? ring(circle({ x: 0, y: 0 }, half)) : ring(rectangle(-half, -half, half, half));
  return {
    parts: [...idsOf(parts, 'board'), ...idsOf(parts, 'splice')],
    name: 'backer board',
    role: 'board',
    shape: { kind: 'flat', outline, holes: [], z: -thickness, thickness },
    scribes: dish.layout.ribs.map(({ rotationDeg }) => {
      const angle = (Math.PI * rotationDeg) / 180;
      const at = (r: number): Vec2 => [r * Math.cos(angle), r * Math.sin(angle)];
      return [at(dish.innerRadius), at(Math.min(half, dish.apertureRadius))] as const;
    }),
    instances: [{ turn: 0, lift: 0, out: 0, up: -0.45 * out }],
  };
}

function hubSolid({ design, dish, parts }: ModelInput, out: number): Solid {
  const { shape, radius, layers, material } = design.hub;
  const thickness = design.materials[material]?.thickness ?? 0;
  const { ribs, halfAngle } = dish.layout;
  // flats face the ribs, so the corners lie half way between them
  const outline =
    shape === 'round'
      ? ring(circle({ x: 0, y: 0 }, radius))
      : ring(regularPolygon({ x: 0, y: 0 }, radius / Math.cos(halfAngle), ribs.length, halfAngle));
  return {
    parts: idsOf(parts, 'hub'),
    name: 'hub',
    role: 'hub',
    shape: { kind: 'flat', outline, holes: [], z: 0, thickness },
    instances: Array.from({ length: layers }, (_, k) => ({
      turn: 0,
      lift: k * thickness,
      out: 0,
      up: out * (0.05 + 0.04 * k),
    })),
  };
}

function cleatSolids({ design, dish, parts, cleatStart }: ModelInput, out: number): Solid[] {
  const { length, width, material, perRib } = design.cleat;
  const thickness = design.materials[material]?.thickness ?? 0;
  const side = dish.ribThickness / 2;
  const left = ring(rectangle(cleatStart, side, cleatStart + length, side + width));
  const mirrored = left.map(([x, y]): Vec2 => [x, -y]).reverse();
  const outlines = perRib === 1 ? [mirrored] : [mirrored, left];
  return outlines.map((outline) => ({
    parts: idsOf(parts, 'cleat'),
    name: 'cleats',
    role: 'cleat',
    shape: { kind: 'flat', outline, holes: [], z: 0, thickness },
    instances: around(dish.layout.ribs, { lift: 0, out: 0.12 * out, up: -0.18 * out }),
  }));
}

function ribSolids({ dish, parts }: ModelInput, out: number): Solid[] {
  const rib = parts.find((part) => part.kind === 'rib');
  if (!rib) return [];
  return [
    {
      parts: idsOf(parts, 'rib'),
      name: 'ribs',
      role: 'rib',
      shape: {
        kind: 'upright',
        outline: ring(ribInPlace(rib.outline, dish)),
        holes: holesOf(rib, dish),
        thickness: dish.ribThickness,
      },
      instances: around(dish.layout.ribs, { lift: 0, out: 0.25 * out, up: 0.02 * out }),
    },
  ];
}

/** A layer of the facing between two depths below the reflecting face. */
function bent({ dish, facets }: ModelInput, above: number, below: number): SolidShape {
  const section = ({ u, z, slopeAngle, halfWidth }: Facet): BentSection => {
    const at = (depth: number): Vec2 => [
      u + depth * Math.sin(slopeAngle),
      dish.baseHeight + z - depth * Math.cos(slopeAngle),
    ];
    return { top: at(above), bottom: at(below), halfWidth };
  };
  return { kind: 'bent', sections: facets.map(section) };
}

function facingSolids(input: ModelInput, out: number): Solid[] {
  const { design, dish, parts } = input;
  const { layout, facingThickness, reflectorThickness } = dish;
  const mirrored = design.reflector.material !== undefined;
  const panel: Solid = {
    parts: idsOf(parts, 'panel'),
    name: 'facing panels',
    role: mirrored ? 'panel' : 'mirror',
    shape: bent(input, reflectorThickness, facingThickness),
    instances: around(layout.bays, { lift: 0, out: 0.3 * out, up: 0.4 * out }),
  };
  if (!mirrored) return [panel];
  return [
    panel,
    {
      parts: idsOf(parts, 'reflector'),
      name: 'mirror strips',
      role: 'mirror',
      shape: bent(input, 0, reflectorThickness),
      instances: around(layout.bays, { lift: 0, out: 0.35 * out, up: 0.75 * out }),
    },
  ];
}

function vesselSolid({ design, dish }: ModelInput, out: number): Solid[] {
  if (!design.vessel) return [];
  const { diameter, offset } = design.vessel;
  return [
    {
      parts: [],
      name: 'vessel',
      role: 'vessel',
      shape: {
        kind: 'flat',
        outline: ring(circle({ x: 0, y: 0 }, diameter / 2)),
        holes: [],
        z: dish.baseHeight + dish.profile.focusHeight + offset,
        thickness: 0.5 * diameter,
      },
      instances: [{ turn: 0, lift: 0, out: 0, up: 0.9 * out }],
    },
  ];
}

/** The whole dish. Rib 1 lies along x; the others follow anticlockwise. */
export function dishModel(input: ModelInput): Model {
  const { apertureRadius, baseHeight, profile, rimEndHeight } = input.dish;
  const vessel = input.design.vessel;
  const top = vessel ? Math.max(rimEndHeight, baseHeight + profile.focusHeight + vessel.diameter / 2) : rimEndHeight;
  return {
    solids: [
      boardSolid(input, apertureRadius),
      hubSolid(input, apertureRadius),
      ...cleatSolids(input, apertureRadius),
      ...ribSolids(input, apertureRadius),
      ...facingSolids(input, apertureRadius),
      ...vesselSolid(input, apertureRadius),
    ],
    reach: Math.hypot(apertureRadius, top / 2),
    centre: top / 2,
  };
}
