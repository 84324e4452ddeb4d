/** From the keys of a design to the optical shape: the one place where facing, profile and rib planes are put together. */
import { type DishShape, paraboloid, radialLayout } from '../dish/index.js';
import type { DesignFile } from './schema.js';

/** What decides the shape; materials by name with their thickness. */
export interface ShapeSource {
  readonly dish: Pick<DesignFile['dish'], 'aperture' | 'focalLength' | 'ribs' | 'figure' | 'baseHeight'>;
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

/** The optical shape of a design. */
export function shapeOf({ dish, hub, materials, panel, reflector, rib }: ShapeSource): DishShape {
  const panelThickness = thicknessIn(materials, panel.material);
  const reflectorThickness =
    reflector.material === undefined ? 0 : thicknessIn(materials, reflector.material) + reflector.glue;
  return {
    figure: dish.figure,
    profile: paraboloid(dish.focalLength),
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
