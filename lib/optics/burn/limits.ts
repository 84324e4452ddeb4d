/**
 * What light does to skin and eyes. Published limits, from memory; they hold for healthy adults and one exposure, and
 * are no leave to stand in the beam.
 */

/** The sun at its brightest on the ground, W/m² (a round value for a clear noon; common practice, no source). */
export const BRIGHT_SUN = 1000;
/** How wide the sun looks, radians: twice 4.65 mrad. */
const SUN_WIDTH = 9.3e-3;

/**
 * Seconds until skin is hurt: the dose may not pass 20 000·t^¼ J/m² for t under 10 s (ICNIRP, Guidelines on limits of
 * exposure to incoherent visible and infrared radiation, Health Physics 105, 2013, 74-96; from memory), so that
 * t = (20 000/E)^(4/3). Infinite where t is 10 s or more: one turns away from the heat by then.
 * @param irradiance E, W/m²
 */
export function secondsToSkinHurt(irradiance: number): number {
  const seconds = (20_000 / irradiance) ** (4 / 3);
  return seconds < 10 ? seconds : Infinity;
}

/** Irradiance at which skin takes no hurt within 10 s, W/m². */
export const SKIN_LIMIT = 20_000 * 10 ** -0.75;

/** Pupil by day, focal length of the eye (mm) and what it lets through, as the paper below takes them. */
const EYE = { pupil: 2, focal: 17, transmittance: 0.5 };
/** Irradiance on the retina over that at the eye, for a source that looks ω wide: (pupil/(focal·ω))²·transmittance. */
const RETINA = (EYE.pupil / EYE.focal) ** 2 * EYE.transmittance;

/**
 * Irradiance at the eye from which a glance (0.15 s, until one blinks) can burn the retina: on it 0.118/ω W/cm², for ω
 * up to 0.118 rad (Ho, Ghanbari and Diver, Methodology to assess potential glint and glare hazards from concentrating
 * solar power plants, Journal of Solar Energy Engineering 133, 2011, 031021; from memory).
 * @param width ω that the source looks wide, radians
 * @returns W/m²
 */
const eyeBurnLimit = (width: number): number => (((0.118 / width) * width * width) / RETINA) * 1e4;

/** Irradiance at the eye from which a glance leaves an after-image: on the retina 3.59·10⁻⁵/ω^1.77 W/cm² (the same paper). */
const dazzleLimit = (width: number): number => (((3.59e-5 / width ** 1.77) * width * width) / RETINA) * 1e4;

/**
 * Suns at which a limit that depends on how wide the source looks is reached. No mirror looks brighter than the sun, so
 * light of so many suns comes from a source at least √suns as wide (conservation of radiance; Rabl, Active Solar
 * Collectors and Their Applications, 1985): the worst case, as every mirror blurs.
 */
function limitSuns(limit: (width: number) => number): number {
  let [low, high] = [1e-9, 1e9];
  while (high / low > 1 + 1e-9) {
    const middle = Math.sqrt(low * high);
    if (middle * BRIGHT_SUN > limit(SUN_WIDTH * Math.sqrt(middle))) high = middle;
    else low = middle;
  }
  return low;
}

/** Suns from which a glance can burn the retina, and from which it leaves an after-image. */
export const burnSuns = limitSuns(eyeBurnLimit);
export const dazzleSuns = limitSuns(dazzleLimit);
