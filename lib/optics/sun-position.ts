/**
 * Where the sun stands: the low-accuracy series of Meeus, Astronomical Algorithms, second edition, chapter 25, with the
 * apparent sidereal time of chapter 12, less the terms under 0.0005° (coefficients from memory; held against an
 * independent library in the tests). Good to 0.01° from 1930 to 2049.
 */

const RAD = Math.PI / 180;
/** Julian day of 1970-01-01 00:00 UTC. */
const UNIX_EPOCH_JD = 2440587.5;
/** Half-angle of the sun's disc at one astronomical unit: 959.63 seconds of arc (Auwers; IAU practice). */
const RADIUS_AT_UNIT = (959.63 / 3600) * RAD;

/** The sun is seen where it stood when its light left: 20.5 seconds of arc back. */
const ABERRATION_DEG = 0.00569;

export interface SunPlace {
  /** Height of the centre above the horizon without refraction, radians. */
  readonly elevation: number;
  /** From north over east, radians, 0 to 2π. */
  readonly azimuth: number;
  /** From the meridian, westward, radians: 15° for each hour of solar time past noon. */
  readonly hourAngle: number;
  /** Distance in astronomical units. */
  readonly distanceAu: number;
  /** Half-angle of the disc, radians. */
  readonly angularRadius: number;
}

/**
 * @param unixMs time in milliseconds since 1970-01-01 00:00 UTC
 * @param latitudeDeg north positive
 * @param longitudeDeg east positive
 */
export function sunPlace(unixMs: number, latitudeDeg: number, longitudeDeg: number): SunPlace {
  const days = unixMs / 86_400_000 + UNIX_EPOCH_JD - 2451545;
  const t = days / 36525;
  const meanLongitude = 280.46646 + t * 36000.76983;
  const anomaly = (357.52911 + t * 35999.05029) * RAD;
  const eccentricity = 0.016708634 - t * 0.000042037;
  const centre = (1.914602 - t * 0.004817) * Math.sin(anomaly) + 0.019993 * Math.sin(2 * anomaly);
  const distanceAu = (1.000001018 * (1 - eccentricity ** 2)) / (1 + eccentricity * Math.cos(anomaly + centre * RAD));
  const node = (125.04 - 1934.136 * t) * RAD;
  const nutation = -0.00478 * Math.sin(node);
  const longitude = (meanLongitude + centre - ABERRATION_DEG + nutation) * RAD;
  const obliquity = (23.4392911 - t * 0.0130042 + 0.00256 * Math.cos(node)) * RAD;
  const ascension = Math.atan2(Math.cos(obliquity) * Math.sin(longitude), Math.cos(longitude));
  const declination = Math.asin(Math.sin(obliquity) * Math.sin(longitude));
  const sidereal = (280.46061837 + 360.98564736629 * days + nutation * Math.cos(obliquity) + longitudeDeg) * RAD;
  const hour = sidereal - ascension;
  const latitude = latitudeDeg * RAD;
  const sine = Math.sin(latitude) * Math.sin(declination) + Math.cos(latitude) * Math.cos(declination) * Math.cos(hour);
  const azimuth = Math.atan2(
    -Math.cos(declination) * Math.sin(hour),
    Math.sin(declination) * Math.cos(latitude) - Math.cos(declination) * Math.cos(hour) * Math.sin(latitude),
  );
  return {
    elevation: Math.asin(Math.max(-1, Math.min(1, sine))),
    azimuth: (azimuth + 2 * Math.PI) % (2 * Math.PI),
    hourAngle: Math.atan2(Math.sin(hour), Math.cos(hour)),
    distanceAu,
    angularRadius: Math.asin(RADIUS_AT_UNIT / distanceAu),
  };
}
