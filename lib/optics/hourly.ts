/** The air by the hour. */
import { tableAt } from '../geometry/index.js';
import type { Air, Day } from './types.js';

/** Air and wind at an hour of the day: straight between the stated hours, level before and after. */
export const airAt = ({ ambientC, windMPerS }: Day, hour: number): Air => ({
  ambientC: tableAt(ambientC, hour),
  windMPerS: tableAt(windMPerS, hour),
});
