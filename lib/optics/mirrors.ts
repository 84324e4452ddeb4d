/**
 * What mirrors do, by finish: share of sunlight that leaves within the spread, the spread itself (one standard deviation
 * in each direction), and the waviness that usual care leaves. Where a source is named, its value is the one for new
 * and clean; values marked `from memory` are the trade's, not measurements.
 */
import type { Design } from '../design/index.js';

export type MirrorFinish = NonNullable<Design['reflector']['finish']>;
type MirrorState = Design['reflector']['state'];

interface Reflection {
  readonly reflectance: number;
  readonly specularityMrad: number;
}

interface MirrorKind extends Readonly<Record<MirrorState, Reflection>> {
  readonly name: string;
  /** Waviness with usual care, mrad. */
  readonly slopeErrorMrad: number;
  readonly source: string;
}

const specularTable =
  'specular reflectance of new mirrors: Duffie and Beckman, Solar Engineering of Thermal Processes, chapter on radiation characteristics (from memory)';

const mirrors: Readonly<Record<MirrorFinish, MirrorKind>> = {
  'mirror-film': {
    name: 'mirror film (aluminised polyester)',
    slopeErrorMrad: 4,
    new: { reflectance: 0.77, specularityMrad: 1 },
    weathered: { reflectance: 0.7, specularityMrad: 3 },
    source:
      'new: 0.77, Brogren et al., Solar Energy Materials and Solar Cells, 2004 (a polyester laminate; 0.76 for film in Duffie and Beckman, from memory); weathered and spread from memory',
  },
  'bright-anodised': {
    name: 'bright-anodised aluminium sheet',
    slopeErrorMrad: 4,
    new: { reflectance: 0.85, specularityMrad: 2 },
    weathered: { reflectance: 0.75, specularityMrad: 4 },
    source: `new: 0.85, ${specularTable}; weathered and spread from memory`,
  },
  rolled: {
    name: 'plain rolled aluminium sheet',
    slopeErrorMrad: 5,
    new: { reflectance: 0.6, specularityMrad: 10 },
    weathered: { reflectance: 0.45, specularityMrad: 20 },
    source: 'from memory: it reflects three quarters of the light, much of it hazy',
  },
  foil: {
    name: 'kitchen foil, bright side, laid smooth',
    slopeErrorMrad: 6,
    new: { reflectance: 0.82, specularityMrad: 6 },
    weathered: { reflectance: 0.65, specularityMrad: 15 },
    source: `new: 0.86 before it is handled, ${specularTable}; 0.82 as laid, weathered and spread from memory`,
  },
  'crinkled-foil': {
    name: 'kitchen foil, crinkled',
    slopeErrorMrad: 6,
    new: { reflectance: 0.75, specularityMrad: 50 },
    weathered: { reflectance: 0.6, specularityMrad: 70 },
    source: 'from memory',
  },
  'mirror-tiles': {
    name: 'glass mirror tiles, silvered behind',
    slopeErrorMrad: 5,
    new: { reflectance: 0.82, specularityMrad: 0.5 },
    weathered: { reflectance: 0.76, specularityMrad: 1 },
    source: `new: 0.88 for white glass, ${specularTable}; 0.82 for common green glass, weathered and spread from memory`,
  },
};

/** Good care halves the waviness, poor care doubles it: an estimate from memory. */
export const careFactors = { good: 0.5, poor: 2 } as const;
/** Waviness with usual care when the design states the reflectance and no finish that is known. */
const STATED_SLOPE_MRAD = 4;
const STATED_SPECULARITY_MRAD = 1;
/** Thinner aluminium is foil; kitchen foil is 0.01 to 0.025 mm (common practice, no source). */
const FOIL_MM = 0.05;
const USUAL_TILE_MM = 50;

/** What the mirror of a design does. */
export interface Mirror {
  /** In words, for what the forecast rests on. */
  readonly name: string;
  readonly source: string;
  /** 0 for a surface that is no mirror. */
  readonly reflectance: number;
  readonly specularityMrad: number;
  readonly slopeErrorMrad: number;
  /** Side of flat tiles along the panel, mm; 0 for a mirror that bends with its panel. */
  readonly tile: number;
}

type MirrorDesign = Pick<Design, 'materials' | 'panel' | 'reflector' | 'sun'>;

/** The finish as stated, or by the material that faces the sun; null for wood, card and whatever else is no mirror. */
function finishOf({ materials, panel, reflector }: MirrorDesign): MirrorFinish | null {
  if (reflector.finish !== undefined) return reflector.finish;
  const facing = materials[reflector.material ?? panel.material];
  if (facing?.kind === 'film') return 'mirror-film';
  if (facing?.kind === 'foil') return 'foil';
  if (facing?.kind === 'aluminium') return facing.thickness < FOIL_MM ? 'foil' : 'rolled';
  return null;
}

/** The mirror that faces the sun: as the design states it, the rest by its finish. */
export function mirrorOfDesign(design: MirrorDesign): Mirror {
  const { reflector, sun } = design;
  const finish = finishOf(design);
  const kind = finish === null ? null : mirrors[finish];
  const reflection = kind?.[reflector.state] ?? { reflectance: 0, specularityMrad: STATED_SPECULARITY_MRAD };
  const stated = reflector.reflectance === undefined ? '' : ', reflectance as stated';
  return {
    name: kind === null ? 'a mirror of unknown finish' : `${kind.name}, ${reflector.state}${stated}`,
    source: reflector.reflectance === undefined ? (kind?.source ?? 'none') : 'the design, reflector.reflectance',
    reflectance: reflector.reflectance ?? reflection.reflectance,
    specularityMrad: sun.specularity ?? reflection.specularityMrad,
    slopeErrorMrad: sun.slopeError ?? kind?.slopeErrorMrad ?? STATED_SLOPE_MRAD,
    tile: finish === 'mirror-tiles' ? (reflector.tileSize ?? USUAL_TILE_MM) : 0,
  };
}
