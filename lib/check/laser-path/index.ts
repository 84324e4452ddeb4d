/** The tool path of a laser as lines on the sheet, with the findings of its own words. */
import type { ReadBackPath } from '../drawn.js';
import type { LaserMachineRead } from '../job-reader.js';
import { Findings } from '../router-simulation/findings.js';
import { readBlocks } from '../router-simulation/reader.js';
import type { RouterFinding } from '../router-simulation/types.js';
import { Laser } from './machine.js';
import type { LaserLimits } from './types.js';

/** What the design asks of a laser in a material; 0 for what it does not state, which no cut keeps to. */
function limitsOf(machine: LaserMachineRead, material: string): LaserLimits {
  const { fullPower = 0, materials, ...rest } = machine;
  const { cutPower = 0, markPower = 0, cutSpeed = 0, markSpeed = 0 } = materials[material] ?? {};
  return {
    ...rest,
    fullPower,
    cutPower: (cutPower / 100) * fullPower,
    markPower: (markPower / 100) * fullPower,
    cutSpeed,
    markSpeed,
  };
}

export interface LaserPathRead {
  /** Each with the layer that the comment before it names. */
  readonly entities: readonly ReadBackPath[];
  readonly findings: readonly RouterFinding[];
  readonly limits: LaserLimits;
}

/** Reads a laser's tool path. Nothing here is shared with what made it. */
export function readLaserPath(name: string, text: string, machine: LaserMachineRead, material: string): LaserPathRead {
  const findings = new Findings();
  const limits = limitsOf(machine, material);
  const laser = new Laser(name, limits, findings);
  laser.run(readBlocks(name, text, findings));
  return { entities: laser.paths, findings: findings.all(), limits };
}
