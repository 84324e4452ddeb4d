/** Values by the hour. */
import { element } from '../geometry/index.js';
import type { Hourly } from './types.js';

/** The value at an hour of the day: straight between the stated hours, level before and after. */
export function hourlyAt(values: Hourly, hour: number): number {
  const later = values.findIndex(([at]) => at > hour);
  if (later === 0) return element(values, 0)[1];
  if (later === -1) return element(values, values.length - 1)[1];
  const [from, first] = element(values, later - 1);
  const [to, second] = element(values, later);
  return first + ((second - first) * (hour - from)) / (to - from);
}
