/** What follows of the vessel and its load where the file leaves it out, and whether the load goes in. Millimetres. */
import { type Diagnostic, diagnostic } from '../diagnostic/index.js';
import type { Filled } from './design.js';
import type { DesignFile } from './schema.js';
import type { fillings, wallMaterials } from './sections/vessel.js';
import { formatLength } from '../units/index.js';

export type VesselFile = NonNullable<DesignFile['vessel']>;
export type LoadFile = NonNullable<DesignFile['load']>;
export type FilledVessel = Filled<
  VesselFile,
  'mount' | 'height' | 'opening' | 'sideAbsorptance' | 'wallMass' | 'holderArms' | 'holderWidth'
>;
export type FilledLoad = Filled<LoadFile, 'density'>;

/** kg/m³ near 20 °C: handbook values, from memory; a solid is taken as stone. */
const loadDensity: Readonly<Record<(typeof fillings)[number], number>> = {
  water: 1000,
  milk: 1030,
  juice: 1050,
  oil: 920,
  solid: 2500,
};

/** kg/m³, handbook values, from memory. */
const wallDensity: Readonly<Record<(typeof wallMaterials)[number], number>> = {
  stainless: 7900,
  steel: 7850,
  enamel: 7800,
  aluminium: 2700,
  'cast-iron': 7200,
  copper: 8930,
  clay: 2000,
};

const plateThickness = 6;
/** A vessel higher than so many diameters is a tube. */
const maxSlenderness = 2;

export function filledLoad(load: LoadFile): FilledLoad {
  return { ...load, density: load.density ?? loadDensity[load.filling] };
}

/** Height of the load in a vessel of this diameter, mm. */
function loadHeight({ diameter }: VesselFile, { mass, density }: FilledLoad): number {
  return (mass / density) * 1e9 * (4 / (Math.PI * diameter * diameter));
}

function heightOf(vessel: VesselFile, load: FilledLoad | undefined): number {
  if (vessel.height !== undefined) return vessel.height;
  if (vessel.kind === 'plate') return plateThickness;
  if (vessel.kind === 'coil' || vessel.kind === 'cavity') return vessel.diameter;
  return load === undefined ? vessel.diameter / 2 : loadHeight(vessel, load) / vessel.fill;
}

export function filledVessel(vessel: VesselFile, load: FilledLoad | undefined): FilledVessel {
  const { kind, diameter, wallThickness, wall } = vessel;
  const height = heightOf(vessel, load);
  const face = (Math.PI * diameter * diameter) / 4;
  const faces = kind === 'cavity' || vessel.lid ? 2 : 1;
  const volume = kind === 'plate' ? face * height : (faces * face + Math.PI * diameter * height) * wallThickness;
  const covered = vessel.insulation > 0 || kind === 'cavity';
  return {
    ...vessel,
    mount: vessel.mount ?? (kind === 'pot' || kind === 'plate' ? 'level' : 'axis'),
    height,
    opening: vessel.opening ?? diameter / 2,
    sideAbsorptance: vessel.sideAbsorptance ?? (covered ? 0 : vessel.baseAbsorptance),
    wallMass: vessel.wallMass ?? (volume / 1e9) * wallDensity[wall],
    holderArms: vessel.holderArms ?? 0,
    holderWidth: vessel.holderWidth ?? 20,
  };
}

/** A load that does not go into its vessel, and a mouth wider than it. */
export function checkFilling(file: DesignFile): Diagnostic[] {
  const { vessel, load } = file;
  if (vessel === undefined) return [];
  const found: Diagnostic[] = [];
  const show = (mm: number) => formatLength(mm, file.units);
  if (vessel.kind === 'cavity' && (vessel.opening ?? 0) > vessel.diameter)
    found.push(
      diagnostic(
        'vessel',
        ['vessel', 'opening'],
        `vessel.opening of ${show(vessel.opening ?? 0)} is wider than the vessel of ${show(vessel.diameter)}`,
        'half the diameter is usual',
      ),
    );
  if (load === undefined || vessel.kind !== 'pot') return found;
  const deep = loadHeight(vessel, filledLoad(load));
  const needed = deep / vessel.fill;
  // as high as it is wide: π/4·d³ holds what needs `needed` now
  const fits = Math.cbrt(needed * vessel.diameter ** 2);
  if (vessel.height === undefined && needed > maxSlenderness * vessel.diameter)
    found.push(
      diagnostic(
        'vessel',
        ['vessel', 'diameter'],
        `${load.mass} kg in a vessel of ${show(vessel.diameter)} would be ${show(needed)} deep`,
        `with a diameter of ${show(Math.ceil(fits / 5) * 5)} it would be as deep as it is wide; or state vessel.height`,
      ),
    );
  if (vessel.height !== undefined && deep > vessel.height)
    found.push(
      diagnostic(
        'vessel',
        ['load', 'mass'],
        `load.mass of ${load.mass} kg is ${show(deep)} deep and overflows a vessel ${show(vessel.height)} high`,
        `use ${Number(((load.mass * vessel.height * vessel.fill) / deep).toPrecision(2))} kg or less, or a height of ${show(Math.ceil(needed))}`,
      ),
    );
  return found;
}
