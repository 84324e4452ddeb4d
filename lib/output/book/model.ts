/** The dish as solids for the pictures: every part where the assembly has it, and what stands in the focus. */
import { bounds, circle, flatten } from '../../geometry/index.js';
import type { Contour } from '../../geometry/index.js';
import type { AssembledPlate, AssembledSheet, Assembly } from '../../assembly/index.js';
import type { Design } from '../../design/index.js';
import type { Dish, Facet, SheetChord } from '../../dish/index.js';
import { linesUp, type Part, type PartKind, pocketsUp } from '../../part/index.js';
import type { CleatStart } from '../../parts/index.js';
import type { BentSection, SolidInstance, Model, Role, SolidShape, Solid, Vec2, Vec3 } from '../illustrate/solids.js';

export interface ModelInput {
  readonly design: Design;
  readonly dish: Dish;
  readonly parts: readonly Part[];
  /** Every part at its place. */
  readonly assembly: Assembly;
  readonly cleatStart: CleatStart;
  /** The panel's chords from its inner to its outer end, in order. */
  readonly facets: readonly Facet[];
  /** Chords of a batten's underside from its inner to its outer end; none where panels are held otherwise. */
  readonly battens: readonly SheetChord[];
}

/** Of the aperture, and pictures need no more: it is below a pixel at the width that a page shows. */
const pictureTolerance = 1 / 4000;

function ring({ dish }: ModelInput, contour: Contour): Vec2[] {
  const { minX, maxX } = bounds(contour);
  // a small hole is round too
  const tolerance = Math.min(2 * dish.apertureRadius * pictureTolerance, (maxX - minX) / 400);
  return flatten(contour, tolerance, 'on').map(({ x, y }) => [x, y]);
}

const idsOf = (parts: readonly Part[], kind: PartKind): string[] =>
  parts.filter((part) => part.kind === kind).map((part) => part.id);

const platesOf = ({ assembly }: ModelInput, kind: PartKind): AssembledPlate[] =>
  assembly.placed.filter((one): one is AssembledPlate => one.form === 'plate' && one.part.kind === kind);

const sheetsOf = ({ assembly }: ModelInput, kind: PartKind): AssembledSheet[] =>
  assembly.placed.filter((one): one is AssembledSheet => one.form === 'sheet' && one.part.kind === kind);

export const plateShape = (input: ModelInput, { outline, openings, thickness }: Part): SolidShape => ({
  kind: 'plate',
  outline: ring(input, outline),
  holes: openings.map((opening) => ring(input, opening)),
  thickness,
});

/** Away from the axis and up, along a direction in degrees. */
function outward(rotationDeg: number, out: number, up: number): Vec3 {
  const angle = (Math.PI * rotationDeg) / 180;
  return [out * Math.cos(angle), out * Math.sin(angle), up];
}

/** Chords of a groove's round ends, mm: as fine as a picture shows them. */
const GROOVE_CHORD = 0.5;

const closedPath = <T>(ring: readonly T[]): T[] => [...ring, ...ring.slice(0, 1)];

/** Each piece of the board, with the lines scribed on it and the edges of its grooves; the plates under its joints light up with it. */
function boardSolids(input: ModelInput, out: number): Solid[] {
  return platesOf(input, 'board').map(({ part, frame }) => ({
    parts: [part.id, ...idsOf(input.parts, 'splice')],
    name: 'backer board',
    role: 'board',
    shape: plateShape(input, part),
    scribes: [
      ...linesUp(part)
        .filter(({ closed }) => !closed)
        .map(({ vertices }) => vertices),
      ...pocketsUp(part).map(({ ring }) => closedPath(flatten(ring, GROOVE_CHORD, 'on'))),
    ].flatMap((vertices) =>
      vertices.slice(1).map((to, i): readonly [Vec2, Vec2] => {
        const from = vertices[i] ?? to;
        return [
          [from.x, from.y],
          [to.x, to.y],
        ];
      }),
    ),
    instances: [{ frame, away: [0, 0, -0.45 * out] }],
  }));
}

/** All copies of a part that look alike in the pictures. */
function solidOf(
  input: ModelInput,
  copies: readonly AssembledPlate[],
  { name, role, away }: { readonly name: string; readonly role: Role; readonly away: (copy: AssembledPlate) => Vec3 },
): Solid[] {
  const [first] = copies;
  if (first === undefined) return [];
  return [
    {
      parts: idsOf(input.parts, first.part.kind),
      name,
      role,
      shape: plateShape(input, first.part),
      instances: copies.map((copy) => ({ frame: copy.frame, away: away(copy) })),
    },
  ];
}

function frameSolids(input: ModelInput, out: number): Solid[] {
  const { ribs } = input.dish.layout;
  const direction = ({ rib = 1 }: AssembledPlate): number => ribs[rib - 1]?.rotationDeg ?? 0;
  const cleats = platesOf(input, 'cleat');
  const own = cleats.filter(({ rib }) => rib === 1).length;
  return [
    ...solidOf(input, platesOf(input, 'hub'), {
      name: 'hub',
      role: 'hub',
      away: ({ copy }) => [0, 0, out * (0.01 + 0.04 * copy)],
    }),
    // one solid for each cleat of a rib, so that its copies count as the ribs do
    ...Array.from({ length: own }, (_, k) => cleats.filter(({ copy }) => (copy - 1) % own === k)).flatMap((copies) =>
      solidOf(input, copies, {
        name: 'cleats',
        role: 'cleat',
        away: (copy) => outward(direction(copy), 0.12 * out, -0.18 * out),
      }),
    ),
    ...solidOf(input, platesOf(input, 'rib'), {
      name: 'ribs',
      role: 'rib',
      away: (copy) => outward(direction(copy), 0.25 * out, 0.02 * out),
    }),
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

function sheetInstance({ bay }: AssembledSheet, out: number, up: number): SolidInstance {
  const angle = (Math.PI * bay.rotationDeg) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return {
    frame: { origin: [bay.x, bay.y, 0], x: [cos, sin, 0], y: [-sin, cos, 0] },
    away: outward(bay.rotationDeg, out, up),
  };
}

function facingSolids(input: ModelInput, out: number): Solid[] {
  const { parts } = input;
  const panels = sheetsOf(input, 'panel');
  const strips = sheetsOf(input, 'reflector');
  const mirrored = strips.length > 0;
  const [panel] = panels;
  const [strip] = strips;
  // rows of a strip lie in one picture of the whole
  const whole = strips.filter(({ part }) => part === strip?.part);
  return [
    ...(panel === undefined
      ? []
      : [
          {
            parts: idsOf(parts, 'panel'),
            name: 'facing panels',
            role: mirrored ? ('panel' as const) : ('mirror' as const),
            shape: bent(input, panel.depth, panel.depth + panel.part.thickness),
            instances: panels.map((one) => sheetInstance(one, 0.3 * out, 0.4 * out)),
          },
        ]),
    ...(strip === undefined
      ? []
      : [
          {
            parts: idsOf(parts, 'reflector'),
            name: 'mirror strips',
            role: 'mirror' as const,
            shape: bent(input, strip.depth, strip.depth + input.dish.reflectorThickness),
            instances: whole.map((one) => sheetInstance(one, 0.35 * out, 0.75 * out)),
          },
        ]),
  ];
}

/** Battens, bent like the panels but in the planes of their ribs. */
function battenSolids(input: ModelInput, out: number): Solid[] {
  const all = sheetsOf(input, 'batten');
  const [first] = all;
  if (first === undefined) return [];
  const { minY, maxY } = bounds(first.part.outline);
  const sections = input.battens.map(({ u, z, slopeAngle }): BentSection => {
    const at = (above: number): Vec2 => [
      u - above * Math.sin(slopeAngle),
      input.dish.baseHeight + z + above * Math.cos(slopeAngle),
    ];
    return { top: at(first.part.thickness), bottom: at(0), halfWidth: (maxY - minY) / 2 };
  });
  return [
    {
      parts: idsOf(input.parts, 'batten'),
      name: 'battens',
      role: 'batten',
      shape: { kind: 'bent', sections },
      instances: all.map((one) => sheetInstance(one, 0.4 * out, 0.95 * out)),
    },
  ];
}

function vesselSolid(input: ModelInput, out: number): Solid[] {
  const { design, dish } = input;
  if (!design.vessel) return [];
  const { diameter, height: thickness, offset } = design.vessel;
  const height = dish.baseHeight + dish.profile.focusHeight + offset;
  return [
    {
      parts: [],
      name: 'vessel',
      role: 'vessel',
      shape: {
        kind: 'plate',
        outline: ring(input, circle({ x: 0, y: 0 }, diameter / 2)),
        holes: [],
        thickness,
      },
      instances: [{ frame: { origin: [0, 0, height], x: [1, 0, 0], y: [0, 1, 0] }, away: [0, 0, 0.9 * out] }],
    },
  ];
}

/** The stand's parts, pulled away sideways and down. */
function standSolids(input: ModelInput, out: number): Solid[] {
  const plates = platesOf(input, 'stand');
  const parts = [...new Set(plates.map(({ part }) => part))];
  return parts.map((part) => ({
    parts: [part.id],
    name: part.name.toLowerCase(),
    role: 'stand' as const,
    shape: plateShape(input, part),
    instances: plates
      .filter((one) => one.part === part)
      .map(({ frame }) => ({
        frame,
        away: [0.3 * frame.origin[0], 0.3 * frame.origin[1], frame.origin[2] < 0 ? -0.6 * out : 0] as Vec3,
      })),
  }));
}

/** The whole dish. Rib 1 lies along x; the others follow anticlockwise. */
export function dishModel(input: ModelInput): Model {
  const { apertureRadius, baseHeight, profile, rimEndHeight } = input.dish;
  const vessel = input.design.vessel;
  const top = vessel
    ? Math.max(rimEndHeight, baseHeight + profile.focusHeight + vessel.offset + vessel.height)
    : rimEndHeight;
  // the board of a dish without a stand lies at 0
  const stand = platesOf(input, 'stand');
  const low = Math.min(0, ...stand.map(({ frame }) => frame.origin[2]));
  const high = Math.max(
    top,
    ...stand.map(({ part, frame }) => frame.origin[2] + frame.y[2] * bounds(part.outline).maxY),
  );
  const wide = Math.max(apertureRadius, ...stand.map(({ frame: { origin } }) => Math.hypot(origin[0], origin[1])));
  return {
    solids: [
      ...boardSolids(input, apertureRadius),
      ...frameSolids(input, apertureRadius),
      ...facingSolids(input, apertureRadius),
      ...battenSolids(input, apertureRadius),
      ...vesselSolid(input, apertureRadius),
      ...standSolids(input, apertureRadius),
    ],
    reach: Math.hypot(wide, (high - low) / 2),
    centre: (high + low) / 2,
  };
}
