/** What a laser's tool path has to keep to, by the design in the record. Lengths in mm, speeds in mm/min. */
import type { ProofPoint } from '../types.js';

export interface LaserLimits {
  readonly beam: 'M3' | 'M4';
  /** S words. */
  readonly fullPower: number;
  readonly cutPower: number;
  readonly markPower: number;
  readonly cutSpeed: number;
  readonly markSpeed: number;
  readonly inches: boolean;
  readonly arcs: 'arcs' | 'lines';
  /** Words. */
  readonly pathMode: 'G61' | 'G61.1' | 'G64 P';
  readonly pathTolerance: number;
  readonly coolant: 'off' | 'mist' | 'flood';
  readonly commentLength: number;
  readonly parking: ProofPoint | undefined;
  readonly end: 'M2' | 'M30';
}
