/** Where a dish that turns and tilts is parked: away from every sun of the year. */
import { sunPlace } from './sun-position.js';
import type { Site } from './types.js';

const MINUTE = 60_000;
const DAY = 86_400_000;
/** Steps of the search; between two of them the sun moves by less than `between` degrees. */
const days = 5;
const minutes = 20;
const between = 3;

export interface Parked {
  readonly towards: 'north' | 'south';
  /** The sun never comes nearer to the axis than this, whole degrees. */
  readonly angleDeg: number;
}

/**
 * The better of north and south to park a dish at, tilted to its lowest, and how far every sun of the year above the
 * horizon stays off its axis.
 * @param lowestDeg height of the axis above the horizon
 * @param startMs any moment of the first day, ms since 1970
 */
export function parkedPlace(
  { latitudeDeg, longitudeDeg }: Pick<Site, 'latitudeDeg' | 'longitudeDeg'>,
  lowestDeg: number,
  startMs: number,
): Parked {
  const tilt = (lowestDeg * Math.PI) / 180;
  const nearest = { north: Math.PI, south: Math.PI };
  for (let day = 0; day < 366; day += days)
    for (let minute = 0; minute < 1440; minute += minutes) {
      const { elevation, azimuth } = sunPlace(startMs + day * DAY + minute * MINUTE, latitudeDeg, longitudeDeg);
      if (elevation < 0) continue;
      const [up, north] = [
        Math.sin(elevation) * Math.sin(tilt),
        Math.cos(elevation) * Math.cos(azimuth) * Math.cos(tilt),
      ];
      nearest.north = Math.min(nearest.north, Math.acos(Math.min(1, up + north)));
      nearest.south = Math.min(nearest.south, Math.acos(Math.min(1, up - north)));
    }
  const towards = nearest.north >= nearest.south ? 'north' : 'south';
  return { towards, angleDeg: Math.max(0, Math.floor((nearest[towards] * 180) / Math.PI - between)) };
}
