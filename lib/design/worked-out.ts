/** Sizes that follow from other keys where the file leaves them out. Millimetres. */
import type { Diagnostic } from '../diagnostic/index.js';
import { type DishShape, paraboloid, slottedReach } from '../dish/index.js';
import type { Material } from './design.js';
import { shapeWithProfile, thicknessIn } from './dish-shape.js';
import { hubRadii, type Joinery } from './joinery.js';
import { profileOf } from './profile-of.js';
import type { DesignFile } from './schema.js';

/** The same design in inches and in mm must round to the same whole millimetre, whatever the last bit is. */
export const roundingSlack = 1e-6;

/** A rib whose base is longer is held at two places, mm: common practice, no source. */
const longBase = 700;

export interface Sizes {
  /** With the hub's radius as stated, or the least that leaves the ribs clear of each other. */
  readonly shape: DishShape;
  /** Why the design gets no profile; a paraboloid then stands in, so that all other problems are found too. */
  readonly noProfile: Diagnostic | null;
  readonly joinery: Joinery;
  /** Least radius of the hub: from there the ribs clear each other, and slots have wood between them. */
  readonly minHubRadius: number;
  /** From the axis to the edge of the hub: past its radius by its slots or grooves. */
  readonly hubReach: number;
  readonly boardSize: number;
  readonly spliceWidth: number;
  readonly cleatRows: number;
  readonly toeRadius: number;
  /** Height of the curve above the board at the rim. */
  readonly rimEnd: number;
  readonly rimHeight: number;
  readonly hubMaterial: string;
  readonly hubThickness: number;
  /** As many as stand below the ribs' inner ends unless the file states it. */
  readonly hubLayers: number;
  /** Height of the inner rib ends above the board. */
  readonly innerHeight: number;
}

/** Height of the vertex over the board: room for cleats and a driver under the panels (common practice, no source). */
function usualBase(aperture: number, ribThickness: number): number {
  return Math.round(Math.max(Math.min(100, Math.max(40, aperture / 25)), 3 * ribThickness) - roundingSlack);
}

/** Radius from which a panel is wide enough to be cut: two millimetres, and what the slope at the hub adds. */
function panelsFrom({ dish, panel }: DesignFile): number {
  const half = Math.PI / dish.ribs;
  return (1 + panel.gap / 2 / Math.cos(half)) / Math.sin(half) + 1;
}

/**
 * Everything that is worked out, with what it is worked out from.
 * @param boardShare of the aperture, for a board whose size is not stated
 * @param joinery how the parts are joined
 */
export function workedOut(
  file: DesignFile,
  materials: Readonly<Record<string, Material>>,
  boardShare: number,
  joinery: Joinery,
): Sizes {
  const { aperture, ribs } = file.dish;
  const hubMaterial = file.hub.material ?? file.rib.material;
  const hubThickness = thicknessIn(materials, hubMaterial);
  const ribThickness = thicknessIn(materials, file.rib.material);
  const slotted = joinery.hubBuild === 'slotted-discs';
  const radii = hubRadii(joinery, ribs, ribThickness, hubThickness);
  const hubRadius = file.hub.radius ?? Math.ceil(Math.max(radii.usual, panelsFrom(file)) - roundingSlack);
  const dish = { ...file.dish, baseHeight: file.dish.baseHeight ?? usualBase(aperture, ribThickness) };
  const made = profileOf(file);
  const stand = made.kind === 'profile' ? made.profile : paraboloid(file.dish.focalLength);
  const shape = shapeWithProfile({ ...file, dish, materials, hub: { radius: hubRadius } }, stand);
  const { apertureRadius, baseHeight, facingThickness, profile } = shape;

  const boardSize = file.board.size ?? 2 * Math.round((boardShare * aperture) / 2 - roundingSlack);
  const toeRadius = file.rib.toeRadius ?? Math.min(apertureRadius, boardSize / 2 - 10);
  const rimEnd = baseHeight + profile.height(apertureRadius);
  const usualRim = Math.max(
    40,
    Math.ceil(2.5 * ribThickness - roundingSlack),
    Math.round(0.2 * rimEnd - roundingSlack),
  );

  const innerHeight = baseHeight + profile.height(hubRadius) - facingThickness;
  const fitting = hubThickness > 0 ? Math.floor(innerHeight / hubThickness + roundingSlack) : 1;
  return {
    shape,
    noProfile: made.kind === 'refused' ? made.diagnostic : null,
    joinery,
    minHubRadius: radii.min,
    hubReach: slotted ? slottedReach(hubRadius, hubThickness) : hubRadius + joinery.housing,
    boardSize,
    spliceWidth: file.board.spliceWidth ?? Math.min(150, Math.max(50, Math.round(boardSize / 8 - roundingSlack))),
    toeRadius,
    cleatRows: file.cleat.rows ?? (toeRadius - hubRadius > longBase ? 2 : 1),
    rimEnd,
    rimHeight: file.rib.rimHeight ?? Math.min(rimEnd - facingThickness, usualRim),
    hubMaterial,
    hubThickness,
    hubLayers: slotted ? 2 : (file.hub.layers ?? Math.max(1, fitting)),
    innerHeight,
  };
}
