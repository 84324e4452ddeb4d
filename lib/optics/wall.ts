/** What the vessel's wall is made of: handbook values near 100 °C, from memory. */

export interface WallMaterial {
  readonly heatCapacityJPerKgK: number;
  readonly conductivityWPerMK: number;
}

const materials: Readonly<Record<string, WallMaterial>> = {
  stainless: { heatCapacityJPerKgK: 500, conductivityWPerMK: 16 },
  steel: { heatCapacityJPerKgK: 480, conductivityWPerMK: 50 },
  enamel: { heatCapacityJPerKgK: 490, conductivityWPerMK: 50 },
  aluminium: { heatCapacityJPerKgK: 900, conductivityWPerMK: 200 },
  'cast-iron': { heatCapacityJPerKgK: 500, conductivityWPerMK: 50 },
  copper: { heatCapacityJPerKgK: 390, conductivityWPerMK: 390 },
  clay: { heatCapacityJPerKgK: 880, conductivityWPerMK: 1 },
};

/** @throws RangeError for a name that is none */
export function wallMaterial(name: string): WallMaterial {
  const material = materials[name];
  if (!material) throw new RangeError(`no wall is made of ${name}`);
  return material;
}
