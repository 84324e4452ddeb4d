/** The laser that a design describes, for whatever cuts with it. */
import { type Design, laserOf } from '../design/index.js';
import type { Process } from '../machining/index.js';

/**
 * How a laser cuts a material: one kerf for each, wherever it is asked for.
 * @param usual kerf where the machine states none of this material
 */
export function laserProcess(design: Design, material: string, usual: number): Process {
  const laser = laserOf(design);
  const kerf = laser?.materials[material]?.kerf ?? usual;
  return {
    kind: 'laser',
    kerf,
    web: design.process.web,
    ...(laser === null ? {} : { order: laser.order }),
  };
}
