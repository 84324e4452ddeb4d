/** From the keys of a design to the optical shape: the one place where facing, profile and rib planes are put together. */
import { type DishShape, type Profile, radialLayout } from '../dish/index.js';
import { profileOf, type ProfileSource } from './profile-of.js';
import type { DesignFile } from './schema.js';

/** What decides the shape; materials by name with their thickness. */
export interface ShapeSource extends ProfileSource {
  readonly dish: ProfileSource['dish'] & Pick<DesignFile['dish'], 'figure'> & { readonly baseHeight: number };
  readonly rib: Pick<DesignFile['rib'], 'material'>;
  readonly hub: { readonly radius: number };
  readonly panel: Pick<DesignFile['panel'], 'material' | 'gap'>;
  readonly reflector: Pick<DesignFile['reflector'], 'material' | 'glue'>;
  readonly materials: Readonly<Record<string, { readonly thickness: number }>>;
}

/** Thickness of a material, 0 for none and for a name that is not there. */
export function thicknessIn(materials: ShapeSource['materials'], name: string | undefined): number {
  return name !== undefined && Object.hasOwn(materials, name) ? (materials[name]?.thickness ?? 0) : 0;
}

/**
 * The optical shape of a design.
 * @throws RangeError when the keys give no profile, which a completed design's always do
 */
export function shapeOf(source: ShapeSource): DishShape {
  const made = profileOf(source);
  if (made.kind === 'refused') throw new RangeError(made.diagnostic.message);
  return shapeWithProfile(source, made.profile);
}

/** The shape with a profile that is at hand. */
export function shapeWithProfile(
  { dish, hub, materials, panel, reflector, rib }: Omit<ShapeSource, 'vessel' | 'units'>,
  profile: Profile,
): DishShape {
  const panelThickness = thicknessIn(materials, panel.material);
  const reflectorThickness =
    reflector.material === undefined ? 0 : thicknessIn(materials, reflector.material) + reflector.glue;
  return {
    figure: dish.figure,
    profile,
    layout: radialLayout(dish.ribs),
    apertureRadius: dish.aperture / 2,
    ribThickness: thicknessIn(materials, rib.material),
    panelThickness,
    reflectorThickness,
    facingThickness: panelThickness + reflectorThickness,
    seamGap: panel.gap,
    baseHeight: dish.baseHeight,
    innerRadius: hub.radius,
  };
}
