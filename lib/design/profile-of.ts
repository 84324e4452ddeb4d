/** From the keys of a design to its profile: a further kind is one more entry here. */
import { type Diagnostic, diagnostic, type KeyPath } from '../diagnostic/index.js';
import { paraboloid, type Profile, spread } from '../dish/index.js';
import type { DesignFile } from './schema.js';
import type { ProfileKind } from './sections/dish.js';
import { formatLength } from '../units/index.js';

/** The keys that a profile follows from. */
export interface ProfileSource {
  readonly dish: Pick<DesignFile['dish'], 'profile' | 'aperture' | 'focalLength' | 'ribs' | 'spreadRadius'>;
  readonly vessel?: { readonly diameter: number } | undefined;
  readonly units: DesignFile['units'];
}

/** A profile, or why there is none, at the key that would mend it. */
export type ProfileMade =
  | { readonly kind: 'profile'; readonly profile: Profile }
  | { readonly kind: 'refused'; readonly diagnostic: Diagnostic };

const made = (profile: Profile): ProfileMade => ({ kind: 'profile', profile });

const refused = (code: 'profile' | 'focal-length', path: KeyPath, message: string, remedy: string): ProfileMade => ({
  kind: 'refused',
  diagnostic: diagnostic(code, path, message, remedy),
});

/** Steeper than this a panel hangs on its ribs rather than lies on them (tan 70°): common practice, no source. */
const steepestRim = Math.tan((70 * Math.PI) / 180);

/**
 * Radius to which `spread` sends the rim's light unless the design says: a panel does not focus across its width, so
 * the corners of its image lie half a panel's width off, and √(a² − (R·sin(π/N))²) just keeps them on the vessel.
 * Null when that width alone is wider than the vessel.
 */
function spreadRadius({ dish, vessel }: ProfileSource): number | null {
  if (dish.spreadRadius !== undefined) return dish.spreadRadius;
  const half = (dish.aperture / 2) * Math.sin(Math.PI / dish.ribs);
  const left = ((vessel?.diameter ?? 0) / 2) ** 2 - half * half;
  return left > 0 ? Math.sqrt(left) : null;
}

function spreadOf(source: ProfileSource): ProfileMade {
  const { dish, vessel, units } = source;
  const { aperture, focalLength, ribs } = dish;
  const show = (mm: number): string => formatLength(mm, units, units === 'mm' ? 0 : 2);
  const radius = spreadRadius(source);
  if (radius === null && vessel === undefined)
    return refused(
      'profile',
      ['dish', 'profile'],
      'dish.profile: spread has nothing to light, because the design has no vessel',
      'add a vessel, or give dish.spreadRadius',
    );
  if (radius === null)
    return refused(
      'profile',
      ['dish', 'ribs'],
      `the panels of ${ribs} ribs are ${show(aperture * Math.sin(Math.PI / ribs))} wide at the rim and alone cover a vessel of ${show(vessel?.diameter ?? 0)}, so dish.profile: spread has nothing left to spread`,
      'use more ribs, a larger vessel or dish.profile: paraboloid',
    );
  if (radius >= aperture / 4)
    return refused(
      'profile',
      dish.spreadRadius === undefined ? ['vessel', 'diameter'] : ['dish', 'spreadRadius'],
      `dish.profile: spread would light a disc of ${show(2 * radius)}, more than half the aperture of ${show(aperture)}`,
      'use a smaller dish.spreadRadius',
    );
  return made(spread({ height: focalLength, radius, apertureRadius: aperture / 2 }));
}

const makers: Readonly<Record<ProfileKind, (source: ProfileSource) => ProfileMade>> = {
  paraboloid: ({ dish }) => made(paraboloid(dish.focalLength)),
  spread: spreadOf,
};

/** The profile that a design asks for. */
export function profileOf(source: ProfileSource): ProfileMade {
  const { aperture, focalLength } = source.dish;
  // the slope of the paraboloid, R/2f: that of any other profile of the same height is less
  const min = aperture / 4 / steepestRim;
  if (focalLength < min) {
    const show = (mm: number): string => formatLength(mm, source.units, source.units === 'mm' ? 2 : 3);
    return refused(
      'focal-length',
      ['dish', 'focalLength'],
      `dish.focalLength of ${show(focalLength)} makes the rim steeper than 70°`,
      `use at least ${show(Math.ceil(min))} for this aperture`,
    );
  }
  return makers[source.dish.profile](source);
}
