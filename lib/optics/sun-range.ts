/** How high the sun stands over the year. */
import { sunPlace } from './sun-position.js';
import type { Site } from './types.js';

const MINUTE = 60_000;
const DAY = 86_400_000;

/**
 * The greatest height of the sun over the year from a day on, degrees, to a hundredth: the height at noon of every day,
 * where noon is looked for by the minute.
 * @param startMs any moment of the first day, ms since 1970
 */
export function highestSunDeg(
  { latitudeDeg, longitudeDeg }: Pick<Site, 'latitudeDeg' | 'longitudeDeg'>,
  startMs: number,
): number {
  const midnight = Math.floor(startMs / DAY) * DAY;
  const meanNoon = midnight + DAY / 2 - (longitudeDeg / 360) * DAY;
  const height = (ms: number): number => sunPlace(ms, latitudeDeg, longitudeDeg).elevation;
  // the sun's own noon strays from the clock's by a quarter of an hour and a little
  const noonOf = (day: number, step: number): number => {
    let best = -Infinity;
    for (let minute = -20; minute <= 20; minute += step)
      best = Math.max(best, height(meanNoon + day * DAY + minute * MINUTE));
    return best;
  };
  let [best, on] = [-Infinity, 0];
  for (let day = 0; day < 366; day++) {
    const noon = noonOf(day, 10);
    if (noon > best) [best, on] = [noon, day];
  }
  for (let day = on - 2; day <= on + 2; day++) best = Math.max(best, noonOf(day, 1));
  return (best * 180) / Math.PI;
}
