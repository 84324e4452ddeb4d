/** What a laser's tool path has to keep to, by the design in the record. Speeds in mm/min. */
import type { LaserMachineRead } from '../job-reader.js';

export interface LaserLimits extends Omit<LaserMachineRead, 'kind' | 'order' | 'materials' | 'fullPower'> {
  /** S words. */
  readonly fullPower: number;
  readonly cutPower: number;
  readonly markPower: number;
  readonly cutSpeed: number;
  readonly markSpeed: number;
}
